/** The script of the page that compares two versions: plays both in step, and shows one beside, over or through the other. */
import { liftPerMetre } from '../../shared/render/lift.ts';
import type { ComparedData } from '../../shared/review/page.ts';
import { moverAt } from '../../shared/scene/frame.ts';

const sections = [...document.querySelectorAll<HTMLElement>('.change')];
const rests = (JSON.parse(document.getElementById('compare-data')?.textContent ?? '[]') as ComparedData[]).map((data, index) => live(data, sections[index] as HTMLElement));

const choice = document.querySelector<HTMLSelectElement>('#drill');
const choose = (): void => {
  for (const [index, section] of sections.entries()) {
    section.hidden = index !== Number(choice?.value ?? 0);
    if (section.hidden) rests[index]?.();
  }
};
choice?.addEventListener('change', choose);
choose();

/** Brings one comparison to life; returns what brings it to rest. */
function live({ end, beats, pictures }: ComparedData, section: HTMLElement): () => void {
  const part = <T extends Element>(selector: string): T | null => section.querySelector<T>(selector);
  views(section);
  const bar = part<HTMLInputElement>('.time');
  const button = part<HTMLButtonElement>('.play');
  const clock = part('.clock');
  if (!bar || !button || !clock) return () => undefined;
  const speed = part<HTMLSelectElement>('.speed');
  const loop = part<HTMLInputElement>('.loop');
  const calm = matchMedia('(prefers-reduced-motion: reduce)');
  const shown = pictures.map(({ place, tracks, strip }) => {
    const figure = part<HTMLElement>(`.${place}`)!;
    return {
      movers: tracks.map((track, index) => ({ track, node: figure.querySelector(`.mover-${index}`), lift: figure.querySelector(`.lift-${index}`) })),
      timed: [...figure.querySelectorAll<SVGGElement>('[data-during]')].map((node) => ({ node, span: (node.dataset['during'] ?? '').split(' ').map(Number) })),
      strip, cursor: figure.querySelector('.cursor'),
    };
  });

  let time = 0;
  /** Moment of the last frame in milliseconds; null while it rests. */
  let last: number | null = null;
  const beatAt = (at: number): number => beats.findLastIndex((beat) => beat.start <= at + 1e-6);

  const show = (at: number): void => {
    time = Math.min(Math.max(at, 0), end);
    const beat = beatAt(time);
    // Where less motion is asked for, the pictures change from beat to beat.
    const drawn = calm.matches && last !== null && time < end ? (beats[beat]?.start ?? 0) : time;
    for (const { movers, timed, strip, cursor } of shown) {
      for (const { track, node, lift } of movers) {
        const { x, y, height } = moverAt(track, drawn);
        node?.setAttribute('transform', `translate(${x.toFixed(2)} ${y.toFixed(2)})`);
        lift?.setAttribute('transform', `translate(0 ${(-height * liftPerMetre).toFixed(2)})`);
      }
      for (const { node, span: [start = 0, over = 0] } of timed) node.setAttribute('visibility', start <= drawn && drawn < over ? 'visible' : 'hidden');
      if (strip && cursor) cursor.setAttribute('transform', `translate(${(strip.left + strip.perSecond * Math.min(drawn, strip.end)).toFixed(2)} 0)`);
    }
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
    const next = time + ((now - last) / 1000) * Number(speed?.value ?? 1);
    last = now;
    if (next < end) show(next);
    else if (loop?.checked) show(0);
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
  part('.back')?.addEventListener('click', () => jump(-1));
  part('.next')?.addEventListener('click', () => jump(1));
  bar.addEventListener('input', () => show(Number(bar.value)));
  document.addEventListener('keydown', (event) => {
    if (section.hidden || (event.target as Element).closest('button, input, select, summary')) return;
    if (event.key === ' ') button.click();
    else if (event.key === 'ArrowLeft') jump(-1);
    else if (event.key === 'ArrowRight') jump(1);
    else return;
    event.preventDefault();
  });
  show(0);
  return rest;
}

/** Side by side, one over the other, swiped over it, or faded into it. */
function views(section: HTMLElement): void {
  const share = section.querySelector<HTMLInputElement>('.share input');
  const now = section.querySelector<HTMLElement>('.now');
  const edge = section.querySelector<HTMLElement>('.edge');
  if (!share || !now || !edge) return;
  const update = (): void => {
    const view = section.querySelector<HTMLInputElement>('.views input:checked')?.value ?? 'side';
    const per = Number(share.value);
    section.dataset['view'] = view;
    now.style.clipPath = view === 'swipe' ? `inset(0 0 0 ${per}%)` : '';
    now.style.opacity = view === 'fade' ? `${per / 100}` : '';
    edge.style.left = `${per}%`;
    const before = view === 'fade' ? 100 - per : per;
    share.setAttribute('aria-valuetext', `${before} % before, ${100 - before} % now`);
  };
  section.querySelector('.views')?.addEventListener('change', update);
  share.addEventListener('input', update);
  update();
}
