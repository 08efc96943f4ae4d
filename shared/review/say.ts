/** The words of facts: numbers with their units, places, lists. */
import type { Point } from '../geometry/point.ts';
import type { Drill } from '../model/drill.ts';
import { minutes } from '../session/words.ts';
import { formatLength, formatNumber, metresIn } from '../units.ts';
import type { Change, Unit, Value } from './comparison.ts';

export interface Speech {
  readonly units: Drill['units'];
}

/** `8 m`, `0.4 s`, `45 m²`, a text as it is. */
export function said(value: Value | null, unit: Unit, { units }: Speech): string {
  if (value === null) return 'none';
  if (typeof value === 'string') return value;
  switch (unit) {
    case 'm':
      return formatLength(value, units, 1);
    case 's':
      if (value > 120 && value % 30 !== 0) return minutes(value);
      return value >= 60 && value % 30 === 0 ? `${formatNumber(value / 60, 1)} min` : `${formatNumber(value, 1)} s`;
    case 'm/s':
    case 'm²':
      return `${formatNumber(value, 1)} ${unit}`;
    case '°':
      return `${formatNumber(value, 0)}°`;
    case '':
    case 'text':
      return formatNumber(value, 1);
  }
}

/** `8 m, was 10`: the unit once where both have it. */
export function isWas({ before, after, unit }: Change, speech: Speech, was = 'was'): string {
  if (after === null) return `no longer given, ${was} ${said(before, unit, speech)}`;
  if (before === null) return `${said(after, unit, speech)}, ${was} not given`;
  const old = said(before, unit, speech);
  const now = said(after, unit, speech);
  const end = / \D+$/.exec(now)?.[0] ?? '';
  return `${now}, ${was} ${typeof before === 'number' && end !== '' && old.endsWith(end) ? old.slice(0, -end.length) : old}`;
}

/** How far two numbers are apart as they are written: `0.9 m` between 12.1 m and 13 m. */
export function apart({ before, after, unit }: Change, speech: Speech): string {
  const shown = (value: Value | null) => Math.round((Number(value) / (unit === 'm' ? metresIn(speech.units) : 1)) * 10) / 10;
  const by = Math.abs(shown(after) - shown(before));
  return said(unit === 'm' ? by * metresIn(speech.units) : by, unit, speech);
}

/** Whether a tape, a watch or a count shows it. */
export function noticed({ before, after, by, unit }: Change): boolean {
  if (by === null) return before !== after;
  return Math.abs(by) >= (unit === 'm' || unit === 's' || unit === 'm/s' ? 0.05 : unit === 'm²' ? 0.5 : unit === '°' ? 1 : 0.05);
}

/** `runs 34 m, was 30; waits 4 s, was 5`: what somebody notices, or all when nobody would. */
export function pieces(changes: ReadonlyMap<string, Change>, names: Readonly<Record<string, string>>, speech: Speech): string {
  const shown = [...changes].filter(([, change]) => noticed(change));
  return (shown.length > 0 ? shown : [...changes]).map(([property, change]) => `${names[property] ?? property} ${isWas(change, speech)}`).join('; ');
}

/** `(4, 12.5)`, in the unit of the drill. */
export function place(at: Point, { units }: Speech): string {
  const per = metresIn(units);
  return `(${formatNumber(at.x / per, 1)}, ${formatNumber(at.y / per, 1)})`;
}

/** `2 m to the left and 1 m up`; null for less than a tape shows. */
export function way(from: Point, to: Point, speech: Speech): string | null {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const across = Math.abs(dx) < 0.05 ? null : `${said(Math.abs(dx), 'm', speech)} to the ${dx < 0 ? 'left' : 'right'}`;
  const along = Math.abs(dy) < 0.05 ? null : `${said(Math.abs(dy), 'm', speech)} ${dy < 0 ? 'down' : 'up'}`;
  return across !== null && along !== null ? `${across} and ${along}` : (across ?? along);
}

/** `Left, Right and 3 more` */
export function listed(names: readonly string[], most = 6): string {
  const shown = names.length > most ? [...names.slice(0, most - 1), `${names.length - most + 1} more`] : names;
  return shown.length < 2 ? shown.join('') : `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}

/** At the beginning of a sentence; names stay as they are written. */
export function capital(words: string): string {
  return ownWords.test(words) ? words.charAt(0).toUpperCase() + words.slice(1) : words;
}

const ownWords = /^(the|beat|pass|shot|new|no|now|everyone|progression|regression|rule|coaching|question|safety|note|part|import|gone|mended)\b/;

/** `1 cone`, `2 cones`, `1 bib red` */
export function counted(many: number, what: string): string {
  return `${many} ${many === 1 ? what.replace(/^((?:mini )?[a-z]+?)s\b/, '$1') : what}`;
}

const small = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten', 'Eleven', 'Twelve'];

/** `Four more cones`, `One cone fewer` */
export function moreOrFewer(by: number, what: string): string {
  const many = small[Math.abs(by)] ?? `${Math.abs(by)}`;
  const noun = counted(Math.abs(by), what).replace(/^\d+ /, '');
  return by > 0 ? `${many} more ${noun}` : `${many} ${noun} fewer`;
}
