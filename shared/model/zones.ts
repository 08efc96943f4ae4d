/** The area and its zones. */
import type { Anchor, Space, Word, ZoneShape } from '../../grammar/tree.ts';
import { crossesItself, noSize, tooFewCorners, tooManyCorners } from '../checks/impossible-value.ts';
import { wrongKind } from '../checks/wrong-kind.ts';
import { area, selfCrosses } from '../geometry/polygon.ts';
import type { Point } from '../geometry/point.ts';
import type { Split, Zone } from './drill.ts';
import { cornerNames } from './declarations.ts';
import { positiveLength, positiveSize } from './expressions.ts';
import { anchorNamed, anchorOf, pointOf, sharesOf } from './places.ts';
import { boundsNamed, type Scope } from './scope.ts';
import { spanOf } from './span.ts';
import type { Bounds, Named } from './things.ts';

/** Far more than a coach would mark out. */
const mostCorners = 1000;

export function areaNamed(statement: Extract<Space, { kind: 'area' }>, scope: Scope): Named {
  const size = positiveSize(statement.size, scope, 'the area');
  const marked = statement.marked && positiveLength(statement.marked, scope, 'The distance between the markers');
  return { name: 'area', thing: size && { kind: 'area', area: { ...size, marked, span: statement.span } } };
}

export function zoneNamed(statement: Extract<Space, { kind: 'zone' }>, scope: Scope): Named {
  const shape = shapeOf(statement.shape, statement.name, scope);
  return zoneOf(statement, statement.name, statement.name.text, shape, { group: null, split: false });
}

/** The zones of a `split`: strips one after the other, from the bottom or from the left, in the sizes written. */
export function stripsNamed(
  statement: Extract<Space, { kind: 'split' }>,
  scope: Scope,
): { readonly strips: readonly Named[]; readonly split: Split | null } {
  const bounds = uprightBounds(statement.of, scope);
  const sizes = statement.into.map(({ name, size }) => positiveLength(size, scope, `The strip \`${name.text}\``));
  let done: number | null = 0;
  const strips = statement.into.map(({ name }, index): Named => {
    const size = sizes[index] ?? null;
    const start: number | null = done;
    done = start === null || size === null ? null : start + size;
    const strip = bounds && start !== null && done !== null ? stripOf(bounds, statement.by, start, done) : null;
    return zoneOf(statement, name, name.text, strip && boxOf(strip), { group: statement.of.text, split: true });
  });
  if (!bounds || done === null) return { strips, split: null };
  return {
    strips,
    split: {
      of: statement.of.text,
      by: statement.by,
      side: statement.by === 'length' ? bounds.top - bounds.bottom : bounds.right - bounds.left,
      strips: statement.into.map(({ name, size }, index) => ({ name: name.text, size: sizes[index] ?? 0, span: size.span })),
      span: statement.span,
    },
  };
}

/** The name that the four share comes first. */
export function cornersNamed(statement: Extract<Space, { kind: 'zones' }>, scope: Scope): readonly Named[] {
  const bounds = boundsNamed(statement.of, scope);
  const size = positiveSize(statement.size, scope, `\`${statement.name.text}\``);
  const zones = cornerNames.map((corner): Named => {
    const anchor = `${corner.charAt(0).toLowerCase()}${corner.slice(1)}` as Uncapitalize<typeof corner>;
    const shape = bounds && size && boxOf(tucked(size, bounds, anchor));
    return zoneOf(statement, statement.name, statement.name.text + corner, shape, { group: statement.name.text, split: false });
  });
  const found = zones.flatMap(({ thing }) => (thing?.kind === 'zone' ? [thing.zone] : []));
  return [{ name: statement.name.text, thing: found.length === 4 ? { kind: 'zones', zones: found } : null }, ...zones];
}

function zoneOf(
  statement: Space,
  word: Word,
  name: string,
  shape: Zone['shape'] | null,
  family: Pick<Zone, 'group' | 'split'>,
): Named {
  const zone = shape && { id: name, name, span: statement.span, nameSpan: spanOf(word), shape, ...family };
  return { name, thing: zone && { kind: 'zone', zone } };
}

