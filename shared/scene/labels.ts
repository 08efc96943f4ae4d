/**
 * Where words go: each label takes the best of its candidate places, judged against all that is already there.
 * Solid things and other labels are never covered; lines may be crossed, at a price. First come, first served.
 */
import { type Box, boxAround, overlap } from './ground.ts';
import type { Spot } from './shapes.ts';

export interface Room {
  /** Nothing may be written here. */
  readonly block: (box: Box) => void;
  /** Better not written across. */
  readonly cross: (points: readonly Spot[]) => void;
  /** The free candidate with the least cost, now taken; null when none is free. Candidates come in order of their cost. */
  readonly take: (candidates: Iterable<Candidate>, width: number, height: number) => Candidate | null;
  /** A room in which all this is taken too; what is taken in it is free here. */
  readonly fork: () => Room;
}

export interface Candidate {
  /** The middle of the label. */
  readonly at: Spot;
  /** What this place costs by itself; crossing a line costs 1 for each millimetre or so. */
  readonly cost: number;
}

interface Taken {
  readonly solids: Map<number, Box[]>;
  readonly lines: Map<number, Spot[]>;
}

/** Side of the squares in which the room looks for neighbours, millimetres. */
const cell = 6;

export function labelRoom(bounds: Box, taken: Taken = { solids: new Map(), lines: new Map() }): Room {
  const { solids, lines } = taken;
  const key = (x: number, y: number) => Math.floor(x / cell) * 4096 + Math.floor(y / cell);

  const cellsOf = (box: Box, visit: (key: number) => boolean): boolean => {
    for (let x = Math.floor(box.left / cell) * cell; x <= box.right; x += cell) {
      for (let y = Math.floor(box.top / cell) * cell; y <= box.bottom; y += cell) if (visit(key(x, y))) return true;
    }
    return false;
  };
  const block = (box: Box) => {
    cellsOf(box, (at) => {
      put(solids, at, box);
      return false;
    });
  };
  const covers = (box: Box) => cellsOf(box, (at) => solids.get(at)?.some((solid) => overlap(solid, box) > 0) ?? false);
  const crossings = (box: Box) => {
    let count = 0;
    cellsOf(box, (at) => {
      for (const spot of lines.get(at) ?? []) {
        if (spot.x > box.left && spot.x < box.right && spot.y > box.top && spot.y < box.bottom) count += 1;
      }
      return false;
    });
    return count;
  };

  return {
    block,
    cross: (points) => {
      for (const spot of points) put(lines, key(spot.x, spot.y), spot);
    },
    take: (candidates, width, height) => {
      let best: Candidate | null = null;
      let least = Infinity;
      for (const candidate of candidates) {
        if (candidate.cost >= least) break;
        const box = boxAround(candidate.at, width, height);
        if (box.left < bounds.left || box.right > bounds.right || box.top < bounds.top || box.bottom > bounds.bottom) continue;
        if (covers(box)) continue;
        const cost = candidate.cost + crossings(box);
        if (cost < least) [best, least] = [candidate, cost];
      }
      if (best) block(boxAround(best.at, width, height));
      return best;
    },
    fork: () => labelRoom(bounds, { solids: copied(solids), lines: copied(lines) }),
  };
}

function put<T>(cells: Map<number, T[]>, at: number, thing: T): void {
  const there = cells.get(at);
  if (there) there.push(thing);
  else cells.set(at, [thing]);
}

function copied<T>(cells: ReadonlyMap<number, readonly T[]>): Map<number, T[]> {
  return new Map([...cells].map(([at, things]) => [at, [...things]]));
}

/** The same distance to the sides as up and down. */
export function both(distance: number): Spot {
  return { x: distance, y: distance };
}

/** Places round a spot at least `clear` from it: beside it first, then above and below, then the corners, then further out. */
export function* around(at: Spot, clear: Spot, width: number, height: number, away: Spot): Generator<Candidate> {
  for (const [ring, out] of [0, 2.2, 5, 9].entries()) {
    const [dx, dy] = [clear.x + out + width / 2, clear.y + out + height / 2];
    const sides: readonly Spot[] = [
      { x: dx, y: 0 }, { x: -dx, y: 0 }, { x: 0, y: -dy }, { x: 0, y: dy },
      { x: dx * 0.82, y: -dy * 0.82 }, { x: -dx * 0.82, y: -dy * 0.82 }, { x: dx * 0.82, y: dy * 0.82 }, { x: -dx * 0.82, y: dy * 0.82 },
    ];
    const candidates = sides.map((side, index): Candidate => {
      const reach = Math.hypot(side.x, side.y);
      const outward = reach > 0 ? (side.x * away.x + side.y * away.y) / reach : 0;
      return { at: { x: at.x + side.x, y: at.y + side.y }, cost: ring * 4 + (index < 4 ? 0 : 0.4) + 0.6 * (1 - outward) };
    });
    yield* candidates.sort((a, b) => a.cost - b.cost);
  }
}

/** Places along a line, from its middle outwards: on it first, if it may be covered, and then to either side of it. */
export function* alongLine(at: (share: number) => Spot, aside: number, on: boolean): Generator<Candidate> {
  if (on) for (const [rank, share] of [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82].entries()) yield { at: at(share), cost: rank * 0.4 };
  for (const [ring, out] of [aside, aside * 1.8, aside * 3, aside * 5].entries()) {
    for (const [rank, share] of [0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95].entries()) {
      const spot = at(share);
      const [a, b] = [at(share - 0.04), at(share + 0.04)];
      const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
      for (const side of [out, -out]) {
        yield { at: { x: spot.x + (side * (b.y - a.y)) / length, y: spot.y - (side * (b.x - a.x)) / length }, cost: 5 + ring * 3 + rank * 0.4 };
      }
    }
  }
}
