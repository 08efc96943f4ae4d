/** The script of the self-contained page: moves what the scene's tracks say. It keeps the nodes and sets their transforms, nothing else. */
import { liftPerMetre } from '../../shared/render/lift.ts';
import { moverAt } from '../../shared/scene/frame.ts';
import type { PlayerData } from '../../shared/render/html.ts';

const scenes = [...document.querySelectorAll<HTMLElement>('.scene')];
const players = (JSON.parse(document.getElementById('player-data')?.textContent ?? '') as PlayerData[]).map((data, index) => play(data, scenes[index] as HTMLElement, index));

const choice = document.querySelector<HTMLSelectElement>('#scene');
const choose = (): void => {
  for (const [index, scene] of scenes.entries()) {
    scene.hidden = index !== Number(choice?.value ?? 0);
    if (scene.hidden) players[index]?.();
  }
};
choice?.addEventListener('change', choose);
if (choice) choose();

/** Brings one scene to life; returns what brings it to rest. */
function play({ end, beats, tracks, strip }: PlayerData, scene: HTMLElement, place: number): () => void {
  if (!(end > 0)) return () => undefined;
  const part = <T extends Element>(selector: string): T => scene.querySelector<T>(selector) as T;
  const movers = tracks.map((track, index) => ({
    track,
    node: part<SVGGElement>(`.mover-${index}`),
    lift: scene.querySelector(`.lift-${index}`),
  }));
  const timed = [...scene.querySelectorAll<SVGGElement>('[data-during]')].map((node) => ({ node, span: (node.dataset['during'] ?? '').split(' ').map(Number) }));
  const cursor = scene.querySelector('.cursor');
  const bar = part<HTMLInputElement>('.time');
  const clock = part<HTMLOutputElement>('.clock');
  const button = part<HTMLButtonElement>('.play');
  const speed = part<HTMLSelectElement>('.speed');
  const loop = part<HTMLInputElement>('.loop');
  /** Beats are told in any part of the page; one that goes on has several items. */
  const items = [...document.querySelectorAll<HTMLElement>(`li[data-scene="${place}"]`)];
  const calm = matchMedia('(prefers-reduced-motion: reduce)');

  let time = 0;
  /** Moment of the last frame in milliseconds; null while it rests. */
  let last: number | null = null;

  const beatAt = (at: number): number => {
    let found = -1;
    for (const [index, beat] of beats.entries()) if (beat.start <= at + 1e-6) found = index;
    return found;
  };

  const show = (at: number): void => {
    time = Math.min(Math.max(at, 0), end);
    const beat = beatAt(time);
    // Where less motion is asked for, the picture changes from beat to beat.
    const drawn = calm.matches && last !== null && time < end ? (beats[beat]?.start ?? 0) : time;
    for (const { track, node, lift } of movers) {
      const { x, y, height } = moverAt(track, drawn);
      node.setAttribute('transform', `translate(${x.toFixed(2)} ${y.toFixed(2)})`);
      lift?.setAttribute('transform', `translate(0 ${(-height * liftPerMetre).toFixed(2)})`);
    }
    for (const { node, span: [start = 0, over = 0] } of timed) node.setAttribute('visibility', start <= drawn && drawn < over ? 'visible' : 'hidden');
    if (strip && cursor) cursor.setAttribute('transform', `translate(${(strip.left + strip.perSecond * drawn).toFixed(2)} 0)`);
    bar.value = `${time}`;
    bar.setAttribute('aria-valuetext', `${time.toFixed(1)} seconds${beat < 0 ? '' : `, beat ${beats[beat]?.label}`}`);
    clock.textContent = `${time.toFixed(1)} / ${end.toFixed(1)} s`;
    for (const item of items) {
      if (Number(item.dataset['beat']) === beat) item.setAttribute('aria-current', 'step');
      else item.removeAttribute('aria-current');
    }
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
    const back = by < 0 && time - (beats[here]?.start ?? 0) > 0.3 ? here : here + by;
    show(beats[back]?.start ?? (by < 0 ? 0 : end));
  };

  button.addEventListener('click', () => (last === null ? start() : rest()));
  part('.back').addEventListener('click', () => jump(-1));
  part('.next').addEventListener('click', () => jump(1));
  bar.addEventListener('input', () => show(Number(bar.value)));
  for (const item of items) item.addEventListener('click', () => show(beats[Number(item.dataset['beat'])]?.start ?? 0));
  // Where several are shown at once, keys are for the one in focus.
  const heard: HTMLElement | Document = choice || scenes.length === 1 ? document : scene;
  heard.addEventListener('keydown', (given) => {
    const event = given as KeyboardEvent;
    if (scene.hidden || (event.target as Element).closest('button, input, select')) return;
    if (event.key === ' ') button.click();
    else if (event.key === 'ArrowLeft') jump(-1);
    else if (event.key === 'ArrowRight') jump(1);
    else return;
    event.preventDefault();
  });
  show(0);
  return rest;
}
