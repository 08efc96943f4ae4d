/** Zones as corners in order, either way round, the last joined to the first. Metres and square metres. */
import { closestOnSegment } from './closest.ts';
import type { Point } from './point.ts';

export function area(points: readonly Point[]): number {
  return Math.abs(signedArea(points));
}

/** The centre of gravity; of the corners alone where they enclose nothing. */
export function centroid(points: readonly Point[]): Point {
  const origin = points[0] ?? { x: 0, y: 0 };
  const twice = 2 * signedArea(points);
  let [x, y] = [0, 0];
  for (const [a, b] of edges(points)) {
    const cross = (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y);
    x += (a.x + b.x - 2 * origin.x) * cross;
    y += (a.y + b.y - 2 * origin.y) * cross;
  }
  if (Math.abs(twice) > 1e-12) return { x: origin.x + x / (3 * twice), y: origin.y + y / (3 * twice) };
  const count = Math.max(1, points.length);
  return { x: points.reduce((sum, p) => sum + p.x, 0) / count, y: points.reduce((sum, p) => sum + p.y, 0) / count };
}

/** Whether a point lies inside or no further than `tolerance` metres outside. */
export function contains(points: readonly Point[], p: Point, tolerance: number): boolean {
  let inside = false;
  for (const [a, b] of edges(points)) {
    if (closestOnSegment(p, a, b).distance <= tolerance) return true;
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) * (b.x - a.x)) / (b.y - a.y)) inside = !inside;
  }
  return inside;
}

/**
 * Whether two sides cross or touch other than at the corner they share. A line sweeps from left to right and keeps the
 * sides it meets in order of height; sides that cross are at some time next to each other (Shamos and Hoey, 1976).
 */
export function selfCrosses(points: readonly Point[]): boolean {
  const corners = points.filter((p, index) => !samePlace(p, points[(index + 1) % points.length] as Point));
  if (corners.length < 3) return false;
  const sides = edges(corners).map(([a, b], index): Swept => {
    const [left, right] = before(a, b) < 0 ? [a, b] : [b, a];
    return { a, b, index, left, right };
  });
  const cross = (p: Swept | undefined, q: Swept | undefined) => {
    if (!p || !q) return false;
    const gap = Math.abs(p.index - q.index);
    return gap === 1 || gap === sides.length - 1 ? foldsBack(p, q) : meet(p, q);
  };
  const events = sides
    .flatMap((side) => [{ side, at: side.left, opens: true }, { side, at: side.right, opens: false }])
    .sort((p, q) => before(p.at, q.at) || Number(q.opens) - Number(p.opens));

  const open: Swept[] = [];
  for (const { side, opens } of events) {
    const place = opens ? placeOf(side, open) : open.indexOf(side);
    if (opens) {
      if (cross(open[place - 1], side) || cross(side, open[place])) return true;
      open.splice(place, 0, side);
    } else {
      open.splice(place, 1);
      if (cross(open[place - 1], open[place])) return true;
    }
  }
  return false;
}

/**
 * The area two simple polygons share. Each is the signed sum of the strips below its sides, so what they share is the
 * signed sum of what is below both of two sides, over all pairs.
 */
export function overlap(a: readonly Point[], b: readonly Point[]): number {
  const base = Math.min(...[a, b].map((points) => points.reduce((low, p) => Math.min(low, p.y), Infinity)));
  let sum = 0;
  for (const [p, q] of edges(a)) {
    for (const [r, s] of edges(b)) sum += sharedBelow(p, q, r, s, base);
  }
  return Math.max(0, sum * Math.sign(signedArea(a)) * Math.sign(signedArea(b)));
}

/** A circle as a polygon of the same area. */
export function roundPolygon(at: Point, radius: number, corners: number): Point[] {
  const step = (2 * Math.PI) / corners;
  const reach = radius * Math.sqrt(step / Math.sin(step));
  return Array.from({ length: corners }, (_, index) => ({
    x: at.x + reach * Math.cos(index * step),
    y: at.y + reach * Math.sin(index * step),
  }));
}

type Side = readonly [Point, Point];

function edges(points: readonly Point[]): Side[] {
  return points.map((p, index) => [p, points[(index + 1) % points.length] as Point]);
}

