import { expect, test } from 'vitest';
import { drillWith } from './read.ts';

test.each<[lines: string, actors: readonly (readonly [id: string, kind: string, x: number, y: number])[]]>([
  ['station Base at (1, 2)', [['Base', 'first', 1, 2]]],
  ['station Base at (1, 2) holds 2', [['Base', 'first', 1, 2], ['next Base', 'next', 1, 2]]],
  ['station Base at (1, 2)\ncone at 1 above next Base', [['Base', 'first', 1, 2], ['next Base', 'next', 1, 2]]],
  [
    'station Base at (1, 2)\nstation Top at (1, 9)\nsequence {\nBase passes to Top\nTop passes to next Base\n}',
    [['Base', 'first', 1, 2], ['next Base', 'next', 1, 2], ['Top', 'first', 1, 9]],
  ],
  ['coach at (0, 0)', [['coach', 'coach', 0, 0]]],
  ['team Reds of 3\nplayer Reds2 of Reds at (4, 4)\nkeeper Kim of Reds at (5, 1)', [['Reds2', 'player', 4, 4], ['Kim', 'keeper', 5, 1]]],
  [
    'team Reds of 3\nzone Box 8 x 4 in area.bottomLeft\nplayer Reds2 of Reds at (15, 15)\nplace 2 Reds in Box',
    [['Reds2', 'player', 15, 15], ['Reds1', 'player', 2, 2], ['Reds3', 'player', 6, 2]],
  ],
])('%s', (lines, actors) => {
  const { drill, messages } = drillWith(lines);
  expect(messages).toEqual([]);
  expect(drill.actors.map(({ id, kind, home }) => [id, kind, Math.round(home.x), Math.round(home.y)])).toEqual(actors);
});

test.each<[lines: string, size: number]>([
  ['team Reds of 4\nplayer Reds1 of Reds at (1, 1)', 4],
  ['team Reds of 4\nkeeper Reds1 of Reds at (1, 1)', 4],
  ['team Reds of 4\nkeeper Kim of Reds at (1, 1)', 4],
  ['team Reds\nplayer Ann of Reds at (1, 1)\nkeeper Kim of Reds at (2, 2)', 2],
  ['team Reds\nstation Base at (1, 1) holds 3 of Reds', 3],
  ['team Reds\nplace 5 Reds in area', 5],
  ['floaters Reds bib yellow of 2\nplace 2 Reds in area', 2],
])('%s: a team of %d', (lines, size) => {
  const { drill, messages } = drillWith(lines);
  expect(messages).toEqual([]);
  expect(drill.teams.map((team) => team.size)).toEqual([size]);
});

test.each<[lines: string, holder: string | null]>([
  ['ball at Base', 'Base'],
  ['ball at next Base', 'next Base'],
  ['ball at 1 above Base', 'Base'],
  ['ball at 2 above Base', null],
  ['balls 6 at coach', 'coach'],
  ['ball at Near', null],
])('%s is with %s', (ball, holder) => {
  const { drill, messages } = drillWith(`station Base at (1, 1) holds 2\ncoach at (10, 10)\npole Near at (5, 5)\n${ball}`);
  expect(messages).toEqual([]);
  expect(drill.balls.map((supply) => supply.holder)).toEqual([holder]);
});
