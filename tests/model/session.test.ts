import { expect, test } from 'vitest';
import { problemsIn, read } from './read.ts';

const drills = 'drill "Kite" {\n}\n';

test('a session is read in metres and seconds', () => {
  const { sessions, problems } = read(`${drills}session "Tuesday" {
    age U13
    players 14
    units yd
    length 1 min * 60
    pitch 60 x 40
    kit 20 cones, 1 ball, 7 bibs red
    let edge = 2
    part "Kite" 15 min groups 2 of "Kite" at (edge, 2), (24, 2)
    pause 2 min "drinks"
    part "Game" 20 min
  }`);
  expect(problems).toEqual([]);
  const [session] = sessions;
  expect([session!.age.value, session!.players?.value, session!.length?.value]).toEqual([13, 14, 3600]);
  expect(session!.pitch?.width).toBeCloseTo(60 * 0.9144, 9);
  expect(session!.kit.map(({ count, what, colour }) => [count, what, colour])).toEqual([[20, 'cone', null], [1, 'ball', null], [7, 'bib', 'red']]);
  expect(session!.parts.map((part) => (part.kind === 'part' ? [part.name, part.length, part.groups, part.drill, part.at.length] : [part.name, part.length]))).toEqual([
    ['Kite', 900, 2, 'Kite', 2],
    ['drinks', 120],
    ['Game', 1200, 1, null, 0],
  ]);
});

test('parts may name the drills of files that are imported', () => {
  const { problems } = read('import "a.drill"\nsession "S" {\npart "P" 5 min of "Far"\n}', { 'plans/a.drill': 'drill "Far" {\n}' });
  expect(problems).toEqual([]);
});

test.each<[line: string, code: string, message: string]>([
  ['part "P" 5 min of ⟦"Kiet"⟧', 'unknown-name', 'There is no drill called `Kiet`. Did you mean `Kite`?'],
  ['part "P" ⟦5⟧', 'unknown-unit', 'Is that 5 minutes or 5 seconds?'],
  ['length ⟦0 min⟧', 'impossible-value', 'The session is 0 s; it must be more than 0.'],
  ['kit 4 ⟦yellow bibs⟧', 'unknown-name', 'The colour comes last: `bibs yellow`.'],
  ['kit 4 ⟦polse⟧', 'unknown-name', 'There is no kit called `polse`. Did you mean `poles`?'],
  ['part "P" 5 min groups ⟦0⟧', 'impossible-value', 'The number of groups is 0; it can be from 1 to 50.'],
  ['hands ⟦51⟧', 'impossible-value', 'The number of hands is 51; it can be from 1 to 50.'],
  ['part "P" 5 min of "Kite" with ⟦"Fast"⟧', 'unknown-name', 'There is no progression or regression called `Fast`.'],
  ['part "P" 5 min groups 3, ⟦0⟧ of "Kite"', 'impossible-value', 'The size of a group is 0; it can be from 1 to 200.'],
  ['without 1 "ill" for ⟦"Gane"⟧\npart "Game" 5 min', 'unknown-name', 'There is no part called `Gane`. Did you mean `Game`?'],
  ['joins ⟦1.5⟧ for "P"\npart "P" 5 min', 'impossible-value', 'The number who join is 1.5; it must be a whole number.'],
  ['pitch 60 x 40\n⟦pitch 60 x 40⟧', 'duplicate-name', '`pitch` is written twice; the first one counts.'],
])('%s', (line, code, message) => {
  const { found, marks } = problemsIn(`${drills}session "S" {\n${line}\n}`);
  expect(found).toEqual([{ code, message, ...marks[0] }]);
});

const file = 'let side = 8\nimport "sizes.drill"\ndrill "Far" {\narea side x tall\nprogress space "Smaller" {\nlet side = 6\n}\n}';
const files = { 'plans/a.drill': file, 'plans/sizes.drill': 'let tall = 11\nlet side = 1' };

test('a drill of another file is read with the values of its own file', () => {
  const { imported, problems } = read('import "a.drill"\nlet side = 3\nlet tall = 2\nsession "S" {\npart "P" 5 min of "Far"\npart "Q" 5 min of "Far"\n}', files);
  expect(problems).toEqual([]);
  expect(imported.map(({ path, drill }) => [path, drill.name, drill.area?.width, drill.area?.length])).toEqual([['plans/a.drill', 'Far', 8, 11]]);
});

test('what no session plays is not read, and a drill of this file comes before one of another', () => {
  expect(read('import "a.drill"\ndrill "Near" {\n}', files).imported).toEqual([]);
  expect(read('import "a.drill"\ndrill "Far" {\n}\nsession "S" {\npart "P" 5 min of "Far"\n}', files).imported).toEqual([]);
});

test('groups, progressions, who rests, who joins and who looks on', () => {
  const { sessions, problems } = read(`import "a.drill"
session "S" {
players 9
hands 3
without 2 "tired" for "Q"
joins 1 keeper for "Q"
part "P" 5 min groups 5, 4 of "Far" with "Smaller" resting 1 at (1, 2)
part "Q" 5 min
}`, files);
  expect(problems).toEqual([]);
  const [session] = sessions;
  const [first, second] = session!.parts;
  expect(first).toMatchObject({ groups: 2, sizes: [5, 4], drill: 'Far', change: { name: 'Smaller' }, resting: { value: 1 }, at: [{ x: 1, y: 2 }] });
  expect(second).toMatchObject({ groups: 1, sizes: null, drill: null, change: null, resting: { value: 0, span: null } });
  expect([session!.hands.value, session!.without[0]!.parts, session!.joins[0]!.keeper]).toEqual([3, ['Q'], true]);
});
