import { distance, type Point } from '../geometry/point.ts';
import type { Drill, FurnitureKind, Id } from '../model/drill.ts';
import type { Measures } from './measure.ts';

/** Markers this close together are one marker: metres. */
export const sameMarker = 0.3;

/** A pole, mannequin or cone this close to a station marks it: metres. */
const besideStation = 1.5;

/**
 * What to carry out: furniture as written, balls, bibs, and the discs that mark the stations, the corners of the area and
 * its zones (and its sides where it is `marked every` so far). A corner that two zones share, or where a cone stands, counts once.
 */
export function kitOf(drill: Drill): Measures['kit'] {
  const count = (kind: FurnitureKind): number => drill.furniture.filter((thing) => thing.kind === kind).length;
  const balls = drill.balls.reduce((sum, supply) => sum + supply.count, 0);
  const items = [
    { what: 'balls', count: balls },
    { what: 'discs', count: count('disc') + markersOf(drill).length },
    { what: 'cones', count: count('cone') + 2 * count('gate') },
    { what: 'poles', count: count('pole') },
    { what: 'mannequins', count: count('mannequin') },
    { what: 'hurdles', count: count('hurdle') },
    { what: 'ladders', count: count('ladder') },
    { what: 'mini goals', count: count('minigoal') },
    { what: 'goals', count: count('goal') },
    ...drill.teams.flatMap((team) => (team.bib ? [{ what: `bibs ${team.bib}`, count: team.size - keepersOf(drill, team.id) }] : [])),
  ];
  return items.filter((item) => item.count > 0);
}

/** `5 balls`, `1 bib yellow` */
export function itemText({ what, count }: Measures['kit'][number]): string {
  return `${count} ${count === 1 ? what.replace(/s\b/, '') : what}`;
}

/** Where discs mark the ground beside those that are written as furniture. */
export function markersOf(drill: Drill): readonly Point[] {
  const standing = drill.furniture.filter((thing) => thing.kind === 'cone' || thing.kind === 'disc').map((thing) => thing.at);
  const corners = drill.zones.flatMap(({ shape }) => (shape.kind === 'polygon' ? shape.points : []));
  const taken = new Set(standing.map(cell));
  const spots = new Map<string, Point>();
  for (const spot of [...areaSpots(drill), ...unmarkedStations(drill), ...corners]) {
    const key = cell(spot);
    if (!taken.has(key) && !spots.has(key)) spots.set(key, { x: spot.x, y: spot.y });
  }
  return [...spots.values()];
}

/** Stations with nothing upright beside them that shows where they are. */
export function unmarkedStations(drill: Drill): readonly Point[] {
  const shows = drill.furniture.filter((thing) => thing.kind === 'pole' || thing.kind === 'mannequin' || thing.kind === 'cone');
  return drill.stations.map((station) => station.at).filter((at) => shows.every((thing) => distance(thing.at, at) > besideStation));
}

function areaSpots(drill: Drill): Point[] {
  if (!drill.area) return [];
  const { width, length, marked } = drill.area;
  const corners = [{ x: 0, y: 0 }, { x: width, y: 0 }, { x: width, y: length }, { x: 0, y: length }];
  if (marked === null) return corners;
  return corners.flatMap((from, side) => {
    const to = corners[(side + 1) % 4]!;
    const gaps = Math.max(1, Math.min(1000, Math.round(distance(from, to) / marked)));
    return Array.from({ length: gaps }, (_, i) => ({ x: from.x + ((to.x - from.x) * i) / gaps, y: from.y + ((to.y - from.y) * i) / gaps }));
  });
}

/** Two spots in one cell are one marker. */
function cell(at: Point): string {
  return `${Math.round(at.x / sameMarker)} ${Math.round(at.y / sameMarker)}`;
}

/** Goalkeepers wear their own. */
function keepersOf({ actors }: Drill, team: Id): number {
  return actors.filter((actor) => actor.kind === 'keeper' && actor.team === team).length;
}
