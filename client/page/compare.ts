/** The script of the page that compares two versions: plays both in step, and shows one beside, over or through the other. */
import type { ComparedData } from '../../shared/review/page.ts';
import { choosing, clockIn, movingIn } from './clock.ts';

const sections = [...document.querySelectorAll<HTMLElement>('.change')];
const rests = (JSON.parse(document.getElementById('compare-data')?.textContent ?? '[]') as ComparedData[]).map((data, index) => live(data, sections[index] as HTMLElement));
const choice = document.querySelector<HTMLSelectElement>('#drill');
choosing(choice, sections, rests);
const links = [...document.querySelectorAll<HTMLAnchorElement>('.overview a')];
for (const link of links) link.addEventListener('click', () => show(link));
const asked = links.find(({ hash }) => hash === location.hash);
if (asked) show(asked);

/** Before the browser goes to where the link leads. */
function show(link: HTMLAnchorElement): void {
  if (!choice) return;
  choice.value = link.dataset['show'] ?? '0';
  choice.dispatchEvent(new Event('change'));
}

/** Brings one comparison to life; returns what brings it to rest. */
function live({ end, beats, pictures }: ComparedData, section: HTMLElement): () => void {
  views(section);
  if (!section.querySelector('.play')) return () => undefined;
  const moves = pictures.map(({ place, tracks, strip }) => {
    const move = movingIn(section.querySelector<HTMLElement>(`.${place}`)!, tracks, strip);
    // The shorter of the two has come to its end and waits.
    return (time: number): void => move(strip ? Math.min(time, strip.end) : time);
  });
  const draw = (time: number): void => {
    for (const move of moves) move(time);
  };
  return clockIn(section, { end, beats }, draw, document).rest;
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
