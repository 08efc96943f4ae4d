/** A place somewhere else, written as it was before: relative places stay relative. */
import type { Place, Span } from '../../grammar/tree.ts';
import type { Point } from '../geometry/point.ts';
import type { Edit } from '../problem.ts';
import { adjusted, inSteps, type Written } from './adjust.ts';

export function moved(place: Place, at: Point, to: Point, written: Written): readonly Edit[] {
  return change(place.span, shifted(place, to.x - at.x, to.y - at.y, written), written);
}

export function change(span: Span, text: string, written: Written): readonly Edit[] {
  return text === textOf(span, written) ? [] : [{ span, text }];
}

/** The text of a place that lies so many metres further right and up. */
export function shifted(place: Place, dx: number, dy: number, written: Written): string {
  switch (place.kind) {
    case 'at':
      return `(${adjusted(place.x, dx, written)}, ${adjusted(place.y, dy, written)})`;
    case 'name':
    case 'anchor': {
      const { x, y } = stepsOf(dx, dy, written);
      return x !== 0 && y !== 0 ? aside(place, dx, dy, written) : `${asideWords(dx, dy, written)}${textOf(place.span, written)}`;
    }
    case 'offset': {
      const [x, y] = [adjusted(place.dx, dx, written), adjusted(place.dy, dy, written)];
      const from = textOf(place.from.span, written);
      return x === '0' && y === '0' ? from : `${from} + (${x}, ${y})`;
    }
    case 'beside':
      return besideShifted(place, dx, dy, written);
    case 'mirror': {
      const of = place.across === 'length' ? shifted(place.of, -dx, dy, written) : shifted(place.of, dx, -dy, written);
      return `mirror of ${of} across ${place.across}`;
    }
    case 'between':
    case 'along':
      return `${asideWords(dx, dy, written)}${textOf(place.span, written)}`;
  }
}

const opposite = { 'left of': 'right of', 'right of': 'left of', above: 'below', below: 'above' } as const;

/** The distance changes, beyond the place itself the word too; what lies across goes to the place it hangs on. */
function besideShifted(place: Extract<Place, { kind: 'beside' }>, dx: number, dy: number, written: Written): string {
  const { side, distance } = place;
  const across = side === 'left of' || side === 'right of';
  const away = (across ? dx : dy) * (side === 'right of' || side === 'above' ? 1 : -1);
  const of = across ? aside(place.of, 0, dy, written) : aside(place.of, dx, 0, written);
  const far = adjusted(distance, away, written);
  if (Number.parseFloat(far) === 0) return of;
  if (distance.kind !== 'number' || !far.startsWith('-')) return `${far} ${side} ${of}`;
  return `${far.slice(1)} ${opposite[side]} ${of}`;
}

/** `Near + (0, 2)` */
function aside(place: Place, dx: number, dy: number, written: Written): string {
  if (place.kind !== 'name' && place.kind !== 'anchor') return shifted(place, dx, dy, written);
  const { x, y } = stepsOf(dx, dy, written);
  const text = textOf(place.span, written);
  return x === 0 && y === 0 ? text : `${text} + (${x}, ${y})`;
}

/** `1.5 left of 2 above `, to be written before a place. */
function asideWords(dx: number, dy: number, written: Written): string {
  const { x, y } = stepsOf(dx, dy, written);
  const across = x === 0 ? '' : `${Math.abs(x)} ${x > 0 ? 'right of' : 'left of'} `;
  const up = y === 0 ? '' : `${Math.abs(y)} ${y > 0 ? 'above' : 'below'} `;
  return across + up;
}

function stepsOf(dx: number, dy: number, { units }: Written): Point {
  return { x: inSteps(dx, units), y: inSteps(dy, units) };
}

function textOf({ from, to }: Span, { text }: Written): string {
  return text.slice(from, to);
}
