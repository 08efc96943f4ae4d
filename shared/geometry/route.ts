/**
 * Where a run turns between its ends: points it goes through and circles it goes round, and the straight legs
 * that join them.
 */
import { closestOnSegment } from './closest.ts';
import { distance, type Point } from './point.ts';

export interface Circle {
  readonly at: Point;
  readonly radius: number;
}

/** A point (radius 0) to run through, or a circle to run round: on its left (1: anticlockwise) or its right (-1). */
export interface Stop extends Circle {
  readonly side: 1 | -1;
}

/** The straight from one stop to the next; tangent to both where they are circles. `heading` is a unit vector. */
export interface Leg {
  readonly from: Point;
  readonly to: Point;
  readonly heading: Point;
  readonly length: number;
}

/** All stops of a run from its start to its end; what the lists mean is said at `planPath`. Always at least the two ends. */
export function routeOf(
  from: Point,
  to: Point,
  via: readonly Point[],
  around: readonly Circle[],
  obstacles: readonly Circle[],
): readonly Stop[] {
  const points = [from, ...via, to].map((at) => ({ at, radius: 0 }));
  const circles = withoutRepeats(withCircles(points, around));
  const stops = shorterWayRound(circles.map((circle) => ({ ...circle, side: 1 })), around);
  const between = obstacles.filter((obstacle) => !holds(obstacle, from) && !holds(obstacle, to));
  const bent = stops.flatMap((stop, index) => {
    const next = stops[index + 1];
    return next ? pastObstacles(stop, next, between).slice(0, -1) : [stop];
  });
  return shorterWayRound(bent, around);
}

/**
 * The tangent from one stop to the next. With the centre of a stop on the left of the track, the track runs a radius
 * to its right. Where the circles lie too close for a tangent, the straight between their nearest sides.
 */
export function legBetween(a: Stop, b: Stop): Leg {
  const apart = distance(a.at, b.at);
  const offset = b.side * b.radius - a.side * a.radius;
  const straight = Math.sqrt(Math.max(0, apart * apart - offset * offset));
  const angle = Math.atan2(b.at.y - a.at.y, b.at.x - a.at.x) - Math.atan2(offset, straight);
  const [x, y] = [Math.cos(angle), Math.sin(angle)];
  const touch = ({ at, radius, side }: Stop) => ({ x: at.x + side * radius * y, y: at.y - side * radius * x });
  const from = touch(a);
  const to = touch(b);
  const length = distance(from, to);
  // Without a tangent the straight does not leave the circles in their own direction.
  const crooked = straight === 0 && length > 1e-9;
  return { from, to, heading: crooked ? { x: (to.x - from.x) / length, y: (to.y - from.y) / length } : { x, y }, length };
}

/** Signed radians that the track turns round a circle between two legs; never a full round. */
export function sweepAt(stop: Stop, before: Leg, after: Leg): number {
  const angle = (p: Point) => Math.atan2(p.y - stop.at.y, p.x - stop.at.x);
  const turn = stop.side * (angle(after.from) - angle(before.to));
  const positive = turn - Math.floor(turn / (2 * Math.PI)) * 2 * Math.PI;
  return positive > 2 * Math.PI - 1e-9 ? 0 : stop.side * positive;
}

// ---------------------------------------------------------------- circles to go round

/** Each circle at the place after the one before it where it lengthens the way least, never holding its neighbours. */
function withCircles(points: readonly Circle[], around: readonly Circle[]): Circle[] {
  const stops = [...points];
  let first = 1;
  for (const circle of around) {
    let place = first;
    for (let index = first; index < stops.length; index += 1) {
      if (detour(stops, index, circle) < detour(stops, place, circle)) place = index;
    }
    const neighbours = [stops[place - 1], stops[place]].filter((stop) => stop !== undefined);
    const radius = Math.min(circle.radius, ...neighbours.map((stop) => distance(stop.at, circle.at)));
    stops.splice(place, 0, { at: circle.at, radius: Math.max(0, radius) });
    first = place + 1;
  }
  return stops;
}

