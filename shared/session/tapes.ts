/** The distances to measure out for one group of a drill, in the order a coach would lay them. */
import { distance, type Point } from '../geometry/point.ts';
import { unmarkedStations } from '../measure/kit.ts';
import type { Area, Drill, Zone } from '../model/drill.ts';
import { boundsOf } from '../model/things.ts';
import { metresIn } from '../units.ts';
import type { Tape } from './analysis.ts';

/** About a metre: a long step of a grown-up. CHOSEN: pace your own out once. */
const stride = 1;

/** The area and its diagonal, the zones in it, then the single marks, each from where two tapes meet. */
export function tapesOf(drill: Drill): readonly Tape[] {
  const { area } = drill;
  const marks = marksOf(drill);
  if (!area) return marks.slice(1).map(({ name, at }) => tape('point', name, distance(marks[0]!.at, at), marks[0]!.name));
  return [
    ...sides('area', area.width, area.length),
    tape('diagonal', 'area', Math.hypot(area.width, area.length)),
    ...drill.zones.flatMap((zone) => zoneTapes(zone, area)),
    ...marks.flatMap(({ name, at }) => pointTapes(name, at, area)),
  ];
}

function tape(kind: Tape['kind'], what: string, metres: number, from: string | null = null): Tape {
  return { kind, what, from, metres, yards: metres / metresIn('yd'), strides: Math.round(metres / stride) };
}

function sides(what: string, width: number, length: number): Tape[] {
  return [tape('width', what, width), tape('length', what, length)];
}

/** The strips of a split lie between the sides of the area, so only the side that is split is measured. */
function zoneTapes({ name, shape, split }: Zone, area: Area): Tape[] {
  if (shape.kind === 'circle') return [...pointTapes(name, shape.centre, area), tape('width', name, 2 * shape.radius)];
  const { left, right, bottom, top } = boundsOf(shape);
  const [width, length] = [right - left, top - bottom];
  const square = shape.points.length === 4 && shape.points.every(({ x, y }) => isOneOf(x, left, right) && isOneOf(y, bottom, top));
  if (!square) return shape.points.flatMap((point, index) => pointTapes(`${name}, corner ${index + 1}`, point, area));
  if (split && isOneOf(width, area.width)) return [tape('length', name, length)];
  if (split && isOneOf(length, area.length)) return [tape('width', name, width)];
  const corner = nearestCorner({ x: (left + right) / 2, y: (bottom + top) / 2 }, area);
  const own = { x: corner.at.x === 0 ? left : right, y: corner.at.y === 0 ? bottom : top };
  return [...pointTapes(name, own, area), ...sides(name, width, length), tape('diagonal', name, Math.hypot(width, length))];
}

function isOneOf(value: number, ...others: readonly number[]): boolean {
  return others.some((other) => Math.abs(other - value) < close);
}

/** Metres within which a mark is on a side or in a corner: no tape shows less. */
const close = 0.05;

/** Nothing in a corner; one tape along a side; else from the two ends of the nearer of the short ways across: bottom or top. */
function pointTapes(what: string, at: Point, area: Area): Tape[] {
  const nearest = nearestCorner(at, area);
  const far = distance(nearest.at, at);
  if (far < close) return [];
  const from = (corner: Corner): Tape => tape('point', what, distance(corner.at, at), corner.name);
  if (isOneOf(at.x, 0, area.width) || isOneOf(at.y, 0, area.length)) return [from(nearest)];
  return cornersOf(area).filter((corner) => corner.at.y === nearest.at.y).map(from);
}

interface Corner {
  readonly name: string;
  readonly at: Point;
}

function cornersOf({ width, length }: Area): readonly Corner[] {
  return [
    { name: 'bottom left', at: { x: 0, y: 0 } }, { name: 'bottom right', at: { x: width, y: 0 } },
    { name: 'top left', at: { x: 0, y: length } }, { name: 'top right', at: { x: width, y: length } },
  ];
}

/** Of equal ones the first. */
function nearestCorner(at: Point, area: Area): Corner {
  return cornersOf(area).reduce((best, corner) => (distance(corner.at, at) < distance(best.at, at) - 1e-9 ? corner : best));
}

interface MarkedSpot {
  readonly name: string;
  readonly at: Point;
}

/** Furniture, and the stations that only a disc shows. Names of things without one are numbered where there are several. */
function marksOf(drill: Drill): readonly MarkedSpot[] {
  const furniture = drill.furniture.filter(({ kind }) => kind !== 'coach');
  const alike = new Map<string, number>();
  const numbered = furniture.map((thing) => {
    const number = (alike.get(thing.kind) ?? 0) + (thing.name === null ? 1 : 0);
    alike.set(thing.kind, number);
    return { thing, number };
  });
  const named = numbered.map(({ thing: { name, kind, at }, number }): MarkedSpot => ({ name: name ?? (alike.get(kind) === 1 ? kind : `${kind} ${number}`), at }));
  const bare = new Set(unmarkedStations(drill));
  const stations = drill.stations.filter(({ at }) => bare.has(at)).map(({ name, at }): MarkedSpot => ({ name, at }));
  return [...named, ...stations];
}
