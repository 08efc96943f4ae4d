import { closestOnSegment } from './closest.ts';
import { distance, type Point } from './point.ts';

export type Shape =
  | { readonly kind: 'polygon'; readonly points: readonly Point[] }
  | { readonly kind: 'circle'; readonly centre: Point; readonly radius: number };

/** Metres from the border of a shape: positive inside, negative outside. It changes by no more than one is moved. */
export function depthIn(shape: Shape, at: Point): number {
  if (shape.kind === 'circle') return shape.radius - distance(shape.centre, at);
  let nearest = Infinity;
  let inside = false;
  let a = shape.points.at(-1)!;
  for (const b of shape.points) {
    nearest = Math.min(nearest, closestOnSegment(at, a, b).distance);
    if (a.y > at.y !== b.y > at.y && at.x < a.x + ((at.y - a.y) * (b.x - a.x)) / (b.y - a.y)) inside = !inside;
    a = b;
  }
  return inside ? nearest : -nearest;
}
