/** What a name of a drill can stand for. */
import type { Span } from '../../grammar/tree.ts';
import type { Point } from '../geometry/point.ts';
import type { Area, Furniture, Located, Station, Team, Zone } from './drill.ts';
import type { Quantity } from './expressions.ts';
import type { NameKind } from './names.ts';

/** Someone with a name of their own, in a game. */
export interface Player {
  readonly role: 'player' | 'keeper';
  readonly name: string;
  readonly team: string;
  readonly at: Located;
  readonly span: Span;
}

export type Thing =
  | { readonly kind: 'let'; readonly quantity: Quantity }
  | { readonly kind: 'area'; readonly area: Area }
  | { readonly kind: 'zone'; readonly zone: Zone }
  /** `zones Box`: the name that four zones share; all are of one size. */
  | { readonly kind: 'zones'; readonly zones: readonly Zone[] }
  | { readonly kind: 'furniture'; readonly furniture: Furniture }
  | { readonly kind: 'station'; readonly station: Station }
  | { readonly kind: 'team'; readonly team: Team }
  | { readonly kind: 'player'; readonly player: Player };

/** What a statement declares. */
export interface Named {
  /** Null for a cone that nobody named. */
  readonly name: string | null;
  /** Null: it could not be worked out, and that has been reported. */
  readonly thing: Thing | null;
}

/** With its article, for messages: `a pole`. */
export function called(kind: NameKind): string {
  return unlikeTheirKind[kind] ?? `a ${kind}`;
}

const unlikeTheirKind: Readonly<Partial<Record<NameKind, string>>> = {
  let: 'a number', area: 'the area', zones: 'the name of several zones', coach: 'the coach', minigoal: 'a small goal',
  floaters: 'a group of floaters', change: 'a progression or regression',
};

export function kindOf(thing: Thing): NameKind {
  switch (thing.kind) {
    case 'furniture':
      return thing.furniture.kind;
    case 'team':
      return thing.team.kind;
    case 'player':
      return thing.player.role;
    case 'let':
    case 'area':
    case 'zone':
    case 'zones':
    case 'station':
      return thing.kind;
  }
}

/** Where it is; the centre of a zone; null for what has no place of its own. */
export function spotOf(thing: Thing): Point | null {
  switch (thing.kind) {
    case 'zone':
      return centreOf(boundsOf(thing.zone.shape));
    case 'furniture':
      return thing.furniture.at;
    case 'station':
      return thing.station.at;
    case 'player':
      return thing.player.at;
    case 'let':
    case 'area':
    case 'zones':
    case 'team':
      return null;
  }
}

/** The upright box around a shape. */
export interface Bounds {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

export function boundsOf(shape: Zone['shape']): Bounds {
  if (shape.kind === 'circle') {
    const { centre, radius } = shape;
    return { left: centre.x - radius, bottom: centre.y - radius, right: centre.x + radius, top: centre.y + radius };
  }
  const xs = shape.points.map((point) => point.x);
  const ys = shape.points.map((point) => point.y);
  return { left: Math.min(...xs), bottom: Math.min(...ys), right: Math.max(...xs), top: Math.max(...ys) };
}

export function boundsOfArea(area: Area): Bounds {
  return { left: 0, bottom: 0, right: area.width, top: area.length };
}

export function centreOf(bounds: Bounds): Point {
  return { x: (bounds.left + bounds.right) / 2, y: (bounds.bottom + bounds.top) / 2 };
}
