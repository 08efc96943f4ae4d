import { expect, test } from 'vitest';
import { blameOnChange } from '../../shared/model/changes.ts';
import type { Drill } from '../../shared/model/drill.ts';
import type { Problem } from '../../shared/problem.ts';
import { drillWith, problemsIn } from './read.ts';

const base = `players 6
  let wide = 5
  zone Box 4 x 4 at area.centre
  station Left at area.centre + (-wide, 0)
  station Right at area.centre + (wide, 0)
  cone at (1, 1)
  ball at Left
  rule touches 2
  rule touches 1 in Box
  sequence {
    Left passes to Right
  }
  rotate Left -> Right -> Left`;

/** What a changed drill has, by what the base drill would have. */
test.each<[change: string, of: (drill: Drill) => unknown, value: unknown]>([
  ['let wide = 3', (drill) => drill.stations.map(({ at }) => at.x), [7, 13]],
  ['area 30 x 30', (drill) => drill.stations.map(({ at }) => at.x), [10, 20]],
  ['players 8', (drill) => drill.players?.value, 8],
  ['units yd', (drill) => drill.area?.width, 20 * 0.9144],
  ['station Left at (0, 0)', (drill) => drill.stations.map(({ name, at }) => [name, at.x]), [['Left', 0], ['Right', 15]]],
  ['station Top at (10, 25)', (drill) => drill.stations.map(({ name }) => name), ['Left', 'Right', 'Top']],
  ['zone Box circle 2 at (3, 3)', (drill) => drill.zones.map(({ shape }) => shape.kind), ['circle']],
  ['cone at (2, 2)', (drill) => drill.furniture.map(({ id }) => id), ['cone 1', 'cone 2']],
  ['ball at Right', (drill) => drill.balls.map(({ holder }) => holder), ['Left', 'Right']],
  ['rule touches 3', (drill) => drill.touchRules.map(({ most, zone }) => [most, zone]), [[3, null], [1, 'Box']]],
  ['rule touches 3 in Box', (drill) => drill.touchRules.map(({ most, zone }) => [most, zone]), [[2, null], [3, 'Box']]],
  ['rule touches 3 for Left', (drill) => drill.touchRules.map(({ most, who }) => [most, who]), [[2, null], [1, null], [3, 'Left']]],
  ['rule "Talk"', (drill) => drill.rules.length, 1],
  ['sequence {\nRight turns\n}', (drill) => drill.sequences.map(({ beats }) => beats[0]!.lead.actor), ['Right']],
  ['sequence "more" {\nRight turns\n}', (drill) => drill.order, [['sequence'], ['more']]],
  ['rotate follow', (drill) => drill.rotation.kind, 'follow'],
])('%s', (change, of, value) => {
  const { drill, messages } = drillWith(`${base}\nprogress task "Change" {\n${change}\n}`);
  expect(messages).toEqual([]);
  expect(drill.changes.map((each) => of(each.drill))).toEqual([value]);
});

const game = `players 9
  team Red bib red of 4
  team Blue bib blue of 4
  floaters Joker bib yellow of 1
  zone Box 4 x 4 at area.centre
  player Red1 of Red at (1, 1)
  player Red2 of Red at (2, 2)
  place 2 Red in area
  place 4 Blue in area
  place 1 Joker in area
  ball at Red1
  rule touches 2 for Joker
  rule Box no Blue
  rule Box at least 1 Red
  score 1 for 5 passes by Joker
  expect 5 v 4 in area`;
const people = ({ actors }: Drill) => actors.map(({ name }) => name).join(' ');

/** Common practice, no source: on an evening with fewer players a coach says the teams, not every line that hangs on them. */
test.each<[change: string, of: (drill: Drill) => unknown, value: unknown]>([
  ['team Red of 3', people, 'Red1 Red2 Red3 Blue1 Blue2 Blue3 Blue4 Joker1'],
  ['team Red of 1', people, 'Red1 Blue1 Blue2 Blue3 Blue4 Joker1'],
  ['team Red of 3\nplace 2 Red in area', people, 'Red1 Red2 Red3 Blue1 Blue2 Blue3 Blue4 Joker1'],
  ['team Red of 3', ({ teams }) => teams.map(({ name, bib, size }) => `${name} ${bib} ${size}`), ['Red red 3', 'Blue blue 4', 'Joker yellow 1']],
  ['floaters Joker of 0', people, 'Red1 Red2 Red3 Red4 Blue1 Blue2 Blue3 Blue4'],
  ['floaters Joker of 0', ({ touchRules, rules }) => [touchRules.length, rules.filter(({ kind }) => kind === 'score').length], [0, 0]],
  ['expect 4 v 4 in area', ({ rules }) => rules.flatMap((rule) => (rule.kind === 'expect' ? [[rule.ours, rule.theirs]] : [])), [[4, 4]]],
  ['rule Box at most 1 Blue', ({ rules }) => rules.flatMap((rule) => (rule.kind === 'numbers' ? [[rule.bound, rule.count, rule.who]] : [])), [['at most', 1, 'Blue'], ['at least', 1, 'Red']]],
])('in a game: %s', (change, of, value) => {
  const { drill, messages } = drillWith(`${game}\nregress people "Fewer" {\n${change}\n}`);
  expect(messages).toEqual([]);
  expect(drill.changes.map((each) => of(each.drill))).toEqual([value]);
});

