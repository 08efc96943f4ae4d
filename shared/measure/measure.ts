import type { ActorId } from '../model/drill.ts';

/** The numbers of a drill. Metres, seconds, metres a second. */
export interface Measures {
  readonly name: string;
  /** The header's count, or who the text places. */
  readonly players: number;
  readonly area: { readonly width: number; readonly length: number; readonly m2: number } | null;
  /** Square metres a player; with and without goalkeepers. */
  readonly spacePerPlayer: { readonly outfield: number; readonly all: number } | null;
  readonly passes: readonly PassMeasure[];
  readonly duration: number;
  readonly rotation: { readonly closed: boolean; readonly cycles: readonly (readonly string[])[]; readonly order: number | null } | null;
  /** Shortest time between two starts with enough balls, and what decides it; null without a sequence. */
  readonly interval: { readonly seconds: number; readonly because: string } | null;
  readonly perPlayer: readonly PlayerMeasure[];
  /** Of the average player, everyone in the queues counted, with a start every `interval`. */
  readonly perMinute: { readonly touches: number; readonly metres: number } | null;
  readonly kit: readonly { readonly what: string; readonly count: number }[];
}

export interface PassMeasure {
  readonly from: string;
  readonly to: string | null;
  readonly length: number;
  readonly flight: number;
  /** Launch speed. */
  readonly speed: number;
  readonly arrivalSpeed: number;
  readonly slack: number | null;
  readonly at: number;
}

/** What one repetition asks of whoever has this part. */
export interface PlayerMeasure {
  readonly actor: ActorId;
  readonly touches: number;
  readonly distance: number;
  readonly working: number;
  readonly waiting: number;
}
