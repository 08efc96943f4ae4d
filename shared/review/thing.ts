import type { Span } from '../../grammar/tree.ts';
import type { Point } from '../geometry/point.ts';
import type { ThingKind, Unit, Value } from './comparison.ts';

/** Anything of a drill or a session that a fact can be about. */
export interface Thing {
  readonly kind: ThingKind;
  /** Unlike any other of its kind. */
  readonly id: string;
  /** In a sentence: `Left`, `the pole at (4, 8)`, `beat 3`. */
  readonly title: string;
  readonly span: Span | null;
  /** Its own words in the text, without needless spaces; null for what is computed. */
  readonly words: string | null;
  /** By property; those that are not there are left out. */
  readonly values: Readonly<Record<string, Valued>>;
  /** Where it stands; null for what stands nowhere. */
  readonly at: Point | null;
  /** Whom or what it is told apart from others by, when its name is not the same. */
  readonly traits: readonly string[];
  /** The id of the thing it is a part of: of a pass its beat. */
  readonly parent: string | null;
  /** Of a beat: who does what, the lead first. Of a sequence: how often what is done. */
  readonly parts: readonly string[];
}

export interface Valued {
  readonly value: Value;
  readonly unit: Unit;
}

/** Those of the same name told apart by a number. */
export function distinct(things: readonly Thing[]): Thing[] {
  const met = new Map<string, number>();
  return things.map((one) => {
    const key = `${one.kind} ${one.id}`;
    const times = (met.get(key) ?? 0) + 1;
    met.set(key, times);
    return times === 1 ? one : { ...one, id: `${one.id} (${times})` };
  });
}

type Given = Pick<Thing, 'kind' | 'id' | 'title' | 'span'> & Partial<Thing>;

export function thing(given: Given): Thing {
  return { words: null, values: {}, at: null, traits: [], parent: null, parts: [], ...given };
}

export function metres(value: number): Valued {
  return { value: rounded(value), unit: 'm' };
}

export function secondsOf(value: number): Valued {
  return { value: rounded(value), unit: 's' };
}

export function count(value: number): Valued {
  return { value: rounded(value), unit: '' };
}

export function words(value: string): Valued {
  return { value, unit: 'text' };
}

export function inUnit(value: number, unit: Unit): Valued {
  return { value: rounded(value), unit };
}

/** Only what is there. */
export function present(values: Readonly<Record<string, Valued | null>>): Thing['values'] {
  return Object.fromEntries(Object.entries(values).filter((entry): entry is [string, Valued] => entry[1] !== null));
}

/** A micrometre and a microsecond: the noise of binary fractions is no change. */
function rounded(value: number): number {
  return Number.isFinite(value) ? Math.round(value * 1e6) / 1e6 + 0 : 0;
}

/** A piece of the text as one line. */
export function wordsIn(text: string, span: Span): string {
  return text.slice(span.from, span.to).replace(/\/\/[^\n]*/g, ' ').replace(/\s+/g, ' ').trim();
}
