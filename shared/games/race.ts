/**
 * The race to a ball that has been struck: can a player get to its way before it, and before its receiver?
 * Metres, seconds after the strike, metres a second.
 *
 * A player goes on as they were until they have reacted. Then they run straight for a point: the part of their speed that
 * goes that way stays with them, what goes across is lost, what goes the other way is braked off first; from there the
 * speed grows towards their best as in every run, v(t) = V - (V - v0) e^(-t/τ). They are at a point when it is within
 * reach of a foot. A ball that comes so near that body and leg shut its way from the stand is stopped without any reaction.
 */
import { closestOnSegment } from '../geometry/closest.ts';
import { along, distance, type Point } from '../geometry/point.ts';
import { ballAt, timeAtDistance, timesBelow, type Flight } from '../physics/ball.ts';
import { constants } from '../physics/constants.ts';
import type { Ability } from '../physics/runner.ts';

/** A ball on its straight way. */
export interface Struck {
  readonly flight: Flight;
  readonly from: Point;
  readonly to: Point;
  /** Who it is for, as they are when it is struck; they may come to meet it. */
  readonly receiver: Chaser | null;
}

/** Someone who may go for the ball. */
export interface Chaser {
  /** Where they are, and how fast, when they have reacted. */
  readonly at: Point;
  readonly velocity: Point;
  /** When that is. */
  readonly reacted: number;
}

export type Effort = Pick<Ability, 'topSpeed' | 'tau' | 'braking'>;

export interface Race {
  /** How much later than the ball, or than its receiver, they are there at best. Negative: they are first by so much. */
  readonly margin: number;
  /** Where that is: metres along the way. */
  readonly s: number;
}

export interface Place {
  /** The first place where they are in time; where nobody is, the place where they come closest to it. */
  readonly at: Point;
  /** When the ball is there. */
  readonly time: number;
}

/** The way of one ball, made ready to be asked about many players. */
export interface Way {
  readonly ball: Struck;
  readonly effort: Effort;
  readonly receiver: Seen | null;
  /** Where the ball is low enough to be played. */
  readonly low: readonly Stretch[];
}

/** The search is this exact: seconds. */
const exact = 0.01;
/** Metres of the ball's way that are not divided any further. */
const finest = 1e-3;
/** `effort`: how everyone runs for it. */
export function wayOf(ball: Struck, effort: Effort): Way {
  const way = { ball, effort, receiver: ball.receiver && seen(ball, ball.receiver), low: [] };
  const low = timesBelow(ball.flight, constants.reachHeight.value).map((times) => {
    const [from, to] = [endAt(way, ballAt(ball.flight, times[0]).distance), endAt(way, ballAt(ball.flight, times[1]).distance)];
    return stretch(from, to, [from, to]);
  });
  return { ...way, low };
}

/**
 * How the race goes for one player: the least of `seconds late` over all points of the way that are low enough to be
 * played. Null when that is not below `limit`. Branch and bound: a stretch is given up only when nobody could be less
 * late anywhere on it, with the shortest distance and the best speed on it together; so the answer is right to `exact`.
 */
export function race(way: Way, chaser: Chaser, limit = Infinity): Race | null {
  if (isFar(way, chaser, limit - exact)) return null;
  const side = seen(way.ball, chaser);
  let best = limit;
  let where = -1;
  const open = [...way.low];
  for (let each = open.pop(); each; each = open.pop()) {
    if (best < Infinity && !mayBeat(way, side, each, best - exact)) continue;
    for (const end of each.fresh) {
      if (!isBefore(way, side, end, best)) continue;
      const late = arrival(side, way.effort, end.s) - dueAt(way, end);
      if (late < best) [best, where] = [late, end.s];
    }
    if (each.to.s - each.from.s > finest) pushHalves(open, way, each, side);
  }
  return where < 0 ? null : { margin: best, s: where };
}

/** Where the race of a player is told, once it is known how it goes. */
export function placeOf(way: Way, chaser: Chaser, { margin, s: best }: Race): Place {
  const s = margin < 0 ? firstInTime(way, seen(way.ball, chaser), best) : best;
  return { at: pointOn(way.ball, s), time: timeAtDistance(way.ball.flight, s) };
}

/** Whether a player is first by more than `lead` seconds anywhere: the same search, as exact, ended by the first yes. */
export function isFirst(way: Way, chaser: Chaser, lead: number): boolean {
  if (isFar(way, chaser, -lead - exact)) return false;
  const side = seen(way.ball, chaser);
  const open = [...way.low];
  for (let each = open.pop(); each; each = open.pop()) {
    if (!mayBeat(way, side, each, -lead - exact)) continue;
    for (const end of each.fresh) if (isBefore(way, side, end, -lead)) return true;
    if (each.to.s - each.from.s > finest) pushHalves(open, way, each, side);
  }
  return false;
}

/** When someone can stand on a point, in the same way of running. */
export function timeTo({ at, velocity, reacted }: Chaser, effort: Effort, point: Point): number {
  const gap = distance(at, point);
  const speed = gap > 0 ? (velocity.x * (point.x - at.x) + velocity.y * (point.y - at.y)) / gap : 0;
  return reacted + timeToRun(gap, speed, effort);
}

