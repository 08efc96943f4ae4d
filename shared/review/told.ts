import type { Change, FactKind } from './comparison.ts';
import type { Difference } from './differences.ts';
import type { Renames } from './match.ts';
import type { Followers } from './moves.ts';
import type { Speech } from './say.ts';

export interface Told {
  readonly kind: FactKind;
  /** Empty: nobody would notice. */
  readonly sentence: string;
  readonly grade: 'matters' | 'detail';
  /** The properties it tells of; null: all that are left. */
  readonly properties: readonly string[] | null;
  /** Also tells of what follows from it, and of its parts. */
  readonly leads: boolean;
  /** Differences of other things that say the same. */
  readonly also: readonly Difference[];
}

export interface Telling {
  readonly difference: Difference;
  /** Not told yet. */
  readonly free: (change: Change) => boolean;
  /** What follows from it. */
  readonly follow: Followers;
  readonly renames: Renames;
  readonly speech: Speech;
  readonly all: readonly Difference[];
}

/** Unless `more` says otherwise it matters and tells all that is left. */
export function told(kind: FactKind, sentence: string, more: Partial<Told> = {}): Told {
  return { kind, sentence, grade: 'matters', properties: null, leads: true, also: [], ...more };
}
