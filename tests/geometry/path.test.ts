import fc from 'fast-check';
import { svgPathProperties } from 'svg-path-properties';
import { describe, expect, test } from 'vitest';
import { closestOnPath, directionAt, planPath, pointAt, straight, type Circle, type Path } from '../../shared/geometry/path.ts';
import { distance, type Point } from '../../shared/geometry/point.ts';

const numbers = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const places: fc.Arbitrary<Point> = fc.record({ x: numbers(-20, 20), y: numbers(-20, 20) });
const circles: fc.Arbitrary<Circle> = fc.record({ at: places, radius: numbers(0.2, 3) });
const plans = fc
  .record({
    from: places,
    to: places,
    via: fc.array(places, { maxLength: 3 }),
    around: fc.array(circles, { maxLength: 3 }),
    obstacles: fc.array(circles, { maxLength: 8 }),
  })
  .map((plan) => ({ ...plan, path: planPath(plan.from, plan.to, plan) }));

describe('any planned path', () => {
  test('is without gaps from its start to its end', () => {
    fc.assert(
      fc.property(plans, ({ from, to, path }) => {
        const ends = [from, ...path.segments.flatMap((_, index) => endsOf(path, index)), to];
        for (let index = 0; index < ends.length; index += 2) {
          expect(distance(ends[index] as Point, ends[index + 1] as Point)).toBeLessThan(1e-6);
        }
      }),
      { numRuns: 500 },
    );
  });

  test('is as long as an SVG path of the same segments', () => {
    fc.assert(
      fc.property(plans, ({ path }) => {
        fc.pre(path.segments.length > 0);
        const svg = new svgPathProperties(svgOf(path));
        // The library measures an arc by chords: of a whole turn it misses some hundred-thousandths.
        expect(svg.getTotalLength()).toBeCloseTo(path.length, 3);
        const middle = svg.getPointAtLength(path.length * 0.4);
        expect(distance(middle, pointAt(path, path.length * 0.4))).toBeLessThan(1e-2);
      }),
      { numRuns: 200 },
    );
  });

  test('heads where its points go', () => {
    fc.assert(
      fc.property(plans, numbers(0, 1), ({ path }, share) => {
        const step = 1e-5;
        const s = share * path.length;
        fc.pre(path.segments.every((segment) => segment.kind === 'line' || segment.radius > 0.02));
        fc.pre(s + step < path.length && !joints(path).some((joint) => Math.abs(joint - s) < 2 * step));
        const [a, b] = [pointAt(path, s), pointAt(path, s + step)];
        const heading = directionAt(path, s);
        expect(distance({ x: (b.x - a.x) / step, y: (b.y - a.y) / step }, heading)).toBeLessThan(1e-3);
        expect(Math.hypot(heading.x, heading.y)).toBeCloseTo(1, 9);
      }),
      { numRuns: 300 },
    );
  });
});

const ways = { from: { x: 0, y: 0 }, to: { x: 0, y: 10 } };

describe('round a circle', () => {
  test('touches it and stays outside, wherever it lies', () => {
    fc.assert(
      fc.property(circles, (circle) => {
        fc.pre([ways.from, ways.to].every((p) => distance(p, circle.at) > circle.radius + 1e-6));
        const path = planPath(ways.from, ways.to, { around: [circle] });
        expect(closestOnPath(circle.at, path).distance).toBeCloseTo(circle.radius, 6);
      }),
      { numRuns: 300 },
    );
  });

  test('is the shorter way round: tangents and the arc between them', () => {
    fc.assert(
      fc.property(circles, (circle) => {
        fc.pre([ways.from, ways.to].every((p) => distance(p, circle.at) > circle.radius + 1e-6));
        const path = planPath(ways.from, ways.to, { around: [circle] });
        expect(path.length).toBeCloseTo(Math.min(wrapped(circle, 1), wrapped(circle, -1)), 6);
      }),
      { numRuns: 300 },
    );
  });

  test('starts on a smaller circle when it starts inside', () => {
    const path = planPath({ x: 0.2, y: 0 }, { x: -5, y: 0 }, { around: [{ at: { x: 0, y: 0 }, radius: 0.5 }] });
    expect(closestOnPath({ x: 0, y: 0 }, path).distance).toBeCloseTo(0.2, 9);
  });

  test('out and back round a pole comes home', () => {
    const pole = { at: { x: 0, y: 8 }, radius: 0.5 };
    const path = planPath(ways.from, ways.from, { around: [pole] });
    const tangent = Math.sqrt(64 - 0.25);
    expect(path.length).toBeCloseTo(2 * tangent + 0.5 * (Math.PI + 2 * Math.asin(0.5 / 8)), 9);
  });
});

