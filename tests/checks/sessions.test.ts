import { expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import { applyEdits } from '../../shared/checks/edits.ts';
import { fixesOf } from '../../shared/service/fixes.ts';
import { opened } from '../../shared/service/open.ts';
import { fixAll } from '../../server/fix.ts';
import { withSureFixes } from '../../shared/checks/cure.ts';
import { game, wall } from '../session/evening.ts';
import { folder } from '../support/folder.ts';
import { marked } from '../support/marked.ts';

const header = `drill "Header" {\n  area 20 x 20\n}\n`;
const others = { 'far.drill': `let side = 8\ndrill "Far" {\n  age U12\n  players 2\n  area side x side\n  theme "Heading in pairs"\n  minigoal Small at (4, 7)\n}\n` };

/** Every problem of a session with these lines, and the marks in it. */
function judged(lines: string) {
  const { plain, spans } = marked(`import "far.drill"\n${wall}${game}${header}session "S" {\n${lines}\n}\n`);
  const found = analyse(plain, folder(others)).problems;
  return {
    plain,
    found: found.map(({ code, message, span }) => ({ code, message, from: span.from, to: span.to })),
    marks: spans.map(({ from, to }) => ({ from, to })),
  };
}

test.each<[lines: string, code: string, message: string]>([
  ['length ⟦30 min⟧\npart "P" 20 min\npause 15 min', 'time-mismatch', 'Parts and pauses take 35 min; that is 5 min more than the 30 min of the session.'],
  ['length ⟦30 min⟧\npart "P" 20 min\npause 90 s', 'time-mismatch', 'Parts and pauses take 21 min 30 s; that is 8 min 30 s less than the 30 min of the session.'],
  ['players 7\nsafety "goals"\npart ⟦"P"⟧ 9 min of "Game"', 'left-out', '1 player of 7 has nothing to do in "P": a group of `Game` takes 6.'],
  ['players 20\nsafety "goals"\npart ⟦"P"⟧ 9 min groups 2 of "Game" resting 3', 'left-out', '5 players of 20 have nothing to do in "P": a group of `Game` takes 6.'],
  ['players 8\npart ⟦"P"⟧ 9 min groups 5, 3 of "Wall"', 'left-out', '1 player of 8 has nothing to do in "P": a group of `Wall` takes 4.'],
  ['players 5\nsafety "goals"\npart ⟦"P"⟧ 9 min of "Game"', 'too-few-players', '`Game` needs 6 players, and 5 are there for "P".'],
  ['players 7\nsafety "goals"\nwithout 1 "sore knee" for "P"\npart ⟦"P"⟧ 9 min of "Game" resting 1', 'too-few-players', '`Game` needs 6 players, and 6 are there for "P", of whom 1 rests.'],
  ['players 5\npart ⟦"P"⟧ 9 min groups 3, 3 of "Wall"', 'too-few-players', 'Groups of 3 and 3 need 6 players, and 5 are there for "P".'],
  ['players ⟦3⟧\nwithout 2 "ill"\njoins 2 for "P"\npart "P" 9 min', 'too-few-players', '3 players come, but 4 join later or cannot take part.'],
  ['kit 4 ⟦discs⟧, 1 cone\npart "P" 9 min of "Wall"', 'kit-short', '"P" needs 6 discs and the kit has 4, and 1 cone to spare in their place: 1 short.'],
  ['safety "goals"\nkit 9 discs, 2 goals, 3 bibs red, 2 ⟦bibs⟧ blue\npart "P" 9 min of "Game"', 'kit-short', '"P" needs 3 blue bibs and the kit has 2: 1 short.'],
  ['kit 1 pole\npart ⟦"P"⟧ 9 min of "Wall"', 'kit-short', '"P" needs 6 discs and the kit has 0: 6 short.'],
  ['pitch 20 x 20\npart "P" 9 min of "Wall" at ⟦(9, 2)⟧', 'does-not-fit', '"P" takes 12 x 12 m and leaves the pitch of 20 x 20 m.'],
  ['part "P" 9 min groups 2 of "Wall" at (9, 2), ⟦(20, 13)⟧', 'does-not-fit', 'Group 2 of "P" takes 12 x 12 m and lies over group 1.'],
  ['units yd\npitch 20 x 20\npart ⟦"P"⟧ 9 min groups 4 of "Wall"', 'does-not-fit', 'There is no room for 4 groups of 13.1 x 13.1 yd on the pitch of 20 x 20 yd.'],
  ['part "P" 9 min of "Wall" at (0, 0), ⟦(20, 0)⟧', 'does-not-fit', '"P" has 2 places for 1 group.'],
  ['part ⟦"P"⟧ 9 min of "Game"', 'movable-goal', '"P" has 2 goals: goals are anchored in use and in storage, and nobody climbs on them.'],
  ['age U13\nsafety "goals"\npart ⟦"P"⟧ 9 min of "Far"', 'heading-guidance', '"P" has balls to head; for U13 the guidance is heading in one session a week, at most 5 headers.'],
  ['age U6\nlength ⟦60 min⟧\npart "P" 60 min', 'long-session', 'The session takes 60 min; for U6 the guidance is 45 min.'],
])('%s', (lines, code, message) => {
  const { found, marks } = judged(lines);
  expect(found).toEqual([{ code, message, ...marks[0]! }]);
});

test.each([
  ['no part yet', 'length 30 min'],
  ['nobody says how many come', 'safety "goals"\npart "P" 9 min of "Game"'],
  ['a part without a drill takes everyone', 'players 30\npart "P" 9 min'],
  ['groups that share a side', 'pitch 24 x 12\npart "P" 9 min groups 2 of "Wall" at (0, 0), (12, 0)'],
  ['the right one first', 'pitch 24 x 12\npart "P" 9 min groups 2 of "Wall" at (12, 0), (0, 0)'],
  ['the upper one first', 'pitch 12 x 24\npart "P" 9 min groups 2 of "Wall" at (0, 12), (0, 0)'],
  ['room for all without a place', 'pitch 24 x 24\npart "P" 9 min groups 4 of "Wall"'],
  ['a queue of three where two are written', 'players 4\npart "P" 9 min of "Wall"'],
  ['a goal that has been thought of', 'safety "Pin the goals"\npart "P" 9 min of "Game"'],
  ['a sure line', 'length 30 min // allow time-mismatch: talk at the end\npart "P" 20 min'],
  ['heading that has been thought of', 'age U12\nsafety "goals; no heading today"\npart "P" 9 min of "Far"'],
])('nothing to say: %s', (_, lines) => {
  expect(judged(lines).found).toEqual([]);
});

// A mistake of writing is told, and nothing that may follow from it.
test.each([
  ['a part of no time', 'length 30 min\npart "P" ⟦0 min⟧ of "Wall"', 'impossible-value'],
  ['no players', 'players ⟦0⟧\npart "P" 9 min of "Wall"', 'impossible-value'],
  ['no such drill', 'length 30 min\npart "P" 9 min of ⟦"Wal"⟧', 'unknown-name'],
  ['no such progression', 'part "P" 9 min of "Wall" with ⟦"Faster"⟧', 'unknown-name'],
  ['no such part', 'players 4\njoins 1 for ⟦"Q"⟧\npart "P" 9 min of "Wall"', 'unknown-name'],
  ['a pitch of no size', 'pitch ⟦0⟧ x 20\npart "P" 9 min of "Wall"', 'impossible-value'],
  ['too many groups', 'part "P" 9 min groups ⟦51⟧ of "Wall"', 'impossible-value'],
  ['no hands', 'hands ⟦0⟧\npart "P" 9 min of "Wall"', 'impossible-value'],
])('bad input: %s', (_, lines, code) => {
  const { found, marks } = judged(lines);
  expect(found.map(({ code: each, from, to }) => ({ code: each, from, to }))).toEqual([{ code, ...marks[0]! }]);
});

test.each<[lines: string, codes: readonly string[]]>([
  ['players 200\npart "P" 9 min groups 50 of "Wall"', []],
  ['players 200\npart "P" 9 min groups 20 of "Wall"', ['left-out']],
  ['players 200\npitch 30 x 30\npart "P" 9 min groups 50 of "Wall"', ['does-not-fit']],
  ['players 500\npart "P" 9 min groups 50 of "Wall"', ['impossible-value']],
  [`players 200\npart "P" 9 min groups ${Array(50).fill(4).join(', ')} of "Wall" at ${Array(50).fill('(0, 0)').join(', ')}`, ['does-not-fit']],
])('crowds are worked out: %s', (lines, codes) => {
  expect(judged(lines).found.map(({ code }) => code)).toEqual(codes);
});

test.each<[code: string, lines: string, titles: readonly string[]]>([
  ['time-mismatch', 'length 30 min\npart "A" 20 min\npart "B" 15 min', ['Let "A" take 15 min', 'Let "B" take 10 min', 'Let the session take 35 min']],
  ['left-out', 'players 7\nsafety "goals"\npart "P" 9 min of "Game"', ['Let 1 rest at a time and take turns']],
  ['left-out', 'players 9\nsafety "goals"\npart "P" 9 min of "Game" resting 1', ['Let 3 rest at a time and take turns']],
  ['does-not-fit', 'pitch 40 x 20\npart "P" 9 min groups 2 of "Wall" at (2, 2), (12, 2)', ['Move group 2 to the nearest place that is free']],
  ['does-not-fit', 'units yd\npitch 40 x 20\npart "P" 9 min of "Wall" at (38, 2)', ['Move it to the nearest place that is free']],
  ['does-not-fit', 'pitch 20 x 20\npart "P" 9 min groups 2 of "Wall" at (2, 2), (12, 2)', []],
  ['movable-goal', 'part "P" 9 min of "Game"', ['Add a safety line']],
  ['slow-changeover', 'pitch 60 x 60\npart "A" 9 min of "Wall" at (0, 0)\npause 10 s\npart "B" 9 min of "Wall" at (48, 48)', ['Move "B" to where it is set up in 0 s', 'Let 3 carry (hands 3)']],
])('%s: what is offered is tried out', (code, lines, titles) => {
  const open = opened(judged(lines).plain, folder(others));
  const problem = open.analysis.problems.find((each) => each.code === code)!;
  const fixes = fixesOf(problem, open);
  expect(fixes.map(({ title }) => title)).toEqual(titles);
  for (const { edits } of fixes) expect(analyse(applyEdits(open.text, edits), folder(others)).problems).toEqual([]);
});

test('a program mends nothing of a session by itself: how, is a choice', () => {
  const { plain } = judged('length 30 min\nplayers 7\npart "P" 9 min of "Game" at (2, 2)');
  expect(analyse(plain, folder(others)).problems.map(({ code }) => code)).toEqual(['time-mismatch', 'left-out', 'movable-goal']);
  const fixed = fixAll(plain, (text) => withSureFixes(analyse(text, folder(others)), folder(others)));
  expect(fixed.text).toBe(plain);
});

// Common practice, no source: one group cannot become fewer, and who rests can play.
test.each<[lines: string, code: string, help: string]>([
  ['players 6\nsafety "goals"\npart "P" 9 min of "Game" resting 1', 'too-few-players', 'Let nobody rest: leave out `resting`.'],
  ['players 13\nsafety "goals"\npart "P" 9 min groups 2 of "Game" resting 3', 'too-few-players', 'Let fewer rest: `resting 1`.'],
  ['players 5\nsafety "goals"\npart "P" 9 min of "Game"', 'too-few-players', 'Take a drill for fewer players, or write a version of it for fewer (`regress people`) and play that (`with`).'],
  ['players 8\npart "P" 9 min groups 2 of "Fewer"', 'too-few-players', 'Play it `with "Three"`, or make fewer groups.'],
  ['kit 1 pole\npart "P" 9 min of "Wall"', 'kit-short', 'Bring more, or use fewer.'],
  ['kit 9 discs\npart "P" 9 min groups 2 of "Wall" at (0, 0), (30, 0)', 'kit-short', 'Make fewer groups, put groups side by side so that they share markers, or bring more.'],
  ['safety "goals"\nkit 18 discs, 4 goals, 5 bibs red, 6 bibs blue\npart "P" 9 min groups 2 of "Game"', 'kit-short', 'Make fewer groups, or bring more.'],
])('%s is helped', (lines, code, help) => {
  const fewer = 'drill "Fewer" {\nage U12\narea 10 x 10\nplayers 5\nteam Red of 5\nplace 5 Red in area\nregress people "Three" {\nplayers 3\nteam Red of 3\nplace 3 Red in area\n}\n}\n';
  const { problems } = analyse(`${wall}${game}${fewer}session "S" {\n${lines}\n}\n`);
  expect(problems.find((problem) => problem.code === code)?.help).toBe(help);
});
