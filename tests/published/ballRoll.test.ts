import { expect, test } from 'vitest';
import { friction } from '../../shared/physics/ball.ts';
import { constants } from '../../shared/physics/constants.ts';

// COMPUTED from the ramp of the ball-roll test (1 m, 45 degrees: FIFA field tests and EN 12234, READ-2) by
// a = g h / ((1 + k) d) with g = 9.81 m/s² and a thin shell, k = 2/3. Forgetting the spin would give g h / d.
test.each([
  { roll: 3, deceleration: 1.962 },
  { roll: 4, deceleration: 1.4715 },
  { roll: 5, deceleration: 1.1772 },
  { roll: 6, deceleration: 0.981 },
  { roll: 8, deceleration: 0.73575 },
  { roll: 10, deceleration: 0.5886 },
  { roll: 12, deceleration: 0.4905 },
])('a roll of $roll m slows the ball by $deceleration m/s²', ({ roll, deceleration }) => {
  expect(friction('turf', roll)).toBeCloseTo(deceleration, 9);
});

// FIFA Quality Concept 2005, test FIFA 03/05-01 (READ): two stars 4 to 8 m, one star 4 to 10 m.
// EN 12234 (READ-2, agronomy firm): adequate is 5 to 12 m.
test.each([
  { ground: 'turf', window: [4, 8] },
  { ground: 'grass', window: [5, 12] },
  { ground: 'indoor', window: [5, 12] },
] as const)('the roll of $ground lies in its published window', ({ ground, window }) => {
  expect(constants.rollDistance.value[ground]).toBeGreaterThanOrEqual(window[0]);
  expect(constants.rollDistance.value[ground]).toBeLessThanOrEqual(window[1]);
});