test('who left and is still spoken of is told with what to do', () => {
  const { problems } = problemsIn(`drill "Test" {\narea 20 x 30\n${game}\nphase "Out" {\nRed1 passes to Red4\n}\nregress people "Fewer" {\nteam Red of 3\n}\n}`);
  expect(problems.map(({ message, help }) => [message, help])).toEqual([
    ['With “Fewer”: There is no `Red4`: Red has 3 players, Red1 to Red3.', 'Write that line, or the sequence or phase around it, anew in the block of “Fewer”.'],
  ]);
});

test('a change is found in its drill by name and kind, and has no changes of its own', () => {
  const { drill } = drillWith(`${base}\nprogress task "A" {\nplayers 8\n}\nregress space "B" {\nlet wide = 6\n}`);
  expect(drill.changes.map(({ id, kind, lever, name, drill: { id: inner, changes } }) => [id, kind, lever, name, inner, changes.length])).toEqual([
    ['Test / A', 'progress', 'task', 'A', 'Test / A', 0],
    ['Test / B', 'regress', 'space', 'B', 'Test / B', 0],
  ]);
});

test.each<[name: string, text: string, messages: readonly string[]]>([
  [
    'a fault of the drill is told once, not again for each change',
    'station A at 2 above ⟦Naer⟧\npole Near at (5, 5)\nprogress space "Wider" {\narea 30 x 30\n}',
    ['There is no place called `Naer`. Did you mean `Near`?'],
  ],
  [
    'a fault inside a change is told where it is written',
    'pole Near at (5, 5)\nprogress space "Wider" {\nstation A at ⟦Naer⟧\n}',
    ['There is no place called `Naer`. Did you mean `Near`?'],
  ],
  [
    'a fault that a change makes elsewhere is told at its name',
    'let wide = 4\nzone Box wide x 4 at area.centre\nregress space ⟦"Narrower"⟧ {\nlet wide = 0\n}',
    ['With “Narrower”: The width of `Box` is 0 m; it must be more than 0.'],
  ],
  [
    'what only a change uses is used',
    'let wide = 4\nprogress space "Box" {\nzone Box wide x 4 at area.centre\n}',
    [],
  ],
  [
    'a name that nothing uses is told once, although a change declares it again',
    'let ⟦wide⟧ = 4\nprogress space "Wider" {\nlet wide = 5\n}',
    ['Nothing uses `wide`.'],
  ],
  [
    'changes do not nest',
    'progress space "Outer" {\nprogress space ⟦"Inner"⟧ {\n}\n}',
    ['A change cannot hold another one; put it beside, in the drill itself.'],
  ],
  [
    'two changes do not share a name',
    'progress space "Wider" {\n}\nregress space ⟦"Wider"⟧ {\n}',
    ['`Wider` is already the name of a progression or regression.'],
  ],
])('%s', (_, lines, messages) => {
  const { found, marks } = problemsIn(`drill "Test" {\narea 20 x 30\n${lines}\n}`);
  expect(found.map(({ message }) => message)).toEqual(messages);
  expect(found.map(({ at, from }) => ({ at, from }))).toEqual(marks);
});

test('blame keeps the level and points to the place meant, but offers no cure there', () => {
  const at = (from: number): Problem => ({
    code: 'late-receiver', severity: 'warning', message: 'Left is late.', help: 'Go earlier.', span: { from, to: from + 4 }, related: [],
    fixes: [{ title: 'Go earlier', edits: [] }],
  });
  const change = { name: { text: 'Wider', from: 50, to: 57 }, span: { from: 40, to: 90 } };
  expect(blameOnChange([at(0)], [at(0), at(10), at(60)], change)).toEqual([
    {
      ...at(10), span: { from: 50, to: 57 }, message: 'With “Wider”: Left is late.', fixes: [],
      related: [{ span: { from: 10, to: 14 }, message: 'The place meant.' }],
    },
    at(60),
  ]);
});
