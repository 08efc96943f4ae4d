/** Small constructors for marks, and the one way numbers are written into paths. Millimetres. */
import type { Weight } from '../font/text.ts';
import type { Paint } from './palette.ts';
import type { Pen, Shape } from './scene.ts';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Two digits: a hundredth of a millimetre. Nothing but a number is ever written. */
export function mm(value: number): string {
  const hundredths = Math.round(value * 100);
  if (!Number.isFinite(hundredths)) return '0';
  // Whole numbers are written much faster than fractions, and a picture has thousands of them.
  const size = Math.abs(hundredths);
  const rest = size % 100;
  const whole = `${hundredths < 0 ? '-' : ''}${(size - rest) / 100}`;
  if (rest === 0) return whole;
  return rest % 10 === 0 ? `${whole}.${rest / 10}` : `${whole}.${rest < 10 ? '0' : ''}${rest}`;
}

export function stroked(stroke: Paint, width: number, dash: string | null = null): Pen {
  return { fill: null, stroke, width, dash };
}

export function filled(fill: Paint, stroke: Paint | null = null, width = 0): Pen {
  return { fill, stroke, width, dash: null };
}

export function path(d: string, pen: Pen): Shape {
  return { kind: 'path', d, fill: pen.fill, stroke: pen.stroke, width: pen.width, dash: pen.dash };
}

export function line(a: Spot, b: Spot, pen: Pen): Shape {
  return path(`M${mm(a.x)} ${mm(a.y)}L${mm(b.x)} ${mm(b.y)}`, pen);
}

export function polygon(points: readonly Spot[], pen: Pen): Shape {
  return path(`${polyline(points)}Z`, pen);
}

export function polyline(points: readonly Spot[]): string {
  let d = '';
  for (const { x, y } of points) d += `${d === '' ? 'M' : 'L'}${mm(x)} ${mm(y)}`;
  return d;
}

export function box(x: number, y: number, width: number, height: number, pen: Pen): Shape {
  return path(`M${mm(x)} ${mm(y)}h${mm(width)}v${mm(height)}h${mm(-width)}Z`, pen);
}

export function circle(at: Spot, r: number, pen: Pen): Shape {
  return { kind: 'circle', x: at.x, y: at.y, r, ...pen };
}

export function group(at: Spot, shapes: readonly Shape[]): Shape {
  return { kind: 'group', x: at.x, y: at.y, shapes };
}

export function text(
  at: Spot,
  words: string,
  size: number,
  fill: Paint,
  more: { readonly weight?: Weight; readonly anchor?: 'start' | 'middle' | 'end'; readonly upright?: boolean } = {},
): Shape {
  return {
    kind: 'text', x: at.x, y: at.y, text: words, size, fill,
    weight: more.weight ?? 'medium', anchor: more.anchor ?? 'start', upright: more.upright ?? false,
  };
}
