/** Movement as CSS, so that a picture moves without a script, also as an image in a page. */
import type { Scene } from '../scene/scene.ts';
import { mm } from '../scene/shapes.ts';
import { liftPerMetre } from './lift.ts';

/** Seconds of rest before it begins again. */
const rest = 1.2;

export function animationCss(scene: Scene): string {
  const length = scene.end + rest;
  const share = (time: number) => `${Math.round((time / length) * 100000) / 1000}%`;
  const rules: string[] = [
    `.mover,.lift,.cursor{animation:${mm(length)}s linear infinite}`,
    '@media (prefers-reduced-motion:reduce){.mover,.lift,.cursor,[data-during]{animation:none!important}}',
    'svg:hover .mover,svg:hover .lift,svg:hover .cursor,svg:hover [data-during]{animation-play-state:paused}',
  ];
  for (const [index, { track }] of scene.movers.entries()) {
    const samples = Array.from({ length: track.length / 4 }, (_, sample) => track.slice(sample * 4, sample * 4 + 4) as [number, number, number, number]);
    if (samples.length < 2) continue;
    rules.push(`.mover-${index}{animation-name:move-${index}}`, keyframes(`move-${index}`, samples.map(([time, x, y]) => [share(time), `translate(${mm(x)}px,${mm(y)}px)`])));
    if (samples.some(([, , , height]) => height > 0)) {
      rules.push(`.lift-${index}{animation-name:lift-${index}}`, keyframes(`lift-${index}`, samples.map(([time, , , height]) => [share(time), `translate(0,${mm(-height * liftPerMetre)}px)`])));
    }
  }
  for (const [key, name] of momentClasses(scene)) {
    const [start = 0, end = 0] = key.split(' ').map(Number);
    rules.push(`.${name}{animation:${name} ${mm(length)}s step-end infinite}`, `@keyframes ${name}{${momentFrames(share(start), end < scene.end ? share(end) : '100%')}}`);
  }
  if (scene.strip) {
    const { left, perSecond } = scene.strip;
    rules.push('.cursor{animation-name:cursor}', keyframes('cursor', [['0%', `translate(${mm(left)}px,0)`], [share(scene.end), `translate(${mm(left + perSecond * scene.end)}px,0)`]]));
  }
  return rules.join('\n');
}

/** The spans of time that marks have to themselves, by name: one rule serves all of the same span. */
export function momentClasses(scene: Pick<Scene, 'marks'>): ReadonlyMap<string, string> {
  const keys = new Set(scene.marks.flatMap(({ during }) => (during ? [`${during.start} ${during.end}`] : [])));
  return new Map([...keys].map((key, index) => [key, `moment-${index}`]));
}

function momentFrames(start: string, end: string): string {
  const before = start === '0%' ? '' : '0%{visibility:hidden}';
  return `${before}${start}{visibility:visible}${end === '100%' ? '100%{visibility:visible}' : `${end}{visibility:hidden}100%{visibility:hidden}`}`;
}

/** Holds the first value before the first frame and the last after the last; of frames at the same share the last counts. */
function keyframes(name: string, frames: readonly (readonly [string, string])[]): string {
  const at = new Map<string, string>([['0%', frames[0]?.[1] ?? ''], ...frames]);
  at.set('100%', frames[frames.length - 1]?.[1] ?? '');
  const held: string[] = [];
  const all = [...at];
  for (const [index, [share, transform]] of all.entries()) {
    // What stays the same between its neighbours needs no frame of its own.
    if (index > 0 && index < all.length - 1 && all[index - 1]?.[1] === transform && all[index + 1]?.[1] === transform) continue;
    held.push(`${share}{transform:${transform}}`);
  }
  return `@keyframes ${name}{${held.join('')}}`;
}
