import type { KitKind } from '../model/session.ts';

/** What the kit is called, one and many. */
export const kitWords: Readonly<Record<KitKind, readonly [one: string, many: string]>> = {
  cone: ['cone', 'cones'], disc: ['disc', 'discs'], pole: ['pole', 'poles'], mannequin: ['mannequin', 'mannequins'], goal: ['goal', 'goals'],
  minigoal: ['mini goal', 'mini goals'], hurdle: ['hurdle', 'hurdles'], ladder: ['ladder', 'ladders'], ball: ['ball', 'balls'], bib: ['bib', 'bibs'],
};

/** `12 discs`, `7 red bibs` */
export function kitText(kind: KitKind, count: number, colour: string | null = null): string {
  return `${count} ${colour === null ? '' : `${colour} `}${kitWords[kind][count === 1 ? 0 : 1]}`;
}

/** ` + 4 cones`: what stands in for what there is too little of; empty where nothing does. */
export function standIns({ kind, needed, has, short }: { readonly kind: KitKind; readonly needed: number; readonly has: number | null; readonly short: number }): string {
  const count = needed - (has ?? 0) - short;
  if (has === null || count <= 0) return '';
  return kind === 'bib' ? ` + ${count} of any colour` : ` + ${kitText(kind === 'disc' ? 'cone' : 'disc', count)}`;
}

/** `75 min`, `90 s`, `2 min 30 s`: whole seconds. */
export function minutes(seconds: number): string {
  const whole = Math.round(seconds);
  const [min, s] = [Math.floor(whole / 60), whole % 60];
  if (min === 0) return `${s} s`;
  return s === 0 ? `${min} min` : `${min} min ${s} s`;
}
