import fc from 'fast-check';
import { expect, test } from 'vitest';
import { closestApproach, closestOnSegment } from '../../shared/geometry/closest.ts';
import { along, distance, type Point } from '../../shared/geometry/point.ts';

const places: fc.Arbitrary<Point> = fc.record({
  x: fc.double({ min: -20, max: 20, noNaN: true }),
  y: fc.double({ min: -20, max: 20, noNaN: true }),
});
const steps = Array.from({ length: 101 }, (_, step) => step / 100);

test('no other place of a segment is nearer', () => {
  fc.assert(
    fc.property(places, places, places, (p, a, b) => {
      const nearest = closestOnSegment(p, a, b);
      expect(distance(p, along(a, b, nearest.fraction))).toBeCloseTo(nearest.distance, 9);
      for (const step of steps) expect(nearest.distance).toBeLessThanOrEqual(distance(p, along(a, b, step)) + 1e-9);
    }),
  );
});

test('two who move are at no other time nearer', () => {
  fc.assert(
    fc.property(places, places, places, places, (a0, a1, b0, b1) => {
      const apart = (t: number) => distance(along(a0, a1, t), along(b0, b1, t));
      const nearest = closestApproach(a0, a1, b0, b1);
      expect(apart(nearest.fraction)).toBeCloseTo(nearest.distance, 9);
      for (const step of steps) expect(nearest.distance).toBeLessThanOrEqual(apart(step) + 1e-9);
    }),
  );
});

test.each([
  { name: 'crossing', ways: [[0, 0], [10, 0], [5, -5], [5, 5]], expected: { fraction: 0.5, distance: 0 } },
  { name: 'side by side', ways: [[0, 0], [10, 0], [0, 2], [10, 2]], expected: { fraction: 0, distance: 2 } },
  { name: 'standing', ways: [[0, 0], [0, 0], [3, 4], [3, 4]], expected: { fraction: 0, distance: 5 } },
  { name: 'drawing apart', ways: [[0, 0], [-5, 0], [1, 0], [9, 0]], expected: { fraction: 0, distance: 1 } },
])('two who move: $name', ({ ways, expected }) => {
  const [a0, a1, b0, b1] = ways.map(([x, y]) => ({ x, y })) as [Point, Point, Point, Point];
  expect(closestApproach(a0, a1, b0, b1)).toEqual(expected);
});
