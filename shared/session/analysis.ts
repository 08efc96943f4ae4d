/**
 * A session worked out: who plays what when and where, what lies on the ground for it, what changes between the parts, and
 * what the evening comes to. Metres and seconds; places are on the session's pitch, (0, 0) its bottom left corner.
 * Readonly data that survives JSON. Spans of the session and its parts are places in this file; a drill of another file (see
 * {@link PartSlot.file}) keeps the spans of that one, which must never be shown as places in this one.
 */
import type { DrillAnalysis } from '../analyse.ts';
import type { Corner } from '../../grammar/tree.ts';
import type { Point } from '../geometry/point.ts';
import type { KitKind, Part, Pause, Session } from '../model/session.ts';

export interface SessionAnalysis {
  readonly session: Session;
  /** Everyone, in order of their numbers 1, 2, 3 …; empty where the session does not say how many come. */
  readonly register: readonly Registered[];
  /** Parts and pauses in order of time. */
  readonly timetable: readonly Slot[];
  /** Before the first part (setting out), between parts that follow each other, after the last (clearing away). Parts without a drill lay nothing. */
  readonly changeovers: readonly Changeover[];
  /** All that is needed at once at the busiest time, against what the club has. */
  readonly kit: readonly KitLine[];
  readonly figures: Figures;
  /** Where the groups could stand so that the changeovers are shortest; null where the session as written is as good. */
  readonly proposal: Proposal | null;
}

/**
 * One line of the register. Those who play from the beginning come first, then those who cannot take part fully, then those who
 * join later, each in the order of their statements: a list of names follows that order.
 */
export interface Registered {
  readonly number: number;
  /** A goalkeeper, as far as the session says. */
  readonly keeper: boolean;
  /** The name of the part they join with; null from the beginning. */
  readonly joins: string | null;
  /** Why they cannot take part, and the parts it holds for (empty: all). */
  readonly aside: { readonly reason: string; readonly parts: readonly string[] } | null;
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
  /** The drill, or its progression where the part names one. Null for a part without a drill, or one whose drill could not be read. */
  readonly drill: DrillAnalysis | null;
  /** The file the drill comes from, relative to the workspace; null for this one. */
  readonly file: string | null;
  /** Of a part without a drill, one group of everyone who is there, without a place. */
  readonly groups: readonly Group[];
  /** Numbers on the register of those who have no place in a group. */
  readonly resting: readonly number[];
  /** Of those who are there and cannot take part. */
  readonly aside: readonly number[];
  /** Of those who have not joined yet. */
  readonly away: readonly number[];
  readonly setUp: SetUp;
}

export interface Group {
  /** From 1. */
  readonly number: number;
  /** Numbers on the register, from 1; the same people as long as the sizes allow. */
  readonly members: readonly number[];
  /** Of the members, those who are goalkeepers. */
  readonly keepers: readonly number[];
  /** Origin of the drill's own coordinates on the pitch, the bottom left corner of its area; null only without a drill. */
  readonly at: Point | null;
  /** Nobody wrote the place: groups stand in rows from the bottom left corner of the pitch. */
  readonly assumed: boolean;
}

export interface SetUp {
  /** All that stands on the ground; what two groups share is there once. A gate is two cones. */
  readonly things: readonly Thing[];
  /** Of one group, in the order a coach would lay them; the groups are alike. */
  readonly tapes: readonly Tape[];
  /** Of all groups together. */
  readonly bibs: readonly { readonly colour: string; readonly count: number }[];
  readonly balls: number;
}

export interface Thing {
  readonly kind: Exclude<KitKind, 'ball' | 'bib'>;
  readonly at: Point;
}

/** A distance to measure out. */
export interface Tape {
  /** `width`, `length` and `diagonal` (which squares it) of an area or a zone; `point` for a mark, found where two tapes meet. */
  readonly kind: 'width' | 'length' | 'diagonal' | 'point';
  /** `area`, the name of the zone, or the mark that is found. */
  readonly what: string;
  /** Where the tape of a `point` starts: a corner of the area (`bottom left`), or the first mark where there is no area; null for the others. */
  readonly from: string | null;
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
  /** Metres walked by all hands together, and seconds taken by that many hands. */
  readonly walk: number;
  readonly hands: number;
  readonly seconds: number;
  /** Seconds of the pauses, and of parts without a drill, between the two; null where they follow at once, and at both ends of the session. */
  readonly available: number | null;
}

export interface KitLine {
  readonly kind: KitKind;
  /** Of bibs; null for everything else. */
  readonly colour: string | null;
  readonly needed: number;
  /** The name of the part that needs the most of it. */
  readonly mostIn: string;
  /** What the session's kit has; null where the session names no kit. */
  readonly has: number | null;
  /** So many are missing: spare cones stand in for discs and discs for cones, bibs without a colour for any. */
  readonly short: number;
}

export interface Figures {
  /** Minutes. Parts without a drill are `other`; a drill with two teams is a game. */
  readonly minutes: { readonly practice: number; readonly game: number; readonly pause: number; readonly other: number };
  /** Of the parts with a drill, in order. */
  readonly perPart: readonly PartFigures[];
  /** How many coaching points each corner has over the evening, each counted once a part. */
  readonly corners: Readonly<Record<Corner, number>>;
}

export interface PartFigures {
  /** Index into the timetable, and the name. */
  readonly slot: number;
  readonly part: string;
  /** Seconds a player works and rests in the part: by the drill's bouts, else by its repetition; null where neither says. */
  readonly work: number | null;
  readonly rest: number | null;
  /** Of the average player in the whole part; null where no sequence says. */
  readonly touches: number | null;
  readonly metres: number | null;
  /** Seconds with the ball at their feet, of the average player. */
  readonly withBall: number | null;
  /** Square metres a player, goalkeepers counted; null without an area. */
  readonly space: number | null;
  readonly tempo: string;
  /** A published bout design like this one, in words with its source; null where none is near. */
  readonly like: { readonly text: string; readonly source: string } | null;
}

export interface Proposal {
  /** Where each group of each part would stand, in order of the timetable's parts; empty for a part without a drill. */
  readonly at: readonly (readonly Point[])[];
  /** Seconds of all changeovers between the parts, as written and as proposed. */
  readonly written: number;
  readonly proposed: number;
}
