import { expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';

/** What decides how soon the next repetition can start, in a triangle with this ball and this many at the base. */
function interval(ball: string, holds: number): { readonly seconds: number; readonly because: string; readonly duration: number } {
  const { measures } = analyse(`drill "Triangle" {
  area 16 x 16
  station Base at (3, 3) holds ${holds}
  station Left at (3, 13)
  station Right at (14, 13)
  ${ball}
  sequence {
    Base passes to Left
    Left passes to Right
    Right passes to next Base
  }
  rotate Base -> Left -> Right -> Base
}`).drills[0]!;
  return { ...measures.interval!, duration: measures.duration };
}

test('with one ball the next repetition waits for it', () => {
  const { seconds, because, duration } = interval('ball at Base', 3);
  expect(because).toBe('the ball is back');
  expect(seconds).toBeCloseTo(duration, 6);
});

test('with a supply it waits for the slowest change of places', () => {
  const { seconds, because, duration } = interval('balls 6 at Base', 3);
  expect(because).toBe('Left has come to Right');
  expect(seconds).toBeGreaterThan(1);
  expect(seconds).toBeLessThan(duration);
});
