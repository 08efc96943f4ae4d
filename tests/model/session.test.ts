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
  ['kit 4 ⟦polse⟧', 'unknown-name', 'There is no kit called `polse`. Did you mean `poles`?'],
  ['part "P" 5 min groups ⟦0⟧', 'impossible-value', 'The number of groups is 0; it can be from 1 to 50.'],
  ['pitch 60 x 40\n⟦pitch 60 x 40⟧', 'duplicate-name', '`pitch` is written twice; the first one counts.'],
])('%s', (line, code, message) => {
  const { found, marks } = problemsIn(`${drills}session "S" {\n${line}\n}`);
  expect(found).toEqual([{ code, message, ...marks[0] }]);
});
