import { polygonArea, polygonCentroid, polygonContains } from 'd3-polygon';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance, type Point } from '../../shared/geometry/point.ts';
import { area, centroid, contains, overlap, roundPolygon, selfCrosses } from '../../shared/geometry/polygon.ts';

const numbers = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Corners seen from the middle at rising angles: simple, and seldom convex. */
const stars: fc.Arbitrary<Point[]> = fc
  .tuple(fc.array(numbers(1, 10), { minLength: 3, maxLength: 12 }), numbers(-50, 50), numbers(-50, 50), fc.boolean())
  .map(([reaches, x, y, clockwise]) => {
    const corners = reaches.map((reach, index) => {
      const angle = (2 * Math.PI * index) / reaches.length;
      return { x: x + reach * Math.cos(angle), y: y + reach * Math.sin(angle) };
    });
    return clockwise ? corners.toReversed() : corners;
  });
const asPairs = (points: readonly Point[]) => points.map((p): [number, number] => [p.x, p.y]);
const box = (x: number, y: number, width: number, length: number): Point[] => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + length },
  { x, y: y + length },
];

describe('like d3-polygon', () => {
  test('area and centroid', () => {
    fc.assert(
      fc.property(stars, (points) => {
        const [x, y] = polygonCentroid(asPairs(points));
        expect(area(points)).toBeCloseTo(Math.abs(polygonArea(asPairs(points))), 7);
        expect(distance(centroid(points), { x, y })).toBeLessThan(1e-7);
      }),
      { numRuns: 300 },
    );
  });

  test('what lies inside', () => {
    fc.assert(
      fc.property(stars, numbers(-60, 60), numbers(-60, 60), (points, x, y) => {
        expect(contains(points, { x, y }, 0)).toBe(polygonContains(asPairs(points), [x, y]));
      }),
      { numRuns: 500 },
    );
  });
});

test.each([
  { name: 'inside', p: { x: 5, y: 5 }, tolerance: 0, expected: true },
  { name: 'on a side', p: { x: 10, y: 5 }, tolerance: 0, expected: true },
  { name: 'on a corner', p: { x: 0, y: 0 }, tolerance: 0, expected: true },
  { name: 'just outside', p: { x: 10.3, y: 5 }, tolerance: 0, expected: false },
  { name: 'just outside within tolerance', p: { x: 10.3, y: 5 }, tolerance: 0.5, expected: true },
])('a place $name', ({ p, tolerance, expected }) => {
  expect(contains(box(0, 0, 10, 10), p, tolerance)).toBe(expected);
});

describe('corners that enclose nothing', () => {
  test.each([
    { name: 'none', points: [], expected: { x: 0, y: 0 } },
    { name: 'one', points: [{ x: 2, y: 3 }], expected: { x: 2, y: 3 } },
    { name: 'in a line', points: [{ x: 0, y: 0 }, { x: 2, y: 2 }, { x: 4, y: 4 }], expected: { x: 2, y: 2 } },
  ])('$name', ({ points, expected }) => {
    expect([area(points), centroid(points), selfCrosses(points.slice(0, 2)), overlap(points, box(0, 0, 9, 9))]).toEqual([0, expected, false, 0]);
  });
});

describe('crossing itself', () => {
  const square = box(0, 0, 10, 10);
  test.each([
    { name: 'a square', points: square, expected: false },
    { name: 'a bow tie', points: [square[0], square[2], square[1], square[3]] as Point[], expected: true },
    { name: 'a corner on another side', points: [...square.slice(0, 3), { x: 5, y: 0 }, square[3] as Point], expected: true },
    { name: 'a corner visited twice', points: [...square.slice(0, 2), { x: 5, y: 5 }, ...square.slice(2), { x: 5, y: 5 }], expected: true },
    { name: 'a spike out and back', points: [...square.slice(0, 2), { x: 20, y: 0 }, { x: 12, y: 0 }, square[2] as Point], expected: true },
    { name: 'a corner in the middle of a straight side', points: [{ x: 0, y: 0 }, { x: 5, y: 0 }, ...square.slice(1)], expected: false },
    { name: 'a corner written twice', points: [{ x: 0, y: 0 }, ...square], expected: false },
    { name: 'a line out and back', points: [{ x: 0, y: 0 }, { x: 5, y: 0 }, { x: 2, y: 0 }], expected: true },
  ])('$name', ({ points, expected }) => {
    expect(selfCrosses(points)).toBe(expected);
  });

  test('no star does', () => {
    fc.assert(
      fc.property(stars, (points) => {
        expect(selfCrosses(points)).toBe(false);
      }),
      { numRuns: 300 },
    );
  });

  test('is what comparing every side with every other says', () => {
    // Few places, so that corners fall on corners and on sides all the time.
    const coordinate = fc.integer({ min: 0, max: 5 });
    fc.assert(
      fc.property(fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength: 3, maxLength: 8 }), (points) => {
        expect(selfCrosses(points)).toBe(crossesAnywhere(points));
      }),
      { numRuns: 3000 },
    );
  });

  const count = 10_000;
  const comb = (point: (along: number, out: number) => Point) => [
    ...Array.from({ length: count - 2 }, (_, index) => point(index / 100, index % 2 ? 50 : 1)),
    point(count / 100, 0),
    point(0, 0),
  ];
  test.each([
    { name: 'a round one', points: roundPolygon({ x: 0, y: 0 }, 50, count) },
    { name: 'a comb of upright teeth', points: comb((along, out) => ({ x: along, y: out })) },
    { name: 'a comb of lying teeth', points: comb((along, out) => ({ x: out, y: along })) },
    { name: 'a comb aslant', points: comb((along, out) => ({ x: along + out, y: along - out })) },
  ])('ten thousand corners: $name', ({ points }) => {
    expect(points.length).toBe(count);
    expect(selfCrosses(points)).toBe(false);
  });
});

