/**
 * Where everyone and every ball is at any time of one repetition, in closed form.
 * Seconds from the start of the repetition, metres. Readonly, JSON-able.
 */
import type { Span } from '../../grammar/tree.ts';
import type { Path } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Action, ActorId, Id } from '../model/drill.ts';
import type { Flight } from '../physics/ball.ts';
import type { Run } from '../physics/runner.ts';

export interface Timeline {
  /** When the last lead is over: the length of one repetition. */
  readonly duration: number;
  /** When the last movement is over; at least `duration`. */
  readonly end: number;
  readonly beats: readonly TimedBeat[];
  readonly tracks: readonly Track[];
  readonly balls: readonly BallTrack[];
  readonly passes: readonly Pass[];
  /** What could not be played as written; the checks put words to it. */
  readonly faults: readonly Fault[];
}

export interface TimedBeat {
  readonly sequence: Id;
  readonly index: number;
  /** 1, 2, 3 … over the whole repetition, in order of `start`. */
  readonly number: number;
  readonly span: Span;
  readonly start: number;
  readonly end: number;
}

/** One person's repetition: moves in order of time; between them they stand where the last one ended. */
export interface Track {
  readonly actor: ActorId;
  readonly home: Point;
  readonly moves: readonly Move[];
  /** When they touch the ball. */
  readonly touches: readonly Touch[];
  /** The way to their place for the next repetition, after their part is over; null for who stays. */
  readonly walk: Walk | null;
}

export interface Walk {
  readonly start: number;
  readonly end: number;
  readonly path: Path;
  readonly run: Run;
}

export interface Move {
  readonly kind: 'run' | 'dribble';
  readonly beat: number;
  readonly action: Action;
  /** When they were asked to go. */
  readonly asked: number;
  /** When they set off, after reaction and delay. */
  readonly start: number;
  readonly end: number;
  readonly path: Path;
  readonly run: Run;
}

export interface Touch {
  readonly beat: number;
  readonly action: Action;
  /** From having the ball to having played it. */
  readonly start: number;
  readonly end: number;
  readonly count: number;
}

/** One ball's repetition: stretches in order of time without gaps between `start` of the first and `end` of the last. */
export interface BallTrack {
  readonly id: Id;
  readonly home: Point;
  readonly stretches: readonly Stretch[];
}

export type Stretch =
  /** Lies still. */
  | { readonly kind: 'still'; readonly start: number; readonly end: number; readonly at: Point; readonly holder: ActorId | null }
  /** At the feet of a runner: moves as they do. */
  | { readonly kind: 'carried'; readonly start: number; readonly end: number; readonly move: Move; readonly holder: ActorId }
  /** Rolls or flies. */
  | { readonly kind: 'flight'; readonly start: number; readonly end: number; readonly pass: number; readonly from: Point; readonly to: Point; readonly flight: Flight };

/** Seconds late from which it is worth a word; up to it a receiver is on time. */
export const lateFrom = 0.2;

export interface Pass {
  /** Index in `Timeline.passes`. */
  readonly index: number;
  readonly ball: Id;
  /** Number of the beat. */
  readonly beat: number;
  readonly sequence: Id;
  readonly action: Action;
  readonly kind: 'pass' | 'set' | 'cross' | 'shot';
  readonly from: ActorId;
  readonly fromAt: Point;
  /** Null for a shot, or when nobody is there. */
  readonly to: ActorId | null;
  readonly toAt: Point;
  readonly start: number;
  readonly arrival: number;
  readonly flight: Flight;
  /** How long before the ball the receiver is ready; negative: late. Null without a receiver. */
  readonly slack: number | null;
  /** When the receiver has it under their foot: the arrival, or later when they are late. */
  readonly received: number;
  /** The receiver's move that decides the slack, or null when they stood ready from the start. */
  readonly receiverMove: Move | null;
}

export type Fault =
  | { readonly kind: 'no-ball'; readonly action: Action; readonly actor: ActorId; readonly beat: number; readonly holder: ActorId | null }
  | { readonly kind: 'pass-to-self'; readonly action: Action; readonly actor: ActorId; readonly beat: number }
  | { readonly kind: 'nobody-there'; readonly action: Action; readonly actor: ActorId; readonly beat: number; readonly nearest: { readonly actor: ActorId; readonly distance: number } | null }
  /** Played to `next X` while nobody waits there. */
  | { readonly kind: 'next-not-ready'; readonly action: Action; readonly actor: ActorId; readonly beat: number; readonly station: Id }
  | { readonly kind: 'ball-dies'; readonly action: Action; readonly actor: ActorId; readonly beat: number; readonly stopsAfter: number; readonly length: number }
  | { readonly kind: 'still-running'; readonly action: Action; readonly actor: ActorId; readonly beat: number; readonly by: number; readonly during: Move };
