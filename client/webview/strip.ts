/** The time line below the pitch: shows the moment, the beat that is played and where problems lie; a touch on it sets the time. */
import type { Scene, SceneBeat } from '../../shared/scene/scene.ts';
import { mm } from '../../shared/scene/shapes.ts';
import { onStrip } from './layers.ts';
import type { PageProblem } from './messages.ts';
import { setAttribute, svgNode } from './nodes.ts';
import { pictureIn } from './picture.ts';
import { alike } from './shapes.ts';

export interface Strip {
  readonly show: (scene: Scene, problems: readonly PageProblem[]) => void;
  /** Seconds within a repetition. */
  readonly move: (time: number) => void;
  readonly light: (beats: readonly SceneBeat[]) => void;
}

/** Millimetres that the rows' names, the heading and the figures below take around the axis. */
const around = { left: 22, top: 8, right: 4, bottom: 7 } as const;

/** `seek` is told seconds within a repetition; `seized` that the reader begins to move the time. */
export function stripIn(svg: SVGSVGElement, { seek, seized }: { readonly seek: (time: number) => void; readonly seized: () => void }): Strip {
  const band = svgNode('rect', { class: 'band' });
  svg.append(band);
  const picture = pictureIn(svg, onStrip);
  const flags = svgNode('g', { class: 'flags' });
  const cursor = svgNode('g', { class: 'time' });
  const line = svgNode('path', { class: 'time-line' });
  const head = svgNode('path', { class: 'time-head' });
  cursor.append(line, head);
  svg.append(flags, cursor);
  let scene: Scene | null = null;
  let flagged: readonly Flag[] = [];

  const timeAt = (clientX: number): number => {
    if (!scene?.strip) return 0;
    const { left, width } = svg.getBoundingClientRect();
    const [x = 0, , wide = 1] = (svg.getAttribute('viewBox') ?? '').split(' ').map(Number);
    return (x + ((clientX - left) / width) * wide - scene.strip.left) / scene.strip.perSecond;
  };
  const held = (clientX: number): void => seek(Math.min(Math.max(timeAt(clientX), 0), scene?.end ?? 0));

  svg.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return;
    seized();
    svg.setPointerCapture(event.pointerId);
    held(event.clientX);
  });
  svg.addEventListener('pointermove', (event) => {
    if (svg.hasPointerCapture(event.pointerId)) held(event.clientX);
  });

  return {
    show: (next, problems) => {
      scene = next;
      svg.toggleAttribute('hidden', next.strip === null);
      if (!next.strip) return;
      picture.show(next);
      const { left, top, bottom, perSecond } = next.strip;
      const width = perSecond * next.end + around.left + around.right;
      setAttribute(svg, 'viewBox', `${mm(left - around.left)} ${mm(top - around.top)} ${mm(width)} ${mm(bottom - top + around.top + around.bottom)}`);
      setAttribute(line, 'd', `M0 ${mm(top)}V${mm(bottom)}`);
      setAttribute(head, 'd', `M-1.3 ${mm(top - 0.4)}h2.6L0 ${mm(top + 2)}Z`);
      setAttribute(band, 'y', mm(top));
      setAttribute(band, 'height', mm(bottom - top));
      const marks = flagsOf(next, problems);
      if (!alike(marks, flagged)) flags.replaceChildren(...marks.map(flagNode));
      flagged = marks;
    },
    move: (time) => {
      if (!scene?.strip) return;
      setAttribute(cursor, 'transform', `translate(${(scene.strip.left + scene.strip.perSecond * Math.min(time, scene.end)).toFixed(2)} 0)`);
    },
    light: (beats) => {
      if (!scene?.strip) return;
      const { left, perSecond } = scene.strip;
      const start = Math.min(...beats.map((beat) => beat.start));
      const end = Math.max(...beats.map((beat) => beat.end));
      setAttribute(band, 'width', beats.length > 0 ? mm(Math.max(0.6, perSecond * (end - start))) : '0');
      if (beats.length > 0) setAttribute(band, 'x', mm(left + perSecond * start));
    },
  };
}

interface Flag {
  readonly x: number;
  readonly y: number;
  readonly words: string;
}

/** At the beats that problems are about. */
function flagsOf({ strip, beats }: Scene, problems: readonly PageProblem[]): Flag[] {
  if (!strip) return [];
  return beats.flatMap((beat) => {
    const own = problems.filter(({ span, severity }) => severity !== 'hint' && beat.span.from <= span.from && span.to <= beat.span.to);
    return own.length === 0 ? [] : [{ x: strip.left + strip.perSecond * beat.start + 4.2, y: strip.top - 1.1, words: own.map(({ message }) => message).join('\n') }];
  });
}

/** A triangle as on the plan. */
function flagNode({ x, y, words }: Flag): SVGElement {
  const node = svgNode('g', { transform: `translate(${mm(x)} ${mm(y)}) scale(0.75)` });
  const title = svgNode('title');
  title.textContent = words.replaceAll('`', '');
  const sign = svgNode('path', { d: 'M0 -1.9L1.9 1.4H-1.9Z', fill: 'var(--paper)', stroke: 'var(--late)', 'stroke-width': '0.45' });
  const mark = svgNode('path', { d: 'M0 -0.6V0.4M0 0.75V1', stroke: 'var(--late)', 'stroke-width': '0.45' });
  node.append(title, sign, mark);
  return node;
}
