/**
 * The ground track of a run: straight lines and arcs, in metres.
 * Neighbouring segments meet, and meet smoothly except at corners that leave no room to be rounded.
 */
import { constants } from '../physics/constants.ts';
import { closestOnSegment } from './closest.ts';
import { distance, plus, type Point } from './point.ts';
import { legBetween, routeOf, sweepAt, type Circle, type Leg, type Stop } from './route.ts';

export type { Circle } from './route.ts';

export type Segment =
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point; readonly length: number }
  | {
      readonly kind: 'arc';
      readonly centre: Point;
      readonly radius: number;
      /** Radians, anticlockwise from the x axis: where on the circle the arc starts. */
      readonly start: number;
      /** Radians, positive anticlockwise. */
      readonly sweep: number;
      readonly length: number;
    };

export interface Path {
  readonly segments: readonly Segment[];
  readonly length: number;
  readonly from: Point;
  readonly to: Point;
}

export function straight(from: Point, to: Point): Path {
  return pathOf([line(from, to)], from, to);
}

/** One arc that bulges to the right of the straight way by `height` metres at its middle; straight where there is no room. */
export function bowed(from: Point, to: Point, height: number): Path {
  const chord = distance(from, to);
  if (height <= 0 || chord <= 2 * height) return straight(from, to);
  const radius = (chord * chord) / (8 * height) + height / 2;
  const left = { x: -(to.y - from.y) / chord, y: (to.x - from.x) / chord };
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const centre = plus(middle, left.x * (radius - height), left.y * (radius - height));
  const sweep = 2 * Math.asin(chord / (2 * radius));
  const arc: Segment = { kind: 'arc', centre, radius, start: Math.atan2(from.y - centre.y, from.x - centre.x), sweep, length: radius * sweep };
  return pathOf([arc], from, to);
}

/**
 * The way from one point to another: through the `via` points in order, corners rounded where there is room; round
 * every `around` circle in order, touching it even where the straight way misses it, the shorter way round; and past
 * `obstacles` on the nearer side. An obstacle that holds an end of a leg does not count for that leg.
 */
export function planPath(
  from: Point,
  to: Point,
  options: { via?: readonly Point[]; around?: readonly Circle[]; obstacles?: readonly Circle[] },
): Path {
  const stops = routeOf(from, to, options.via ?? [], options.around ?? [], options.obstacles ?? []);
  const legs = stops.slice(1).map((stop, index) => legBetween(stops[index] as Stop, stop));
  const bends = stops.map((stop, index) => bendAt(stop, legs[index - 1], legs[index]));
  const segments = legs.flatMap((leg, index) => {
    const before = bends[index] as Bend;
    const after = bends[index + 1] as Bend;
    const track = line(towards(leg.from, leg, before.setback), towards(leg.to, leg, -after.setback));
    return after.arc ? [track, after.arc] : [track];
  });
  return pathOf(segments, from, to);
}

/** The point `s` metres along, clamped to the path. */
export function pointAt(path: Path, s: number): Point {
  const found = segmentAt(path, s);
  return found ? pointOn(found.segment, found.s) : path.from;
}

/** The unit vector in which a runner moves `s` metres along, clamped; up the pitch on a path without length. */
export function directionAt(path: Path, s: number): Point {
  const found = segmentAt(path, s);
  return found ? directionOn(found.segment, found.s) : { x: 0, y: 1 };
}

/** The point `s` metres along one segment. */
export function pointOn(segment: Segment, s: number): Point {
  switch (segment.kind) {
    case 'line': {
      const share = s / segment.length;
      return plus(segment.from, (segment.to.x - segment.from.x) * share, (segment.to.y - segment.from.y) * share);
    }
    case 'arc': {
      const angle = segment.start + (segment.sweep * s) / segment.length;
      return plus(segment.centre, segment.radius * Math.cos(angle), segment.radius * Math.sin(angle));
    }
  }
}

