/** What the checks of the ground share: how far outside the area a place is, and what things and sizes are called. */
import type { Point } from '../geometry/point.ts';
import type { Area, Drill, Furniture } from '../model/drill.ts';
import { youthFormats, type YouthFormat } from '../space/youthFormats.ts';
import { formatNumber, metresIn } from '../units.ts';
import { spot } from './say.ts';

/** Metres by which a place lies beyond the sides of the area: across, along, and as the crow flies; 0 inside. */
export function beyond(area: Area, at: Point): { readonly across: number; readonly along: number; readonly distance: number } {
  const across = Math.max(-at.x, at.x - area.width, 0);
  const along = Math.max(-at.y, at.y - area.length, 0);
  return { across, along, distance: Math.hypot(across, along) };
}

/** `Near` as code; without a name, `The pole at (3, 4)`, for the start of a sentence. */
export function Thing(drill: Drill, thing: Furniture): string {
  if (thing.kind === 'coach') return 'The coach';
  return thing.name === null ? `The ${thing.kind === 'minigoal' ? 'mini goal' : thing.kind} at ${spot(drill, thing.at)}` : `\`${thing.name}\``;
}

/** A name that may begin with `The`, in the middle of a sentence. */
export function inSentence(name: string): string {
  return name.replace(/^The /, 'the ');
}

/** `18 x 24 m`, `60 x 40 yd`: in the drill's own unit. */
export function sizeWords(drill: Drill, width: number, length: number): string {
  const per = metresIn(drill.units);
  return `${formatNumber(width / per, 2)} x ${formatNumber(length / per, 2)} ${drill.units}`;
}

/** The row of the published table for the age the drill writes; null without an age, or where the table has none. */
export function formatFor(drill: Drill): YouthFormat | null {
  if (drill.age.span === null) return null;
  const age = drill.age.value >= 19 ? 'adult' : `U${drill.age.value}`;
  return youthFormats.rows.find((row: YouthFormat) => row.ages.includes(age)) ?? null;
}
