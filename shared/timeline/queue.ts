import { closestOnSegment } from '../geometry/closest.ts';
import { distance, plus, type Point } from '../geometry/point.ts';
import type { Drill, Id, Part, Station } from '../model/drill.ts';

/** Metres between two players waiting in a queue. Common practice: an arm's length and a bit; no source. */
const spacing = 1.2;
/** A queue this far from every ball and runner is out of the way: metres. */
const outOfTheWay = 1.5;
/** So many of a queue are looked at when its direction is chosen. */
const looked = 4;

/**
 * Where the player with this number in a station's queue stands: 0 plays, on the station itself; the others wait behind,
 * square to the area, on the side that keeps them out of the way of balls and runs, and if it can be away from the middle
 * of the area, so that they look onto the drill.
 */
export function queueSpot(drill: Drill, station: Station, number: number): Point {
  if (number === 0) return { x: station.at.x, y: station.at.y };
  const back = directionsOf(drill).get(station.id) ?? outwards(drill, station);
  return plus(station.at, back.x * spacing * number, back.y * spacing * number);
}

/** Worked out once for each drill: many places ask. */
const known = new WeakMap<Drill, ReadonlyMap<Id, Point>>();

function directionsOf(drill: Drill): ReadonlyMap<Id, Point> {
  const before = known.get(drill);
  if (before) return before;
  const lanes = lanesOf(drill);
  const found = new Map(drill.stations.map((station) => [station.id, behind(drill, station, lanes.get(station.id) ?? [])]));
  known.set(drill, found);
  return found;
}

const ways: readonly Point[] = [{ x: 0, y: -1 }, { x: 0, y: 1 }, { x: -1, y: 0 }, { x: 1, y: 0 }];

function behind(drill: Drill, station: Station, lanes: readonly Point[]): Point {
  const first = outwards(drill, station);
  if (station.holds < 2) return first;
  const waiting = Math.min(looked, station.holds - 1);
  const room = (way: Point): number => {
    let least = outOfTheWay;
    for (let number = 1; number <= waiting; number += 1) {
      const spot = plus(station.at, way.x * spacing * number, way.y * spacing * number);
      for (const end of lanes) least = Math.min(least, closestOnSegment(spot, station.at, end).distance);
      for (const other of drill.stations) if (other !== station) least = Math.min(least, distance(spot, other.at));
      for (const thing of drill.furniture) least = Math.min(least, distance(spot, thing.at));
    }
    return least;
  };
  let best = { way: first, room: room(first) };
  for (const way of ways) {
    if (best.room >= outOfTheWay) break;
    const there = room(way);
    if (there > best.room + 1e-6) best = { way, room: there };
  }
  return best.way;
}

/** Of every station: where balls and runs from it go, and where balls to it come from. */
function lanesOf(drill: Drill): ReadonlyMap<Id, readonly Point[]> {
  const stationOf = new Map(drill.actors.map((actor) => [actor.id, actor.station]));
  const placeOf = new Map(drill.stations.map((each) => [each.id, each.at]));
  const lanes = new Map(drill.stations.map((each): [Id, Point[]] => [each.id, []]));
  const join = (one: Id | null | undefined, other: Id | null | undefined) => {
    const at = other && other !== one ? placeOf.get(other) : undefined;
    if (one && at) lanes.get(one)?.push(at);
  };
  const add = ({ actor, chain }: Part) => {
    const from = stationOf.get(actor) ?? null;
    for (const action of chain) {
      const to = stationOf.get(action.receiver ?? action.to ?? '') ?? action.station;
      join(to, from);
      if (from === to) continue;
      join(from, to);
      if (from && action.at && !action.station) lanes.get(from)?.push(action.at);
    }
  };
  for (const { beats } of drill.sequences) {
    for (const { lead, meanwhile } of beats) {
      add(lead);
      meanwhile.forEach(add);
    }
  }
  return lanes;
}

/** Away from the middle, along the nearer axis; down from the middle itself. */
function outwards(drill: Drill, station: Station): Point {
  const middle = drill.area ? { x: drill.area.width / 2, y: drill.area.length / 2 } : meanOf(drill.stations.map((other) => other.at));
  const dx = station.at.x - middle.x;
  const dy = station.at.y - middle.y;
  if (distance(station.at, middle) < 0.5) return { x: 0, y: -1 };
  const [width, length] = drill.area ? [drill.area.width, drill.area.length] : [1, 1];
  return Math.abs(dx) / width > Math.abs(dy) / length ? { x: Math.sign(dx), y: 0 } : { x: 0, y: Math.sign(dy) };
}

function meanOf(points: readonly Point[]): Point {
  const sum = points.reduce((total, at) => plus(total, at.x, at.y), { x: 0, y: 0 });
  return { x: sum.x / Math.max(1, points.length), y: sum.y / Math.max(1, points.length) };
}