/** Positive anticlockwise. Measured from the first corner, which keeps the digits of small polygons far away. */
function signedArea(points: readonly Point[]): number {
  const origin = points[0] ?? { x: 0, y: 0 };
  return edges(points).reduce(
    (sum, [a, b]) => sum + ((a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y)) / 2,
    0,
  );
}

// ---------------------------------------------------------------- crossings

function samePlace(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}

interface Ends {
  readonly a: Point;
  readonly b: Point;
}

interface Swept extends Ends {
  readonly index: number;
  readonly left: Point;
  readonly right: Point;
}

/** From left to right, and from below on a vertical: negative when `a` comes first. */
function before(a: Point, b: Point): number {
  return a.x - b.x || a.y - b.y;
}

/** How many of the open sides, which are in order, run below the left end of a side. */
function placeOf(side: Swept, open: readonly Swept[]): number {
  let low = 0;
  let high = open.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const { left, right } = open[middle] as Swept;
    if ((turn(left, right, side.left) || turn(left, right, side.right)) > 0) low = middle + 1;
    else high = middle;
  }
  return low;
}

function meet(p: Ends, q: Ends): boolean {
  if (Math.max(p.a.x, p.b.x) < Math.min(q.a.x, q.b.x) || Math.max(q.a.x, q.b.x) < Math.min(p.a.x, p.b.x)) return false;
  if (Math.max(p.a.y, p.b.y) < Math.min(q.a.y, q.b.y) || Math.max(q.a.y, q.b.y) < Math.min(p.a.y, p.b.y)) return false;
  return turn(p.a, p.b, q.a) * turn(p.a, p.b, q.b) <= 0 && turn(q.a, q.b, p.a) * turn(q.a, q.b, p.b) <= 0;
}

/** Two sides that share a corner lie on each other. */
function foldsBack(p: Ends, q: Ends): boolean {
  const [corner, end, other] = samePlace(p.b, q.a) ? [p.b, p.a, q.b] : [p.a, p.b, q.a];
  const dot = (end.x - corner.x) * (other.x - corner.x) + (end.y - corner.y) * (other.y - corner.y);
  return turn(corner, end, other) === 0 && dot > 0;
}

/** The sign of the turn from a over b to c: 1 to the left, -1 to the right, 0 straight on within rounding. */
function turn(a: Point, b: Point, c: Point): number {
  const left = (b.x - a.x) * (c.y - a.y);
  const right = (b.y - a.y) * (c.x - a.x);
  return Math.abs(left - right) <= 4 * Number.EPSILON * (Math.abs(left) + Math.abs(right)) ? 0 : Math.sign(left - right);
}

// ---------------------------------------------------------------- overlap

/** Area above `base` and below both sides, negative when one of them runs backwards. */
function sharedBelow(p: Point, q: Point, r: Point, s: Point, base: number): number {
  const from = Math.max(Math.min(p.x, q.x), Math.min(r.x, s.x));
  const to = Math.min(Math.max(p.x, q.x), Math.max(r.x, s.x));
  if (!(to > from)) return 0;
  const first = [heightAt(p, q, from) - base, heightAt(p, q, to) - base] as const;
  const second = [heightAt(r, s, from) - base, heightAt(r, s, to) - base] as const;
  return Math.sign(q.x - p.x) * Math.sign(s.x - r.x) * (to - from) * meanOfLower(first, second);
}

function heightAt(p: Point, q: Point, x: number): number {
  return p.y + ((q.y - p.y) * (x - p.x)) / (q.x - p.x);
}

/** The mean of the lower of two straight lines, each given by its heights at both ends. */
function meanOfLower(a: readonly [number, number], b: readonly [number, number]): number {
  const before = a[0] - b[0];
  const after = a[1] - b[1];
  if (before * after >= 0) return before + after <= 0 ? (a[0] + a[1]) / 2 : (b[0] + b[1]) / 2;
  const share = before / (before - after);
  const crossing = a[0] + (a[1] - a[0]) * share;
  return (Math.min(a[0], b[0]) + crossing) * (share / 2) + (Math.min(a[1], b[1]) + crossing) * ((1 - share) / 2);
}
