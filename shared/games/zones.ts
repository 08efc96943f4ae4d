/** Who is in which zone, and for how long. */
import { pointAt } from '../geometry/path.ts';
import { depthIn, type Shape } from '../geometry/depth.ts';
import type { Point } from '../geometry/point.ts';
import type { ActorId, Drill, Id, Zone } from '../model/drill.ts';
import { timeToRun } from '../physics/runner.ts';
import type { Move, Timeline, Track } from '../timeline/timeline.ts';
import { roleOf, sideAt, type Possession } from './possession.ts';

export type { Shape } from '../geometry/depth.ts';

/** A stretch of time that one person spends in a zone. Seconds; who has not left is there to the end of the phase, and after it. */
export interface Stay {
  readonly actor: ActorId;
  readonly start: number;
  readonly end: number;
  /** What brought them in and out; null for who was there from the start, and who stays. */
  readonly cameBy: Move | null;
  readonly leftBy: Move | null;
}

export interface ZoneNumbers {
  readonly zone: Id;
  readonly stays: readonly Stay[];
}

export interface Count {
  readonly attackers: number;
  readonly floaters: number;
  readonly defenders: number;
}

/** All stays in all zones. */
export function numbersOf(drill: Drill, timeline: Timeline): readonly ZoneNumbers[] {
  return drill.zones.map((zone) => ({ zone: zone.id, stays: staysIn(zone.shape, timeline) }));
}

/**
 * How many of each side are in some zones together at a time; who stands where two of them meet counts once. Goalkeepers
 * are left out, as in `5 v 5 with goalkeepers`.
 */
export function countAt(drill: Drill, numbers: readonly ZoneNumbers[], possession: readonly Possession[], time: number): Count {
  const side = sideAt(possession, time);
  const inside = new Set(numbers.flatMap(({ stays }) => stays.filter((stay) => isIn(stay, time)).map((stay) => stay.actor)));
  const roles = drill.actors.filter((actor) => actor.kind !== 'keeper' && inside.has(actor.id)).map((actor) => roleOf(drill, actor, side));
  const count = (role: string): number => roles.filter((each) => each === role).length;
  return { attackers: count('attacker'), floaters: count('floater'), defenders: count('defender') };
}

/** A stretch of time in which the numbers stay the same. */
export interface Counted extends Count {
  readonly start: number;
  readonly end: number;
}

/** The numbers in some zones together from change to change; none while no side ever has the ball. The last ones stay. */
export function countsOver(drill: Drill, numbers: readonly ZoneNumbers[], possession: readonly Possession[], end: number): readonly Counted[] {
  if (possession.length === 0) return [];
  const changes = [0, ...possession.map(({ from }) => from), ...numbers.flatMap(({ stays }) => stays.flatMap((stay) => [stay.start, stay.end]))];
  const times = [...new Set(changes)].filter((time) => time < end || time === 0).sort((a, b) => a - b);
  const found: Counted[] = [];
  for (const [index, start] of times.entries()) {
    const count = countAt(drill, numbers, possession, start);
    const before = found.at(-1);
    const same = before && before.attackers === count.attackers && before.floaters === count.floaters && before.defenders === count.defenders;
    if (same) found[found.length - 1] = { ...before, end: times[index + 1] ?? end };
    else found.push({ ...count, start, end: times[index + 1] ?? end });
  }
  return found;
}

/** Whether somebody is in a zone at a time. */
export function isIn({ start, end, leftBy }: Stay, time: number): boolean {
  return start <= time && (leftBy === null || time < end);
}

/** The zones a rule speaks of: one, all that share a name, or the whole area. */
export function zonesNamed(drill: Drill, name: Id): readonly Pick<Zone, 'id' | 'shape'>[] {
  if (name === 'area') return drill.area ? [{ id: 'area', shape: ofArea(drill.area) }] : [];
  const own = drill.zones.filter((zone) => zone.id === name);
  return own.length > 0 ? own : drill.zones.filter((zone) => zone.group === name && !zone.split);
}

function ofArea({ width, length }: NonNullable<Drill['area']>): Shape {
  return { kind: 'polygon', points: [{ x: 0, y: 0 }, { x: width, y: 0 }, { x: width, y: length }, { x: 0, y: length }] };
}

/** Who is in a zone of a passage, and when: as it was worked out before, or anew for the whole area. */
export function staysOf({ numbers, timeline }: { readonly numbers: readonly ZoneNumbers[]; readonly timeline: Timeline }, { id, shape }: Pick<Zone, 'id' | 'shape'>): readonly Stay[] {
  return numbers.find(({ zone }) => zone === id)?.stays ?? staysIn(shape, timeline);
}

/** Metres beyond a line that still are on it: far less than anybody can see, more than sums are off. */
const onTheLine = 1e-3;

/** Who is in a shape, and when: who stands on its line is in, as a ball on the line is. The coach is never counted. */
function staysIn(shape: Shape, { tracks, end }: Timeline): readonly Stay[] {
  const depth = (at: Point): number => depthIn(shape, at) + onTheLine;
  return tracks.flatMap((track) => (track.actor === 'coach' ? [] : staysOfOne(track, depth, end)));
}

function staysOfOne(track: Track, depth: (at: Point) => number, over: number): Stay[] {
  const stays: Stay[] = [];
  let inside = depth(track.home) >= 0;
  let open: { readonly start: number; readonly cameBy: Move | null } = { start: 0, cameBy: null };
  for (const move of track.moves) {
    for (const time of crossings(move, depth)) {
      if (inside) stays.push({ actor: track.actor, ...open, end: time, leftBy: move });
      else open = { start: time, cameBy: move };
      inside = !inside;
    }
  }
  if (inside) stays.push({ actor: track.actor, ...open, end: over, leftBy: null });
  return stays;
}

/** A line that is crossed and crossed back within this is not crossed: metres. */
const step = 0.05;

/**
 * The times at which a movement crosses a border. Nobody is nearer to a border than their depth says, so from any place
 * they can be followed that far without looking.
 */
function crossings(move: Move, depth: (at: Point) => number): number[] {
  const { path, run } = move;
  const times: number[] = [];
  let [s, here] = [0, depth(path.from)];
  while (s + Math.abs(here) < path.length) {
    const next = Math.min(path.length, s + Math.max(step, Math.abs(here)));
    const there = depth(pointAt(path, next));
    if (here >= 0 !== there >= 0) times.push(move.start + timeToRun(run, s + ((next - s) * here) / (here - there)));
    [s, here] = [next, there];
  }
  return times;
}
