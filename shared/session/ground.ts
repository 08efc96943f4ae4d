/** Where groups stand on the pitch. Metres. */
import type { Point } from '../geometry/point.ts';
import type { Drill } from '../model/drill.ts';
import type { Part, Session } from '../model/session.ts';
import { boundsOfArea, type Bounds } from '../model/things.ts';
import { thingsOf } from './things.ts';

/** Free ground between two groups where nobody says otherwise: the 3 m that guidance asks for around a pitch. No figure is published for training grids. */
export const between = 3;

/** What a drill covers in its own coordinates: its area, or everything that stands on the ground where it has none. */
export function extentOf(drill: Drill): Bounds {
  if (drill.area) return boundsOfArea(drill.area);
  const spots = [...thingsOf(drill).map(({ at }) => at), ...drill.actors.map(({ home }) => home)];
  if (spots.length === 0) return { left: 0, bottom: 0, right: 0, top: 0 };
  return spots.reduce(
    ({ left, bottom, right, top }, { x, y }) => ({ left: Math.min(left, x), bottom: Math.min(bottom, y), right: Math.max(right, x), top: Math.max(top, y) }),
    { left: Infinity, bottom: Infinity, right: -Infinity, top: -Infinity },
  );
}

export function movedBy(bounds: Bounds, { x, y }: Point): Bounds {
  return { left: bounds.left + x, bottom: bounds.bottom + y, right: bounds.right + x, top: bounds.top + y };
}

/** The places that are written, then rows from the bottom left corner for the groups without one. */
export function placesOf(part: Part, extent: Bounds, pitch: Session['pitch']): readonly { readonly at: Point; readonly assumed: boolean }[] {
  const written = part.at.slice(0, part.groups).map(({ x, y }) => ({ at: { x, y }, assumed: false }));
  const missing = part.groups - written.length;
  if (missing === 0) return written;
  const taken = written.map(({ at }) => movedBy(extent, at));
  const rows = [between, 0].map((gap) => inRows(missing, extent, pitch, taken, gap));
  const best = rows.find((row) => row.length === missing) ?? inRows(missing, extent, null, taken, between);
  return [...written, ...best.map((at) => ({ at, assumed: true }))];
}

/** Fewer than wanted where the pitch is too small; without a pitch all stand in one row. */
function inRows(count: number, extent: Bounds, pitch: Session['pitch'], taken: readonly Bounds[], gap: number): readonly Point[] {
  const [width, length] = [extent.right - extent.left, extent.top - extent.bottom];
  const fitting = (side: number | undefined, size: number, most: number): number =>
    side === undefined ? most : Math.min(most, Math.floor((side + gap + slack) / Math.max(size + gap, slack)));
  const columns = fitting(pitch?.width, width, count + taken.length);
  const rows = pitch ? fitting(pitch.length, length, count + taken.length) : 1;
  const cells = Array.from({ length: columns * rows }, (_, index): Point => ({
    x: (index % columns) * (width + gap) - extent.left,
    y: Math.floor(index / columns) * (length + gap) - extent.bottom,
  }));
  return cells.filter((at) => taken.every((other) => !overlap(movedBy(extent, at), other))).slice(0, count);
}

/** Rounding, and lines that two groups share, are no overlap: metres. */
const slack = 0.01;

export function overlap(a: Bounds, b: Bounds): boolean {
  return a.left < b.right - slack && b.left < a.right - slack && a.bottom < b.top - slack && b.bottom < a.top - slack;
}

export function isOn(pitch: NonNullable<Session['pitch']>, bounds: Bounds): boolean {
  return bounds.left >= -slack && bounds.bottom >= -slack && bounds.right <= pitch.width + slack && bounds.top <= pitch.length + slack;
}

/** The free place on the pitch that is nearest to where a group stands, with ground between it and the others if there is room; null when there is none. */
export function freePlace(extent: Bounds, near: Point, others: readonly Bounds[], pitch: NonNullable<Session['pitch']>): Point | null {
  for (const gap of [between, 0]) {
    const x = candidates(near.x, extent.left, extent.right, others.map(({ left, right }) => [left, right] as const), pitch.width, gap);
    const y = candidates(near.y, extent.bottom, extent.top, others.map(({ bottom, top }) => [bottom, top] as const), pitch.length, gap);
    const free = x.flatMap((each) => y.map((other): Point => ({ x: each, y: other }))).filter((at) => {
      const bounds = movedBy(extent, at);
      const wide = { left: bounds.left - gap, bottom: bounds.bottom - gap, right: bounds.right + gap, top: bounds.top + gap };
      return isOn(pitch, bounds) && others.every((other) => !overlap(wide, other));
    });
    const [best] = free.sort((a, b) => squared(a, near) - squared(b, near));
    if (best) return best;
  }
  return null;
}

/** Along one side: where it stands, the ends of the pitch, and before and behind each of the others. */
function candidates(near: number, low: number, high: number, others: readonly (readonly [number, number])[], side: number, gap: number): readonly number[] {
  const inside = Math.min(Math.max(near, -low), side - high);
  return [...new Set([inside, -low, side - high, ...others.flatMap(([from, to]) => [from - gap - high, to + gap - low])])];
}

function squared(a: Point, b: Point): number {
  return (a.x - b.x) ** 2 + (a.y - b.y) ** 2;
}
