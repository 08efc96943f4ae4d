import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { alone, analyse } from '../../shared/analyse.ts';
import { doubtful } from '../../shared/games/lanes.ts';
import { personAt } from '../../shared/timeline/at.ts';

const ground = `  age U15
  tempo match
  area 30 x 30
  team Red bib orange
  team Blue bib blue
  player Ann of Red at (5, 5)
  player Bea of Red at (5, 15)
  player Cid of Blue at (20, 20)
  player Dan of Blue at (25, 5)
  ball at Ann
`;

function game(...lines: readonly string[]) {
  const { drills, problems } = analyse(`drill "Game" {\n${ground}${lines.join('\n')}\n}`, alone);
  return { ...drills[0]!, problems: problems.filter(({ severity }) => severity !== 'info').map(({ code }) => code) };
}

describe('where a phase starts', () => {
  const first = 'phase "One" {\nAnn passes to Bea while Cid runs to (12, 20)\n}';

  test('as the game does', () => {
    const { phases } = game(first, 'phase "Two" {\nAnn passes to Bea\n}');
    expect(phases[1]!.timeline.tracks.find(({ actor }) => actor === 'Cid')!.home).toEqual({ x: 20, y: 20 });
  });

  test.each([['before', 0], ['behind', 1]])('where another ends that is written %s it', (_, index) => {
    const second = 'phase "Two" after "One" {\nBea passes to Ann\n}';
    const { phases, problems } = index === 1 ? game(second, first) : game(first, second);
    const two = phases.find(({ phase }) => phase.name === 'Two')!;
    expect(problems).toEqual([]);
    expect(two.timeline.tracks.find(({ actor }) => actor === 'Cid')!.home).toMatchObject({ x: 12, y: 20 });
    expect(two.timeline.passes.map(({ from, to }) => `${from} ${to}`)).toEqual(['Bea Ann']);
  });

  test.each<[lines: readonly string[], problems: readonly string[]]>([
    [['phase "One" after "Two" {\nAnn passes to Bea\n}', 'phase "Two" after "One" {\nAnn passes to Bea\n}'], ['circular-value']],
    [['phase "One" after "One" {\nAnn passes to Bea\n}'], ['circular-value']],
    [['phase "One" after "Nix" {\nAnn passes to Bea\n}'], ['unknown-name']],
    [['sequence "S" {\nAnn waits 1 s\n}', 'phase "One" after "S" {\nAnn passes to Bea\n}'], ['unknown-name']],
  ])('%s', (lines, problems) => {
    expect(game(...lines).problems).toEqual(problems);
  });
});

test('who has nothing to do is said to stand', () => {
  expect(game('phase "One" {\nAnn passes to Bea while Cid presses Bea\n}').phases[0]!.standing).toEqual(['Dan']);
});

test.each<[beats: string, sides: readonly string[]]>([
  ['Ann passes to Bea', ['Red']],
  ['Ann passes to Bea\nCid wins the ball from Bea\nCid passes to Dan', ['Red', 'Blue']],
  ['Ann passes to Bea\nCid wins the ball from Bea', ['Red', 'Blue']],
  ['Ann passes to Bea\nBea dribbles to (8, 20) while Cid wins the ball from Bea\nBea wins the ball from Cid', ['Red', 'Blue', 'Red']],
  ['Ann passes to Dan\nDan passes to Cid', ['Red', 'Blue']],
])('the ball is with one side after the other: %j', (beats, sides) => {
  const { phases } = game(`phase "One" {\n${beats}\n}`);
  expect(phases[0]!.possession.map(({ team }) => team)).toEqual(sides);
});

test.each<[run: string, gap: number]>([['presses Bea', 1], ['marks Bea', 1], ['wins the ball from Bea', 0.3]])('who %s ends %d m away', (run, gap) => {
  const { timeline } = game(`phase "One" {\nAnn passes to Bea\nCid ${run}\n}`).phases[0]!;
  const at = personAt(timeline.tracks.find(({ actor }) => actor === 'Cid')!, timeline.end);
  expect(Math.hypot(at.x - 5, at.y - 15)).toBeCloseTo(gap, 6);
});

