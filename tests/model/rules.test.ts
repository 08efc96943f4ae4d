import { expect, test } from 'vitest';
import { drillWith } from './read.ts';

const setting = `team Reds of 4
  team Blues of 2
  floaters Jokers of 1
  place 4 Reds in Box
  place 2 Blues in Box
  place 1 Jokers in area
  zone Box 10 x 10 at area.centre
  zones Corner 2 x 2 in corners of area
  gate Out at area.bottom width 2
  minigoal Mini at area.top`;

/** A rule without its span. */
function plain(rule: object): unknown {
  return Object.fromEntries(Object.entries(rule).filter(([key]) => key !== 'span'));
}

test.each<[line: string, rule: Record<string, unknown>]>([
  ['rule Box at most 2 Reds', { kind: 'numbers', zone: 'Box', bound: 'at most', count: 2, who: 'Reds' }],
  ['rule Corner exactly 1 attackers', { kind: 'numbers', zone: 'Corner', bound: 'exactly', count: 1, who: 'attackers' }],
  ['rule area at least 1 floaters', { kind: 'numbers', zone: 'area', bound: 'at least', count: 1, who: 'floaters' }],
  ['rule Box no Blues', { kind: 'numbers', zone: 'Box', bound: 'no', count: 0, who: 'Blues' }],
  ['rule "Talk"', { kind: 'text', text: 'Talk' }],
  ['expect 4 v 2 in Box', { kind: 'expect', ours: 4, theirs: 2, zone: 'Box' }],
  ['score 1 for 8 passes', { kind: 'score', points: 1, by: 'passes', count: 8, from: null, into: null, through: null, team: null }],
  ['score 1 for pass into CornerTopLeft', { kind: 'score', points: 1, by: 'pass', count: null, from: null, into: 'CornerTopLeft', through: null, team: null }],
  ['score 1 for pass from Box to Corner', { kind: 'score', points: 1, by: 'pass', count: null, from: 'Box', into: 'Corner', through: null, team: null }],
  ['score 2 for goal in Mini', { kind: 'score', points: 2, by: 'goal', count: null, from: null, into: 'Mini', through: null, team: null }],
  ['score 2 for goal in Mini by Blues', { kind: 'score', points: 2, by: 'goal', count: null, from: null, into: 'Mini', through: null, team: 'Blues' }],
  ['score 1 for dribble into Box', { kind: 'score', points: 1, by: 'dribble', count: null, from: null, into: 'Box', through: null, team: null }],
  ['score 1 for pass through Out', { kind: 'score', points: 1, by: 'pass', count: null, from: null, into: null, through: 'Out', team: null }],
  ['score 1 for dribble from Box to Corner by Reds', { kind: 'score', points: 1, by: 'dribble', count: null, from: 'Box', into: 'Corner', through: null, team: 'Reds' }],
  ['score 1 for winning the ball', { kind: 'score', points: 1, by: 'win', count: null, from: null, into: null, through: null, team: null }],
  ['score 1 for winning the ball in Box by Blues', { kind: 'score', points: 1, by: 'win', count: null, from: null, into: 'Box', through: null, team: 'Blues' }],
])('%s', (line, rule) => {
  const { drill, messages } = drillWith(`${setting}\n${line}`);
  expect(messages).toEqual([]);
  expect(drill.rules.map(plain)).toEqual([rule]);
});

test.each<[line: string, rule: Record<string, unknown>]>([
  ['rule touches 2', { most: 2, who: null, zone: null }],
  ['rule touches 2 for Reds', { most: 2, who: 'Reds', zone: null }],
  ['rule touches 1 for Reds1 in Box', { most: 1, who: 'Reds1', zone: 'Box' }],
])('%s', (line, rule) => {
  const { drill, messages } = drillWith(`${setting}\n${line}`);
  expect(messages).toEqual([]);
  expect(drill.touchRules.map(plain)).toEqual([rule]);
});

test.each<[line: string, message: string]>([
  ['rule Bix at most 2 Reds', 'There is no zone called `Bix`. Did you mean `Box`?'],
  ['rule Mini at most 2 Reds', '`Mini` is a small goal; a zone is wanted here.'],
  ['rule Box at most 2 Box', '`Box` is a zone; a rule is for a team, a player, the floaters, attackers or defenders.'],
  ['score 1 for goal in Box', '`Box` is a zone; only a goal or a gate can be scored in.'],
  ['score 1 for dribble through Mini', '`Mini` is a small goal; only a gate can be gone through.'],
  ['score 1 for 8 passes by Box', '`Box` is a zone; a team is wanted here.'],
  ['rule touches 0', 'The number of touches is 0; it can be from 1 to 99.'],
])('%s: %s', (line, message) => {
  expect(drillWith(`${setting}\n${line}`).messages).toEqual([message]);
});

test('bouts and times are in seconds', () => {
  const { drill } = drillWith('time 15 min\nbouts 4 x 3 min rest 45 s');
  expect(drill.time?.value).toBe(900);
  expect(drill.bouts && plain(drill.bouts)).toEqual({ count: 4, length: 180, rest: 45 });
});
