/** Runs led round those who stand in their way, so that nobody's badge hides them. Millimetres on the sheet. */
import { boxOf } from './ground.ts';
import type { Spot } from './shapes.ts';
import { dense, gap } from './traces.ts';

/** Round things at rest that lines end at, on the sheet. */
export interface Disc extends Spot {
  readonly r: number;
}

/** Millimetres between a disc and the run that goes round it. */
const clearance = 0.9;
/** Less than this is no clearance. */
const touching = 0.4;
/** Millimetres between the points of a line that is led round. */
const step = 0.8;

/** The line, led smoothly round the discs it would pass under; null where there are none. */
export function roundDiscs(line: readonly Spot[], discs: readonly Disc[]): Spot[] | null {
  const hull = boxOf(line);
  // The points of a trace are at most 2 mm apart.
  const near = discs.filter((disc) => disc.x > hull.left - 5 && disc.x < hull.right + 5 && disc.y > hull.top - 5 && disc.y < hull.bottom + 5
    && line.some((spot) => gap(spot, disc) < disc.r + 1.5));
  if (near.length === 0) return null;
  const points = dense(line, step);
  const last = points.length - 1;
  // To the left and to the right of every point.
  let aside: { left: number; right: number }[] | null = null;
  for (const disc of near) {
    let closest = 0;
    let least = Infinity;
    for (let index = 0; index <= last; index += 1) {
      const away = gap(points[index] as Spot, disc);
      if (away < least) [closest, least] = [index, away];
    }
    // What stands at an end is where the line goes.
    if (closest < 2 || closest > last - 2 || least >= disc.r + touching) continue;
    aside ??= points.map(() => ({ left: 0, right: 0 }));
    const spot = points[closest] as Spot;
    const { x, y } = leftOf(points, closest);
    const off = (disc.x - spot.x) * x + (disc.y - spot.y) * y;
    const reach = disc.r + clearance - Math.abs(off);
    const width = Math.min(2.2 * (disc.r + clearance), Math.min(closest, last - closest) * step);
    const side = off > 0.3 ? 'right' : 'left';
    for (const [index, shift] of aside.entries()) {
      const along = Math.abs(index - closest) * step;
      if (along < width) shift[side] = Math.max(shift[side], reach * Math.cos((Math.PI / 2) * (along / width)) ** 2);
    }
  }
  return aside && aside.map(({ left, right }, index) => {
    const [spot, { x, y }] = [points[index] as Spot, leftOf(points, index)];
    return { x: spot.x + x * (left - right), y: spot.y + y * (left - right) };
  });
}

/** Unit vector to the left of the line at one of its points. */
function leftOf(points: readonly Spot[], index: number): Spot {
  const [a, b] = [points[Math.max(0, index - 1)] as Spot, points[Math.min(points.length - 1, index + 1)] as Spot];
  const length = gap(a, b) || 1;
  return { x: (b.y - a.y) / length, y: (a.x - b.x) / length };
}
