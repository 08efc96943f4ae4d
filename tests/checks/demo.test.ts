import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { parse } from '../../grammar/parse.ts';
import { print } from '../../grammar/printer.ts';
import { workspaceOf } from '../../server/workspace.ts';
import { analyse } from '../../shared/analyse.ts';
import { starter } from '../../shared/examples/starter.ts';

const folder = new URL('../../shared/examples/', import.meta.url);
const demo = readdirSync(folder).filter((name) => name.endsWith('.drill'))
  .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8'), path: fileURLToPath(new URL(name, folder)) }));
const faulty = new Map([
  ['crowded-game.drill', ['bibs-alike', 'zone-closed', 'overload-mismatch', 'score-impossible', 'zone-full', 'intercepted', 'late-receiver', 'zone-short', 'no-ball']],
  ['in-a-hurry.drill', ['outside-area', 'blocked-lane', 'nobody-there', 'rotation-open']],
]);

test.each([...demo, { name: 'the starter', text: starter('Mine'), path: null }])('$name has the problems it is meant to have', ({ name, text, path }) => {
  expect(analyse(text, workspaceOf(path)).problems.map((problem) => problem.code)).toEqual(faulty.get(name) ?? []);
});

test.each(demo)('$name is in printed form', ({ text }) => {
  expect(print(parse(text).file)).toBe(text);
});

test('the drill in the README is the one of the picture below it', () => {
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  const shown = /```drill\n([\s\S]*?)```/.exec(readme)![1]!.trimEnd().split('\n');
  const drill = demo.find(({ name }) => name === 'diamond.drill')!.text.split('\n');
  expect(shown.filter((line) => !drill.includes(line))).toEqual([]);
});
