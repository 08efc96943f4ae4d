import { describe, expect, test } from 'vitest';
import { depthIn, type Shape } from '../../shared/geometry/depth.ts';
import { distance, type Point } from '../../shared/geometry/point.ts';
import { spread } from '../../shared/model/spread.ts';

const box: Shape = { kind: 'polygon', points: [{ x: 0, y: 0 }, { x: 30, y: 0 }, { x: 30, y: 15 }, { x: 0, y: 15 }] };
const elbow: Shape = { kind: 'polygon', points: [{ x: 0, y: 0 }, { x: 20, y: 0 }, { x: 20, y: 6 }, { x: 6, y: 6 }, { x: 6, y: 20 }, { x: 0, y: 20 }] };
const ring: Shape = { kind: 'circle', centre: { x: 5, y: 5 }, radius: 8 };
const others: readonly Point[] = [{ x: 4, y: 4 }, { x: 12, y: 5 }];

const gaps = (places: readonly Point[], people: readonly Point[]): number[] =>
  places.flatMap((place, index) => [...places.slice(0, index), ...people].map((other) => distance(place, other)));

describe.each([['a box', box], ['an elbow', elbow], ['a circle', ring]] as const)('in %s', (_, shape) => {
  test.each([1, 2, 3, 5, 8, 11])('%d stand inside, apart, and the same every time', (count) => {
    const places = spread(count, shape, others);
    expect(places.length).toBe(count);
    expect(places.every((at) => depthIn(shape, at) > 0.5)).toBe(true);
    expect(Math.min(...gaps(places, others))).toBeGreaterThan(1.2);
    expect(spread(count, shape, others)).toEqual(places);
  });
});

test.each([[1, 7.5], [2, 7.1], [3, 7], [6, 6.7]])('%d alone in 30 x 15 m are at least %d m apart, the border counted by half', (count, least) => {
  const places = spread(count, box, []);
  expect(Math.min(...gaps(places, []), ...places.map((at) => 2 * depthIn(box, at)))).toBeGreaterThan(least - 0.01);
});

test('one goes to the far side of those who stand there', () => {
  const [at] = spread(1, box, [{ x: 3, y: 7 }, { x: 9, y: 8 }]);
  expect(at!.x).toBeGreaterThan(18);
});

test.each<[what: string, shape: Shape]>([
  ['a sliver', { kind: 'polygon', points: [{ x: 0, y: 0 }, { x: 100, y: 100 }, { x: 100, y: 100.0001 }] }],
  ['a needle', { kind: 'polygon', points: [{ x: 0, y: 0 }, { x: 1e-9, y: 0 }, { x: 1e-9, y: 1e5 }, { x: 0, y: 1e5 }] }],
])('even in %s no two are on one spot', (_, shape) => {
  const places = spread(5, shape, []);
  expect(new Set(places.map(({ x, y }) => `${x} ${y}`)).size).toBe(5);
});
