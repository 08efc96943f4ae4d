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
    [['rule Back at most 1 attackers', 'phase "One" {\nAnn passes to Bea while Bea runs to (5, 9.9)\n}'], []],
    [['rule Back at most 1 attackers', 'phase "One" {\nAnn waits 2 s while Bea runs to (5, 9)\n}'], ['zone-full']],
    [['rule Back at least 1 attackers', 'phase "One" {\nAnn dribbles to (5, 20)\n}'], ['zone-short']],
    [['rule Back at least 1 attackers', 'phase "One" {\nAnn dribbles to (5, 10.2)\n}'], []],
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

test.each<[expected: string, sound: boolean]>([['1 v 1', true], ['2 v 1', true], ['1 v 2', false], ['2 v 0', false]])('expect %s holds at the start or the end: %s', (expected, sound) => {
  const { problems } = game('zone Back 30 x 10 in area.bottomLeft', `expect ${expected} in Back`, 'phase "One" {\nAnn waits 3 s while Bea runs to (8, 8)\n}');
  expect(problems.includes('overload-mismatch')).toBe(!sound);
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
