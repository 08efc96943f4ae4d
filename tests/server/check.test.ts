import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { stripVTControlCharacters } from 'node:util';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { checks } from '../../shared/checks/index.ts';
import { broken, folder, halfturn, misspelt, sound } from './halfturn.ts';

const misspeltReport = `two.drill:6:30: error unknown-name: There is no place called \`Bsae\`. Did you mean \`Base\`?
 6 |   station Wall at 8 right of Bsae
   |                              ^^^^
   = fix: Change to Base

`;

describe('what is looked at', () => {
  test.each<[what: string, words: string[], input: string, status: number, last: string]>([
    ['a file', ['a.drill'], '', 0, 'No problems in 1 file.'],
    ['files', ['a.drill', 'in/b.drill'], '', 1, '1 error in 2 files.'],
    ['a file named twice', ['a.drill', './a.drill'], '', 0, 'No problems in 1 file.'],
    ['a folder with all below it', ['.'], '', 1, '1 error in 3 files.'],
    ['a glob', ['in/**/*.drill'], '', 1, '1 error in 2 files.'],
    ['a file of another ending', ['note.txt'], '', 0, 'No problems in 1 file.'],
    ['standard input', ['-'], misspelt, 1, '1 error in 1 file.'],
    ['a name after --', ['--', 'a.drill'], '', 0, 'No problems in 1 file.'],
  ])('%s', async (_, words, input, status, last) => {
    const cwd = folder({
      'a.drill': sound, 'in/b.drill': misspelt, 'in/deep/c.drill': sound, 'note.txt': sound, 'node_modules/d.drill': misspelt, '.hidden/e.drill': misspelt,
    });
    const told = await halfturn(cwd, ['check', ...words], { input });
    expect([told.status, told.out.trimEnd().split('\n').at(-1), told.err]).toEqual([status, last, '']);
  });

  test('the others, when one cannot be read', async () => {
    const cwd = folder({ 'a.drill': new Uint8Array([0xff]), 'two.drill': misspelt });
    expect(await halfturn(cwd, ['check', 'none.drill', '.'])).toEqual({
      status: 2,
      out: `${misspeltReport}1 error in 1 file, and 2 other things went wrong.\n`,
      err: 'halfturn: none.drill cannot be read: there is no such file or folder.\nhalfturn: a.drill cannot be read: it is not text in UTF-8.\n',
    });
  });
});

describe('levels', () => {
  const hint = sound.replace('ball at', 'let spare = 3\n  ball at');
  test.each<[level: string[], text: string, status: number, out: string]>([
    [[], hint, 0, '1 hint in 1 file.'],
    [['--level', 'info'], hint, 0, 'No problems in 1 file.'],
    [['--level', 'error'], hint, 0, 'No problems in 1 file.'],
    [['--level', 'error'], misspelt, 1, '1 error in 1 file.'],
  ])('%j', async (level, text, status, last) => {
    const told = await halfturn(folder({ 'a.drill': text }), ['check', 'a.drill', ...level]);
    expect([told.status, told.out.trimEnd().split('\n').at(-1)]).toEqual([status, last]);
  });
});

test('text shows the line, the place and the fix', async () => {
  const told = await halfturn(folder({ 'two.drill': misspelt }), ['check', 'two.drill']);
  expect(told.out).toBe(`${misspeltReport}1 error in 1 file.\n`);
});

test('colour changes nothing but the colour', async () => {
  const cwd = folder({ 'two.drill': misspelt });
  const [plain, coloured] = [await halfturn(cwd, ['check', 'two.drill']), await halfturn(cwd, ['check', 'two.drill'], { colour: true })];
  expect(coloured.out).toContain('\u001b[31m');
  expect(stripVTControlCharacters(coloured.out)).toBe(plain.out);
});

test('JSON counts lines and characters from 0', async () => {
  const told = await halfturn(folder({ 'two.drill': misspelt }), ['check', 'two.drill', '--format', 'json']);
  const offset = misspelt.indexOf('Bsae');
  expect(JSON.parse(told.out)).toEqual({
    files: [{
      file: 'two.drill',
      problems: [{
        code: 'unknown-name',
        severity: 'error',
        message: 'There is no place called `Bsae`. Did you mean `Base`?',
        help: null,
        range: { start: { line: 5, character: 29, offset }, end: { line: 5, character: 33, offset: offset + 4 } },
        related: [],
        fixes: [{ title: 'Change to Base' }],
      }],
    }],
  });
});

test('JSON is as its schema says, whatever is wrong', async () => {
  const schema = JSON.parse(readFileSync(new URL('../../server/text/check.schema.json', import.meta.url), 'utf8'));
  const fits = new Ajv({ allErrors: true, allowUnionTypes: true }).compile(schema);
  const cwd = folder(Object.fromEntries(checks.map((check) => [`${check.code}.drill`, check.bad[0]!.replaceAll(/[⟦⟧]/g, '')])));
  const document = JSON.parse((await halfturn(cwd, ['check', '.', '--format', 'json'])).out);
  expect(fits(document) ? [] : fits.errors).toEqual([]);
  expect(document.files).toHaveLength(checks.length);
  document.files[0].problems[0].range.start.line = -1;
  expect(fits(document)).toBe(false);
});

