import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import type { Log, Result } from 'sarif';
import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../shared/checks/edits.ts';
import { checks } from '../../shared/checks/index.ts';
import { marked } from '../support/marked.ts';
import { broken, folder, halfturn, misspelt, sound } from './halfturn.ts';

/** The schema of OASIS as published; it is written in draft 4, of which ajv 8 knows all that it uses but its own name. */
const { $schema: _, id: __, ...schema } = JSON.parse(
  readFileSync(new URL('../../node_modules/@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json', import.meta.url), 'utf8'),
) as Record<string, unknown>;
const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
(addFormats as unknown as (ajv: Ajv) => void)(ajv);
const validate = ajv.compile(schema);

async function logOf(files: Readonly<Record<string, string>>, words: readonly string[] = ['.'], input = ''): Promise<{ log: Log; cwd: string }> {
  const cwd = folder(files);
  const { out } = await halfturn(cwd, ['check', ...words, '--format', 'sarif'], { input });
  const log = JSON.parse(out) as Log;
  expect(validate(log) ? [] : validate.errors).toEqual([]);
  return { log, cwd };
}

async function resultsOf(text: string): Promise<readonly Result[]> {
  return (await logOf({ 'a.drill': text })).log.runs[0]!.results!;
}

test('the schema is strict enough to find what is wrong', () => {
  expect([validate({ version: '2.1.0' }), validate({ version: '2.1.0', runs: [{ tool: { driver: {} } }] })]).toEqual([false, false]);
});

describe('valid for the bad examples of every check', () => {
  test.each(checks.map((check) => [check.code, check] as const))('%s', async (code, check) => {
    const { plain: text } = marked(check.bad[0]!);
    const results = await resultsOf(text);
    // The file that is imported is not there.
    expect(results.map(({ ruleId }) => ruleId)).toContain(code === 'circular-import' ? 'missing-import' : code);
  });
});

test('the run says what it is', async () => {
  const { log: { runs: [run] }, cwd } = await logOf({ 'a.drill': sound });
  expect(run).toMatchObject({ columnKind: 'utf16CodeUnits', results: [], originalUriBaseIds: { SRCROOT: { uri: `${pathToFileURL(cwd).href}/` } } });
  expect(run!.tool.driver.rules!.map(({ id }) => id)).toEqual(checks.map(({ code }) => code));
  for (const rule of run!.tool.driver.rules!) expect([rule.shortDescription!.text, rule.help!.text, rule.help!.markdown].every((text) => text!.length > 10)).toBe(true);
});

test('a result, with its place and its fix', async () => {
  const [result] = await resultsOf(misspelt);
  const at = misspelt.indexOf('Bsae');
  const region = { startLine: 6, startColumn: 30, endLine: 6, endColumn: 34, charOffset: at, charLength: 4 };
  expect(result).toMatchObject({
    ruleId: 'unknown-name', level: 'error',
    locations: [{ physicalLocation: { artifactLocation: { uri: 'a.drill', uriBaseId: 'SRCROOT' }, region } }],
    fixes: [{ artifactChanges: [{ replacements: [{ deletedRegion: region, insertedContent: { text: 'Base' } }] }] }],
  });
  expect(checks[result!.ruleIndex!]!.code).toBe('unknown-name');
});

test('a fix that is made as it is written mends the text', async () => {
  const [result] = await resultsOf(misspelt);
  const edits = result!.fixes![0]!.artifactChanges[0]!.replacements.map(({ deletedRegion: { charOffset, charLength }, insertedContent }) => (
    { span: { from: charOffset!, to: charOffset! + charLength! }, text: insertedContent?.text ?? '' }));
  expect(applyEdits(misspelt, edits)).toBe(sound);
});

test.each<[what: string, text: string, line: number, column: number]>([
  ['astral characters in the lines before it', `// 😀 𝒳\n${misspelt}`, 7, 30],
  ['a byte order mark, which is no column', `\ufeff${misspelt}`, 6, 30],
  ['lines that end with CR LF', misspelt.replaceAll('\n', '\r\n'), 6, 30],
  ['lines that end with CR', misspelt.replaceAll('\n', '\r'), 6, 30],
])('%s', async (_what, text, line, column) => {
  const { region } = (await resultsOf(text))[0]!.locations![0]!.physicalLocation!;
  expect([region!.startLine, region!.startColumn]).toEqual([line, column]);
});

test.each(['drill "A" {\n', 'drill "A" {', 'drill "A" {\n\n', 'drill "A" {\r\n  sequence {\r\n', 'x\n"'])('%j is told in lines that are there', async (text) => {
  const regions = (await resultsOf(text)).map((result) => result.locations![0]!.physicalLocation!.region!);
  expect(regions.length).toBeGreaterThan(0);
  const count = text.replace(/\r?\n$/, '').split('\n').length;
  for (const region of regions) expect([region.startLine! <= count, region.endLine! <= count]).toEqual([true, true]);
});

test('levels are those of the folder, and hints are notes', async () => {
  const hint = sound.replace('ball at', 'let spare = 3\n  ball at');
  const levels = async (level: string | null) => {
    const settings: Record<string, string> = level === null ? {} : { 'halfturn.json': `{ "severity": { "unused-name": "${level}" } }` };
    return (await logOf({ 'a.drill': hint, ...settings })).log.runs[0]!.results!.map((result) => result.level);
  };
  expect([await levels(null), await levels('info'), await levels('warning'), await levels('error'), await levels('off')]).toEqual([['note'], ['note'], ['warning'], ['error'], []]);
});

describe('fingerprints', () => {
  const prints = async (text: string): Promise<unknown[]> => (await resultsOf(text)).map(({ partialFingerprints }) => partialFingerprints!['halfturnLine/v1']);
  test('stay when the line moves or is set in, and change when it changes', async () => {
    const [print] = await prints(misspelt);
    expect(await prints(`// More\n// lines\n${misspelt.replace('  station Wall', '      station  Wall')}`)).toEqual([print]);
    expect(await prints(misspelt.replace('at 8 right', 'at 9 right'))).not.toEqual([print]);
  });
  test('are all different in one file', async () => {
    const all = await prints(`${misspelt}${misspelt}${broken}`);
    expect(all.length).toBeGreaterThan(3);
    expect(new Set(all).size).toBe(all.length);
  });
});

test.each([
  ['in/b c.drill', { uri: 'in/b%20c.drill', uriBaseId: 'SRCROOT' }],
  ['-', { uri: 'standard-input', description: { text: 'Standard input' } }],
])('%s is addressed', async (name, location) => {
  const { log } = await logOf({ 'in/b c.drill': misspelt }, [name], misspelt);
  expect(log.runs[0]!.results![0]!.locations![0]!.physicalLocation!.artifactLocation).toEqual(location);
});

test('a file outside the folder has its whole address', async () => {
  const cwd = folder({ 'a.drill': misspelt, 'in/b': '' });
  const { out } = await halfturn(join(cwd, 'in'), ['check', '../a.drill', '--format', 'sarif']);
  expect((JSON.parse(out) as Log).runs[0]!.results![0]!.locations![0]!.physicalLocation!.artifactLocation).toEqual({ uri: pathToFileURL(join(cwd, 'a.drill')).href });
});
