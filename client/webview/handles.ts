/** What of a drawing can be dragged, and what that means for the text. */
import type { Point } from '../../shared/geometry/point.ts';
import type { Scene } from '../../shared/scene/scene.ts';
import type { Spot } from '../../shared/scene/shapes.ts';
import type { Handle } from '../../shared/service/drag.ts';
import { outline, pointsOf } from './outlines.ts';
import type { Thing } from './picture.ts';

export interface Grip {
  readonly handle: Handle;
  /** Where it is now, in metres. */
  readonly at: Point;
}

/** Millimetres of the sheet round an end, a side or a corner within which that is taken, and not the whole. */
const reach = 3.5;

/** Null for what stays where the text of something else puts it. */
export function gripOf(scene: Scene, thing: Thing, spot: Spot): Grip | null {
  const { span, id } = thing;
  if (!span) return null;
  if (id === 'area') return sideOf(scene, thing, spot, ['right', 'top']);
  if (id.startsWith('zone-')) return cornerOf(scene, thing, spot) ?? sideOf(scene, thing, spot, ['left', 'right', 'bottom', 'top']) ?? whole(scene, thing, middleOf(thing));
  if (/^(?:run|dribble)-/.test(id)) {
    const head = thing.shapes[1]?.kind === 'path' ? pointsOf(thing.shapes[1].d) : [];
    return head.some(({ x, y }) => Math.hypot(x - spot.x, y - spot.y) <= reach) ? { handle: { kind: 'end', action: span, way: id }, at: onGrass(scene, spot) } : null;
  }
  if (id.startsWith('name-')) {
    const named = [...scene.movers, ...scene.marks].find((other) => other.span?.from === span.from && /^(?:person|thing)-(?!next )/.test(other.id));
    return named ? whole(scene, named, placeOf(named)) : null;
  }
  return /^(?:person-(?!next )|thing-|balls-)/.test(id) ? whole(scene, thing, placeOf(thing)) : null;
}

/** As taken by the keyboard: people and things by their place, lines by their end, zones as a whole. */
export function keyGrip(scene: Scene, thing: Thing): Grip | null {
  const head = thing.shapes[1]?.kind === 'path' ? pointsOf(thing.shapes[1].d)[0] : undefined;
  const line = /^(?:run|dribble)-/.test(thing.id) && head;
  return gripOf(scene, thing, line || (placeOf(thing) ?? middleOf(thing)));
}

export function onGrass({ plan }: Scene, { x, y }: Spot): Point {
  return { x: (x - plan.left) / plan.perMetre, y: (plan.bottom - y) / plan.perMetre };
}

function whole(scene: Scene, { span }: Thing, spot: Spot | null): Grip | null {
  return span && spot ? { handle: { kind: 'thing', statement: span }, at: onGrass(scene, spot) } : null;
}

/** Where something stands at the start of a repetition. */
function placeOf(thing: Thing): Spot | null {
  if ('track' in thing) return { x: thing.track[1] ?? 0, y: thing.track[2] ?? 0 };
  const [shape] = thing.shapes;
  return shape?.kind === 'group' ? shape : null;
}

type Side = Extract<Handle, { kind: 'side' }>['side'];

function sideOf(scene: Scene, { span, shapes }: Thing, spot: Spot, sides: readonly Side[]): Grip | null {
  const box = span && outline(shapes[0]);
  if (!box) return null;
  const away: Readonly<Record<Side, number>> = {
    left: Math.abs(spot.x - box.left), right: Math.abs(spot.x - box.right), top: Math.abs(spot.y - box.top), bottom: Math.abs(spot.y - box.bottom),
  };
  const side = [...sides].sort((a, b) => away[a] - away[b])[0];
  return side && away[side] <= reach ? { handle: { kind: 'side', statement: span, side }, at: onGrass(scene, spot) } : null;
}

/** Of a polygon that is no box along the axes. */
function cornerOf(scene: Scene, { span, shapes }: Thing, spot: Spot): Grip | null {
  const [shape] = shapes;
  const corners = shape?.kind === 'path' ? pointsOf(shape.d) : [];
  const box = outline(shape);
  if (!span || !box || corners.every(({ x, y }) => (x === box.left || x === box.right) && (y === box.top || y === box.bottom))) return null;
  const index = corners.findIndex(({ x, y }) => Math.hypot(x - spot.x, y - spot.y) <= reach);
  const corner = corners[index];
  return corner ? { handle: { kind: 'corner', statement: span, index }, at: onGrass(scene, corner) } : null;
}

function middleOf({ shapes }: Thing): Spot {
  const box = outline(shapes[0]);
  return box ? { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 } : { x: 0, y: 0 };
}