describe('settings of the folder', () => {
  const hint = sound.replace('ball at', 'let spare = 3\n  ball at');
  const error = '{ "severity": { "unused-name": "error" } }';
  test.each<[what: string, settings: Record<string, string>, words: string[], status: number, last: string]>([
    ['none', {}, [], 0, '1 hint in 1 file.'],
    ['beside the file', { 'in/deep/halfturn.json': error }, [], 1, '1 error in 1 file.'],
    ['above it', { 'halfturn.json': error }, [], 1, '1 error in 1 file.'],
    ['the nearest alone', { 'halfturn.json': error, 'in/halfturn.json': '{}' }, [], 0, '1 hint in 1 file.'],
    ['that leave it out', { 'halfturn.json': '{ "severity": { "unused-name": "off" } }' }, [], 0, 'No problems in 1 file.'],
    ['before the level asked for', { 'halfturn.json': '{ "severity": { "unused-name": "warning" } }' }, ['--level', 'warning'], 0, '1 warning in 1 file.'],
  ])('%s', async (_, settings, words, status, last) => {
    const told = await halfturn(folder({ 'in/deep/a.drill': hint, ...settings }), ['check', 'in', ...words]);
    expect([told.status, told.out.trimEnd().split('\n').at(-1), told.err]).toEqual([status, last, '']);
  });

  test.each<[words: string[]]>([[['check', '.']], [['draw', 'a.drill', '-o', 'a.svg']], [['draw', '.', '-o', 'out/']]])('%j tells what is wrong with them, once', async (words) => {
    const cwd = folder({ 'a.drill': sound, 'b.drill': sound, 'halfturn.json': '{\n  "theem": "dark"\n}' });
    const told = await halfturn(cwd, words);
    expect([told.status, told.err]).toEqual([2, 'halfturn: halfturn.json:2:3: There is no setting `theem`; did you mean `theme`?\n']);
  });

  test('does not call it no problem and then give the status of a refusal', async () => {
    const cwd = folder({ 'a.drill': sound, 'halfturn.json': '{ "theem": "dark", "skale": 3 }' });
    const { status, out } = await halfturn(cwd, ['check', '.']);
    expect([status, out]).toEqual([2, 'No problems in 1 file, but 2 other things went wrong.\n']);
  });
});

test('JSON of many files is one document, also with an unreadable one', async () => {
  const told = await halfturn(folder({ 'a.drill': sound, 'b.drill': broken }), ['check', '.', 'c.drill', '--format=json']);
  expect(JSON.parse(told.out).files.map((each: { file: string; problems: unknown[] }) => [each.file, each.problems.length])).toEqual([['a.drill', 0], ['b.drill', 1]]);
  expect(told.status).toBe(2);
});

test('problems may be far into a text with astral characters and any line ending', async () => {
  const text = `// 𝒳 😀\r\n${misspelt.replaceAll('\n', '\r\n')}`;
  const { files: [file] } = JSON.parse((await halfturn(folder({ 'a.drill': text }), ['check', 'a.drill', '--format', 'json'])).out);
  expect(file.problems[0].range.start).toEqual({ line: 6, character: 29, offset: text.indexOf('Bsae') });
});

describe('--fix', () => {
  test.each<[what: string, text: string, fixed: string, said: string, status: number]>([
    ['makes the fix and says so', misspelt, sound, 'a.drill: made 1 fix.\n  line 6: Change to Base, was Bsae (unknown-name)\n\nNo problems in 1 file.\n', 0],
    ['leaves a sound file alone', sound, sound, 'No problems in 1 file.\n', 0],
    [
      'makes several', misspelt.replace('passes to Wall', 'passes to Wlal'), sound,
      'a.drill: made 2 fixes.\n  line 6: Change to Base, was Bsae (unknown-name)\n  line 9: Change to Wall, was Wlal (unknown-name)\n\nNo problems in 1 file.\n', 0,
    ],
  ])('%s', async (_, text, fixed, said, status) => {
    const cwd = folder({ 'a.drill': text });
    expect(await halfturn(cwd, ['check', 'a.drill', '--fix'])).toEqual({ status, out: said, err: '' });
    expect(readFileSync(join(cwd, 'a.drill'), 'utf8')).toBe(fixed);
  });

  test('says where the text is another now, and what it left to the coach, also where it mended nothing', async () => {
    const cwd = folder({ 'a.drill': misspelt.replace('area 12 x 12', 'area 2 x 2') });
    const first = await halfturn(cwd, ['check', 'a.drill', '--fix']);
    expect(first.out).toContain([
      'a.drill: made 2 fixes.', '  line 6: Change to Base, was Bsae (unknown-name)', '  line 4: Let the area be 6 instead of 2 (outside-area)',
      '  Left to you: 1 error. How it is mended is your choice.', '', 'a.drill:6:19: error outside-area',
    ].join('\n'));
    expect((await halfturn(cwd, ['check', 'a.drill', '--fix'])).out).toContain('a.drill: made no fix.\n  Left to you: 1 error.');
  });

  test('with JSON keeps the document on standard output', async () => {
    const told = await halfturn(folder({ 'a.drill': misspelt }), ['check', 'a.drill', '--fix', '--format', 'json']);
    expect(JSON.parse(told.out)).toEqual({ files: [{ file: 'a.drill', problems: [] }] });
    expect(told.err).toContain('made 1 fix');
  });
});