/** When someone has a point within reach of a foot, in the same way of running. */
export function timeToReach({ at, velocity, reacted }: Chaser, effort: Effort, point: Point): number {
  const gap = distance(at, point);
  const speed = gap > 0 ? (velocity.x * (point.x - at.x) + velocity.y * (point.y - at.y)) / gap : 0;
  return timeFor(gap, speed, reacted, effort);
}

// ---------------------------------------------------------------- the ball

/** A place on the way: metres along it, when the ball is there, and when it must be reached at the latest. */
interface End {
  readonly s: number;
  readonly time: number;
  /** Worked out when first asked for, as all that is null here: most are never asked for, the others by many players. */
  due: number | null;
}

/** A part of the way, with the latest that any place on it may be reached. */
interface Stretch {
  readonly from: End;
  readonly to: End;
  /** Its ends, without the one that it shares with what it is a half of. */
  readonly fresh: readonly End[];
  latest: number | null;
  halves: readonly [Stretch, Stretch] | null;
}

function endAt({ ball }: Way, s: number): End {
  return { s, time: timeAtDistance(ball.flight, s), due: null };
}

function stretch(from: End, to: End, fresh: readonly End[]): Stretch {
  return { from, to, fresh, latest: null, halves: null };
}

/** In time is who is there before the ball, and before the receiver if they are there first. */
function dueAt({ receiver, effort }: Way, end: End): number {
  return (end.due ??= receiver && inTime(effort, receiver, end.s, end.time) ? arrival(receiver, effort, end.s) : end.time);
}

function latestOn(way: Way, each: Stretch): number {
  return (each.latest ??= way.receiver ? latestFor(way, way.receiver, each) : each.to.time);
}

function latestFor(way: Way, receiver: Seen, { from, to }: Stretch): number {
  const farther = gapTo(receiver, from.s) > gapTo(receiver, to.s) ? from : to;
  if (receiver.stands && dueAt(way, farther) < farther.time) return dueAt(way, farther);
  const farthest = gapTo(receiver, farther.s);
  const slowest = -fastestTowards(receiver, from.s, to.s, -1);
  return coversIn(farthest, slowest, to.time - receiver.reacted, way.effort) ? timeFor(farthest, slowest, receiver.reacted, way.effort) : to.time;
}

function halves(way: Way, each: Stretch): readonly [Stretch, Stretch] {
  if (each.halves) return each.halves;
  const middle = endAt(way, (each.from.s + each.to.s) / 2);
  const fresh = [middle];
  each.halves = [stretch(each.from, middle, fresh), stretch(middle, each.to, fresh)];
  return each.halves;
}

/** The half that is nearer to a player comes out first. */
function pushHalves(open: Stretch[], way: Way, each: Stretch, side: Seen): void {
  const [a, b] = halves(way, each);
  if (side.ahead < a.to.s) open.push(b, a);
  else open.push(a, b);
}

function pointOn({ flight, from, to }: Struck, s: number): Point {
  return flight.length > 0 ? along(from, to, s / flight.length) : from;
}

// ---------------------------------------------------------------- the player, seen from the ball's way

/**
 * Whether someone cannot be less than `late` behind time anywhere, even if they were at their best all the time and the
 * ball gave them its whole way. Most are done with by this, before anything is made ready for them.
 */
function isFar({ ball, effort }: Way, { at, velocity, reacted }: Chaser, late: number): boolean {
  const way = closestOnSegment(at, ball.from, ball.to).distance - constants.reach.value;
  const fastest = Math.max(effort.topSpeed, Math.sqrt(velocity.x ** 2 + velocity.y ** 2));
  return way > 0 && way >= fastest * (ball.flight.time + late - reacted);
}

/** A chaser in the frame of the ball's way: `ahead` metres along it and `off` metres beside it, with the speeds that go so. */
interface Seen {
  readonly ahead: number;
  readonly off: number;
  readonly forward: number;
  readonly across: number;
  readonly stands: boolean;
  readonly reacted: number;
}

function seen({ flight, from, to }: Struck, { at, velocity, reacted }: Chaser): Seen {
  const [x, y] = flight.length > 0 ? [(to.x - from.x) / flight.length, (to.y - from.y) / flight.length] : [0, 1];
  return {
    ahead: (at.x - from.x) * x + (at.y - from.y) * y,
    off: (at.y - from.y) * x - (at.x - from.x) * y,
    forward: velocity.x * x + velocity.y * y,
    across: velocity.y * x - velocity.x * y,
    stands: velocity.x === 0 && velocity.y === 0,
    reacted,
  };
}

function gapTo(side: Seen, s: number): number {
  return Math.sqrt((s - side.ahead) ** 2 + side.off ** 2);
}

/** Speed towards a point of the way. */
function towards(side: Seen, s: number): number {
  if (side.stands) return 0;
  const gap = gapTo(side, s);
  return gap > 0 ? (side.forward * (s - side.ahead) - side.across * side.off) / gap : 0;
}

