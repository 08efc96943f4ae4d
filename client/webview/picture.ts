/** A scene on the page. Nodes are kept by the ids of their marks: a new scene changes what differs, a new time moves what moves. */
import { liftPerMetre } from '../../shared/render/lift.ts';
import { isShown } from '../../shared/scene/frame.ts';
import { layers, type Layer, type Mark, type Mover, type Scene } from '../../shared/scene/scene.ts';
import { setAttribute, svgNode } from './nodes.ts';
import type { Lifted } from './rounds.ts';
import { alike, patchShapes } from './shapes.ts';

/** What a node stands for. */
export type Thing = Mark | Mover;

export interface PictureNodes {
  readonly show: (scene: Scene) => void;
  /** Moves the marks and movers with these ids; all others are where they are drawn. */
  readonly place: (spots: ReadonlyMap<string, Lifted>, time: number) => void;
  readonly nodeOf: (id: string) => SVGGElement | null;
  readonly thingAt: (target: EventTarget | null) => Thing | null;
  readonly things: () => readonly Thing[];
}

/** `shown` are the layers that this drawing has, of all that a scene has. */
export function pictureIn(root: SVGSVGElement, shown: ReadonlySet<Layer>): PictureNodes {
  const grounds = new Map(layers.filter((layer) => shown.has(layer)).map((layer) => [layer, svgNode('g', { 'data-layer': layer })]));
  root.append(...grounds.values());
  let kept = new Map<string, Kept>();

  const show = (scene: Scene): void => {
    const next = new Map<string, Kept>();
    const orders = new Map<Layer, SVGGElement[]>();
    const put = (layer: Layer, thing: Thing, ball: boolean): void => {
      if (!grounds.has(layer) || next.has(thing.id)) return;
      const before = kept.get(thing.id);
      const entry = before ? renewed(before, thing) : made(thing, ball);
      next.set(thing.id, entry);
      const order = orders.get(layer);
      if (order) order.push(entry.node);
      else orders.set(layer, [entry.node]);
    };
    for (const mark of scene.marks) put(mark.layer, mark, false);
    for (const mover of scene.movers) put(mover.kind === 'ball' ? 'ball' : 'people', mover, mover.kind === 'ball');
    for (const [id, { node }] of kept) if (!next.has(id)) node.remove();
    for (const [layer, ground] of grounds) {
      for (const [index, node] of (orders.get(layer) ?? []).entries()) {
        if (ground.children[index] !== node) ground.insertBefore(node, ground.children[index] ?? null);
      }
    }
    kept = next;
  };

  const place = (spots: ReadonlyMap<string, Lifted>, time: number): void => {
    for (const [id, entry] of kept) {
      const there = !('layer' in entry.thing) || isShown(entry.thing, time);
      if (there !== entry.shown) {
        entry.shown = there;
        entry.node.setAttribute('visibility', entry.shown ? 'inherit' : 'hidden');
      }
      const spot = spots.get(id) ?? null;
      if (spot?.x === entry.spot?.x && spot?.y === entry.spot?.y && spot?.height === entry.spot?.height) continue;
      entry.spot = spot;
      entry.node.setAttribute('transform', spot ? `translate(${spot.x.toFixed(2)} ${spot.y.toFixed(2)})` : '');
      if (spot) entry.lift?.setAttribute('transform', `translate(0 ${(-spot.height * liftPerMetre).toFixed(2)})`);
    }
  };

  return {
    show, place,
    nodeOf: (id) => kept.get(id)?.node ?? null,
    thingAt: (target) => {
      const node = target instanceof Element ? target.closest<SVGGElement>('[data-mark]') : null;
      return node ? (kept.get(node.dataset['mark'] ?? '')?.thing ?? null) : null;
    },
    things: () => [...kept.values()].map(({ thing }) => thing),
  };
}

interface Kept {
  readonly node: SVGGElement;
  /** Where the shapes are: a ball has them above its shadow, a lane above what the pointer takes it by. */
  readonly body: SVGGElement;
  readonly lift: SVGGElement | null;
  thing: Thing;
  /** What comes and goes is there now. */
  shown: boolean;
  /** Where it has been moved to. */
  spot: Lifted | null;
}

function made(thing: Thing, ball: boolean): Kept {
  const node = svgNode('g', { 'data-mark': thing.id });
  const lift = ball ? svgNode('g') : null;
  if (lift) node.append(svgNode('ellipse', { cx: '0.3', cy: '0.5', rx: '0.9', ry: '0.6', fill: 'var(--note)', 'fill-opacity': '0.5' }), lift);
  const thin = 'layer' in thing && thing.layer === 'lanes' ? svgNode('g') : null;
  if (thin) node.append(svgNode('path', { class: 'reach', d: wayOf(thing) }), thin);
  const body = lift ?? thin ?? node;
  patchShapes(body, [], thing.shapes);
  if ('track' in thing) node.classList.add('mover');
  if (thing.label !== null && thing.span !== null) node.tabIndex = -1;
  name(node, thing);
  return { node, body, lift, thing, shown: true, spot: null };
}

function renewed(entry: Kept, thing: Thing): Kept {
  if (!alike(entry.thing.shapes, thing.shapes)) {
    patchShapes(entry.body, entry.thing.shapes, thing.shapes);
    const reach = entry.body.previousElementSibling;
    if (reach?.matches('.reach')) setAttribute(reach, 'd', wayOf(thing));
  }
  if (entry.thing.label !== thing.label) name(entry.node, thing);
  entry.thing = thing;
  return entry;
}

/** Along which a line too thin for the pointer is taken. */
function wayOf({ shapes: [first] }: Thing): string {
  return first?.kind === 'path' ? first.d : '';
}

/** What can be chosen has a name; the rest is part of the picture. Letters on it are not its name, so it is no button to those who listen. */
function name(node: SVGGElement, { label, span }: Thing): void {
  if (label === null || span === null) return;
  node.setAttribute('role', 'img');
  node.setAttribute('aria-label', label);
}
