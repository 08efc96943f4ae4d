import type { Span } from '../../grammar/tree.ts';
import type { ActorId, Id } from '../model/drill.ts';

/** A place in a queue: `Base1` is the one who plays, `Base2` the next to come. */
export interface QueuePlace {
  readonly station: Id;
  /** From 1, the front. */
  readonly number: number;
}

/** Where everybody goes in one repetition, as a permutation of the places in the queues. */
export interface Rotation {
  /** How it is known: written arrows, `follow`, or read from where players end. */
  readonly source: 'arrows' | 'follow' | 'read';
  /** Station to station, for the one who played there; a station that nobody leaves maps to itself. */
  readonly moves: readonly StationMove[];
  /** Every place is filled again by exactly one player. */
  readonly closed: boolean;
  readonly places: readonly QueuePlace[];
  /** `image[i]` is the index of the place that the player of place `i` has after one repetition; only when closed. */
  readonly image: readonly number[] | null;
  /** The cycles of `image`, as lists of indices into `places`, each beginning with its smallest; only when closed. */
  readonly cycles: readonly (readonly number[])[];
  /** Repetitions until everyone is where they began: the least common multiple of the cycles' lengths; null when open. */
  readonly order: number | null;
}

export interface StationMove {
  readonly actor: ActorId;
  readonly from: Id;
  /** Null: ends at no station. */
  readonly to: Id | null;
  readonly span: Span | null;
}
