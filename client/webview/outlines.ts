/** Where shapes lie on the sheet, from their data alone: asking the page would cost it a layout. Millimetres. */
import { type Box, boxOf } from '../../shared/scene/ground.ts';
import type { Layer, Scene, Shape } from '../../shared/scene/scene.ts';
import type { Spot } from '../../shared/scene/shapes.ts';

/** What the pitch takes of the sheet; null for an empty one. */
export function extentOf({ marks, movers }: Scene): Box | null {
  const spots = [
    ...marks.filter(({ layer }) => measured.has(layer)).flatMap(({ shapes }) => shapes.flatMap(spotsOf)),
    ...movers.flatMap(({ track }) => around(track[1] ?? 0, track[2] ?? 0, person)),
  ];
  return spots.length === 0 ? null : boxOf(spots);
}

/** The box around a shape that is no group; null for one of those and for text. */
export function outline(shape: Shape | undefined): Box | null {
  const spots = shape?.kind === 'circle' || shape?.kind === 'path' ? spotsOf(shape) : [];
  return spots.length === 0 ? null : boxOf(spots);
}

/** Of the paths that scenes have: moves and lines, absolute or along an axis. Curves count by where they begin and end. */
export function pointsOf(d: string): Spot[] {
  const points: Spot[] = [];
  for (const [, step, numbers = ''] of d.matchAll(/([MLhv])([^A-Za-z]*)/g)) {
    const [a = 0, b = 0] = numbers.trim().split(/[\s,]+/).map(Number);
    const last = points[points.length - 1] ?? { x: 0, y: 0 };
    points.push(step === 'h' ? { x: last.x + a, y: last.y } : step === 'v' ? { x: last.x, y: last.y + a } : { x: a, y: b });
  }
  return points;
}

const measured: ReadonlySet<Layer> = new Set(['zones', 'area', 'dimensions', 'paths', 'furniture', 'people']);
/** Room for somebody or something drawn about a spot. */
const person = 5;

function spotsOf(shape: Shape): Spot[] {
  switch (shape.kind) {
    case 'path':
      return pointsOf(shape.d);
    case 'circle':
      return around(shape.x, shape.y, shape.r);
    case 'text':
      return around(shape.x, shape.y, shape.size);
    case 'group':
      return around(shape.x, shape.y, person);
  }
}

function around(x: number, y: number, reach: number): Spot[] {
  return [{ x: x - reach, y: y - reach }, { x: x + reach, y: y + reach }];
}
