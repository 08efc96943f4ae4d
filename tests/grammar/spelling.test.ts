import { expect, test } from 'vitest';
import { nearest } from '../../grammar/spelling.ts';

const candidates = ['passes', 'presses', 'station', 'at', 'to', 'x', 'Left', 'Screen', 'Flügel'];

test.each([
  ['passs', 'passes'],
  ['pases', 'passes'],
  ['apsses', 'passes'],
  ['statoin', 'station'],
  ['STATION', 'station'],
  ['Scren', 'Screen'],
  ['left', 'Left'],
  ['Lfet', 'Left'],
  ['Flugel', 'Flügel'],
  ['too', 'to'],
  ['ta', 'at'],
  ['X', 'x'],
  ['on', null],
  ['y', null],
  ['Right', null],
  ['stadium', null],
  ['', null],
  ['a'.repeat(100_000), null],
])('%.20s', (word, expected) => {
  expect(nearest(word, candidates)).toBe(expected);
});
