import { distance, type Point } from '../geometry/point.ts';
import type { Drill, Station } from '../model/drill.ts';

/** Metres between two players waiting in a queue. Common practice: an arm's length and a bit; no source. */
const spacing = 1.2;

/**
 * Where the player with this number in a station's queue stands: 0 plays, on the station itself; the others wait
 * behind, away from the middle of the area, so that they look onto the drill.
 */
export function queueSpot(drill: Drill, station: Station, number: number): Point {
  if (number === 0) return { x: station.at.x, y: station.at.y };
  const back = backwards(drill, station);
  return { x: station.at.x + back.x * spacing * number, y: station.at.y + back.y * spacing * number };
}

/** Along the nearer axis, so that queues stand square to the area as cones and lines do. */
function backwards(drill: Drill, station: Station): Point {
  const middle = drill.area ? { x: drill.area.width / 2, y: drill.area.length / 2 } : meanOf(drill.stations.map((other) => other.at));
  const dx = station.at.x - middle.x;
  const dy = station.at.y - middle.y;
  if (distance(station.at, middle) < 0.5) return { x: 0, y: -1 };
  const [width, length] = drill.area ? [drill.area.width, drill.area.length] : [1, 1];
  return Math.abs(dx) / width > Math.abs(dy) / length ? { x: Math.sign(dx), y: 0 } : { x: 0, y: Math.sign(dy) };
}

function meanOf(points: readonly Point[]): Point {
  const sum = points.reduce((total, at) => ({ x: total.x + at.x, y: total.y + at.y }), { x: 0, y: 0 });
  return { x: sum.x / Math.max(1, points.length), y: sum.y / Math.max(1, points.length) };
}
