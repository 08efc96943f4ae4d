/** How a picture shows what changed: the older version faint, an arrow for what moved, a sign with its own shape for new and gone. */
import { type Box, boxAround, onSheet } from '../scene/ground.ts';
import { type Convention, lineSample } from '../scene/lines.ts';
import type { Paint } from '../scene/palette.ts';
import { flag, heading, type Panel } from '../scene/panels.ts';
import type { Mark as SceneMark, Mover, Plan, Shape } from '../scene/scene.ts';
import { box, circle, filled, group, line, polygon, stroked, text, type Spot } from '../scene/shapes.ts';
import type { Mark } from './comparison.ts';

/** Where it was: hollow and grey. */
export function faintMark(mark: SceneMark): SceneMark {
  const hollow = mark.layer === 'people' || mark.layer === 'zones';
  // What is written about the area would stand under what is written now.
  const shapes = mark.shapes.filter(({ kind }) => mark.layer !== 'area' || kind !== 'text');
  return { ...mark, id: `before-${mark.id}`, label: mark.label === null ? null : `Before: ${mark.label}`, shapes: shapes.map((shape) => faint(shape, hollow)) };
}

export function faintMover(mover: Mover): Mover {
  return { ...mover, id: `before-${mover.id}`, label: `Before: ${mover.label}`, shapes: mover.shapes.map((shape) => faint(shape, true)) };
}

/** Decoration stays what it is, letters keep a contrast to be read by, the rest takes the weakest ink that is still seen. */
function faint(shape: Shape, hollow: boolean): Shape {
  switch (shape.kind) {
    case 'group':
      return { ...shape, shapes: shape.shapes.map((each) => faint(each, hollow)) };
    case 'text':
      return { ...shape, fill: 'note' };
    case 'path':
    case 'circle': {
      const fill = shape.fill === null || quiet.has(shape.fill) ? shape.fill : hollow ? 'paper' : 'wait';
      const stroke = shape.stroke === null || quiet.has(shape.stroke) ? shape.stroke : 'wait';
      return { ...shape, fill, stroke, ...(hollow && shape.fill !== null ? { dash: '0.7 0.5' } : {}) };
    }
  }
}

const quiet: ReadonlySet<Paint> = new Set(['paper', 'tint', 'gridMinor', 'gridMajor']);

/** Millimetres between the place and the sign around it. */
const reach = 4;

/** What happened to something on the sheet; null for what stays where it was. */
function changeOf({ before, after }: Mark, plan: Plan): { readonly what: Change; readonly from: Spot; readonly to: Spot } | null {
  const [from, to] = [before && onSheet(plan, before), after && onSheet(plan, after)];
  if (from && to) return stays(from, to) ? null : { what: 'moved', from, to };
  const at = to ?? from;
  return at && { what: to ? 'new' : 'gone', from: at, to: at };
}

type Change = 'moved' | 'new' | 'gone';

/** An arrow with a bar at its tail; a square with a plus; a square, broken, with a cross through it. */
export function changeMarks(marks: readonly Mark[], plan: Plan): SceneMark[] {
  return marks.flatMap((each, index): SceneMark[] => {
    const change = changeOf(each, plan);
    if (!change) return [];
    const { what, from, to } = change;
    const shapes = what === 'moved' ? movedSign(from, to) : [group(to, what === 'new' ? newSign : goneSign)];
    return [{ id: `change-${index + 1}`, layer: 'problems', span: null, label: `${each.name}: ${what}`, shapes }];
  });
}

/** What the signs take on the sheet, so that no words are written there. */
export function changeRoom(marks: readonly Mark[], plan: Plan): Box[] {
  return marks.flatMap((each): Box[] => {
    const change = changeOf(each, plan);
    if (!change) return [];
    const { what, from, to } = change;
    if (what !== 'moved') return [boxAround(to, reach * 2)];
    const { start, tip } = arrowOf(from, to);
    const steps = Math.ceil(Math.hypot(tip.x - start.x, tip.y - start.y));
    return Array.from({ length: steps + 1 }, (_, step) => boxAround({ x: start.x + ((tip.x - start.x) * step) / steps, y: start.y + ((tip.y - start.y) * step) / steps }, 2.8));
  });
}

/** Nobody sees less than this on the sheet: millimetres. */
function stays(from: Spot, to: Spot): boolean {
  return Math.hypot(to.x - from.x, to.y - from.y) < 0.8;
}

export const changeInks = { moved: 'ink', added: 'lane', removed: 'late' } as const;

function arrowOf(from: Spot, to: Spot) {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const along = (at: Spot, by: number, aside = 0): Spot => ({ x: at.x + ux * by - uy * aside, y: at.y + uy * by + ux * aside });
  // Clear of the badges at both ends, or beside them where there is no room between.
  const [gap, aside] = length > 9 ? [2.9, 0] : [0, 3.6];
  return { start: along(from, gap, aside), tip: along(to, -gap, aside), length, along };
}