describe('past obstacles', () => {
  test('stays clear of one that is in the way', () => {
    fc.assert(
      fc.property(circles, (circle) => {
        fc.pre([ways.from, ways.to].every((p) => distance(p, circle.at) > circle.radius + 1e-6));
        const path = planPath(ways.from, ways.to, { obstacles: [circle] });
        const inTheWay = Math.abs(circle.at.x) < circle.radius && circle.at.y > 0 && circle.at.y < 10;
        expect(closestOnPath(circle.at, path).distance).toBeGreaterThan(circle.radius - 1e-6);
        if (inTheWay) expect(path.length).toBeCloseTo(Math.min(wrapped(circle, 1), wrapped(circle, -1)), 6);
      }),
      { numRuns: 500 },
    );
  });

  const wall = [-1, 0, 1].map((x) => ({ at: { x, y: 5 }, radius: 0.7 }));
  const file = [3, 4, 5, 6, 7].map((y) => ({ at: { x: 0.1, y }, radius: 0.7 }));
  const slalom = [2, 4, 6, 8].map((y, index) => ({ at: { x: index % 2 ? 0.3 : -0.3, y }, radius: 0.5 }));
  test.each([
    { name: 'a wall across', obstacles: wall, longest: 11 },
    { name: 'a file along', obstacles: file, longest: 10.5 },
    { name: 'a slalom', obstacles: slalom, longest: 10.5 },
  ])('stays clear of $name', ({ obstacles, longest }) => {
    const path = planPath(ways.from, ways.to, { obstacles });
    for (const { at, radius } of obstacles) expect(closestOnPath(at, path).distance).toBeGreaterThan(radius - 1e-6);
    expect(path.length).toBeLessThan(longest);
  });

  test('ignores one that holds an end', () => {
    const obstacles = [{ at: { x: 0.1, y: 9.8 }, radius: 0.7 }, { at: { x: 0.1, y: 0.2 }, radius: 0.7 }];
    expect(planPath(ways.from, ways.to, { obstacles })).toEqual(straight(ways.from, ways.to));
  });
});

describe('through points', () => {
  test.each([
    { name: 'a right angle', via: [{ x: 0, y: 5 }], to: { x: 5, y: 5 }, radius: 1, miss: Math.SQRT2 - 1 },
    { name: 'a sharp turn', via: [{ x: 0, y: 5 }], to: { x: 1, y: 0 }, radius: 0.055, miss: 0.5 },
    { name: 'short legs', via: [{ x: 0, y: 0.5 }], to: { x: 0.5, y: 0.5 }, radius: 0.25, miss: 0.25 * (Math.SQRT2 - 1) },
  ])('$name is rounded', ({ via, to, radius, miss }) => {
    const path = planPath(ways.from, to, { via });
    expect(path.segments.find((segment) => segment.kind === 'arc')?.radius).toBeCloseTo(radius, 2);
    expect(closestOnPath(via[0] as Point, path).distance).toBeCloseTo(miss, 6);
  });

  test.each([
    { name: 'straight on', via: [{ x: 0, y: 5 }], to: ways.to, length: 10 },
    { name: 'straight back', via: [{ x: 0, y: 5 }], to: ways.from, length: 10 },
    { name: 'a point twice', via: [{ x: 0, y: 5 }, { x: 0, y: 5 }], to: ways.to, length: 10 },
    { name: 'the start again', via: [ways.from], to: ways.to, length: 10 },
    { name: 'nowhere', via: [], to: ways.from, length: 0 },
  ])('$name has no curve', ({ via, to, length }) => {
    const path = planPath(ways.from, to, { via });
    expect(path.segments.every((segment) => segment.kind === 'line')).toBe(true);
    expect(path.length).toBeCloseTo(length, 9);
  });
});

