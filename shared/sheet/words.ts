/** Numbers, people and faults of a session in words. */
import type { Span } from '../../grammar/tree.ts';
import type { Drill } from '../model/drill.ts';
import { within } from '../model/span.ts';
import type { Problem } from '../problem.ts';
import { figure, lengthWords, measureOf } from '../scene/units.ts';
import type { PartSlot, SessionAnalysis, Slot, Thing } from '../session/analysis.ts';
import { plainWords } from '../scene/words.ts';
import { kitText } from '../session/words.ts';
import { bullets, titled, type Block } from './blocks.ts';

export interface NumberedPart {
  /** From 1, as on the strip. */
  readonly number: number;
  /** Its place in the timetable. */
  readonly index: number;
  readonly slot: Slot & PartSlot;
}

export function partsOf({ timetable }: SessionAnalysis): NumberedPart[] {
  const parts: NumberedPart[] = [];
  for (const [index, slot] of timetable.entries()) if (slot.kind === 'part') parts.push({ number: parts.length + 1, index, slot });
  return parts;
}

/** Seconds as minutes: 15, 7:30. */
export function minutes(seconds: number): string {
  const whole = Math.round(seconds);
  return whole % 60 === 0 ? `${whole / 60}` : `${Math.floor(whole / 60)}:${`${whole % 60}`.padStart(2, '0')}`;
}

export function counted(count: number, one: string, many = `${one}s`): string {
  return `${figure(count)} ${count === 1 ? one : many}`;
}

export function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
}

/** `6 discs and 1 mannequin`; empty for nothing. */
export function tally(all: readonly { readonly kind: Thing['kind'] }[]): string {
  const counts = new Map<Thing['kind'], number>();
  for (const { kind } of all) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return listed([...counts].map(([kind, count]) => kitText(kind, count)));
}

/** By their numbers on the register, from 1 at the front; null for who has none. */
export type Names = readonly (string | null)[];

/** Those on the register, by name where there is a list of names, else by number; each kept from turning its neighbours round. */
export function people(members: readonly number[], names: Names): string {
  const named = members.flatMap((member) => (typeof names[member - 1] === 'string' ? [isolated(names[member - 1] as string)] : []));
  const others = members.filter((member) => typeof names[member - 1] !== 'string');
  const numbers = others.length === 0 ? [] : [`${others.length === 1 ? 'player' : 'players'} ${runs(others)}`];
  return [...named, ...numbers].join(', ');
}

/** FIRST STRONG ISOLATE and POP DIRECTIONAL ISOLATE (Unicode UAX #9) about names that run from right to left. */
function isolated(name: string): string {
  return /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff]/.test(name) ? `\u2068${name}\u2069` : name;
}

/** 1–4, 6, 9–10. */
function runs(numbers: readonly number[]): string {
  const found: [number, number][] = [];
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const last = found.at(-1);
    if (last && number === last[1] + 1) last[1] = number;
    else found.push([number, number]);
  }
  return found.map(([from, to]) => (from === to ? `${from}` : `${from}–${to}`)).join(', ');
}

export function areaWords(drill: Drill): string | null {
  const measure = measureOf(drill);
  return drill.area && `${lengthWords(drill.area.width, measure)} × ${lengthWords(drill.area.length, measure)} ${measure.name}`;
}

/** What does not work as it is written, so that nobody finds it out on the grass; of a drill without what only its changes bring. */
export function toMend(whole: Span, problems: readonly Problem[], apart: readonly Span[] = []): Block[] {
  const errors = problems.filter(({ severity, span }) => severity === 'error' && within(whole, span) && !apart.some((each) => within(each, span)));
  return titled('To mend before it is played', bullets(errors.map(({ message, help }) => plainWords(help === null ? message : `${message} ${help}`))));
}
