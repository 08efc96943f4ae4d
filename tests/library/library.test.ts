import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { analyse as analyseText } from '../../shared/analyse.ts';
import { analyse, check, compare, drawHtml, drawSvg, file, measure, parse, print, toJson } from '../../shared/library.ts';
import type { SvgOptions, Workspace } from '../../shared/library.ts';
import { folder, halfturn } from '../server/halfturn.ts';

const example = (name: string): string => readFileSync(new URL(`../../shared/examples/${name}.drill`, import.meta.url), 'utf8');
const diamond = example('diamond');
const hurried = example('in-a-hurry');
const game = example('three-zones');

describe('draws what the command line draws', () => {
  test.each<[what: string, text: string, options: SvgOptions, words: string[]]>([
    ['the first drill', diamond, {}, []],
    ['a drill with problems', hurried, {}, []],
    ['a progression', diamond, { drill: 'One touch in the middle' }, ['--drill', 'One touch in the middle']],
    ['a phase', game, { phase: 'The extra player', control: true }, ['--phase', 'The extra player', '--control']],
    ['a moment', diamond, { at: 2.5 }, ['--at', '2.5']],
    ['for print', diamond, { theme: 'print', convention: 'dashed pass', scale: 250 }, ['--theme', 'print', '--convention', 'dashed-pass', '--scale', '1:250']],
    ['moving', diamond, { animated: true }, ['--animated']],
  ])('%s', async (_, text, options, words) => {
    expect(drawSvg(text, options)).toBe(await drawn('a.svg', text, words));
  });
  test.each([['a drill', diamond], ['a game', game]])('a page of %s', async (_, text) => {
    expect(drawHtml(text)).toBe(await drawn('a.html', text, []));
  });
});

test.each<[what: string, picture: string | null]>([
  ['no drill at all', drawSvg('')],
  ['no drill of that name', drawSvg(diamond, { drill: 'Kite' })],
  ['no phase of that name', drawHtml(game, { phase: 'Kite' })],
])('of %s there is no picture', (_, picture) => expect(picture).toBeNull());

test('a text and its tree are the same to all', () => {
  const { file: tree } = parse(hurried);
  expect(check(tree)).toEqual(check(hurried));
  expect(check(hurried)).toEqual(analyseText(hurried).problems);
  expect(measure(tree)).toEqual(analyse(hurried).drills.map(({ measures }) => measures));
});

describe('plain JavaScript is told what was expected', () => {
  const library = { analyse, check, compare, drawHtml, drawSvg, measure, parse, print, toJson } as unknown as Readonly<Record<string, (...said: readonly unknown[]) => unknown>>;
  const tree = 'as `drill`, `file`, `parse(text).file` and `fromJson(json).file` give it';
  test.each<[name: string, said: unknown[], message: string]>([
    ...['analyse', 'check', 'measure', 'drawSvg', 'drawHtml'].map((name): [string, unknown[], string] => [name, [null], `\`${name}\` takes a text or a tree, ${tree}, not \`null\`.`]),
    ['check', [], `\`check\` takes a text or a tree, ${tree}, not \`undefined\`.`],
    ['check', [5], `\`check\` takes a text or a tree, ${tree}, not \`5\`.`],
    ['check', [parse(diamond)], `\`check\` takes a text or a tree, ${tree}, not an object; what you have has it as \`file\`.`],
    ['check', [toJson(parse(diamond).file)], `\`check\` takes a text or a tree, ${tree}, not an object; \`fromJson\` reads the JSON form.`],
    ['compare', [diamond], `\`compare\` takes a text or a tree, ${tree}, not \`undefined\`.`],
    ['toJson', ['text'], `\`toJson\` takes a tree, ${tree}, not \`"text"\`; \`parse(text).file\` gives the tree of a text.`],
    ['print', [{}], `\`print\` takes a tree, ${tree}, not an object.`],
    ['parse', [null], '`parse` takes a text, not `null`.'],
    ['drawSvg', [diamond, null], "`drawSvg` takes its options as an object, such as `{ theme: 'print' }`, not `null`."],
    ['drawHtml', [diamond, { theme: 'pink' }], '`drawHtml`: `theme` is `light` or `dark` or `print`, not `"pink"`.'],
  ])('%s of %j', (name, said, message) => {
    expect(() => library[name]!(...said)).toThrow(new TypeError(message));
  });
});

test('two versions are compared, and one with itself is the same', () => {
  const told = (before: string, after: string) => compare(before, after).subjects.flatMap(({ facts }) => facts.map(({ sentence }) => sentence));
  expect(told(diamond, diamond.replace('let wide = 6', 'let wide = 5'))[0]).toContain('(wide)');
  expect(told(diamond, diamond)).toEqual([]);
});

test('imports are found in the workspace', () => {
  const workspace: Workspace = { path: 'a.drill', read: (path) => (path === 'diamond.drill' ? { path, file: parse(diamond).file } : null) };
  const session = file((f) => {
    f.import('diamond.drill');
    f.session('Tuesday', (s) => s.part('Warm up', '15 min', { of: 'Diamond, away and show' }));
  });
  expect(check(session).map(({ code }) => code)).toEqual(['outside-workspace']);
  expect(check(session, workspace)).toEqual([]);
});

async function drawn(name: string, text: string, words: readonly string[]): Promise<string> {
  const cwd = folder({ 'a.drill': text });
  await halfturn(cwd, ['draw', 'a.drill', '-o', name, ...words]);
  return readFileSync(join(cwd, name), 'utf8');
}