test('places outside a path are clamped to it', () => {
  const path = straight({ x: 1, y: 1 }, { x: 4, y: 5 });
  expect([pointAt(path, -1), pointAt(path, 9)]).toEqual([path.from, path.to]);
  const nowhere = straight(path.from, path.from);
  expect([pointAt(nowhere, 1), directionAt(nowhere, 1)]).toEqual([path.from, { x: 0, y: 1 }]);
});

test('the nearest place on a path is nearer than any other', () => {
  fc.assert(
    fc.property(plans, places, numbers(0, 1), ({ path }, p, share) => {
      const nearest = closestOnPath(p, path);
      expect(distance(p, pointAt(path, nearest.s))).toBeCloseTo(nearest.distance, 6);
      expect(nearest.distance).toBeLessThanOrEqual(distance(p, pointAt(path, share * path.length)) + 1e-9);
    }),
    { numRuns: 500 },
  );
});

/** Length of tangent, arc and tangent round a circle kept on the left (1) or right (-1), from angles at its centre. */
function wrapped(circle: Circle, side: 1 | -1): number {
  const [a, b] = [ways.from, ways.to].map((p) => ({
    apart: distance(p, circle.at),
    angle: Math.atan2(p.y - circle.at.y, p.x - circle.at.x),
  })) as [{ apart: number; angle: number }, { apart: number; angle: number }];
  const opening = ({ apart }: { apart: number }) => Math.acos(circle.radius / apart);
  const sweep = side * (b.angle - a.angle) - opening(a) - opening(b);
  const turn = sweep - Math.floor(sweep / (2 * Math.PI)) * 2 * Math.PI;
  return Math.sqrt(a.apart ** 2 - circle.radius ** 2) + Math.sqrt(b.apart ** 2 - circle.radius ** 2) + turn * circle.radius;
}

function joints(path: Path): number[] {
  let before = 0;
  return path.segments.map((segment) => (before += segment.length));
}

function endsOf(path: Path, index: number): [Point, Point] {
  const segment = path.segments[index];
  if (segment?.kind === 'line') return [segment.from, segment.to];
  if (!segment) throw new Error('no such segment');
  const on = (angle: number) => ({ x: segment.centre.x + segment.radius * Math.cos(angle), y: segment.centre.y + segment.radius * Math.sin(angle) });
  return [on(segment.start), on(segment.start + segment.sweep)];
}

function svgOf(path: Path): string {
  const parts = path.segments.flatMap((segment, index) => {
    const [start, end] = endsOf(path, index);
    const move = `M ${start.x} ${start.y}`;
    if (segment.kind === 'line') return [move, `L ${end.x} ${end.y}`];
    // In halves, because one SVG arc cannot be told from its complement near half a round.
    const middle = segment.start + segment.sweep / 2;
    const half = { x: segment.centre.x + segment.radius * Math.cos(middle), y: segment.centre.y + segment.radius * Math.sin(middle) };
    const arc = (p: Point) => `A ${segment.radius} ${segment.radius} 0 0 ${segment.sweep > 0 ? 1 : 0} ${p.x} ${p.y}`;
    return [move, arc(half), arc(end)];
  });
  return parts.join(' ');
}
