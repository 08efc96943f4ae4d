/** Where the groups of every part could stand so that the changeovers are shortest. */
import { plus, type Point } from '../geometry/point.ts';
import type { Session } from '../model/session.ts';
import type { Bounds } from '../model/things.ts';
import { metresIn } from '../units.ts';
import type { Thing } from './analysis.ts';
import { changeoverOf } from './changeover.ts';
import { isOn, movedBy } from './ground.ts';

/** A part with a drill: where its groups stand as written, what one of them covers, and the things of all. */
export interface Laid {
  readonly at: readonly Point[];
  readonly extent: Bounds;
  readonly things: readonly Thing[];
}

export interface Shorter {
  /** By how much the groups of each part are moved together: metres. */
  readonly shifts: readonly Point[];
  /** Seconds of all changeovers between the parts. */
  readonly written: number;
  readonly proposed: number;
}

/**
 * So many shifts of a part are tried after each place of the part before, and so many ways through the session followed: small sessions are
 * searched whole, larger ones as far as the work allows. CHOSEN for speed.
 */
const mostTries = 12;
const mostWork = 4e6;

/** Less is not worth moving a part for: seconds. CHOSEN. */
export const worthwhile = 20;

/**
 * The first part stays. Each of the others is moved so that one of its things comes to stand where one stands already, or is left as written; of
 * all ways through the session the shortest is taken. Null where none is shorter than the session as written, without a pitch, and for sessions too large to search.
 */
export function shorter(parts: readonly Laid[], pitch: Session['pitch'], units: Session['units'], hands: number): Shorter | null {
  const [first, ...others] = parts;
  const tries = triesOf(parts);
  if (!first || !pitch || others.length === 0 || tries < 2) return null;
  const written = others.reduce((sum, part, index) => sum + changeoverOf(parts[index]!.things, part.things, hands).seconds, 0);
  let ways: readonly Way[] = [{ shifts: [here], things: first.things, seconds: 0 }];
  for (const part of others) {
    const best = new Map<string, Way>();
    for (const way of ways) {
      for (const shift of [here, ...shiftsOf(way.things, part, pitch, units).slice(0, tries)]) {
        const things = moved(part.things, shift);
        const next = { shifts: [...way.shifts, shift], things, seconds: way.seconds + changeoverOf(way.things, things, hands).seconds };
        const key = `${shift.x} ${shift.y}`;
        if (next.seconds < (best.get(key)?.seconds ?? Infinity)) best.set(key, next);
      }
    }
    ways = [...best.values()].sort((a, b) => a.seconds - b.seconds).slice(0, tries);
  }
  const [shortest] = ways;
  return shortest && shortest.seconds <= written - worthwhile ? { shifts: shortest.shifts, written, proposed: shortest.seconds } : null;
}

/** Matching takes as long as the cube of what there is of a kind. */
function triesOf(parts: readonly Laid[]): number {
  const most = Math.max(1, ...parts.map(({ things }) => things.length));
  return Math.min(mostTries, Math.floor(Math.sqrt(mostWork / parts.length / most ** 3)));
}

const here: Point = { x: 0, y: 0 };

interface Way {
  readonly shifts: readonly Point[];
  /** Of its last part, where they would stand. */
  readonly things: readonly Thing[];
  readonly seconds: number;
}

function moved(things: readonly Thing[], { x, y }: Point): readonly Thing[] {
  return things.map(({ kind, at }) => ({ kind, at: plus(at, x, y) }));
}

/** Those that bring the most things to where one of their kind stands come first. Rounded to a tenth of the unit the session is written in. */
function shiftsOf(standing: readonly Thing[], part: Laid, pitch: NonNullable<Session['pitch']>, units: Session['units']): readonly Point[] {
  const step = metresIn(units) * (units === 'cm' ? 10 : 0.1);
  const round = (metres: number): number => Math.round(metres / step) * step;
  const found = new Map<string, { readonly shift: Point; count: number }>();
  for (const there of standing) {
    for (const { kind, at } of part.things) {
      if (kind !== there.kind) continue;
      const shift = { x: round(there.at.x - at.x), y: round(there.at.y - at.y) };
      const key = `${shift.x} ${shift.y}`;
      const known = found.get(key);
      if (known) known.count += 1;
      else found.set(key, { shift, count: 1 });
    }
  }
  return [...found.values()]
    .filter(({ shift }) => part.at.every((at) => isOn(pitch, movedBy(part.extent, plus(at, shift.x, shift.y)))))
    .sort((a, b) => b.count - a.count || far(a.shift) - far(b.shift))
    .map(({ shift }) => shift);
}

function far({ x, y }: Point): number {
  return Math.abs(x) + Math.abs(y);
}