describe('the checks of ball and time hold in phases too, once', () => {
  test.each<[lines: readonly string[], problems: readonly string[]]>([
    [['phase "One" {\nBea passes to Ann\n}'], ['no-ball']],
    [['phase "One" {\nAnn passes to Bea\nCid wins the ball from Ann\n}'], ['no-ball']],
    [['phase "One" {\nAnn passes to Ann\n}'], ['pass-to-self']],
    [['phase "One" {\nAnn passes to (15, 15)\n}'], ['nobody-there']],
    [['phase "One" {\nAnn passes into (12, 5) for Bea\n}'], ['late-receiver']],
    [['rule touches 1', 'phase "One" {\nAnn passes to Bea\nBea passes to Ann, in 2 touches\n}'], ['touch-limit']],
    [['rule touches 1 for attackers in area', 'phase "One" {\nAnn passes to Bea\nBea passes to Ann, in 2 touches\n}'], ['touch-limit']],
    [['rule touches 1 for defenders', 'phase "One" {\nAnn passes to Bea\nBea passes to Ann, in 2 touches\n}'], []],
    [['phase "One" {\nAnn passes to Bea while Cid runs to (31, 20)\n}'], ['outside-area']],
    [['pole at (5, 10)', 'phase "One" {\nAnn passes to Bea\n}'], ['blocked-lane']],
    [['player Eve of Blue at (5, 10)', 'phase "One" {\nAnn passes to Bea\n}'], ['intercepted']],
    [['player Eve of Red at (5, 10)', 'phase "One" {\nAnn passes to Bea\n}'], ['blocked-lane']],
    [['phase "One" {\nBea passes to Ann\n}', 'order "One"'], ['no-ball']],
    [['phase "One" {\nBea passes to Ann\n}', 'phase "Two" {\nBea passes to Ann\n}'], ['no-ball', 'no-ball']],
  ])('%s', (lines, problems) => {
    expect([...game(...lines).problems].sort()).toEqual([...problems].sort());
  });
});

describe('the rules of the zones hold at every moment', () => {
  const build = 'zone Back 30 x 10 in area.bottomLeft';
  test.each<[lines: readonly string[], problems: readonly string[]]>([
    [['rule Back no Blue'], ['zone-closed']],
    [['rule Back at most 1 Red'], []],
    [['rule Back at least 2 Red'], ['zone-short']],
    [['rule Back exactly 1 Red'], []],
    [['rule Back exactly 0 Red'], ['zone-closed']],
    [['rule Back at most 1 attackers', 'phase "One" {\nAnn passes to Bea while Bea runs to (5, 12)\n}'], []],
    [['rule Back at most 1 attackers', 'phase "One" {\nAnn passes to Bea while Bea runs to (5, 10)\n}'], ['zone-full']],
    [['rule Back at most 1 attackers', 'phase "One" {\nAnn passes to Bea while Bea runs to (5, 10.1)\n}'], []],
    [['rule Back at most 1 attackers', 'phase "One" {\nAnn waits 2 s while Bea runs to (5, 9)\n}'], ['zone-full']],
    [['rule Back at least 1 attackers', 'phase "One" {\nAnn dribbles to (5, 20)\n}'], ['zone-short']],
    [['rule Back at least 1 attackers', 'phase "One" {\nAnn dribbles to (5, 10)\n}'], []],
    [['rule Back at least 1 attackers', 'phase "One" {\nAnn dribbles to (5, 10.2)\n}'], ['zone-short']],
    [['rule Back at most 0 defenders', 'phase "One" {\nAnn passes to Bea\n}'], ['zone-closed']],
    // Ann becomes a defender when the ball is won, and has three seconds to leave.
    [['rule Back at most 1 defenders', 'phase "One" {\nAnn passes to Bea\nCid wins the ball from Bea while Ann runs to (12, 14)\nCid waits 5 s\n}'], []],
    [['rule Back at most 1 defenders', 'phase "One" {\nAnn waits 1 s while Dan runs to (25, 14)\nAnn passes to Bea\nCid wins the ball from Bea\nCid waits 5 s\n}'], []],
    [['rule Back no defenders', 'phase "One" {\nAnn waits 2 s while Dan runs to (25, 14)\nAnn passes to Bea\nCid wins the ball from Bea\nCid waits 5 s\n}'], ['zone-closed']],
    [['keeper Kim of Blue at (15, 1)', 'rule Back at most 1 Blue'], []],
  ])('%s', (lines, problems) => {
    expect(game(build, ...lines).problems.filter((code) => code.startsWith('zone-'))).toEqual(problems);
  });
});

