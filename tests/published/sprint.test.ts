import { describe, expect, test } from 'vitest';
import { straight } from '../../shared/geometry/path.ts';
import { sprint } from '../../shared/physics/constants.ts';
import { runAlong, timeToRun, type Ability } from '../../shared/physics/runner.ts';

// Examples of the R package `shorts` (READ). The first are times of the model itself, to the digit they are printed with;
// the second are the measured times that its parameters were fitted to.
describe('split times of the mono-exponential sprint', () => {
  test.each([
    { topSpeed: 8.591, tau: 0.811, splits: { 5: 1.21, 10: 1.9, 15: 2.52, 20: 3.12, 30: 4.3, 40: 5.47 }, within: 0.005 },
    { topSpeed: 7.553185, tau: 0.706663, splits: { 5: 1.21, 10: 1.99, 20: 3.38, 30: 4.71, 35: 5.3 }, within: 0.05 },
  ])('V $topSpeed m/s, τ $tau s', ({ topSpeed, tau, splits, within }) => {
    for (const [distance, time] of Object.entries(splits)) {
      expect(Math.abs(timeOver(topSpeed, tau, Number(distance)) - time)).toBeLessThan(within);
    }
  });
});

// Mendez-Villanueva et al. 2011, J Sports Sci 29(5):477-484, restated on a sensor maker's help page (READ-2): mean speed
// over the first 10 m. The clock of timing gates starts about 0.3 s after the first movement (Vescovi and Jovanovic 2021, READ).
test.each([
  { age: 14, first10: 5.18, flying20: 7.02 },
  { age: 16, first10: 5.56, flying20: 7.91 },
  { age: 18, first10: 5.78, flying20: 8.55 },
])('U$age', ({ age, first10, flying20 }) => {
  const { topSpeed, tau } = sprint(age);
  expect(topSpeed).toBe(flying20);
  expect(timeOver(topSpeed, tau, 10) - 0.3).toBeCloseTo(10 / first10, 2);
});

function timeOver(topSpeed: number, tau: number, distance: number): number {
  const able: Ability = { topSpeed, tau, braking: 4, reaction: 0, grip: 4 };
  const run = runAlong(straight({ x: 0, y: 0 }, { x: 100, y: 0 }), able, { stop: false });
  return timeToRun(run, distance);
}