function movedSign(from: Spot, to: Spot): Shape[] {
  const { start, tip, length, along } = arrowOf(from, to);
  const neck = along(tip, -Math.min(2.4, length / 2));
  const halo = line(start, neck, stroked('paper', 1.7));
  return [
    halo, line(along(start, 0, -1.3), along(start, 0, 1.3), stroked(changeInks.moved, 0.6)), line(start, neck, stroked(changeInks.moved, 0.6)),
    polygon([tip, along(tip, -2.8, -1.25), along(tip, -2.8, 1.25)], filled(changeInks.moved, 'paper', 0.2)),
  ];
}

const corner = { x: reach - 0.2, y: -reach + 0.2 };

const newSign: readonly Shape[] = [
  box(-reach, -reach, reach * 2, reach * 2, stroked(changeInks.added, 0.5)),
  circle(corner, 1.5, filled(changeInks.added, 'paper', 0.3)),
  line({ x: corner.x - 0.9, y: corner.y }, { x: corner.x + 0.9, y: corner.y }, stroked('paper', 0.45)),
  line({ x: corner.x, y: corner.y - 0.9 }, { x: corner.x, y: corner.y + 0.9 }, stroked('paper', 0.45)),
];

const goneSign: readonly Shape[] = [
  box(-reach, -reach, reach * 2, reach * 2, stroked(changeInks.removed, 0.5, '1.2 0.8')),
  line({ x: -reach, y: -reach }, { x: reach, y: reach }, stroked(changeInks.removed, 0.5)),
  line({ x: reach, y: -reach }, { x: -reach, y: reach }, stroked(changeInks.removed, 0.5)),
];

/** What a picture shows that the key has to explain. */
export interface Signs {
  readonly marks: readonly Mark[];
  readonly plan: Plan;
  readonly convention: Convention;
  /** All that is drawn of the older version. */
  readonly faint: readonly (SceneMark | Mover)[];
  /** There are flags, and no list of them on the sheet. */
  readonly flagged: boolean;
}

/** What the signs mean that are in the picture; null without any. */
export function changeKey(width: number, { marks, plan, convention, faint: old, flagged }: Signs): Panel | null {
  const changes = new Set(marks.map((each) => changeOf(each, plan)?.what));
  const ways = old.some((each) => 'layer' in each && each.layer === 'paths');
  const things = old.some((each) => !('layer' in each && each.layer === 'paths'));
  const way = lineSample('pass', convention, { x: 5.5, y: 0 }, 6);
  const badge = circle({ x: 2.2, y: 0 }, 2, filled('ink', 'ink', 0.4));
  const entries: readonly (readonly [string, readonly Shape[]])[] = [
    ...(ways || things ? [
      ['Now', [...(things ? [badge] : []), ...(ways ? way : [])]],
      ['Before, where it differs', [...(things ? [faint(badge, true)] : []), ...(ways ? way.map((shape) => faint(shape, false)) : [])]],
    ] as const : []),
    ...(changes.has('moved') ? [['Moved', movedSign({ x: -2.4, y: 0 }, { x: 11.4, y: 0 })]] as const : []),
    ...(changes.has('new') ? [['New', [group({ x: 4, y: 0.4 }, newSign.map(smaller))]]] as const : []),
    ...(changes.has('gone') ? [['Gone', [group({ x: 4, y: 0.4 }, goneSign.map(smaller))]]] as const : []),
    ...(flagged ? [['New problem', flag({ x: 4, y: 0.2 }, 1)]] as const : []),
  ];
  if (entries.length === 0) return null;
  const rows = Math.ceil(entries.length / 2);
  return {
    height: 6 + rows * 7,
    draw: (x, top) => [heading('change-key', 'KEY', x, top, width), {
      id: 'change-key', layer: 'legend', span: null, label: `Key: ${entries.map(([name]) => name).join(', ')}`,
      shapes: entries.flatMap(([name, sample], index) => {
        const at = { x: x + Math.floor(index / rows) * (width / 2), y: top + 9 + (index % rows) * 7 };
        return [group(at, sample), text({ x: at.x + 14, y: at.y + 0.8 }, name, 2.4, 'ink')];
      }),
    }],
  };
}

/** The signs themselves, to the size of a line of the key. */
function smaller(shape: Shape): Shape {
  const half = (d: string) => d.replace(/-?\d+(\.\d+)?/g, (number) => `${Math.round(Number(number) * 55) / 100}`);
  switch (shape.kind) {
    case 'path': return { ...shape, d: half(shape.d) };
    case 'circle': return { ...shape, x: shape.x * 0.55, y: shape.y * 0.55, r: shape.r * 0.7 };
    case 'text': return shape;
    case 'group': return { ...shape, shapes: shape.shapes.map(smaller) };
  }
}