/** The unit vector of motion `s` metres along one segment. */
export function directionOn(segment: Segment, s: number): Point {
  switch (segment.kind) {
    case 'line':
      return { x: (segment.to.x - segment.from.x) / segment.length, y: (segment.to.y - segment.from.y) / segment.length };
    case 'arc': {
      const angle = segment.start + (segment.sweep * s) / segment.length;
      const turn = Math.sign(segment.sweep);
      return { x: -turn * Math.sin(angle), y: turn * Math.cos(angle) };
    }
  }
}

/** The nearest point of a path: how many metres along it, and how far away. */
export function closestOnPath(p: Point, path: Path): { readonly s: number; readonly distance: number } {
  let best = { s: 0, distance: distance(p, path.from) };
  let before = 0;
  for (const segment of path.segments) {
    const on = closestOnPiece(p, segment);
    if (on.distance < best.distance) best = { s: before + on.s, distance: on.distance };
    before += segment.length;
  }
  return best;
}

// ---------------------------------------------------------------- segments

function pathOf(segments: readonly Segment[], from: Point, to: Point): Path {
  const real = segments.filter((segment) => segment.length > 1e-9);
  return { segments: real, length: real.reduce((sum, segment) => sum + segment.length, 0), from, to };
}

function line(from: Point, to: Point): Segment {
  return { kind: 'line', from, to, length: distance(from, to) };
}

function arc(centre: Point, radius: number, from: Point, sweep: number): Segment {
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  return { kind: 'arc', centre, radius, start, sweep, length: radius * Math.abs(sweep) };
}

function segmentAt(path: Path, s: number): { segment: Segment; s: number } | null {
  let before = 0;
  let last: Segment | null = null;
  for (const segment of path.segments) {
    if (s < before + segment.length) return { segment, s: Math.max(0, s - before) };
    before += segment.length;
    last = segment;
  }
  return last && { segment: last, s: last.length };
}

function closestOnPiece(p: Point, segment: Segment): { s: number; distance: number } {
  switch (segment.kind) {
    case 'line': {
      const on = closestOnSegment(p, segment.from, segment.to);
      return { s: on.fraction * segment.length, distance: on.distance };
    }
    case 'arc': {
      const angle = Math.atan2(p.y - segment.centre.y, p.x - segment.centre.x);
      const turn = Math.sign(segment.sweep) * (angle - segment.start);
      const round = turn - Math.floor(turn / (2 * Math.PI)) * 2 * Math.PI;
      const candidates = [0, segment.length, Math.min(segment.length, segment.radius * round)];
      const reached = candidates.map((s) => ({ s, distance: distance(p, pointOn(segment, s)) }));
      return reached.reduce((best, each) => (each.distance < best.distance ? each : best));
    }
  }
}

// ---------------------------------------------------------------- bends

/** How the track gets from one leg to the next; `setback` is what it takes from the straight of both. */
interface Bend {
  readonly setback: number;
  readonly arc: Segment | null;
}

function bendAt(stop: Stop, before: Leg | undefined, after: Leg | undefined): Bend {
  if (!before || !after) return { setback: 0, arc: null };
  if (stop.radius > 0) {
    return { setback: 0, arc: arc(stop.at, stop.radius, before.to, sweepAt(stop, before, after)) };
  }
  return roundedCorner(stop.at, before, after);
}

/**
 * A corner of turn θ rounded with radius r takes r tan(θ/2) from both legs and misses its point by r (1/cos(θ/2) - 1).
 */
function roundedCorner(corner: Point, before: Leg, after: Leg): Bend {
  const { x, y } = before.heading;
  const turn = Math.atan2(x * after.heading.y - y * after.heading.x, x * after.heading.x + y * after.heading.y);
  const half = Math.tan(Math.abs(turn) / 2);
  const room = Math.min(before.length, after.length) / 2;
  const radius = Math.min(constants.cornerRadius.value, room / half, constants.cornerCut.value / (Math.hypot(1, half) - 1));
  if (!(radius * Math.abs(turn) > 1e-6)) return { setback: 0, arc: null };
  const setback = radius * half;
  const start = towards(corner, before, -setback);
  const side = Math.sign(turn);
  return { setback, arc: arc(plus(start, -side * radius * y, side * radius * x), radius, start, turn) };
}

function towards(from: Point, leg: Leg, length: number): Point {
  return plus(from, leg.heading.x * length, leg.heading.y * length);
}
