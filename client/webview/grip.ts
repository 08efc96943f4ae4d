/** The pointer on the pitch: a click goes to the text, a drag from something that can be moved moves it, from the ground it moves the view. */
import type { Point } from '../../shared/geometry/point.ts';
import type { Scene } from '../../shared/scene/scene.ts';
import type { Handle } from '../../shared/service/drag.ts';
import { type Grip, gripOf, onGrass } from './handles.ts';
import type { Spot } from '../../shared/scene/shapes.ts';
import type { PictureNodes, Thing } from './picture.ts';
import { svgNode } from './nodes.ts';
import type { View } from './view.ts';

export interface GripOptions {
  readonly svg: SVGSVGElement;
  readonly picture: PictureNodes;
  readonly view: View;
  readonly scene: () => Scene | null;
  readonly reveal: (thing: Thing) => void;
  /** What is dragged is drawn where it is at the start of a repetition. */
  readonly lifted: () => void;
  /** Where it has been brought to, metres on the grass. */
  readonly dropped: (handle: Handle, to: Point) => void;
}

/** Pixels that the pointer may stray in a click. */
const threshold = 5;

export function gripOn({ svg, picture, view, scene, reveal, lifted, dropped }: GripOptions): void {
  /** Since the pointer went down; what it does is open until it has strayed. */
  let held: { readonly thing: Thing | null; readonly x: number; readonly y: number; does: 'click' | 'pan' | Drag } | null = null;
  let last = { x: 0, y: 0 };

  const release = (): void => {
    if (held && typeof held.does === 'object') held.does.ghost.remove();
    held = null;
    svg.classList.remove('dragging', 'panning');
  };

  const begin = (now: Scene, thing: Thing | null, from: Spot): 'pan' | Drag => {
    const grip = thing && gripOf(now, thing, from);
    svg.classList.add(grip ? 'dragging' : 'panning');
    if (!grip) return 'pan';
    lifted();
    return { grip, from: onGrass(now, from), ghost: ghostOf(svg, picture.nodeOf(thing.id), now, grip, onGrass(now, from)) };
  };

  svg.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return;
    held = { thing: picture.thingAt(event.target), x: event.clientX, y: event.clientY, does: 'click' };
    last = { x: event.clientX, y: event.clientY };
    svg.setPointerCapture(event.pointerId);
  });

  svg.addEventListener('pointermove', ({ clientX, clientY }) => {
    const now = scene();
    if (!held || !now) return;
    if (held.does === 'click') {
      if (Math.hypot(clientX - held.x, clientY - held.y) < threshold) return;
      held.does = begin(now, held.thing, view.spotAt(held.x, held.y));
    }
    if (held.does === 'pan') {
      const { width, height } = svg.getBoundingClientRect();
      view.pan((last.x - clientX) / width, (last.y - clientY) / height);
    } else held.does.ghost.move(onGrass(now, view.spotAt(clientX, clientY)));
    last = { x: clientX, y: clientY };
  });

  svg.addEventListener('pointerup', ({ clientX, clientY }) => {
    const now = scene();
    if (held && now) {
      if (held.does === 'click') {
        if (held.thing) reveal(held.thing);
      } else if (held.does !== 'pan') {
        const { grip, from } = held.does;
        const to = onGrass(now, view.spotAt(clientX, clientY));
        dropped(grip.handle, { x: grip.at.x + to.x - from.x, y: grip.at.y + to.y - from.y });
      }
    }
    release();
  });
  svg.addEventListener('pointercancel', release);
  document.addEventListener('keydown', (event) => {
    if (event.key === 'Escape' && held) release();
  });
}

interface Drag {
  readonly grip: Grip;
  /** Where the pointer took it. */
  readonly from: Point;
  readonly ghost: Ghost;
}

interface Ghost {
  readonly move: (to: Point) => void;
  readonly remove: () => void;
}

/** A faint copy that goes with the pointer, a line from where it was, and how far it has gone. */
function ghostOf(svg: SVGSVGElement, original: SVGGElement | null, { plan }: Scene, { handle }: Grip, from: Point): Ghost {
  const onSheet = ({ x, y }: Point): Spot => ({ x: plan.left + x * plan.perMetre, y: plan.bottom - y * plan.perMetre });
  const start = onSheet(from);
  const root = svgNode('g', { class: 'ghost' });
  const leash = svgNode('path', { class: 'leash' });
  const words = svgNode('text', { class: 'by', 'text-anchor': 'middle' });
  const copy = handle.kind === 'thing' && original ? unnamed(original.cloneNode(true) as SVGGElement)
    : svgNode('circle', { class: 'end', cx: `${start.x}`, cy: `${start.y}`, r: '1.6' });
  const moved = svgNode('g');
  moved.append(copy);
  root.append(leash, moved, words);
  svg.append(root);
  original?.classList.add('lifted');
  return {
    move: (to) => {
      const spot = onSheet(to);
      leash.setAttribute('d', `M${start.x} ${start.y}L${spot.x} ${spot.y}`);
      moved.setAttribute('transform', `translate(${spot.x - start.x} ${spot.y - start.y})`);
      words.setAttribute('x', `${spot.x}`);
      words.setAttribute('y', `${spot.y - 4.2}`);
      words.textContent = [shift(to.x - from.x, 'right', 'left'), shift(to.y - from.y, 'up', 'down')].filter(Boolean).join(', ');
    },
    remove: () => {
      root.remove();
      original?.classList.remove('lifted');
    },
  };
}

function unnamed(node: SVGGElement): SVGGElement {
  for (const name of ['data-mark', 'tabindex', 'role', 'aria-label']) node.removeAttribute(name);
  return node;
}

function shift(metres: number, ahead: string, back: string): string {
  const tenths = Math.round(Math.abs(metres) * 10) / 10;
  return tenths === 0 ? '' : `${tenths} m ${metres > 0 ? ahead : back}`;
}
