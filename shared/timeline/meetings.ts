/** Who and what comes too close on the way: found by following pairs of movements in time. */
import { closestApproach } from '../geometry/closest.ts';
import { along, distance, type Point } from '../geometry/point.ts';
import type { ActorId } from '../model/drill.ts';
import { ballAt, timesBelow } from '../physics/ball.ts';
import { greatestSpeed } from '../physics/runner.ts';
import { onTheMove } from './at.ts';
import type { Move, Pass, Timeline } from './timeline.ts';

/** Metres between the middles of two runners, and between a ball and a runner or another ball, that are too close. */
const armsReach = 0.8;
const ballGap = 0.5;
/** Where a ball is played or taken, and where a run begins or ends, people are close and know it: metres around it. */
const ends = 1.3;
/** Metres a second at which two bodies close in on each other before it counts as running into each other. */
const closing = 2;
/** A ball higher than this goes over everybody: metres. */
const overhead = 2;
/** Where a ball at another height is taken to be: metres. */
const farAway: Point = { x: 1e6, y: 1e6 };
/** Seconds between two looks; between them both are taken to move straight. */
const look = 0.1;

export interface Meeting {
  readonly earlier: Move;
  readonly earlierActor: ActorId;
  readonly later: Move;
  readonly laterActor: ActorId;
  readonly at: Point;
  readonly time: number;
}

/** Pairs of players who come within arm's reach while both are moving; the first time for each pair. */
export function meetings(timeline: Timeline): Meeting[] {
  const found = new Map<string, Meeting>();
  let under: Going[] = [];
  for (const later of goings(timeline)) {
    under = under.filter((each) => each.move.end > later.move.start);
    for (const earlier of under) {
      if (earlier.actor === later.actor || !boxesTouch(earlier.box, later.box, armsReach)) continue;
      const pair = [earlier.actor, later.actor].sort().join(' & ');
      if (found.has(pair)) continue;
      const close = firstClose(
        { start: later.move.start, end: Math.min(earlier.move.end, later.move.end), reach: armsReach, closing, fastest: earlier.fastest + later.fastest, known: [earlier.move.path.to, later.move.path.to] },
        (time) => onTheMove(earlier.move, time),
        (time) => onTheMove(later.move, time),
      );
      if (close) found.set(pair, { earlier: earlier.move, earlierActor: earlier.actor, later: later.move, laterActor: later.actor, ...close });
    }
    under.push(later);
  }
  return [...found.values()];
}

export interface Crossing {
  readonly pass: Pass;
  readonly move: Move;
  readonly actor: ActorId;
  readonly at: Point;
  readonly time: number;
}

/** Balls that meet a runner who is neither their passer nor their receiver; the first for each pass. */
export function crossings(timeline: Timeline): Crossing[] {
  const runs = goings(timeline);
  const passes = [...timeline.passes].sort((a, b) => a.start - b.start);
  let under: Going[] = [];
  let next = 0;
  return passes.flatMap((pass) => {
    for (; next < runs.length && runs[next]!.move.start < pass.arrival; next += 1) under.push(runs[next]!);
    under = under.filter((each) => each.move.end > pass.start);
    const box = boxAround([pass.fromAt, pass.toAt]);
    const low = timesBelow(pass.flight, overhead);
    const found = under.flatMap(({ move, actor, box: around, fastest }) => {
      if (actor === pass.from || actor === pass.to || !boxesTouch(box, around, ballGap)) return [];
      return low.flatMap(([from, to]) => {
        const close = firstClose(
          { start: Math.max(pass.start + from, move.start), end: Math.min(pass.start + to, move.end), reach: ballGap, closing: 0, fastest: pass.flight.launch + fastest, known: [pass.fromAt, pass.toAt] },
          (time) => overGround(pass, time),
          (time) => onTheMove(move, time),
        );
        return close ? [{ pass, move, actor, ...close }] : [];
      });
    });
    return found.sort((a, b) => a.time - b.time).slice(0, 1);
  });
}

export interface BallMeeting {
  /** The one that is played first; of two at once, the one that is written first. */
  readonly pass: Pass;
  readonly other: Pass;
  readonly at: Point;
  readonly time: number;
}

