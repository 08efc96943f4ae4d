import fc from 'fast-check';
import { expect, test } from 'vitest';
import { namesOf } from '../../shared/session/names.ts';
import { evening, parts } from './evening.ts';

const range = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, index) => from + index);

test.each<[what: string, lines: string, groups: readonly (readonly number[])[], resting: readonly number[]]>([
  ['even numbers', 'players 6\npart "P" 9 min groups 2 of "Wall"', [[1, 2, 3], [4, 5, 6]], []],
  ['odd numbers', 'players 7\npart "P" 9 min groups 2 of "Wall"', [[1, 2, 3, 4], [5, 6, 7]], []],
  ['sizes that are written', 'players 7\npart "P" 9 min groups 3, 4 of "Wall"', [[1, 2, 3], [4, 5, 6, 7]], []],
  ['more than fit', 'players 9\npart "P" 9 min groups 2 of "Wall"', [[1, 2, 3, 4], [5, 6, 7, 8]], [9]],
  ['who rests by plan', 'players 8\npart "P" 9 min groups 2 of "Wall" resting 2', [[1, 2, 3], [4, 5, 6]], [7, 8]],
  ['no drill', 'players 3\npart "P" 9 min', [[1, 2, 3]], []],
  ['nobody', 'part "P" 9 min of "Wall"', [[]], []],
])('%s', (_, lines, groups, resting) => {
  const [slot] = parts(evening(lines));
  expect([slot!.groups.map(({ members }) => members), slot!.resting]).toEqual([groups, resting]);
});

test('those who look on and those who join later are the last on the register', () => {
  const { register } = evening('players 9\njoins 1 keeper for "B"\nwithout 1 "sore ankle" for "B"\njoins 2 for "B"\npart "A" 9 min\npart "B" 9 min');
  expect(register.slice(5)).toEqual([
    { number: 6, keeper: false, joins: null, aside: { reason: 'sore ankle', parts: ['B'] } },
    { number: 7, keeper: true, joins: 'B', aside: null },
    { number: 8, keeper: false, joins: 'B', aside: null },
    { number: 9, keeper: false, joins: 'B', aside: null },
  ]);
});

test('a goalkeeper who joins late keeps goal', () => {
  const [first, second] = parts(evening('players 8\nwithout 1 "keeps the score" for "Game"\njoins 1 keeper for "Game"\npart "Warm up" 9 min groups 2 of "Wall"\npart "Game" 9 min of "Game"'));
  expect([first!.groups.map(({ members }) => members), first!.away, first!.aside]).toEqual([[[1, 2, 3, 4], [5, 6, 7]], [8], []]);
  expect([second!.groups, second!.aside, second!.away, second!.resting]).toEqual([
    [{ number: 1, members: [1, 2, 3, 4, 5, 8], keepers: [8], at: { x: 0, y: 0 }, assumed: true }], [7], [], [6],
  ]);
});

test('who was together stays together, and who rests changes', () => {
  const slots = parts(evening('players 8\npart "A" 9 min of "Game" resting 2\npart "B" 9 min of "Game" resting 2\npart "C" 9 min of "Game" resting 2\npart "D" 9 min of "Game" resting 2'));
  expect(slots.map(({ resting }) => resting)).toEqual([[7, 8], [5, 6], [3, 4], [1, 2]]);
  const [first, second] = parts(evening('players 13\npart "A" 9 min groups 4 of "Wall"\npart "B" 9 min groups 3, 3, 3, 4 of "Wall"'));
  const moved = second!.groups.flatMap(({ members }, index) => members.filter((member) => !first!.groups[index]!.members.includes(member)));
  // Four, three, three and three before; three, three, three and four after: one moves.
  expect(moved.length).toBe(1);
});

const session = fc.record({
  players: fc.integer({ min: 0, max: 40 }),
  without: fc.integer({ min: 1, max: 5 }),
  joins: fc.integer({ min: 1, max: 5 }),
  parts: fc.array(fc.record({ groups: fc.integer({ min: 1, max: 6 }), resting: fc.integer({ min: 0, max: 9 }), drill: fc.constantFrom('Wall', 'Game', null) }), { minLength: 1, maxLength: 5 }),
});

test('everyone on the register is in one place in every part', () => {
  fc.assert(fc.property(session, ({ players, without, joins, parts: plan }) => {
    const lines = plan.map(({ groups, resting, drill }, index) => `part "P${index}" 9 min groups ${groups}${drill ? ` of "${drill}"` : ''} resting ${resting}`);
    const text = `${players > 0 ? `players ${players}\n` : ''}without ${without} "tired"\njoins ${joins} keepers for "P0"\n${lines.join('\n')}`;
    for (const slot of parts(evening(text))) {
      const all = [...slot.groups.flatMap(({ members }) => members), ...slot.resting, ...slot.aside, ...slot.away];
      expect([...all].sort((a, b) => a - b)).toEqual(range(1, players));
    }
  }), { numRuns: 100 });
});

test.each<[what: string, list: string, names: readonly (string | null)[], faults: readonly string[]]>([
  ['as many as come', 'Ada\nBen\nCy\n', ['Ada', 'Ben', 'Cy'], []],
  ['with empty lines, remarks and the line ends of another system', '\uFEFF# Tuesday\r\n Ada \r\n\r\nBen  B. # left foot\r\nCy', ['Ada', 'Ben B.', 'Cy'], []],
  ['too few', 'Ada', ['Ada', null, null], ['The list has 1 name for 3 players: 2 names missing.']],
  ['too many', 'Ada\nBen\nCy\nDi\nEd', ['Ada', 'Ben', 'Cy'], ['The list has 5 names for 3 players: Di, Ed left over.']],
  ['one twice', 'Ada\nBen\nAda', ['Ada', 'Ben', 'Ada'], ['Twice in the list: Ada. Tell them apart, by a letter of the family name for instance.']],
  ['none', '', [null, null, null], ['The list has 0 names for 3 players: 3 names missing.']],
])('names: %s', (_, list, names, faults) => {
  expect(namesOf(list, evening('players 3\npart "P" 9 min').register)).toEqual({ names, faults });
});
