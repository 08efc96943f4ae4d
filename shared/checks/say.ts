/** Names, lengths and times as the messages of the checks write them. */
import type { Point } from '../geometry/point.ts';
import type { ActorId, Drill } from '../model/drill.ts';
import { formatLength, metresIn } from '../units.ts';

/** `next Base` and `Left` as code, the coach as a word. */
export function who(actor: ActorId): string {
  return actor === 'coach' ? 'the coach' : `\`${actor}\``;
}

/** The same at the start of a sentence. */
export function Who(actor: ActorId): string {
  return actor === 'coach' ? 'The coach' : `\`${actor}\``;
}

/** Metres as a length in the drill's own unit: `7.5 m`. */
export function long(drill: Drill, metres: number): string {
  return formatLength(metres, drill.units, 1);
}

/** A place as it could be written in the drill: `(4, 12.5)`. */
export function spot(drill: Drill, at: Point): string {
  const per = metresIn(drill.units);
  const number = (metres: number): string => String(Math.round((metres / per) * 10) / 10 + 0);
  return `(${number(at.x)}, ${number(at.y)})`;
}

/** `0.8 s` */
export function seconds(time: number): string {
  return `${(Math.round(time * 10) / 10).toFixed(1)} s`;
}

/** `Base, Left and Top` */
export function list(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