describe('expect holds as the game is set out, or at a moment of every phase that plays there', () => {
  const [comes, far, stays] = ['phase "One" {\nAnn waits 3 s while Bea runs to (8, 8)\n}', 'phase "Two" {\nAnn passes to Bea\nBea waits 1 s\n}', 'phase "Three" {\nAnn waits 2 s\n}'];
  const away = 'phase "Four" after "Two" {\nBea dribbles to (5, 20)\n}';
  test.each<[expected: string, phases: readonly string[], told: string | null]>([
    ['1 v 1', [comes, stays], null],
    ['2 v 1', [comes], null],
    ['2 v 1', [comes, away, far], '1 v 1 when the game begins; 1 v 1 in “Two”, and not 2 v 1.'],
    ['2 v 1', [comes, stays], '1 v 1 when the game begins; 1 v 1 in “Three”, and not 2 v 1.'],
    ['1 v 2', [comes], '1 v 1 when the game begins; 1 v 1 and 2 v 1 in “One”, and not 1 v 2.'],
    ['1 v 2', [stays], '1 v 1 throughout, and not 1 v 2.'],
    ['1 v 2', [], '1 v 1 when the game begins, and not 1 v 2.'],
    ['1 v 2', ['keeper Kim of Blue at (15, 1)'], '1 v 1 when the game begins, and not 1 v 2 (goalkeepers are not counted).'],
  ])('%s with %j', (expected, phases, told) => {
    const { problems } = analyse(`drill "Game" {\n${ground}zone Back 30 x 10 in area.bottomLeft\nexpect ${expected} in Back\n${phases.join('\n')}\n}`, alone);
    expect(problems.filter(({ code }) => code === 'overload-mismatch').map(({ message }) => message)).toEqual(told === null ? [] : [`In \`Back\` there are ${told}`]);
  });
});

describe('a rule that is broken as a phase starts is told where that comes from', () => {
  const build = 'zone Back 30 x 10 in area.bottomLeft';
  test.each<[what: string, lines: readonly string[], told: readonly string[]]>([
    ['a run in the phase before', ['rule Back at most 1 Red', 'phase "One" {\nAnn waits 1 s while Bea runs to (5, 9)\n}', 'phase "Two" after "One" {\nAnn waits 1 s\n}'], ['(5, 9) | 1.8 s into “One”']],
    ['the ball won in the phase before', ['rule Back at most 1 defenders', 'player Eve of Blue at (8, 17)', 'player Fay of Red at (20, 3)', 'phase "One" {\nAnn passes to Bea\nEve wins the ball from Bea\n}', 'phase "Two" after "One" {\nEve waits 5 s\n}'], ['wins the ball from Bea | 3.0 s into “Two”']],
    ['as the game is set out', ['rule Back no Blue', 'phase "Two" {\nAnn waits 1 s\n}'], ['player Dan of Blue at (25, 5) | ']],
    ['too few, told once', ['rule Back at least 2 Blue', 'phase "One" {\nAnn waits 1 s\n}', 'phase "Two" after "One" {\nAnn waits 1 s\n}'], ['rule Back at least 2 Blue | ']],
  ])('%s', (_, lines, told) => {
    const text = `drill "Game" {\n${ground}${[build, ...lines].join('\n')}\n}`;
    const found = analyse(text, alone).problems.filter(({ code }) => code.startsWith('zone-'));
    expect(found.map(({ span, message }) => `${text.slice(span.from, span.to)} | ${/[\d.]+ s into .*”|at the start of .*”/.exec(message)?.[0] ?? ''}`)).toEqual(told);
  });
});

test('the lanes at a pass: who is free, how, and who closes the others', () => {
  const { phases } = game('player Eve of Red at (25, 27)', 'player Fay of Red at (28, 5)', 'phase "One" {\nAnn passes to Bea\n}');
  const { lanes } = phases[0]!.lanes[0]!;
  expect(lanes.map(({ to, open, by }) => [to, open, by])).toEqual([['Bea', 'ground', null], ['Eve', 'lofted', 'Cid'], ['Fay', null, 'Dan']]);
  expect(lanes.map(({ lead }) => lead !== null && lead > doubtful)).toEqual([false, true, true]);
});

test.each(['switch-to-the-corners', 'three-zones', 'rondo'])('the demo %s shows three phases, and the ball changes sides in one', (name) => {
  const text = readFileSync(new URL(`../../shared/examples/${name}.drill`, import.meta.url), 'utf8');
  const { phases } = analyse(text, alone).drills[0]!;
  expect(phases.length).toBe(3);
  expect(phases.filter(({ possession }) => possession.length > 1).length).toBe(1);
});

