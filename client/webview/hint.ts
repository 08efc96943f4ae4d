/** What a mark that comes and goes says, beside it, while it is pointed at or has the focus. Those who listen have heard its name. */
import { isShown } from '../../shared/scene/frame.ts';
import type { Mark } from '../../shared/scene/scene.ts';
import type { Thing } from './picture.ts';
import { setText } from './nodes.ts';

export interface Hint {
  /** The time has changed: what is gone says nothing. */
  readonly follow: (time: number) => void;
}

/** `node` lies over `svg` in the same pane. */
export function hintOn(svg: SVGSVGElement, node: HTMLElement, thingAt: (target: EventTarget | null) => Thing | null): Hint {
  let about: Mark | null = null;

  const hide = (): void => {
    about = null;
    node.hidden = true;
  };
  const say = (target: EventTarget | null, clientX: number, clientY: number): void => {
    const thing = thingAt(target);
    if (!thing || !('during' in thing) || thing.label === null) return hide();
    const pane = svg.getBoundingClientRect();
    about = thing;
    setText(node, thing.label);
    node.hidden = false;
    // Above the place, and within the pane.
    const [width, height] = [node.offsetWidth, node.offsetHeight];
    node.style.left = `${Math.max(4, Math.min(clientX - pane.left - width / 2, pane.width - width - 4))}px`;
    node.style.top = `${clientY - pane.top > height + 16 ? clientY - pane.top - height - 12 : clientY - pane.top + 20}px`;
  };

  svg.addEventListener('pointermove', ({ target, clientX, clientY, buttons }) => (buttons === 0 ? say(target, clientX, clientY) : hide()));
  svg.addEventListener('pointerleave', hide);
  svg.addEventListener('focusin', ({ target }) => {
    if (!(target instanceof Element) || target === svg || !target.matches(':focus-visible')) return;
    const { left, top, width } = target.getBoundingClientRect();
    say(target, left + width / 2, top);
  });
  svg.addEventListener('focusout', hide);
  document.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') hide();
  });
  return {
    follow: (time) => {
      if (about && !isShown(about, time)) hide();
    },
  };
}