/** The greatest speed towards (`sign` 1) or away from (-1) any point of a stretch. */
function fastestTowards(side: Seen, low: number, high: number, sign: 1 | -1): number {
  if (side.stands) return 0;
  const ends = Math.max(sign * towards(side, low), sign * towards(side, high));
  const straight = side.ahead - (side.off * side.forward) / side.across;
  return straight > low && straight < high ? Math.max(ends, sign * towards(side, straight)) : ends;
}

function arrival(side: Seen, effort: Effort, s: number): number {
  return timeFor(gapTo(side, s), towards(side, s), side.reacted, effort);
}

/** Whether they are at a point before a time. */
function inTime(effort: Effort, side: Seen, s: number, time: number): boolean {
  const gap = gapTo(side, s);
  return gap <= constants.standingReach.value ? time > 0 : coversIn(gap, towards(side, s), time - side.reacted, effort);
}

/** Whether they are less than `late` behind time at a place. The receiver, who only makes it harder, is asked last. */
function isBefore(way: Way, side: Seen, end: End, late: number): boolean {
  const known = end.due ?? end.time;
  return inTime(way.effort, side, end.s, known + late) && (dueAt(way, end) === known || inTime(way.effort, side, end.s, dueAt(way, end) + late));
}

/** Whether someone could be less than `late` behind time anywhere on a stretch. */
function mayBeat(way: Way, side: Seen, each: Stretch, late: number): boolean {
  const { from, to } = each;
  const nearest = gapTo(side, Math.min(Math.max(side.ahead, from.s), to.s));
  if (nearest <= constants.standingReach.value) return latestOn(way, each) + late > 0;
  const known = each.latest ?? to.time;
  const spare = late - side.reacted;
  const speed = fastestTowards(side, from.s, to.s, 1);
  if (!coversIn(nearest, speed, known + spare, way.effort)) return false;
  return latestOn(way, each) === known || coversIn(nearest, speed, latestOn(way, each) + spare, way.effort);
}

/** The first place at which they are in time, to `finest`; `known` is one where they are. */
function firstInTime(way: Way, side: Seen, known: number): number {
  const open = [...way.low].reverse();
  for (let each = open.pop(); each; each = open.pop()) {
    const { from, to } = each;
    if (from.s >= known) continue;
    if (isBefore(way, side, from, 0)) return from.s;
    if (!mayBeat(way, side, each, 0)) continue;
    if (to.s - from.s > finest) {
      const [first, second] = halves(way, each);
      open.push(second, first);
    } else if (isBefore(way, side, to, 0)) return to.s;
  }
  return known;
}

// ---------------------------------------------------------------- running

/** Seconds after the strike until a point `gap` metres away, towards which they move with `speed`, is within reach. */
function timeFor(gap: number, speed: number, reacted: number, effort: Effort): number {
  if (gap <= constants.standingReach.value) return 0;
  const way = gap - constants.reach.value;
  return way <= 0 ? reacted : reacted + timeToRun(way, speed, effort);
}

/** Seconds for a way that begins with a speed along it; one against it is braked off first. */
function timeToRun(way: number, speed: number, { topSpeed, tau, braking }: Effort): number {
  if (speed >= 0) return timeToCover(way, speed, topSpeed, tau);
  return timeToCover(way + (speed * speed) / (2 * braking), 0, topSpeed, tau) - speed / braking;
}

/** Whether a point `gap` metres away comes within reach in less than a time. */
function coversIn(gap: number, speed: number, time: number, effort: Effort): boolean {
  const way = gap - constants.reach.value;
  if (way <= 0) return time > 0;
  const { braking } = effort;
  return speed >= 0 ? covers(way, speed, time, effort) : covers(way + (speed * speed) / (2 * braking), 0, time + speed / braking, effort);
}

function covers(way: number, speed: number, time: number, { topSpeed, tau }: Effort): boolean {
  // At their best all the time, and at their best but for all that getting there ever costs: two sums instead of an exponential for most.
  if (way >= Math.max(speed, topSpeed) * time) return false;
  return way < topSpeed * time - Math.max(0, topSpeed - speed) * tau || covered(time, speed, topSpeed, tau) > way;
}

function covered(time: number, speed: number, topSpeed: number, tau: number): number {
  return topSpeed * time + (topSpeed - speed) * tau * Math.expm1(-time / tau);
}

/** Newton from above, where nobody can still be short of it; convex, so it never steps over the answer. */
function timeToCover(way: number, speed: number, topSpeed: number, tau: number): number {
  let time = way / topSpeed + tau;
  for (let step = 0; step < 40; step += 1) {
    const left = Math.exp(-time / tau);
    const over = topSpeed * time - (topSpeed - speed) * tau * (1 - left) - way;
    const next = time - over / (topSpeed - (topSpeed - speed) * left);
    if (!(Math.abs(next - time) > 1e-6)) return next;
    time = next;
  }
  return time;
}
