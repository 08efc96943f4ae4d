/**
 * What changed between two versions of a text, as facts a coach cares about. Readonly data that survives JSON.
 *
 * Beside the facts stands the record of values of both versions: flat, a key a value. A key is `KIND NAME/PROPERTY` with the name
 * that the older version gave it; numbers are in metres, seconds, metres a second, square metres and degrees, rounded to six
 * digits behind the point; a key that is missing means that the thing is not there. The facts are complete: {@link apply} of
 * them to the older record gives the newer one.
 *
 * | keys | properties |
 * | --- | --- |
 * | `drill/…` | name, age, years, players, units, tempo, ground, roll, passPace, runPace, theme, time, level, tags, order; of a session also pitch, kit, hands and changeovers (seconds in all) |
 * | `let wide/…` | name, value, as (its words) |
 * | `area/…` | width, length, space, marked |
 * | `zone Z/…` · `furniture F/…` | name, shape or what, across, up, width, length, height, radius, outline, facing |
 * | `station S/…` · `player P/…` · `team T/…` · `balls 1/…` | name, across, up, holds, team, as · size, bib, kind · count, holder |
 * | `sequence Q/…` | name, kind, beats, mirrors, after |
 * | `beat Q 3/…` | text, number, sequence: the third beat of Q |
 * | `action Q 3 Left 1/…` | across, up, lasts, waits: the first movement of Left in it |
 * | `pass Q 3/…` | from, to, length, flight, launch, arrival, slack, start; in a phase also rival, margin (how much later the rival is), openLanes |
 * | `repetition/…` | duration, interval, because, players, spaceEach, spaceOutfield, touchesEach and metresEach a minute; of a phase its duration |
 * | `rotation/…` | written, closes, order, ways, cycles |
 * | `role Left/…` · `kit cones/…` | touches, distance, working, waiting · count |
 * | `rule 1/…` · `point 1/…` · `question 1/…` · `safety 1/…` · `note 1/…` | text, corner |
 * | `problem 1/…` | code, severity, message |
 * | `progression N/…` · `part P/…` · `import P/…` | name, kind, lever · name, lasts, groups, sizes, drill, progression, resting, at, number · path |
 */
import type { Span } from '../../grammar/tree.ts';

export interface Comparison {
  /** What changed in the file around them, if anything; its drills, each with its progressions behind it; its sessions. */
  readonly subjects: readonly Subject[];
}

export interface Subject {
  readonly kind: 'file' | 'drill' | 'progression' | 'session';
  /** Null: not there. */
  readonly before: Version | null;
  readonly after: Version | null;
  readonly values: { readonly before: Values; readonly after: Values };
  /** Those that matter first; what is written before what comes of it. */
  readonly facts: readonly Fact[];
  /** People and furniture, where they stood and where they stand: for pictures, in metres. */
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

/** In the order in which they are told. */
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

/** Something at the level of errors and warnings that was not there before. */
export function isNewProblem({ kind, about, grade }: Fact): boolean {
  return kind === 'added' && about.kind === 'problem' && grade === 'matters';
}

/** Whether there is anything to tell. */
export function isSame({ subjects }: Comparison): boolean {
  return subjects.every(({ facts }) => facts.length === 0);
}
