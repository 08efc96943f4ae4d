/** Moving one side of the area or a zone. */
import { anchors, type Expression, type Size, type Space } from '../../grammar/tree.ts';
import { analyse, type DrillAnalysis } from '../analyse.ts';
import { applyEdits } from '../checks/edits.ts';
import type { Point } from '../geometry/point.ts';
import type { Id, Zone } from '../model/drill.ts';
import { sharesOf } from '../model/places.ts';
import { boundsOf, boundsOfArea, centreOf, type Bounds } from '../model/things.ts';
import type { Edit } from '../problem.ts';
import { unitNamed } from '../units.ts';
import { adjusted, stepIn, type Written } from './adjust.ts';
import { change, shifted } from './move.ts';
import type { Open } from './open.ts';

export type Side = 'left' | 'right' | 'bottom' | 'top';

/**
 * The area keeps its bottom left corner, a box in a corner that corner; a box or a circle round a place keeps its centre, so
 * the other side moves too; a strip takes from its neighbour. `to` is in metres. Null for a side that cannot move.
 */
export function resized(
  open: Open, statement: Space, { side, zone: id }: { readonly side: Side; readonly zone?: Id }, to: Point, { drill }: DrillAnalysis,
): readonly Edit[] | null {
  const written: Written = { text: open.text, units: drill.units };
  const across = side === 'left' || side === 'right';
  const goal = across ? to.x : to.y;
  if (statement.kind === 'area') return drill.area && boxResized(statement.size, 0, boundsOfArea(drill.area), side, goal, written);
  const own = drill.zones.filter(({ span }) => span.from === statement.span.from);
  const zone = id === undefined && own.length > 1 ? undefined : own.find((each) => id === undefined || each.id === id);
  if (!zone) return null;
  const bounds = boundsOf(zone.shape);
  switch (statement.kind) {
    case 'zone':
      return zoneResized(open, statement, zone, side, goal, written, drill.id);
    case 'zones':
      return boxResized(statement.size, shareOf(zone.name.slice(statement.name.text.length), across), bounds, side, goal, written);
    case 'split':
      return across === (statement.by === 'width') ? stripResized(statement, zone, side, goal - bounds[side], written) : null;
  }
}

function zoneResized(
  open: Open, { shape }: Extract<Space, { kind: 'zone' }>, zone: Zone, side: Side, goal: number, written: Written, drill: Id,
): readonly Edit[] | null {
  const across = side === 'left' || side === 'right';
  const bounds = boundsOf(zone.shape);
  switch (shape.kind) {
    case 'box':
      return boxResized(shape.size, 0.5, bounds, side, goal, written);
    case 'tucked':
      return boxResized(shape.size, shareOf(shape.anchor.text, across), bounds, side, goal, written);
    case 'circle': {
      const radius = Math.abs(goal - middle(bounds, across));
      return change(shape.radius.span, grown(shape.radius, radius, (bounds.right - bounds.left) / 2, written), written);
    }
    case 'corners': {
      const by = goal - bounds[side];
      const [dx, dy] = across ? [by, 0] : [0, by];
      const tries = [shape.a, shape.b].map((place) => change(place.span, shifted(place, dx, dy, written), written));
      return tries.find((edits) => edits.length === 0 || reaches(open, edits, drill, zone, side, goal)) ?? null;
    }
    case 'polygon':
      return null;
  }
}

/** `fixed` is the share of the box, from its left or bottom, that stays where it is: 0, a half or 1. */
function boxResized(
  size: Size, fixed: number | null, bounds: Bounds, side: Side, goal: number, written: Written,
): readonly Edit[] | null {
  const across = side === 'left' || side === 'right';
  const [low, high] = across ? [bounds.left, bounds.right] : [bounds.bottom, bounds.top];
  const far = side === 'right' || side === 'top';
  if (fixed === null || fixed === (far ? 1 : 0)) return null;
  const metres = Math.abs(goal - (low + (high - low) * fixed)) * (fixed === 0.5 ? 2 : 1);
  // A unit on the last number counts for both.
  const last = size.length.kind === 'number' && size.length.unit ? unitNamed(size.length.unit.text) : null;
  const units = across && last?.kind === 'length' && size.width.kind === 'number' ? last.unit : written.units;
  const of = across ? size.width : size.length;
  return change(of.span, grown(of, metres, high - low, { ...written, units }), written);
}

/** The outer sides of the first and the last strip are those of what is split. */
function stripResized(
  { into }: Extract<Space, { kind: 'split' }>, { name }: Zone, side: Side, by: number, written: Written,
): readonly Edit[] | null {
  const far = side === 'right' || side === 'top';
  const index = into.findIndex((strip) => strip.name.text === name) - (far ? 0 : 1);
  const [before, after] = [into[index], into[index + 1]];
  if (!before || !after) return null;
  return [
    ...change(before.size.span, adjusted(before.size, by, written), written),
    ...change(after.size.span, adjusted(after.size, -by, written), written),
  ];
}

function middle(bounds: Bounds, across: boolean): number {
  const { x, y } = centreOf(bounds);
  return across ? x : y;
}

function shareOf(word: string, across: boolean): number | null {
  const anchor = anchors.find((each) => each.toLowerCase() === word.toLowerCase());
  return anchor ? sharesOf(anchor)[across ? 'across' : 'up'] : null;
}

/** Something is left, however far it is dragged. */
function grown(expression: Expression, metres: number, now: number, written: Written): string {
  return adjusted(expression, Math.max(metres, 2 * stepIn(written.units)) - now, written);
}

/** Whether a side comes to lie within half a step of where it should. */
function reaches(open: Open, edits: readonly Edit[], id: Id, zone: Zone, side: Side, goal: number): boolean {
  const drill = analyse(applyEdits(open.text, edits), open.workspace).drills.find((each) => each.drill.id === id)?.drill;
  const shape = drill?.zones.find((each) => each.id === zone.id)?.shape;
  return drill !== undefined && shape !== undefined && Math.abs(boundsOf(shape)[side] - goal) <= stepIn(drill.units) / 2 + 1e-6;
}
