/**
 * What changed between two versions of a text, as facts a coach cares about. Readonly data that survives JSON.
 *
 * Beside the facts stands the record of values of both versions: flat, a key a value. A key is `KIND NAME/PROPERTY`, such as
 * `station Left/across` or `pass 3/length`, with the name that the older version gave it; numbers are in the unit that a fact's
 * change says (metres, seconds …), rounded to six digits behind the point; a key that is missing means that the thing is not there.
 * The facts are complete: {@link apply} of them to the older record gives the newer one.
 */
import type { Span } from '../../grammar/tree.ts';

export interface Comparison {
  /** The file itself, then its drills, each with its progressions behind it, then its sessions; also those without facts. */
  readonly subjects: readonly Subject[];
}

export interface Subject {
  readonly kind: 'file' | 'drill' | 'progression' | 'session';
  /** Null: not there. */
  readonly before: Version | null;
  readonly after: Version | null;
  readonly values: { readonly before: Values; readonly after: Values };
  /** Those that matter first, then in the order of the text. */
  readonly facts: readonly Fact[];
  /** What moved, came and went, for pictures; in metres. */
  readonly marks: readonly Mark[];
}

export interface Version {
  readonly name: string;
  /** In `Analysis.drills` the drill, also of a progression; -1 for files and sessions. */
  readonly drill: number;
  /** Id of the progression or regression in its drill. */
  readonly change: string | null;
}

export type Value = number | string;
export type Values = Readonly<Record<string, Value>>;
/** `text`: a word or a sentence; an empty unit counts something. */
export type Unit = 'm' | 's' | 'm/s' | 'm²' | '°' | '' | 'text';

export type FactKind = 'added' | 'removed' | 'moved' | 'renamed' | 'changed';

export interface Fact {
  readonly kind: FactKind;
  /** What it is about, by the name each version has for it. */
  readonly about: { readonly kind: ThingKind; readonly before: string | null; readonly after: string | null };
  /** In coaching words, with the numbers. */
  readonly sentence: string;
  /** `matters`: whoever runs the drill notices it on the grass; `detail`: the rest. */
  readonly grade: 'matters' | 'detail';
  readonly spans: { readonly before: Span | null; readonly after: Span | null };
  readonly changes: readonly Change[];
  /** Of a progression: the same values changed in the drill around it, which has told it. */
  readonly shared: boolean;
}

export interface Change {
  readonly key: string;
  /** Null: not there. */
  readonly before: Value | null;
  readonly after: Value | null;
  readonly unit: Unit;
  /** After less before, where both are numbers. */
  readonly by: number | null;
}

export const thingKinds = [
  'import', 'drill', 'let', 'area', 'zone', 'furniture', 'balls', 'team', 'station', 'player', 'sequence', 'beat', 'action', 'rotation',
  'rule', 'point', 'question', 'safety', 'note', 'part', 'progression', 'pass', 'repetition', 'role', 'kit', 'problem',
] as const;
export type ThingKind = (typeof thingKinds)[number];

/** Something that stands on the ground, where it stood and where it stands. */
export interface Mark {
  readonly name: string;
  readonly before: { readonly x: number; readonly y: number } | null;
  readonly after: { readonly x: number; readonly y: number } | null;
}

/** The record after the facts, from the record before them. */
export function apply(values: Values, facts: readonly Fact[]): Values {
  const made = new Map(Object.entries(values));
  for (const { changes } of facts) {
    for (const { key, after } of changes) {
      if (after === null) made.delete(key);
      else made.set(key, after);
    }
  }
  return Object.fromEntries(made);
}

/** Whether there is anything to tell. */
export function isSame({ subjects }: Comparison): boolean {
  return subjects.every(({ facts }) => facts.length === 0);
}
