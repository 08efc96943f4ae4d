/** What the pages that play have in common: a picture that moves, and the controls of its time. */
import { liftPerMetre } from '../../shared/render/lift.ts';
import { moverAt } from '../../shared/scene/frame.ts';
import type { Mover, Scene } from '../../shared/scene/scene.ts';

/** Sets everything in a picture to a time in seconds: it keeps the nodes and sets their transforms, nothing else. */
export function movingIn(picture: HTMLElement, tracks: readonly Mover['track'][], strip: Scene['strip']): (time: number) => void {
  const movers = tracks.map((track, index) => ({ track, node: picture.querySelector(`.mover-${index}`), lift: picture.querySelector(`.lift-${index}`) }));
  const timed = [...picture.querySelectorAll<SVGGElement>('[data-during]')].map((node) => ({ node, span: (node.dataset['during'] ?? '').split(' ').map(Number) }));
  const cursor = picture.querySelector('.cursor');
  return (time) => {
    for (const { track, node, lift } of movers) {
      const { x, y, height } = moverAt(track, time);
      node?.setAttribute('transform', `translate(${x.toFixed(2)} ${y.toFixed(2)})`);
      lift?.setAttribute('transform', `translate(0 ${(-height * liftPerMetre).toFixed(2)})`);
    }
    for (const { node, span: [start = 0, over = 0] } of timed) node.setAttribute('visibility', start <= time && time < over ? 'visible' : 'hidden');
    if (strip && cursor) cursor.setAttribute('transform', `translate(${(strip.left + strip.perSecond * time).toFixed(2)} 0)`);
  };
}

export interface Course {
  /** Seconds. */
  readonly end: number;
  readonly beats: readonly { readonly start: number; readonly label: string }[];
}

export interface Clock {
  readonly show: (time: number) => void;
  readonly rest: () => void;
}

/**
 * Brings the controls of a section to life: play, beat by beat, time bar, speed, again and again. `draw` is told the time to
 * draw and the beat of the time on the clock, -1 before the first; keys are heard from `heard`.
 */
export function clockIn(section: HTMLElement, { end, beats }: Course, draw: (time: number, beat: number) => void, heard: HTMLElement | Document): Clock {
  const part = <T extends Element>(selector: string): T => section.querySelector<T>(selector) as T;
  const bar = part<HTMLInputElement>('.time');
  const clock = part<HTMLOutputElement>('.clock');
  const button = part<HTMLButtonElement>('.play');
  const speed = part<HTMLSelectElement>('.speed');
  const loop = part<HTMLInputElement>('.loop');
  const calm = matchMedia('(prefers-reduced-motion: reduce)');

  let time = 0;
  /** Moment of the last frame in milliseconds; null while it rests. */
  let last: number | null = null;

  const beatAt = (at: number): number => beats.findLastIndex((beat) => beat.start <= at + 1e-6);

  const show = (at: number): void => {
    time = Math.min(Math.max(at, 0), end);
    const beat = beatAt(time);
    // Where less motion is asked for, the picture changes from beat to beat.
    draw(calm.matches && last !== null && time < end ? (beats[beat]?.start ?? 0) : time, beat);
    bar.value = `${time}`;
    bar.setAttribute('aria-valuetext', `${time.toFixed(1)} seconds${beat < 0 ? '' : `, beat ${beats[beat]?.label}`}`);
    clock.textContent = `${time.toFixed(1)} / ${end.toFixed(1)} s`;
  };

  const rest = (): void => {
    last = null;
    button.textContent = 'Play';
    show(time);
  };

  const step = (now: number): void => {
    if (last === null) return;
    const next = time + ((now - last) / 1000) * Number(speed.value);
    last = now;
    if (next < end) show(next);
    else if (loop.checked) show(0);
    else {
      show(end);
      rest();
      return;
    }
    requestAnimationFrame(step);
  };

  const start = (): void => {
    if (time >= end) time = 0;
    last = performance.now();
    button.textContent = 'Pause';
    requestAnimationFrame(step);
  };

  const jump = (by: 1 | -1): void => {
    const here = beatAt(time);
    const to = by < 0 && time - (beats[here]?.start ?? 0) > 0.3 ? here : here + by;
    show(beats[to]?.start ?? (by < 0 ? 0 : end));
  };

  button.addEventListener('click', () => (last === null ? start() : rest()));
  part('.back').addEventListener('click', () => jump(-1));
  part('.next').addEventListener('click', () => jump(1));
  bar.addEventListener('input', () => show(Number(bar.value)));
  heard.addEventListener('keydown', (given) => {
    const event = given as KeyboardEvent;
    if (section.hidden || (event.target as Element).closest('button, input, select, summary')) return;
    if (event.key === ' ') button.click();
    else if (event.key === 'ArrowLeft') jump(-1);
    else if (event.key === 'ArrowRight') jump(1);
    else return;
    event.preventDefault();
  });
  show(0);
  return { show, rest };
}

/** Shows one of the sections, by the choice that names them by number; those that are hidden come to rest. */
export function choosing(choice: HTMLSelectElement | null, sections: readonly HTMLElement[], rests: readonly (() => void)[]): void {
  const choose = (): void => {
    for (const [index, section] of sections.entries()) {
      section.hidden = index !== Number(choice?.value ?? 0);
      if (section.hidden) rests[index]?.();
    }
  };
  choice?.addEventListener('change', choose);
  choose();
}