/** Two balls at one place, at one height and at one time, away from where they are played and taken; the first for each pass. */
export function ballMeetings(timeline: Timeline): BallMeeting[] {
  const passes = [...timeline.passes].sort((a, b) => a.start - b.start || a.index - b.index);
  return passes.flatMap((pass, index) => {
    const meanwhile: Pass[] = [];
    for (let next = index + 1; next < passes.length && passes[next]!.start < pass.arrival; next += 1) meanwhile.push(passes[next]!);
    const found = meanwhile.filter((other) => other.ball !== pass.ball).flatMap((other) => {
      if (!boxesTouch(boxAround([pass.fromAt, pass.toAt]), boxAround([other.fromAt, other.toAt]), ballGap)) return [];
      const height = (each: Pass, time: number): number => ballAt(each.flight, time - each.start).height;
      const close = firstClose(
        { start: other.start, end: Math.min(pass.arrival, other.arrival), reach: ballGap, closing: 0, fastest: Infinity, known: [pass.fromAt, pass.toAt, other.fromAt, other.toAt] },
        (time) => overGround(pass, time),
        (time) => (Math.abs(height(pass, time) - height(other, time)) < ballGap ? overGround(other, time) : farAway),
      );
      return close ? [{ pass, other, ...close }] : [];
    });
    return found.sort((a, b) => a.time - b.time).slice(0, 1);
  });
}

/** Whatever its height. */
function overGround(pass: Pass, time: number): Point {
  return along(pass.fromAt, pass.toAt, pass.flight.length > 0 ? ballAt(pass.flight, time - pass.start).distance / pass.flight.length : 1);
}

/**
 * The first approach within reach, at least at a closing speed and away from the known places, between two times. They never
 * near each other faster than `fastest`, so from any moment they can be followed that far without looking; Infinity for balls
 * of which one comes down to the height of the other.
 */
function firstClose(
  within: { readonly start: number; readonly end: number; readonly reach: number; readonly closing: number; readonly fastest: number; readonly known: readonly Point[] },
  a: (time: number) => Point,
  b: (time: number) => Point,
): { readonly at: Point; readonly time: number } | null {
  let [seen, a0, b0] = [within.start, a(within.start), b(within.start)];
  for (let time = within.start; time < within.end;) {
    const next = Math.min(within.end, time + look);
    if (distance(a0, b0) - within.reach > within.fastest * (next - seen)) {
      time = next;
      continue;
    }
    if (seen < time) {
      [seen, a0, b0] = [time, a(time), b(time)];
      continue;
    }
    const [a1, b1] = [a(next), b(next)];
    const nearest = closestApproach(a0, a1, b0, b1);
    if (nearest.distance < within.reach) {
      const speed = distance({ x: a1.x - a0.x, y: a1.y - a0.y }, { x: b1.x - b0.x, y: b1.y - b0.y }) / (next - time);
      const at = along(b0, b1, nearest.fraction);
      if (speed >= within.closing && within.known.every((end) => distance(end, at) > ends)) return { at, time: time + (next - time) * nearest.fraction };
    }
    [seen, time, a0, b0] = [next, next, a1, b1];
  }
  return null;
}

/** A movement with whose it is and the ground it covers. */
interface Going {
  readonly move: Move;
  readonly actor: ActorId;
  readonly box: Box;
  readonly fastest: number;
}

/** All movements in order of start; of two that start together, the one written first. */
function goings(timeline: Timeline): Going[] {
  return timeline.tracks
    .flatMap((track) => track.moves.filter((move) => move.end > move.start).map((move) => ({ move, actor: track.actor, box: boxOf(move), fastest: greatestSpeed(move.run) })))
    .sort((a, b) => a.move.start - b.move.start || a.move.action.span.from - b.move.action.span.from);
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

function boxOf(move: Move): Box {
  const corners = move.path.segments.flatMap((segment) =>
    segment.kind === 'line'
      ? [segment.from, segment.to]
      : [
          { x: segment.centre.x - segment.radius, y: segment.centre.y - segment.radius },
          { x: segment.centre.x + segment.radius, y: segment.centre.y + segment.radius },
        ],
  );
  return boxAround(corners.length > 0 ? corners : [move.path.from]);
}

function boxAround(points: readonly Point[]): Box {
  const xs = points.map((point) => point.x);
  const ys = points.map((point) => point.y);
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

function boxesTouch(a: Box, b: Box, margin: number): boolean {
  return a.left <= b.right + margin && b.left <= a.right + margin && a.bottom <= b.top + margin && b.bottom <= a.top + margin;
}
