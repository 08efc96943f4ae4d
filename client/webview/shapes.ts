/** Shapes of a scene as SVG nodes. A changed shape of the same kind keeps its node: only the attributes that differ are set. */
import { cssWeight } from '../../shared/font/text.ts';
import type { Paint } from '../../shared/scene/palette.ts';
import type { Pen, Shape } from '../../shared/scene/scene.ts';
import { mm } from '../../shared/scene/shapes.ts';
import { svgNode } from './nodes.ts';

/** Makes the children of `parent` the shapes of `after`; until now they were those of `before`. */
export function patchShapes(parent: Element, before: readonly Shape[], after: readonly Shape[]): void {
  for (const [index, shape] of after.entries()) {
    const old = before[index];
    if (old === shape) continue;
    const node = parent.children[index];
    if (!old || !node) parent.append(nodeOf(shape));
    else if (old.kind !== shape.kind) node.replaceWith(nodeOf(shape));
    else patchShape(node, old, shape);
  }
  while (parent.children.length > after.length) parent.lastElementChild?.remove();
}

/** Data without cycles, as scenes are. */
export function alike(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a)) return Array.isArray(b) && a.length === b.length && a.every((item, index) => alike(item, b[index]));
  const [from, to] = [a as Readonly<Record<string, unknown>>, b as Readonly<Record<string, unknown>>];
  for (const key in from) if (!alike(from[key], to[key])) return false;
  for (const key in to) if (!(key in from)) return false;
  return true;
}

function patchShape(node: Element, before: Shape, after: Shape): void {
  const [old, now] = [attributesOf(before), attributesOf(after)];
  for (const key in now) if (now[key] !== old[key]) node.setAttribute(key, now[key] as string);
  for (const key in old) if (!(key in now)) node.removeAttribute(key);
  if (before.kind === 'text' && after.kind === 'text' && before.text !== after.text) node.textContent = after.text;
  if (before.kind === 'group' && after.kind === 'group') patchShapes(node, before.shapes, after.shapes);
}

function nodeOf(shape: Shape): SVGElement {
  const attributes = attributesOf(shape);
  switch (shape.kind) {
    case 'path':
    case 'circle':
      return svgNode(shape.kind, attributes);
    case 'text': {
      const node = svgNode('text', attributes);
      node.textContent = shape.text;
      return node;
    }
    case 'group': {
      const node = svgNode('g', attributes);
      node.append(...shape.shapes.map(nodeOf));
      return node;
    }
  }
}

function attributesOf(shape: Shape): Record<string, string> {
  switch (shape.kind) {
    case 'path':
      return { d: shape.d, ...penOf(shape) };
    case 'circle':
      return { cx: mm(shape.x), cy: mm(shape.y), r: mm(shape.r), ...penOf(shape) };
    case 'text':
      return {
        x: mm(shape.x), y: mm(shape.y), fill: paintOf(shape.fill), 'font-size': mm(shape.size), 'font-weight': `${cssWeight[shape.weight]}`, 'text-anchor': shape.anchor,
        ...(shape.upright ? { transform: `rotate(-90 ${mm(shape.x)} ${mm(shape.y)})` } : {}),
      };
    case 'group':
      return { transform: `translate(${mm(shape.x)} ${mm(shape.y)})` };
  }
}

function penOf({ fill, stroke, width, dash }: Pen): Record<string, string> {
  return {
    fill: fill === null ? 'none' : paintOf(fill),
    ...(stroke === null ? {} : { stroke: paintOf(stroke), 'stroke-width': mm(width) }),
    ...(dash === null ? {} : { 'stroke-dasharray': dash }),
  };
}

/** Inks are variables of the page, so that a change of the editor's theme repaints without a new scene. */
function paintOf(paint: Paint): string {
  return paint.startsWith('#') ? paint : `var(--${paint})`;
}
