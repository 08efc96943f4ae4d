/** How near points come to each other and to straight lines. Metres. */
import type { Point } from './point.ts';

/** The nearest point of a segment: how far along it, 0 to 1, and how far away. */
export function closestOnSegment(p: Point, a: Point, b: Point): { readonly fraction: number; readonly distance: number } {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  const fraction = square > 0 ? clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / square) : 0;
  return { fraction, distance: Math.sqrt((a.x + dx * fraction - p.x) ** 2 + (a.y + dy * fraction - p.y) ** 2) };
}

/**
 * The closest that two points come while one moves evenly from a0 to a1 and the other from b0 to b1 in the same time:
 * the share of that time, 0 to 1, and how far apart they are then.
 */
export function closestApproach(
  a0: Point,
  a1: Point,
  b0: Point,
  b1: Point,
): { readonly fraction: number; readonly distance: number } {
  const start = { x: b0.x - a0.x, y: b0.y - a0.y };
  const end = { x: b1.x - a1.x, y: b1.y - a1.y };
  return closestOnSegment({ x: 0, y: 0 }, start, end);
}

function clamp(x: number): number {
  return Math.min(Math.max(x, 0), 1);
}