describe('overlap', () => {
  const bent = [{ x: 0, y: 0 }, { x: 6, y: 0 }, { x: 6, y: 2 }, { x: 2, y: 2 }, { x: 2, y: 6 }, { x: 0, y: 6 }];
  test.each([
    { name: 'apart', a: box(0, 0, 4, 4), b: box(5, 0, 4, 4), expected: 0 },
    { name: 'side by side', a: box(0, 0, 4, 4), b: box(4, 0, 4, 4), expected: 0 },
    { name: 'one above the other', a: box(0, 0, 4, 4), b: box(0, 4, 4, 4), expected: 0 },
    { name: 'at a corner', a: box(0, 0, 4, 4), b: box(3, 2, 4, 4), expected: 2 },
    { name: 'one in the other', a: box(0, 0, 10, 10), b: box(2, 2, 3, 3), expected: 9 },
    { name: 'the same', a: box(1, 1, 5, 7), b: box(1, 1, 5, 7).toReversed(), expected: 35 },
    { name: 'in the crook of an L', a: bent, b: box(2, 2, 4, 4), expected: 0 },
    { name: 'over both arms of an L', a: bent, b: box(1, 1, 5, 5), expected: 9 },
  ])('$name', ({ a, b, expected }) => {
    expect(overlap(a, b)).toBeCloseTo(expected, 9);
    expect(overlap(b, a)).toBeCloseTo(expected, 9);
  });

  test('of two polygons is what a grid of points counts', () => {
    fc.assert(
      fc.property(stars, stars, (a, b) => {
        const nearby = b.map((p) => ({ x: p.x - (b[0] as Point).x + (a[0] as Point).x, y: p.y - (b[0] as Point).y + (a[0] as Point).y }));
        expect(Math.abs(overlap(a, nearby) - counted(a, nearby))).toBeLessThan(0.03 * Math.min(area(a), area(nearby)) + 1);
      }),
      { numRuns: 50 },
    );
  });

  test('with the whole plane around it is the area', () => {
    fc.assert(
      fc.property(stars, (points) => {
        expect(overlap(points, box(-100, -100, 200, 200))).toBeCloseTo(area(points), 6);
      }),
    );
  });
});

test.each([
  { radius: 3, corners: 64 },
  { radius: 9.15, corners: 24 },
])('a round polygon of $corners corners has the area of its circle', ({ radius, corners }) => {
  expect(area(roundPolygon({ x: 4, y: 7 }, radius, corners))).toBeCloseTo(Math.PI * radius * radius, 9);
});

/** Exact on whole numbers. */
function crossesAnywhere(points: readonly Point[]): boolean {
  const corners = points.filter((p, index) => distance(p, points[(index + 1) % points.length] as Point) > 0);
  const count = corners.length;
  const at = (index: number) => corners[index % count] as Point;
  const left = (a: Point, b: Point, c: Point) => Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
  const on = (a: Point, b: Point, c: Point) => left(a, b, c) === 0 && (c.x - a.x) * (c.x - b.x) <= 0 && (c.y - a.y) * (c.y - b.y) <= 0;
  const meets = (a: Point, b: Point, c: Point, d: Point) =>
    on(a, b, c) || on(a, b, d) || on(c, d, a) || on(c, d, b) || (left(a, b, c) !== left(a, b, d) && left(c, d, a) !== left(c, d, b));
  return corners.some((_, i) =>
    corners.some((_, j) => {
      if (j <= i || count < 3) return false;
      const [a, b, c, d] = [at(i), at(i + 1), at(j), at(j + 1)];
      if (j === i + 1) return on(a, b, d) || on(c, d, a);
      return i === 0 && j === count - 1 ? on(a, b, c) || on(c, d, b) : meets(a, b, c, d);
    }),
  );
}

function counted(a: readonly Point[], b: readonly Point[]): number {
  const step = 0.2;
  const [low, high] = [Math.min(...a.map((p) => p.x)), Math.max(...a.map((p) => p.x))];
  const [bottom, top] = [Math.min(...a.map((p) => p.y)), Math.max(...a.map((p) => p.y))];
  let count = 0;
  for (let x = low + step / 2; x < high; x += step) {
    for (let y = bottom + step / 2; y < top; y += step) {
      if (polygonContains(asPairs(a), [x, y]) && polygonContains(asPairs(b), [x, y])) count += 1;
    }
  }
  return count * step * step;
}
