/** Which part of the sheet is seen: zoom and pan belong to the reader, and no new picture takes them away. */
import type { Plan, Scene } from '../../shared/scene/scene.ts';
import type { Spot } from '../../shared/scene/shapes.ts';
import { extentOf } from './outlines.ts';
import { setAttribute } from './nodes.ts';

export interface View {
  /** Whole drawing, as large as the pane allows; stays so when either changes. */
  readonly fit: () => void;
  /** Larger (over 1) or smaller about a spot of the sheet, the middle without one. */
  readonly zoom: (factor: number, about?: Spot) => void;
  /** By parts of what is seen. */
  readonly pan: (right: number, down: number) => void;
  /** Millimetres on the sheet under a point of the window. */
  readonly spotAt: (clientX: number, clientY: number) => Spot;
  /** The drawing has changed: what was seen is still seen, whatever the scale of the drawing is now. */
  readonly follow: (scene: Scene) => void;
  readonly state: () => ViewState;
}

/** Metres on the grass: the middle and the width of what is seen; null when the whole is. */
export type ViewState = { readonly x: number; readonly y: number; readonly width: number } | null;

const largest = 24;
/** Millimetres of paper round the drawing. */
const margin = 4;

export function viewOf(svg: SVGSVGElement, before: ViewState, changed: () => void): View {
  let plan: Plan | null = null;
  let seen = before;
  let whole = { x: 0, y: 0, width: 100, height: 100 };
  let box = whole;

  /** Of the pane, pixels a pixel: asked for when it changes only, since asking costs a layout. */
  let aspect = svg.clientHeight / Math.max(1, svg.clientWidth) || 1;
  const fitted = (): number => Math.max(whole.width, whole.height / aspect);

  const draw = (): void => {
    const width = seen && plan ? seen.width * plan.perMetre : fitted();
    const height = width * aspect;
    const x = seen && plan ? plan.left + seen.x * plan.perMetre : whole.x + whole.width / 2;
    const y = seen && plan ? plan.bottom - seen.y * plan.perMetre : whole.y + whole.height / 2;
    box = { x: x - width / 2, y: y - height / 2, width, height };
    setAttribute(svg, 'viewBox', `${box.x.toFixed(2)} ${box.y.toFixed(2)} ${box.width.toFixed(2)} ${box.height.toFixed(2)}`);
  };

  const look = (x: number, y: number, width: number): void => {
    if (!plan) return;
    const [least, most] = [fitted() / largest, fitted() * 2];
    const held = Math.min(most, Math.max(least, width));
    seen = { x: (x - plan.left) / plan.perMetre, y: (plan.bottom - y) / plan.perMetre, width: held / plan.perMetre };
    draw();
    changed();
  };

  new ResizeObserver(() => {
    aspect = svg.clientHeight / Math.max(1, svg.clientWidth) || 1;
    draw();
  }).observe(svg);

  return {
    fit: () => {
      seen = null;
      draw();
      changed();
    },
    zoom: (factor, about = { x: box.x + box.width / 2, y: box.y + box.height / 2 }) => {
      const width = Math.min(fitted() * 2, Math.max(fitted() / largest, box.width / factor));
      const ratio = width / box.width;
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      look(about.x + (x - about.x) * ratio, about.y + (y - about.y) * ratio, width);
    },
    pan: (right, down) => look(box.x + box.width * (0.5 + right), box.y + box.height * (0.5 + down), box.width),
    spotAt: (clientX, clientY) => {
      const { left, top, width, height } = svg.getBoundingClientRect();
      return { x: box.x + ((clientX - left) / width) * box.width, y: box.y + ((clientY - top) / height) * box.height };
    },
    follow: (scene) => {
      const extent = extentOf(scene);
      plan = scene.plan;
      if (extent) whole = { x: extent.left - margin, y: extent.top - margin, width: extent.right - extent.left + 2 * margin, height: extent.bottom - extent.top + 2 * margin };
      draw();
    },
    state: () => seen,
  };
}
