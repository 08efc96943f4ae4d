/** Cones, poles, goals and the like. */
import type { Facing, Furniture as Statement } from '../../grammar/tree.ts';
import type { Point } from '../geometry/point.ts';
import type { Area, Furniture, Id } from './drill.ts';
import { positiveLength, positiveSize } from './expressions.ts';
import { located, pointOf } from './places.ts';
import type { Scope } from './scope.ts';

/** A folding small goal as most clubs have them, in metres. */
const minigoal = { width: 1.2, height: 0.8 };
/** A ladder of ten rungs, in metres. */
const ladderLength = 4;

export type Standing = Exclude<Statement, { kind: 'ball' | 'balls' }>;

/** Null when its place or size cannot be worked out. Where it looks is for {@link facingOf}, once every place is known. */
export function furnitureOf(statement: Standing, id: Id, scope: Scope): Furniture | null {
  const at = located(statement.at, scope);
  const size = sizeOf(statement, scope);
  if (at === null || size === null) return null;
  const name = statement.kind === 'coach' ? 'coach' : (statement.name?.text ?? null);
  return { id, kind: statement.kind, name, at, ...size, facing: null, span: statement.span };
}

function sizeOf(statement: Standing, scope: Scope): Pick<Furniture, 'width' | 'height'> | null {
  switch (statement.kind) {
    case 'gate': {
      const width = positiveLength(statement.width, scope, 'The width of the gate');
      return width === null ? null : { width, height: null };
    }
    case 'goal': {
      const size = positiveSize(statement.size, scope, 'the goal');
      return size && { width: size.width, height: size.length };
    }
    case 'minigoal':
      return minigoal;
    case 'ladder': {
      const width = statement.length ? positiveLength(statement.length, scope, 'The length of the ladder') : ladderLength;
      return width === null ? null : { width, height: null };
    }
    case 'cone':
    case 'disc':
    case 'pole':
    case 'mannequin':
    case 'hurdle':
    case 'coach':
      return { width: null, height: null };
  }
}

const ways = { up: { x: 0, y: 1 }, down: { x: 0, y: -1 }, left: { x: -1, y: 0 }, right: { x: 1, y: 0 } } as const;

/** A unit vector; null for what has no front. Unless it is written, goals and gates look into the area, ladders and hurdles up it. */
export function facingOf(statement: Standing, at: Point, scope: Scope): Point | null {
  switch (statement.kind) {
    case 'gate':
    case 'goal':
    case 'minigoal': {
      const area = scope.things.get('area');
      return directionOf(statement.facing, at, scope) ?? (area?.kind === 'area' ? inward(at, area.area) : ways.up);
    }
    case 'hurdle':
    case 'ladder':
      return directionOf(statement.facing, at, scope) ?? ways.up;
    case 'cone':
    case 'disc':
    case 'pole':
    case 'mannequin':
    case 'coach':
      return null;
  }
}

/** Null when nobody wrote it, when it cannot be worked out, or when the thing would face the spot it stands on. */
function directionOf(facing: Facing | null, from: Point, scope: Scope): Point | null {
  if (facing === null) return null;
  if (facing.kind === 'way') return ways[facing.way];
  const at = pointOf(facing.at, scope);
  if (at === null) return null;
  const length = Math.hypot(at.x - from.x, at.y - from.y);
  return length < 1e-6 ? null : { x: (at.x - from.x) / length, y: (at.y - from.y) / length };
}

/** Nearer to a side of the area than this, in metres, a goal stands on that side. */
const onTheLine = 0.5;

/** What stands on one side of the area faces straight in; everything else faces its centre, as nearly as the four ways allow. */
function inward(at: Point, area: Area): Point {
  const sides = [
    { inside: at.y, way: ways.up },
    { inside: area.length - at.y, way: ways.down },
    { inside: at.x, way: ways.right },
    { inside: area.width - at.x, way: ways.left },
  ].filter(({ inside }) => inside < onTheLine);
  if (sides.length === 1) return sides[0]!.way;
  const dx = area.width / 2 - at.x;
  const dy = area.length / 2 - at.y;
  if (Math.abs(dx) > Math.abs(dy)) return dx > 0 ? ways.right : ways.left;
  return dy < 0 ? ways.down : ways.up;
}
