import { capHeight, textWidth } from '../../shared/font/text.ts';
import type { Box } from '../../shared/scene/ground.ts';
import type { Layer, Mark, Scene, Shape } from '../../shared/scene/scene.ts';

export interface Named {
  readonly name: string;
  readonly box: Box;
  /** When it is there; without it always. */
  readonly during?: Mark['during'];
}

/** Whether both are there at some time. */
export function together({ during: a }: Named, { during: b }: Named): boolean {
  return !a || !b || (a.start < b.end && b.start < a.end);
}

/** What the words of a layer take on the sheet, by the metrics of the font. */
export function wordsOf(scene: Scene, layer: Layer): Named[] {
  return scene.marks.filter((mark) => mark.layer === layer).flatMap((mark) => textsIn(mark.shapes).map((box) => ({ name: mark.id, box, ...(mark.during ? { during: mark.during } : {}) })));
}

/** Everyone at the start, those who wait, and later places. */
export function discsOf(scene: Scene): Named[] {
  const people = scene.movers.filter((mover) => mover.kind === 'person').map((mover) => ({ name: mover.id, shapes: mover.shapes, x: mover.track[1] ?? 0, y: mover.track[2] ?? 0 }));
  const marks = scene.marks.filter((mark) => mark.layer === 'later' || mark.layer === 'people').flatMap((mark) =>
    mark.shapes.flatMap((shape) => (shape.kind === 'group' ? [{ name: mark.id, shapes: shape.shapes, x: shape.x, y: shape.y }] : [])));
  return [...people, ...marks].flatMap(({ name, shapes, x, y }) => {
    const r = Math.max(0, ...shapes.map((shape) => (shape.kind === 'circle' ? shape.r : 0)));
    return r > 0 ? [{ name, box: { left: x - r, right: x + r, top: y - r, bottom: y + r } }] : [];
  });
}

/** Arrowheads: the last shape of every way. */
export function headsOf(scene: Scene): Named[] {
  return scene.marks.filter((mark) => mark.layer === 'paths').flatMap((mark) => {
    const head = mark.shapes[mark.shapes.length - 1];
    if (head?.kind !== 'path') return [];
    const numbers = (head.d.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
    const [xs, ys] = [numbers.filter((_, index) => index % 2 === 0), numbers.filter((_, index) => index % 2 === 1)];
    return [{ name: mark.id, box: { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) } }];
  });
}

function textsIn(shapes: readonly Shape[], x = 0, y = 0): Box[] {
  return shapes.flatMap((shape) => {
    if (shape.kind === 'group') return textsIn(shape.shapes, x + shape.x, y + shape.y);
    if (shape.kind !== 'text') return [];
    const width = textWidth(shape.text, shape.size, shape.weight);
    const start = { start: 0, middle: -width / 2, end: -width }[shape.anchor];
    const [left, bottom, height] = [x + shape.x, y + shape.y, shape.size * capHeight];
    return shape.upright
      ? [{ left: left - height, right: left, top: bottom - start - width, bottom: bottom - start }]
      : [{ left: left + start, right: left + start + width, top: bottom - height, bottom }];
  });
}
