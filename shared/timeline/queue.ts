import { closestOnSegment } from '../geometry/closest.ts';
import { distance, plus, type Point } from '../geometry/point.ts';
import type { Action, Drill, Id, Station } from '../model/drill.ts';

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
  const found = known.get(drill) ?? new Map(drill.stations.map((station) => [station.id, behind(drill, station)]));
  known.set(drill, found);
  return found;
}

const ways: readonly Point[] = [{ x: 0, y: -1 }, { x: 0, y: 1 }, { x: -1, y: 0 }, { x: 1, y: 0 }];

function behind(drill: Drill, station: Station): Point {
  const first = outwards(drill, station);
  if (station.holds < 2) return first;
  const lanes = lanesOf(drill, station);
  const things = [...drill.stations, ...drill.furniture].filter((other) => other.id !== station.id).map((other) => other.at);
  const room = (way: Point): number => {
    const spots = Array.from({ length: Math.min(looked, station.holds - 1) }, (_, i) => plus(station.at, way.x * spacing * (i + 1), way.y * spacing * (i + 1)));
    const gaps = spots.flatMap((spot) => [...lanes.map((end) => closestOnSegment(spot, station.at, end).distance), ...things.map((at) => distance(spot, at))]);
    return Math.min(outOfTheWay, ...gaps);
  };
  let best = { way: first, room: room(first) };
  for (const way of ways) {
    if (best.room >= outOfTheWay) break;
    const there = room(way);
    if (there > best.room + 1e-6) best = { way, room: there };
  }
  return best.way;
}

/** Where balls and runs from this station go, and where balls to it come from. */
function lanesOf(drill: Drill, station: Station): Point[] {
  const stationOf = new Map(drill.actors.map((actor) => [actor.id, actor.station]));
  const placeOf = new Map(drill.stations.map((each) => [each.id, each.at]));
  const other = (id: Id | null | undefined): Point[] => (id && id !== station.id ? [placeOf.get(id)].filter((at) => at !== undefined) : []);
  const ends = (action: Action, from: Id | null): Point[] => {
    const to = stationOf.get(action.receiver ?? action.to ?? '') ?? action.station;
    if (to === station.id) return other(from);
    return from === station.id ? [...other(to), ...(action.at && !action.station ? [action.at] : [])] : [];
  };
  return drill.sequences.flatMap(({ beats }) =>
    beats.flatMap(({ lead, meanwhile }) => [lead, ...meanwhile].flatMap((part) => part.chain.flatMap((action) => ends(action, stationOf.get(part.actor) ?? null)))),
  );
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
