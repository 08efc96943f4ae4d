import { expect, test } from 'vitest';
import { marked } from '../support/marked.ts';
import { read } from './read.ts';

/** The first mark is the declaration; the others are the uses and, last, where a change declares the name again. */
test.each<[name: string, text: string, again: number]>([
  ['gap', 'let ⟦gap⟧ = 2\nstation A at (⟦gap⟧, ⟦gap⟧ * 2)', 0],
  ['gap', 'let ⟦gap⟧ = 2\nstation A at (⟦gap⟧, 1)\nprogress space "Wider" {\nlet ⟦gap⟧ = 3\n}', 1],
  ['A', 'station ⟦A⟧ at (1, 1) holds 2\nball at ⟦A⟧\nsequence {\n⟦A⟧ passes to next ⟦A⟧\n}\nrotate ⟦A⟧ -> ⟦A⟧', 0],
  ['Near', 'pole ⟦Near⟧ at (1, 1)\nstation A at 1 above ⟦Near⟧\nsequence {\nA runs to (3, 3) around ⟦Near⟧\n}', 0],
  ['Box', 'zone ⟦Box⟧ 2 x 2 at (2, 2)\nzone In 1 x 1 in ⟦Box⟧.top\nrule touches 1 in ⟦Box⟧\nlet x = ⟦Box⟧.width\nplace 1 N in ⟦Box⟧\nteam N', 0],
  ['N', 'team ⟦N⟧ of 2\nplayer N1 of ⟦N⟧ at (1, 1)\nplace 1 ⟦N⟧ in area\nrule touches 1 for ⟦N⟧', 0],
  ['N2', 'team ⟦N⟧ of 2\nplace 2 N in area\ncone at 1 above ⟦N2⟧\nphase "p" {\n⟦N2⟧ passes to N1\n}', 0],
  ['BoxTopLeft', 'zones ⟦Box⟧ 2 x 2 in corners of area\ncone at ⟦BoxTopLeft⟧', 0],
  ['a', 'sequence ⟦"a"⟧ {\n}\nsequence "b" mirrors ⟦"a"⟧ across length\norder ⟦"a"⟧, "b"', 0],
])('%s in %s', (name, text, again) => {
  const { plain, spans } = marked(`drill "Test" {\narea 20 x 30\n${text}\n}`);
  const entry = read(plain).names.find((each) => each.name === name)!;
  expect([entry.drill, entry.path, entry.span]).toEqual(['Test', null, spans[0]]);
  const others = [...entry.uses, ...entry.again].sort((a, b) => a.from - b.from);
  expect(others).toEqual(spans.slice(1));
  expect(entry.again.length).toBe(again);
});

test('names of the file are known by where they come from', () => {
  const { names } = read('import "a.drill"\nlet own = 1\ndrill "D" {\narea brought x own\n}\nsession "S" {\npart "P" 5 min of "D"\n}', {
    'plans/a.drill': 'let brought = 2',
  });
  expect(names.filter((each) => each.drill === null).map(({ name, kind, path, uses }) => [name, kind, path, uses.length])).toEqual([
    ['own', 'let', null, 1],
    ['brought', 'let', 'plans/a.drill', 1],
    ['D', 'drill', null, 1],
  ]);
});