/** What a coach on the side would call out; the limits (a tenth, 2.5 s, 0.5 m) are common practice, no source. */
describe('what may go wrong on the ball, told at its line', () => {
  const goals = 'minigoal South at (15, 0) facing up\nminigoal North at (15, 30) facing down\nkeeper Kit of Red at (15, 2)\nkeeper Kai of Blue at (15, 28)';
  test.each<[what: string, lines: readonly string[], told: readonly string[]]>([
    ['a shot past nobody', [goals, 'player Eve of Red at (15, 20)', 'ball at Eve', 'phase "One" {\nEve shoots at North\n}'], []],
    ['a shot at somebody', [goals, 'player Eve of Red at (15, 20)', 'player Fay of Blue at (15.3, 24)', 'ball at Eve', 'phase "One" {\nEve shoots at North\n}'], ['intercepted warning shoots at North']],
    ['a goalkeeper in the way of a shot', [goals, 'player Eve of Red at (15, 24)', 'ball at Eve', 'phase "One" {\nEve shoots at North\n}'], []],
    ['a shot at the own goal', [goals, 'player Eve of Red at (15, 8)', 'ball at Eve', 'phase "One" {\nEve shoots at South\n}'], ['own-goal warning shoots at South']],
    ['a team-mate in the way of a shot', [goals, 'player Eve of Red at (15, 20)', 'player Fay of Red at (15.2, 24)', 'ball at Eve', 'phase "One" {\nEve shoots at North\n}'], ['blocked-lane warning shoots at North']],
    ['a pass to an opponent at the end', ['phase "One" {\nAnn passes to Bea\nBea passes to Cid\n}'], ['intercepted warning passes to Cid']],
    ['a dribble past an opponent', ['phase "One" {\nAnn dribbles to (29, 6)\n}'], ['intercepted warning dribbles to (29, 6)']],
    ['a dribble towards an opponent who waits', ['phase "One" {\nAnn dribbles to (18, 5)\n}'], []],
    ['a dribble into a tackle', ['phase "One" {\nAnn dribbles to (29, 6) while Dan wins the ball from Ann\n}'], []],
    ['a steal from afar', ['phase "One" {\nAnn passes to Bea\nCid wins the ball from Bea\n}'], ['long-wait warning wins the ball from Bea']],
    ['a steal that the press makes ready', ['player Eve of Blue at (11, 18)', 'phase "One" {\nAnn passes to Bea while Eve presses Bea\nEve wins the ball from Bea\n}'], []],
    ['a steal by who is near', ['player Eve of Blue at (9, 18)', 'phase "One" {\nAnn passes to Bea\nEve wins the ball from Bea\n}'], []],
  ])('%s', (_, lines, told) => {
    const text = `drill "Game" {\n${lines.some((line) => line.startsWith('ball')) ? ground.replace('  ball at Ann\n', '') : ground}${lines.join('\n')}\n}`;
    const { problems } = analyse(text, alone);
    expect(problems.filter(({ severity }) => severity !== 'info').map(({ code, severity, span }) => `${code} ${severity} ${text.slice(span.from, span.to)}`)).toEqual(told);
    expect(problems.filter(({ span }) => text.slice(span.from, span.to).startsWith('shoots')).map(({ help, fixes }) => `${help} ${fixes.map(({ title }) => title).join()}`).join()).not.toMatch(/loft/);
  });
});

test('a ball may be set into space for somebody, with the first touch', () => {
  const { phases, problems } = game('player Fay of Red at (8, 11.2)', 'phase "One" {\nAnn passes to Bea\nBea sets into (8, 11) for Fay\n}');
  expect(problems).toEqual([]);
  expect(phases[0]!.timeline.passes.map(({ kind, to, toAt }) => [kind, to, toAt.x, toAt.y])).toEqual([['pass', 'Bea', 5, 15], ['set', 'Fay', 8, 11]]);
  expect(phases[0]!.timeline.tracks.find(({ actor }) => actor === 'Bea')!.touches.map(({ count }) => count)).toEqual([1]);
});

test('of several touch rules the one that is broken is named', () => {
  const text = `drill "Game" {\n${ground}rule touches 2 for Blue\nrule touches 2 for Bea\nphase "One" {\nAnn passes to Bea\nBea passes to Ann, in 3 touches\n}\n}`;
  const [broken] = analyse(text, alone).problems.filter(({ code }) => code === 'touch-limit');
  expect(broken!.related.map(({ span }) => text.slice(span.from, span.to))).toEqual(['rule touches 2 for Bea']);
});

test('who is open instead is told on the ground first, then through the air', () => {
  const { problems } = analyse(`drill "Game" {
  age U12
  tempo match
  area 30 x 30
  team Red of 4
  team Blue of 2
  player Red1 of Red at (3, 27)
  player Red2 of Red at (22, 22)
  player Red3 of Red at (3, 15)
  player Red4 of Red at (14, 6)
  player Blue1 of Blue at (14, 23)
  player Blue2 of Blue at (10, 14)
  ball at Red1
  phase "Across" {
    Red1 passes to Red2
  }
}`, alone);
  expect(problems.filter(({ code }) => code === 'intercepted').map(({ help }) => help)).toEqual([
    'Open at that moment: `Red3`; through the air `Red2` and `Red4`. Or draw the opponent away first.',
  ]);
});
