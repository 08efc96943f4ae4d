/** How a picture shows what changed: the older version faint, an arrow for what moved, a sign with its own shape for new and gone. */
import { type Box, boxAround, onSheet } from '../scene/ground.ts';
import type { Paint } from '../scene/palette.ts';
import type { Panel } from '../scene/panels.ts';
import type { Mark as SceneMark, Mover, Plan, Shape } from '../scene/scene.ts';
import { box, circle, filled, group, line, polygon, stroked, text, type Spot } from '../scene/shapes.ts';
import { textWidth } from '../font/text.ts';
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

/** An arrow with a bar at its tail; a square with a plus; a square, broken, with a cross through it. */
export function changeMarks(marks: readonly Mark[], plan: Plan): SceneMark[] {
  return marks.flatMap(({ name, before, after }, index): SceneMark[] => {
    const [from, to] = [before && onSheet(plan, before), after && onSheet(plan, after)];
    const mark = (label: string, shapes: readonly Shape[]): SceneMark => ({ id: `change-${index + 1}`, layer: 'problems', span: null, label: `${name}: ${label}`, shapes });
    if (from && to) return stays(from, to) ? [] : [mark('moved', movedSign(from, to))];
    if (to) return [mark('new', [group(to, newSign)])];
    return from ? [mark('gone', [group(from, goneSign)])] : [];
  });
}

/** What the signs take on the sheet, so that no words are written there. */
export function changeRoom(marks: readonly Mark[], plan: Plan): Box[] {
  return marks.flatMap(({ before, after }): Box[] => {
    const [from, to] = [before && onSheet(plan, before), after && onSheet(plan, after)];
    if (!from || !to) return [boxAround((to ?? from)!, reach * 2)];
    if (stays(from, to)) return [];
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

/** What the signs mean. */
export function keyPanel(width: number, both: boolean): Panel | null {
  if (!both) return null;
  const title = 'KEY';
  const entries: readonly (readonly [string, readonly Shape[]])[] = [
    ['Now', [circle({ x: 4, y: 0 }, 2.2, filled('ink'))]],
    ['Before, where it differs', [{ ...circle({ x: 4, y: 0 }, 2.2, filled('paper', 'wait', 0.4)), dash: '0.7 0.5' } as Shape]],
    ['Moved', movedSign({ x: -2.4, y: 0 }, { x: 11.4, y: 0 })],
    ['New', [group({ x: 4, y: 0.4 }, newSign.map(smaller))]],
    ['Gone', [group({ x: 4, y: 0.4 }, goneSign.map(smaller))]],
  ];
  const rows = Math.ceil(entries.length / 2);
  return {
    height: 6 + rows * 7,
    draw: (x, top) => [{
      id: 'change-key', layer: 'legend', span: null, label: `Key: ${entries.map(([name]) => name).join(', ')}`,
      shapes: [
        text({ x, y: top + 3.2 }, title, 1.9, 'note', { weight: 'bold' }),
        line({ x: x + textWidth(title, 1.9, 'bold') + 2, y: top + 2.5 }, { x: x + width, y: top + 2.5 }, stroked('gridMajor', 0.25)),
        ...entries.flatMap(([name, sample], index) => {
          const at = { x: x + Math.floor(index / rows) * (width / 2), y: top + 9 + (index % rows) * 7 };
          return [group(at, sample), text({ x: at.x + 12, y: at.y + 0.8 }, name, 2.4, 'ink')];
        }),
      ],
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
