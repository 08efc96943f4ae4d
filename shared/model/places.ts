/** Where a place is, in metres. */
import { anchors, type Anchor, type Place, type Word } from '../../grammar/tree.ts';
import { tooLarge } from '../checks/impossible-value.ts';
import { unknownName } from '../checks/unknown-name.ts';
import { wrongKind } from '../checks/wrong-kind.ts';
import { along, plus, type Point } from '../geometry/point.ts';
import type { Located } from './drill.ts';
import { farthest, lengthOf, numberOf } from './expressions.ts';
import type { NameKind } from './names.ts';
import { areaBounds, boundsNamed, type Scope } from './scope.ts';
import { called, kindOf, spotOf, type Bounds, type Thing } from './things.ts';

/** Null when it cannot be worked out, which has then been reported. */
export function located(place: Place, scope: Scope): Located | null {
  const point = pointOf(place, scope);
  return point && { x: point.x, y: point.y, span: place.span };
}

export function pointOf(place: Place, scope: Scope): Point | null {
  const point = worked(place, scope);
  if (point === null || (Math.abs(point.x) <= farthest && Math.abs(point.y) <= farthest)) return point;
  scope.report(tooLarge(place.span));
  return null;
}

function worked(place: Place, scope: Scope): Point | null {
  switch (place.kind) {
    case 'at': {
      const x = lengthOf(place.x, scope);
      const y = lengthOf(place.y, scope);
      return x === null || y === null ? null : { x, y };
    }
    case 'name':
      return spotNamed(place, scope);
    case 'anchor': {
      const bounds = boundsNamed(place.of, scope);
      const anchor = anchorNamed(place.anchor, place.of.text, scope);
      return bounds && anchor && anchorOf(bounds, anchor);
    }
    case 'offset': {
      const from = pointOf(place.from, scope);
      const dx = lengthOf(place.dx, scope);
      const dy = lengthOf(place.dy, scope);
      return from === null || dx === null || dy === null ? null : plus(from, dx, dy);
    }
    case 'beside': {
      const of = pointOf(place.of, scope);
      const distance = lengthOf(place.distance, scope);
      if (of === null || distance === null) return null;
      const way = ways[place.side];
      return plus(of, way.x * distance, way.y * distance);
    }
    case 'between': {
      const a = pointOf(place.a, scope);
      const b = pointOf(place.b, scope);
      return a && b && along(a, b, 0.5);
    }
    case 'along': {
      const start = pointOf(place.start, scope);
      const end = pointOf(place.end, scope);
      const fraction = numberOf(place.fraction, scope);
      return start === null || end === null || fraction === null ? null : along(start, end, fraction);
    }
    case 'mirror': {
      const of = pointOf(place.of, scope);
      const bounds = areaBounds(place.span, scope);
      return of && bounds && mirrored(of, place.across, bounds);
    }
  }
}

/** Across the length: over the line that runs up the middle, so that left becomes right. Across the width: over the halfway line. */
export function mirrored(point: Point, across: 'width' | 'length', area: Bounds): Point {
  return across === 'length'
    ? { x: area.left + area.right - point.x, y: point.y }
    : { x: point.x, y: area.bottom + area.top - point.y };
}

/** The corner, side or centre of a box. */
export function anchorOf(bounds: Bounds, anchor: Anchor): Point {
  const { across, up } = sharesOf(anchor);
  return {
    x: bounds.left + (bounds.right - bounds.left) * across,
    y: bounds.bottom + (bounds.top - bounds.bottom) * up,
  };
}

/** How far across and up a box its anchor is: 0, a half or 1. */
export function sharesOf(anchor: Anchor): { readonly across: number; readonly up: number } {
  const name = anchor.toLowerCase();
  return {
    across: name.includes('left') ? 0 : name.includes('right') ? 1 : 0.5,
    up: name.includes('bottom') ? 0 : name.includes('top') ? 1 : 0.5,
  };
}

export function anchorNamed(word: Word, of: string, scope: Scope): Anchor | null {
  const anchor = anchors.find((each) => each === word.text);
  if (anchor) return anchor;
  scope.report(unknownName(word, `place of ${of}`, anchors));
  return null;
}

const ways = {
  'left of': { x: -1, y: 0 },
  'right of': { x: 1, y: 0 },
  above: { x: 0, y: 1 },
  below: { x: 0, y: -1 },
} as const;

function spotNamed({ name, next, span }: Extract<Place, { kind: 'name' }>, scope: Scope): Point | null {
  const thing = scope.thing(name, 'place', places);
  if (thing === null) return null;
  const spot = spotOf(thing);
  if (next && thing.kind === 'station') scope.queued.add(thing.station.id);
  if (spot && (!next || thing.kind === 'station')) return spot;
  scope.report(wrongKind(span, name.text, called(kindOf(thing)), next ? 'only a station has a next player' : noSpot(thing, name.text)));
  return null;
}

function noSpot(thing: Thing, name: string): string {
  if (thing.kind === 'area') return 'say where in it: `area.centre`';
  return thing.kind === 'zones' ? `say which: \`${name}TopLeft\`` : 'it is not a place';
}

const places: ReadonlySet<NameKind> = new Set<NameKind>([
  'station', 'zone', 'player', 'keeper', 'coach', 'cone', 'disc', 'pole', 'mannequin', 'gate', 'goal', 'minigoal', 'hurdle', 'ladder',
]);
