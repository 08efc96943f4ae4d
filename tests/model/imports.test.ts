import { expect, test } from 'vitest';
import { problemsIn, read } from './read.ts';

const drill = (place: string) => `drill "Test" {\narea 20 x 30\nstation A at (${place}, 1)\n}\n`;

test.each<[text: string, others: Record<string, string>, x: number]>([
  [`import "other.drill"\n${drill('wide')}`, { 'plans/other.drill': 'let wide = 3' }, 3],
  [`import "./deep/../other.drill"\n${drill('wide')}`, { 'plans/other.drill': 'let wide = 3' }, 3],
  [`import "../other.drill"\n${drill('wide')}`, { 'other.drill': 'let wide = 3 yd' }, 2.7432],
  [`import "a.drill"\n${drill('wide')}`, { 'plans/a.drill': 'import "../b.drill"\nlet wide = base + 1', 'b.drill': 'let base = 2' }, 3],
  [`import "a.drill"\nlet wide = base * 2\n${drill('wide')}`, { 'plans/a.drill': 'let base = 2' }, 4],
  [`import "a.drill"\nlet wide = 5\n${drill('wide')}`, { 'plans/a.drill': 'let wide = 2' }, 5],
])('%s', (text, others, x) => {
  const { drills, problems } = read(text, others);
  expect(problems).toEqual([]);
  expect(drills[0]!.stations[0]!.at.x).toBeCloseTo(x, 9);
});

test.each<[text: string, others: Record<string, string>, code: string, message: string]>([
  ['import ⟦"other.drill"⟧', {}, 'missing-import', 'There is no file “plans/other.drill”.'],
  ['import ⟦"../../other.drill"⟧', {}, 'outside-workspace', '“../../other.drill” lies outside the workspace.'],
  ['import ⟦"x/../../../other.drill"⟧', {}, 'outside-workspace', '“x/../../../other.drill” lies outside the workspace.'],
  ['import ⟦"/etc/passwd"⟧', {}, 'outside-workspace', '“/etc/passwd” lies outside the workspace.'],
  ['import ⟦"C:/other.drill"⟧', {}, 'outside-workspace', '“C:/other.drill” lies outside the workspace.'],
  ['import ⟦"https://a/b.drill"⟧', {}, 'outside-workspace', '“https://a/b.drill” lies outside the workspace.'],
  ['import ⟦"example.drill"⟧', {}, 'circular-import', 'This file imports itself.'],
  [
    'import ⟦"a.drill"⟧', { 'plans/a.drill': 'import "b.drill"', 'plans/b.drill': 'import "example.drill"' },
    'circular-import', 'This import comes back to this file: plans/a.drill → plans/b.drill → plans/example.drill.',
  ],
  [
    `import "a.drill"\n${drill('⟦wide⟧')}`, { 'plans/a.drill': 'let wide = 1 / 0' },
    'impossible-value', '`wide` has no value: it is wrong in “plans/a.drill”.',
  ],
  [
    `import "a.drill"\nimport ⟦"b.drill"⟧\n${drill('wide')}`, { 'plans/a.drill': 'let wide = 1', 'plans/b.drill': 'let wide = 2' },
    'duplicate-name', '`wide` is already the name of a number.',
  ],
  [
    `import "a.drill"\n${drill('⟦base⟧')}`, { 'plans/a.drill': 'import "b.drill"', 'plans/b.drill': 'let base = 1' },
    'unknown-name', 'There is no number called `base`.',
  ],
])('%s', (text, others, code, message) => {
  const { found, marks } = problemsIn(text, others);
  expect(found).toEqual([{ code, message, ...marks[0] }]);
});

test('circles among other files are their own affair', () => {
  const others = { 'plans/a.drill': 'import "b.drill"\nlet wide = 1', 'plans/b.drill': 'import "a.drill"' };
  expect(read(`import "a.drill"\n${drill('wide')}`, others).problems).toEqual([]);
});

test('a file may come in by several ways', () => {
  const others = { 'plans/a.drill': 'import "c.drill"\nlet a = c', 'plans/b.drill': 'import "c.drill"\nlet b = c', 'plans/c.drill': 'let c = 1' };
  const { drills, problems } = read(`import "a.drill"\nimport "b.drill"\nimport "c.drill"\n${drill('a + b + c')}`, others);
  expect(problems).toEqual([]);
  expect(drills[0]!.stations[0]!.at.x).toBe(3);
});