function detour(stops: readonly Circle[], place: number, circle: Circle): number {
  const before = stops[place - 1];
  const after = stops[place];
  if (!before || !after) return Infinity;
  return distance(before.at, circle.at) + distance(circle.at, after.at) - distance(before.at, after.at);
}

/** Turns the circles to go round over, one at a time, as long as that shortens the whole way. */
function shorterWayRound(stops: readonly Stop[], around: readonly Circle[]): readonly Stop[] {
  const middles = new Set(around.map((circle) => circle.at));
  for (const [index, stop] of stops.entries()) {
    if (stop.radius === 0 || !middles.has(stop.at)) continue;
    const turned = stops.with(index, { ...stop, side: stop.side === 1 ? -1 : 1 });
    if (lengthOf(turned) < lengthOf(stops) - 1e-9) return shorterWayRound(turned, around);
  }
  return stops;
}

function lengthOf(stops: readonly Stop[]): number {
  const legs = stops.slice(1).map((stop, index) => legBetween(stops[index] as Stop, stop));
  return legs.reduce((sum, leg, index) => {
    const [stop, next] = [stops[index + 1] as Stop, legs[index + 1]];
    return sum + leg.length + (next ? stop.radius * Math.abs(sweepAt(stop, leg, next)) : 0);
  }, 0);
}

/** Between the ends, a stop that is the one before it over again says nothing. */
function withoutRepeats(stops: readonly Circle[]): Circle[] {
  return stops.filter((stop, index) => {
    const before = stops[index - 1];
    const between = before !== undefined && index < stops.length - 1;
    return !between || stop.radius !== before.radius || distance(stop.at, before.at) > 1e-9;
  });
}

// ---------------------------------------------------------------- obstacles

/**
 * The stops from `start` to `end` with the obstacles that the straight between them would cross, each bent round on
 * the nearer side. Every obstacle is put in at most once, so this ends; one that the others have taken the track away
 * from is left out again.
 */
function pastObstacles(start: Stop, end: Stop, obstacles: readonly Circle[]): Stop[] {
  const ends = legBetween(start, end);
  const left = new Set(obstacles.filter((obstacle) => !holds(obstacle, ends.from) && !holds(obstacle, ends.to)));
  let stops = [start, end];
  for (;;) {
    const crossing = firstCrossing(stops, left);
    if (!crossing) return stops;
    left.delete(crossing.obstacle);
    stops = stops.toSpliced(crossing.place, 0, { ...crossing.obstacle, side: crossing.side });
    stops = stops.filter((stop, index) => !loops(stop, stops[index - 1], stops[index + 1]));
  }
}

/** The first obstacle on the first leg that crosses one. Obstacles that overlap are a wall: passed on the same side. */
function firstCrossing(
  stops: readonly Stop[],
  obstacles: ReadonlySet<Circle>,
): { obstacle: Circle; place: number; side: 1 | -1 } | null {
  for (let place = 1; place < stops.length; place += 1) {
    const before = stops[place - 1] as Stop;
    const after = stops[place] as Stop;
    const leg = legBetween(before, after);
    let obstacle: Circle | null = null;
    let soonest = Infinity;
    for (const each of obstacles) {
      const { fraction, distance } = closestOnSegment(each.at, leg.from, leg.to);
      if (distance < each.radius - 1e-9 && fraction < soonest) [obstacle, soonest] = [each, fraction];
    }
    if (!obstacle) continue;
    const { at, radius } = obstacle;
    const wall = [before, after].find((stop) => stop.radius > 0 && distance(stop.at, at) < stop.radius + radius);
    return { obstacle, place, side: wall?.side ?? sideOf(at, leg) };
  }
  return null;
}

function sideOf(p: Point, leg: Leg): 1 | -1 {
  return leg.heading.x * (p.y - leg.from.y) - leg.heading.y * (p.x - leg.from.x) >= 0 ? 1 : -1;
}

function loops(stop: Stop, before: Stop | undefined, after: Stop | undefined): boolean {
  if (!before || !after) return false;
  return Math.abs(sweepAt(stop, legBetween(before, stop), legBetween(stop, after))) > Math.PI;
}

function holds(circle: Circle, p: Point): boolean {
  return distance(circle.at, p) < circle.radius;
}
