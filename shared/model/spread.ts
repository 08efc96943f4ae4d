/** Places for players who are spread out in a zone. Metres. */
import { depthIn, type Shape } from '../geometry/depth.ts';
import type { Point } from '../geometry/point.ts';
import { boundsOf } from './things.ts';

/** So many spots of a grid stand for the ground, and so many for everyone on it at least. */
const leastSpots = 150;
const spotsEach = 12;
/** In a shape that holds too few of them, as a sliver does, all of its box is taken. */
const mostSpots = 10_000;
/** The places have settled after so many rounds. */
const rounds = 12;

/**
 * So many places in a shape, evenly spread, away from each other and from the people who stand there; the same every time
 * and never two the same. They begin as far as can be from all before them (farthest-point sampling); then everyone moves
 * again and again to the middle of the ground that is nearest to them, while the others hold what is nearest to
 * themselves (Lloyd's relaxation).
 */
export function spread(count: number, shape: Shape, people: readonly Point[]): readonly Point[] {
  const { left, bottom, right, top } = boundsOf(shape);
  const far = Math.max(right - left, top - bottom);
  const near = people.filter((at) => depthIn(shape, at) > -far / 4);
  const spots = spotsIn(shape, Math.max(leastSpots, spotsEach * (count + near.length)));
  const held = spots.map(({ at }) => near.reduce((least, other) => Math.min(least, square(at, other)), Infinity));
  const places = farthest(count, spots, held);
  for (let round = 0; round < rounds; round += 1) {
    const sums = places.map(() => ({ x: 0, y: 0, spots: 0 }));
    spots.forEach(({ at }, index) => {
      const own = sums[nearestOf(at, places, held[index]!)];
      if (!own) return;
      own.x += at.x;
      own.y += at.y;
      own.spots += 1;
    });
    sums.forEach(({ x, y, spots: own }, index) => {
      const middle = { x: x / own, y: y / own };
      if (own > 0 && depthIn(shape, middle) > 0) places[index] = middle;
    });
  }
  return places;
}

/** Each as far as can be from the people, from those before it, and half as far from the border; of equals the most central. */
function farthest(count: number, spots: readonly Spot[], held: readonly number[]): Point[] {
  const free = spots.map(({ room }, index) => Math.min(room, held[index]!));
  const places: Point[] = [];
  while (places.length < count) {
    let best = 0;
    free.forEach((value, index) => {
      const gain = value - free[best]!;
      if (gain > 1e-9 || (gain > -1e-9 && spots[index]!.off < spots[best]!.off)) best = index;
    });
    const { at } = spots[best]!;
    places.push(at);
    spots.forEach((spot, index) => { free[index] = Math.min(free[index]!, square(spot.at, at)); });
    free[best] = -Infinity;
  }
  return places;
}

/** The number of the nearest place; -1 when somebody else is nearer: `held` is the square of the way to them. */
function nearestOf(at: Point, places: readonly Point[], held: number): number {
  let best = -1;
  let least = held;
  for (let index = 0; index < places.length; index += 1) {
    const gap = square(at, places[index]!);
    if (gap < least) [best, least] = [index, gap];
  }
  return best;
}

interface Spot {
  readonly at: Point;
  /** The square of twice the way to the border: as far beyond it the next one could stand. Negative outside. */
  readonly room: number;
  /** The square of the way to the middle of the box. */
  readonly off: number;
}

/** The middles of the cells of a grid in the box around a shape, as fine as needed for so many inside. */
function spotsIn(shape: Shape, wanted: number): readonly Spot[] {
  const { left, bottom, right, top } = boundsOf(shape);
  const [width, length] = [right - left, top - bottom];
  const middle = { x: left + width / 2, y: bottom + length / 2 };
  for (let cells = wanted; ; cells *= 2) {
    const columns = odd(Math.min(cells, Math.sqrt((cells * width) / length)));
    const rows = odd(Math.min(cells, Math.sqrt((cells * length) / width)));
    const all = Array.from({ length: columns * rows }, (_, index): Spot => {
      const at = { x: left + (width * ((index % columns) + 0.5)) / columns, y: bottom + (length * (Math.floor(index / columns) + 0.5)) / rows };
      const depth = depthIn(shape, at);
      return { at, room: 4 * depth * Math.abs(depth), off: square(at, middle) };
    });
    const inside = all.filter((spot) => spot.room > 0);
    if (inside.length >= wanted / 2) return inside;
    if (cells > mostSpots) return all;
  }
}

/** With an odd number there is a spot in the middle. */
function odd(value: number): number {
  return 2 * Math.round((value - 1) / 2) + 1;
}

function square(a: Point, b: Point): number {
  return (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
}
