/** Lines on the sheet as points: how long they are, and what lies where on them. */
import type { Spot } from './shapes.ts';

/** Millimetres along the points. */
export function lengthOf(points: readonly Spot[]): number {
  let sum = 0;
  for (let index = 1; index < points.length; index += 1) sum += gap(points[index - 1] as Spot, points[index] as Spot);
  return sum;
}

/** Not Math.hypot, which is many times slower: this is asked thousands of times a picture. */
export function gap(a: Spot, b: Spot): number {
  return Math.sqrt((b.x - a.x) ** 2 + (b.y - a.y) ** 2);
}

/** The spot a length along the points, clamped to them. */
export function walker(points: readonly Spot[]): (length: number) => Spot {
  const ends: number[] = [0];
  for (let index = 1; index < points.length; index += 1) ends.push((ends[index - 1] as number) + gap(points[index - 1] as Spot, points[index] as Spot));
  return (length) => {
    let index = 1;
    while (index < points.length - 1 && (ends[index] as number) < length) index += 1;
    const [a, b] = [points[index - 1] as Spot, (points[index] ?? points[0]) as Spot];
    const whole = (ends[index] ?? 0) - (ends[index - 1] as number);
    const share = whole > 0 ? Math.min(1, Math.max(0, (length - (ends[index - 1] as number)) / whole)) : 0;
    return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
  };
}

/** The points between two lengths along them. */
export function sliceOf(points: readonly Spot[], from: number, to: number): Spot[] {
  const at = walker(points);
  const slice = [at(from)];
  let along = 0;
  for (let index = 1; index < points.length - 1; index += 1) {
    along += gap(points[index - 1] as Spot, points[index] as Spot);
    if (along > from + 0.01 && along < to - 0.01) slice.push(points[index] as Spot);
  }
  slice.push(at(to));
  return slice;
}

/** Points along the same line, evenly, no further apart than `step`. */
export function dense(points: readonly Spot[], step: number): Spot[] {
  const length = lengthOf(points);
  const at = walker(points);
  const steps = Math.max(1, Math.ceil(length / step));
  return Array.from({ length: steps + 1 }, (_, index) => at((length * index) / steps));
}
