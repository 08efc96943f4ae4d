import { expect, test } from 'vitest';
import type { Action } from '../../shared/model/drill.ts';
import { drillWith } from './read.ts';

const setting = `station Base at (10, 1) holds 2
  station Left at (2, 12)
  pole Near at (10, 6)
  goal North 5 x 2 at area.top
  gate Exit at (18, 12) width 2
  zone Box 4 x 4 at (5, 20)
  team Reds of 2
  player Reds1 of Reds at (15, 15)
  player Reds2 of Reds at (15, 25)
  coach at (0, 0)`;

/** What is not the default, with places as pairs and without spans. */
function told(action: Action): Record<string, unknown> {
  const { at, about, via, to, station, thing, receiver, firstTime, touches, weight, lofted, inStride, gait, after, length } = action;
  const all = {
    at: at && [at.x, at.y], about: about && [about.who ?? about.thing, about.at.x, about.at.y], via: via.length > 0 && via.map(({ x, y }) => [x, y]),
    to, station, thing, receiver, firstTime, touches, weight, lofted, inStride, gait, after, length,
  };
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value));
}

test.each<[part: string, action: Record<string, unknown>]>([
  ['Base passes to Left', { to: 'Left', station: 'Left' }],
  ['Base passes to next Base', { to: 'next Base', station: 'Base' }],
  ['Base passes to Reds1', { to: 'Reds1' }],
  ['Base passes to coach', { to: 'coach' }],
  ['Base passes to (5, 5)', { at: [5, 5] }],
  ['Base passes to 1 above Left', { at: [2, 13] }],
  ['Base passes to Box', { at: [5, 20], thing: 'Box' }],
  ['Base passes into 3 left of Near for Left', { at: [7, 6], receiver: 'Left' }],
  ['Base passes into Box for next Base', { at: [5, 20], thing: 'Box', receiver: 'next Base' }],
  ['Base sets to Left', { to: 'Left', station: 'Left', firstTime: true }],
  ['Base crosses to Reds2, driven', { to: 'Reds2', weight: 'driven' }],
  ['Base shoots at North', { at: [10, 30], thing: 'North' }],
  ['Base shoots at (9, 30)', { at: [9, 30] }],
  ['Base dribbles to Exit', { at: [18, 12], thing: 'Exit' }],
  ['Base dribbles to (10, 10) around Near', { at: [10, 10], about: ['Near', 10, 6] }],
  ['Base turns', {}],
  ['Base runs to Left', { at: [2, 12], to: 'Left', station: 'Left' }],
  ['Base runs to Near', { at: [10, 6], thing: 'Near' }],
  ['Base runs to Reds1 via (1, 2) via Left', { at: [15, 15], to: 'Reds1', via: [[1, 2], [2, 12]] }],
  ['Base spins around Near to (12, 8)', { at: [12, 8], about: ['Near', 10, 6] }],
  ['Base overlaps Left to (1, 20)', { at: [1, 20], about: ['Left', 2, 12] }],
  ['Base presses Reds1', { about: ['Reds1', 15, 15] }],
  ['Base wins the ball from next Base', { about: ['next Base', 10, 1] }],
  ['Base follows', {}],
  ['Base waits 1.5 s', { length: 1.5 }],
  ['Base passes to Left first time', { to: 'Left', station: 'Left', firstTime: true }],
  ['Base passes to Left, in 2 touches', { to: 'Left', station: 'Left', touches: 2 }],
  ['Base passes to Left, lofted', { to: 'Left', station: 'Left', lofted: true }],
  ['Base passes to Left, in stride', { to: 'Left', station: 'Left', inStride: true }],
  ['Base runs to Near at sprint after 0.5 s', { at: [10, 6], thing: 'Near', gait: 'sprint', after: 0.5 }],
])('%s', (part, action) => {
  const { drill, messages } = drillWith(`${setting}\nsequence {\n${part}\n}`);
  expect(messages).toEqual([]);
  expect(drill.sequences[0]!.beats.map((beat) => told(beat.lead.chain[0]!))).toEqual([action]);
});

test.each<[part: string, message: string]>([
  ['Near runs to (1, 1)', '`Near` is a pole; only players can run.'],
  ['Box passes to Left', '`Box` is a zone; only players can pass.'],
  ['Reds passes to Left', '`Reds` is a team; say which of its players.'],
  ['next Reds1 passes to Left', '`Reds1` is a player; only a station has a next player.'],
  ['Base passes to Near', '`Near` is a pole; a pass goes to a player, a place, a zone or a goal.'],
  ['Base passes to Reds', '`Reds` is a team; say which player.'],
  ['Base shoots at Left', '`Left` is a station; only a goal or a gate can be shot at.'],
  ['Base passes into (5, 5) for Near', '`Near` is a pole; only players can be played to.'],
  ['Base presses Near', '`Near` is a pole; only players can be pressed.'],
  ['Base spins around Box to (1, 1)', '`Box` is a zone; one can only go around players and things that stand on the grass.'],
  ['Base passes to Lef', 'There is no station or player called `Lef`. Did you mean `Left`?'],
  ['Base passes to Reds3', 'There is no `Reds3`: Reds has 2 players, Reds1 to Reds2.'],
  ['Base passes to Left, in 0 touches', 'The number of touches is 0; it can be from 1 to 99.'],
  ['Base runs to Left after -1 s', 'The delay is -1 s; it cannot be less than 0.'],
  ['Base runs to Left after 2 m', 'This is a length; a time is wanted here.'],
  ['Base overlaps Left to (1, 20) around Near', '`around` is written twice; the first one counts.'],
])('%s: %s', (part, message) => {
  expect(drillWith(`${setting}\nsequence {\n${part}\n}`).messages).toEqual([message]);
});
