/**
 * A session worked out: who plays what when and where, what lies on the ground for it, what changes between the parts, and
 * what the evening comes to. Metres and seconds; places are on the session's pitch, (0, 0) its bottom left corner.
 * Readonly data that survives JSON; what comes from another file has no span here.
 */
import type { DrillAnalysis } from '../analyse.ts';
import type { Corner } from '../../grammar/tree.ts';
import type { Point } from '../geometry/point.ts';
import type { KitKind, Part, Pause, Session } from '../model/session.ts';

export interface SessionAnalysis {
  readonly session: Session;
  /** Parts and pauses in order of time. */
  readonly timetable: readonly Slot[];
  /** Before the first part (setting out), between parts that follow each other, after the last (clearing away). */
  readonly changeovers: readonly Changeover[];
  /** All that is needed at once at the busiest time, against what the club has. */
  readonly kit: readonly KitLine[];
  readonly figures: Figures;
  /** Where the groups could stand so that the changeovers are shortest; null where the order as written is as good. */
  readonly proposal: Proposal | null;
}

export type Slot = (PartSlot | PauseSlot) & {
  /** Seconds from the start of the session. */
  readonly start: number;
  readonly end: number;
};

export interface PauseSlot {
  readonly kind: 'pause';
  readonly pause: Pause;
}

export interface PartSlot {
  readonly kind: 'part';
  readonly part: Part;
  /** Null for a part without a drill, or one whose drill could not be read. */
  readonly drill: DrillAnalysis | null;
  /** The file the drill comes from, as imported; null for this one. */
  readonly file: string | null;
  readonly groups: readonly Group[];
  /** Numbers on the register of those who have no place in a group. */
  readonly resting: readonly number[];
  readonly setUp: SetUp;
}

export interface Group {
  /** From 1. */
  readonly number: number;
  /** Numbers on the register, from 1; the same people as long as the sizes allow. */
  readonly members: readonly number[];
  /** Bottom left corner of the drill's area; null where nobody said and there is no pitch. */
  readonly at: Point | null;
}

export interface SetUp {
  /** All that stands on the ground; what two groups share is there once. */
  readonly things: readonly Thing[];
  /** In the order a coach would lay them. */
  readonly tapes: readonly Tape[];
  readonly bibs: readonly { readonly colour: string; readonly count: number }[];
  readonly balls: number;
}

export interface Thing {
  readonly kind: Exclude<KitKind, 'ball' | 'bib'>;
  readonly at: Point;
}

/** A distance to measure out. */
export interface Tape {
  /** `width`, `length` and `diagonal` of an area or a zone; `point` for how a mark is found from a corner. */
  readonly kind: 'width' | 'length' | 'diagonal' | 'point';
  readonly what: string;
  readonly metres: number;
  readonly yards: number;
  /** Whole strides of the coach, about a metre each. */
  readonly strides: number;
}

export interface Changeover {
  /** Indices into the timetable of parts; null before the first and after the last. */
  readonly from: number | null;
  readonly to: number | null;
  readonly stays: readonly Thing[];
  readonly moves: readonly { readonly kind: Thing['kind']; readonly from: Point; readonly to: Point }[];
  readonly comesUp: readonly Thing[];
  readonly goesDown: readonly Thing[];
  /** Metres walked and seconds taken by that many hands. */
  readonly walk: number;
  readonly hands: number;
  readonly seconds: number;
  /** The pause between the parts; null where nothing is written, and at both ends of the session. */
  readonly available: number | null;
}

export interface KitLine {
  readonly kind: KitKind;
  readonly colour: string | null;
  readonly needed: number;
  /** The part that needs the most of it. */
  readonly mostIn: string;
  /** What the session's kit has; null where the session names no kit. */
  readonly has: number | null;
}

export interface Figures {
  readonly minutes: { readonly practice: number; readonly game: number; readonly pause: number; readonly other: number };
  readonly perPart: readonly PartFigures[];
  /** How many coaching points each corner has over the evening, each counted once a part. */
  readonly corners: Readonly<Record<Corner, number>>;
}

export interface PartFigures {
  readonly part: string;
  /** Seconds a player works and rests in the part, bouts counted. */
  readonly work: number;
  readonly rest: number;
  /** Of the average player in the whole part; null where no sequence says. */
  readonly touches: number | null;
  readonly metres: number | null;
  /** Seconds with the ball at their feet, of the average player. */
  readonly withBall: number | null;
  /** Square metres a player; null without an area. */
  readonly space: number | null;
  readonly tempo: string;
  /** A published bout design like this one, in words with its source; null where none is near. */
  readonly like: { readonly text: string; readonly source: string } | null;
}

export interface Proposal {
  /** Where each group of each part would stand, in order of the timetable's parts. */
  readonly at: readonly (readonly Point[])[];
  /** Seconds of all changeovers, as written and as proposed. */
  readonly written: number;
  readonly proposed: number;
}
