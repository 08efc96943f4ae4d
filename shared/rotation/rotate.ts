import { distance } from '../geometry/point.ts';
import type { Drill, Id, Station } from '../model/drill.ts';
import type { Timeline, Track } from '../timeline/timeline.ts';
import type { QueuePlace, Rotation, StationMove } from './rotation.ts';

/** A movement that ends this close to a station goes to it, and to no other: metres. */
const onStation = 1;
/** A player who ends a repetition this close to a station belongs to it: metres. */
const atStation = 2;
/** To the station they started from they may drift a little further, as after showing for the ball: metres. */
const atOwnStation = 4;

/**
 * Works out who goes where in one repetition. The one who played at a station leaves it for the end of another queue, the
 * others move up; closed, that is a permutation of the places in the queues. Null for drills without stations or play.
 */
export function rotationOf(drill: Drill, timeline: Timeline): Rotation | null {
  if (drill.stations.length === 0 || timeline.beats.length === 0) return null;
  const moves = drill.stations.flatMap((station) => [moveOf(drill, timeline, station), ...moveOfNext(drill, timeline, station)]);
  const places = drill.stations.flatMap((station) => Array.from({ length: station.holds }, (_, index) => ({ station: station.id, number: index + 1 })));
  const closed = drill.stations.every((station) => surplus(moves, station.id) === 0) && moves.every((move) => move.to !== null);
  const source = drill.rotation.kind;
  if (!closed) return { source, moves, closed, places, image: null, cycles: [], order: null };
  const image = imageOf(places, moves, drill, timeline);
  const cycles = cyclesOf(image);
  return { source, moves, closed, places, image, cycles, order: cycles.map((cycle) => cycle.length).reduce(leastCommonMultiple, 1) };
}

/** Arrivals less departures at a station in one repetition. */
export function surplus(moves: readonly StationMove[], station: Id): number {
  const arrivals = moves.filter((move) => move.to === station && move.from !== station).length;
  const departures = moves.filter((move) => move.from === station && move.to !== station).length;
  return arrivals - departures;
}

/** The station that the last movement goes to: the one it names, as `follows` and `runs to Left` do, or the one it ends on. */
export function arrivesAt(drill: Drill, track: Track): Id | null {
  const last = track.moves.at(-1);
  if (!last) return null;
  if (last.kind === 'run' && last.action.station !== null) return last.action.station;
  const station = nearest(drill, last.path.to);
  return station && distance(last.path.to, station.at) <= onStation ? station.id : null;
}

/** The station where the movements of a repetition leave this player; null for none. */
function endsAt(drill: Drill, track: Track, own: Station): Id | null {
  const end = track.moves.at(-1)?.path.to ?? track.home;
  const station = nearest(drill, end);
  const drifted = distance(end, own.at) <= atOwnStation ? own.id : null;
  return arrivesAt(drill, track) ?? drifted ?? (station && distance(end, station.at) <= atStation ? station.id : null);
}

function nearest(drill: Drill, at: { readonly x: number; readonly y: number }): Station | undefined {
  return [...drill.stations].sort((a, b) => distance(a.at, at) - distance(b.at, at))[0];
}

function moveOf(drill: Drill, timeline: Timeline, station: Station): StationMove {
  const { rotation } = drill;
  const actor = station.id;
  const track = timeline.tracks.find((each) => each.actor === actor);
  switch (rotation.kind) {
    case 'arrows': {
      const arrow = rotation.arrows.find((each) => each.from === station.id);
      return { actor, from: station.id, to: arrow ? arrow.to : station.id, span: arrow ? arrow.span : null };
    }
    case 'follow': {
      const last = timeline.passes.filter((pass) => pass.from === actor && pass.to !== null).at(-1);
      const receiver = drill.actors.find((each) => each.id === last?.to);
      return { actor, from: station.id, to: receiver?.station ?? station.id, span: last ? last.action.span : null };
    }
    case 'read': {
      const last = track?.moves.at(-1);
      return { actor, from: station.id, to: track ? endsAt(drill, track, station) : station.id, span: last ? last.action.span : null };
    }
  }
}

/** The next in line, when they have played as well and gone on to another station. */
function moveOfNext(drill: Drill, timeline: Timeline, station: Station): StationMove[] {
  const actor = `next ${station.id}`;
  const track = timeline.tracks.find((each) => each.actor === actor);
  const to = track && arrivesAt(drill, track);
  if (drill.rotation.kind !== 'read' || station.holds < 2 || !to || to === station.id) return [];
  return [{ actor, from: station.id, to, span: track.moves.at(-1)!.action.span }];
}

/** Those who go leave their queue, the others move up, and those who come join its end: one at a time, in the order of the stations. */
function imageOf(places: readonly QueuePlace[], moves: readonly StationMove[], drill: Drill, timeline: Timeline): number[] {
  const indexOf = new Map(places.map((place, index) => [`${place.station} ${place.number}`, index]));
  const queues = new Map(drill.stations.map((station) => [station.id, places.filter((place) => place.station === station.id)]));
  const going = moves.flatMap((move) => {
    if (move.to === move.from && !rejoins(move, drill, timeline)) return [];
    const place = queues.get(move.from)![move.actor === move.from ? 0 : 1];
    return place ? [{ place, to: move.to! }] : [];
  });
  const image: number[] = [];
  for (const [station, queue] of queues) {
    const staying = queue.filter((place) => !going.some((each) => each.place === place));
    const coming = going.filter((each) => each.to === station).map((each) => each.place);
    for (const [number, place] of [...staying, ...coming].entries()) {
      image[indexOf.get(`${place.station} ${place.number}`)!] = indexOf.get(`${station} ${number + 1}`)!;
    }
  }
  return image;
}

/** Comes back to the end of their own queue: an arrow to itself, or the next in line has played in the meantime. */
function rejoins(move: StationMove, drill: Drill, timeline: Timeline): boolean {
  if (drill.rotation.kind === 'arrows' && drill.rotation.arrows.some((arrow) => arrow.from === move.from && arrow.to === move.from)) return true;
  const next = timeline.tracks.find((track) => track.actor === `next ${move.from}`);
  const receives = timeline.passes.some((pass) => pass.to === `next ${move.from}`);
  return receives || (next?.moves.length ?? 0) > 0;
}

/** The cycles of a permutation given by its image, each beginning with its smallest index. */
export function cyclesOf(image: readonly number[]): number[][] {
  const seen = new Set<number>();
  const cycles: number[][] = [];
  for (let start = 0; start < image.length; start += 1) {
    const cycle: number[] = [];
    for (let at = start; !seen.has(at); at = image[at]!) {
      seen.add(at);
      cycle.push(at);
    }
    if (cycle.length > 0) cycles.push(cycle);
  }
  return cycles;
}

export function leastCommonMultiple(a: number, b: number): number {
  return (a / greatestCommonDivisor(a, b)) * b;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
