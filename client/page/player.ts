/** The script of the self-contained page: moves what the scene's tracks say, on a page with one scene, several to choose from, or several at once. */
import type { PlayerData } from '../../shared/render/html.ts';
import { choosing, clockIn, movingIn } from './clock.ts';

const choice = document.querySelector<HTMLSelectElement>('#scene');
const scenes = [...document.querySelectorAll<HTMLElement>('.scene')];
const rests = (JSON.parse(document.getElementById('player-data')?.textContent ?? '') as PlayerData[]).map((data, index) => play(data, scenes[index] as HTMLElement, index));
if (choice) choosing(choice, scenes, rests);

/** Brings one scene to life; returns what brings it to rest. */
function play({ end, beats, tracks, strip }: PlayerData, scene: HTMLElement, place: number): () => void {
  if (!(end > 0)) return () => undefined;
  const move = movingIn(scene, tracks, strip);
  /** Beats are told in any part of the page; one that goes on has several items. */
  const items = [...document.querySelectorAll<HTMLElement>(`li[data-scene="${place}"]`)];
  const draw = (time: number, beat: number): void => {
    move(time);
    for (const item of items) {
      if (Number(item.dataset['beat']) === beat) item.setAttribute('aria-current', 'step');
      else item.removeAttribute('aria-current');
    }
  };
  // Where several are shown at once, keys are for the one in focus.
  const { show, rest } = clockIn(scene, { end, beats }, draw, choice || scenes.length === 1 ? document : scene);
  for (const item of items) item.addEventListener('click', () => show(beats[Number(item.dataset['beat'])]?.start ?? 0));
  return rest;
}
