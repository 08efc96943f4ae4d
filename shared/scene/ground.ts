/** From metres on the grass to millimetres on the sheet. */
import type { Point } from '../geometry/point.ts';
import type { Plan } from './scene.ts';
import type { Spot } from './shapes.ts';

export function onSheet(plan: Plan, at: Point): Spot {
  return { x: plan.left + plan.perMetre * at.x, y: plan.bottom - plan.perMetre * at.y };
}

/** A box on the sheet or on the grass. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export function boxAround(at: Spot, width: number, height = width): Box {
  return { left: at.x - width / 2, right: at.x + width / 2, top: at.y - height / 2, bottom: at.y + height / 2 };
}

export function boxOf(points: readonly Spot[]): Box {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { left, right, top, bottom };
}

/** Square millimetres (or metres) that both boxes cover. */
export function overlap(a: Box, b: Box): number {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return width > 0 && height > 0 ? width * height : 0;
}