function shapeOf(shape: ZoneShape, name: Word, scope: Scope): Zone['shape'] | null {
  switch (shape.kind) {
    case 'box': {
      const size = positiveSize(shape.size, scope, `\`${name.text}\``);
      const at = pointOf(shape.at, scope);
      return size && at && boxOf(around(at, size));
    }
    case 'tucked': {
      const size = positiveSize(shape.size, scope, `\`${name.text}\``);
      const bounds = boundsNamed(shape.of, scope);
      const anchor = anchorNamed(shape.anchor, shape.of.text, scope);
      return size && bounds && anchor && boxOf(tucked(size, bounds, anchor));
    }
    case 'corners': {
      const a = pointOf(shape.a, scope);
      const b = pointOf(shape.b, scope);
      if (a === null || b === null) return null;
      if (a.x !== b.x && a.y !== b.y) {
        return boxOf({ left: Math.min(a.x, b.x), bottom: Math.min(a.y, b.y), right: Math.max(a.x, b.x), top: Math.max(a.y, b.y) });
      }
      scope.report(noSize(name));
      return null;
    }
    case 'circle': {
      const radius = positiveLength(shape.radius, scope, `The radius of \`${name.text}\``);
      const centre = pointOf(shape.at, scope);
      return radius === null || centre === null ? null : { kind: 'circle', centre, radius };
    }
    case 'polygon':
      return polygonOf(shape, name, scope);
  }
}

function polygonOf(shape: Extract<ZoneShape, { kind: 'polygon' }>, name: Word, scope: Scope): Zone['shape'] | null {
  const count = shape.points.length;
  if (count < 3) scope.report(tooFewCorners(name, count));
  if (count > mostCorners) scope.report(tooManyCorners(name, count, mostCorners));
  if (count < 3 || count > mostCorners) return null;
  const points = shape.points.map((place) => pointOf(place, scope)).filter((point) => point !== null);
  if (points.length < count) return null;
  if (selfCrosses(points)) scope.report(crossesItself(name));
  else if (area(points) < 1e-9) scope.report(noSize(name));
  else return { kind: 'polygon', points };
  return null;
}

/** Only upright boxes can be cut into strips. */
function uprightBounds(word: Word, scope: Scope): Bounds | null {
  const bounds = boundsNamed(word, scope);
  const thing = scope.things.get(word.text);
  if (bounds === null || thing?.kind !== 'zone' || isUprightBox(thing.zone.shape, bounds)) return bounds;
  scope.report(wrongKind(word, word.text, 'not a rectangle', 'only the area and rectangles along its sides can be split'));
  return null;
}

function isUprightBox(shape: Zone['shape'], { left, bottom, right, top }: Bounds): boolean {
  return shape.kind === 'polygon' && area(shape.points) > (right - left) * (top - bottom) * (1 - 1e-9);
}

interface Extent {
  readonly width: number;
  readonly length: number;
}

function stripOf(bounds: Bounds, by: 'width' | 'length', start: number, end: number): Bounds {
  return by === 'length'
    ? { ...bounds, bottom: bounds.bottom + start, top: bounds.bottom + end }
    : { ...bounds, left: bounds.left + start, right: bounds.left + end };
}

function around(at: Point, { width, length }: Extent): Bounds {
  return { left: at.x - width / 2, bottom: at.y - length / 2, right: at.x + width / 2, top: at.y + length / 2 };
}

/** A box inside another one, touching the corner or side named. */
function tucked(size: Extent, bounds: Bounds, anchor: Anchor): Bounds {
  const corner = anchorOf(bounds, anchor);
  const share = sharesOf(anchor);
  const left = corner.x - share.across * size.width;
  const bottom = corner.y - share.up * size.length;
  return { left, bottom, right: left + size.width, top: bottom + size.length };
}

/** Corners from the bottom left, against the clock. */
function boxOf({ left, bottom, right, top }: Bounds): Zone['shape'] {
  const points = [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
  return { kind: 'polygon', points };
}
