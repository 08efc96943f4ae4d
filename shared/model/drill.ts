/**
 * A drill as meant: every name looked up, every place worked out, in metres and seconds.
 * Readonly, JSON-able; everything carries the span it came from and a stable id (its name where it has one).
 */
import type { Across, Corner, Gait, Lever, MarkerKind, Span, Verb } from '../../grammar/tree.ts';
import type { Point } from '../geometry/point.ts';

export type Id = string;

/** A value with the text it came from; `span` is null for a default that nobody wrote. */
export interface Sourced<T> {
  readonly value: T;
  readonly span: Span | null;
}

/** A place with the text it came from. */
export interface Located extends Point {
  readonly span: Span;
}

export const tempos = ['walk', 'steady', 'match'] as const;
export type Tempo = (typeof tempos)[number];
export const grounds = ['grass', 'turf', 'indoor'] as const;
export type Ground = (typeof grounds)[number];

export interface Drill {
  readonly id: Id;
  readonly name: string;
  readonly span: Span;
  /** The name in the text, where problems of the drill as a whole are shown. */
  readonly nameSpan: Span;

  /** Years: 13 for U13, 19 and over for adults. Null span: not written, adults assumed. */
  readonly age: Sourced<number>;
  /** As written (`U13`, `adult`); null when not written. */
  readonly ageLabel: string | null;
  readonly players: Sourced<number> | null;
  readonly units: 'm' | 'yd' | 'ft' | 'cm';
  readonly tempo: Sourced<Tempo>;
  readonly ground: Sourced<Ground>;
  /** Distance that the ball of the turf test rolls, in metres, when the drill overrides the ground's own. */
  readonly roll: Sourced<number> | null;
  /** Speed a pass arrives with, metres a second, when the drill overrides the tempo's own. */
  readonly passPace: Sourced<number> | null;
  /** Top running speed, metres a second, when the drill overrides that of age and tempo. */
  readonly runPace: Sourced<number> | null;
  readonly theme: string | null;
  /** Seconds. */
  readonly time: Sourced<number> | null;
  readonly level: string | null;
  readonly tags: readonly string[];
  readonly notes: readonly string[];

  readonly area: Area | null;
  readonly zones: readonly Zone[];
  readonly splits: readonly Split[];
  readonly furniture: readonly Furniture[];
  readonly balls: readonly BallSupply[];
  readonly stations: readonly Station[];
  readonly teams: readonly Team[];
  /** Everyone who can be asked to act: see {@link Actor}. */
  readonly actors: readonly Actor[];

  readonly sequences: readonly Sequence[];
  /** Sequence ids: groups run one after the other, those in a group at the same time. */
  readonly order: readonly (readonly Id[])[];
  readonly rotation: WrittenRotation;
  readonly touchRules: readonly TouchRule[];
  readonly rules: readonly Rule[];
  readonly bouts: { readonly count: number; readonly length: number; readonly rest: number; readonly span: Span } | null;
  readonly points: readonly { readonly corner: Corner; readonly text: string; readonly span: Span }[];
  readonly questions: readonly string[];
  readonly safety: readonly string[];
  readonly lets: readonly { readonly name: string; readonly value: number; readonly span: Span; readonly valueSpan: Span }[];
  /** Progressions and regressions, each resolved like the drill itself. */
  readonly changes: readonly ChangedDrill[];
}

export interface ChangedDrill {
  readonly id: Id;
  readonly kind: 'progress' | 'regress';
  readonly lever: Lever;
  readonly name: string;
  readonly span: Span;
  readonly nameSpan: Span;
  /** The drill with the changes made; its own `changes` is empty. */
  readonly drill: Drill;
}

export interface Area {
  readonly width: number;
  readonly length: number;
  /** Distance between markers along the sides, or null. */
  readonly marked: number | null;
  readonly span: Span;
}

export interface Zone {
  readonly id: Id;
  readonly name: string;
  readonly span: Span;
  readonly nameSpan: Span;
  readonly shape:
    | { readonly kind: 'polygon'; readonly points: readonly Point[] }
    | { readonly kind: 'circle'; readonly centre: Point; readonly radius: number };
  /** The name this zone shares with its siblings (`Box` for `BoxTopLeft`), or the split it belongs to. */
  readonly group: string | null;
  /** Part of a split: siblings touch without overlapping. */
  readonly split: boolean;
}

/** What a `split` says, kept for the check that its strips add up. */
export interface Split {
  readonly of: string;
  readonly by: Across;
  /** Metres. */
  readonly side: number;
  readonly strips: readonly { readonly name: string; readonly size: number; readonly span: Span }[];
  readonly span: Span;
}

export type FurnitureKind = MarkerKind | 'gate' | 'goal' | 'minigoal' | 'hurdle' | 'ladder' | 'coach';

export interface Furniture {
  readonly id: Id;
  readonly kind: FurnitureKind;
  readonly name: string | null;
  readonly at: Located;
  /** Metres across: the gate between its markers, the goal between its posts, the ladder along. Null for points. */
  readonly width: number | null;
  /** Height of a goal in metres; null for everything else. */
  readonly height: number | null;
  /** Unit vector; null for things without a front. */
  readonly facing: Point | null;
  readonly span: Span;
}

export interface BallSupply {
  readonly at: Located;
  readonly count: number;
  /** The actor who starts with it: the first at the station named in `at`, or the actor standing within 1.5 m. */
  readonly holder: ActorId | null;
  readonly span: Span;
}

export interface Station {
  readonly id: Id;
  readonly name: string;
  readonly at: Located;
  /** How many stand here at the start. */
  readonly holds: number;
  readonly team: Id | null;
  readonly span: Span;
  readonly nameSpan: Span;
}

export interface Team {
  readonly id: Id;
  readonly name: string;
  readonly kind: 'team' | 'floaters';
  /** A colour word or #rrggbb, as written; null when none. */
  readonly bib: string | null;
  readonly size: number;
  readonly span: Span;
  readonly nameSpan: Span;
}

export type ActorId = string;

/**
 * Someone a beat can name. `Base` is who started this repetition at the station, `next Base` is who waits there next;
 * in games the players themselves; and the coach.
 */
export interface Actor {
  readonly id: ActorId;
  readonly kind: 'first' | 'next' | 'player' | 'keeper' | 'coach';
  /** The station's or the player's name. */
  readonly name: string;
  readonly station: Id | null;
  readonly team: Id | null;
  /** Where they stand when a repetition starts. */
  readonly home: Point;
  readonly span: Span;
}

export interface Sequence {
  readonly id: Id;
  readonly kind: 'sequence' | 'phase';
  readonly name: string | null;
  readonly span: Span;
  /** The name or the keyword: where problems of the sequence as a whole are shown. */
  readonly nameSpan: Span;
  readonly mirrorOf: Id | null;
  /** The phase where this one starts from its end; null: from where the drill starts. */
  readonly after: Id | null;
  readonly beats: readonly Beat[];
}

export interface Beat {
  readonly index: number;
  readonly span: Span;
  readonly lead: Part;
  readonly meanwhile: readonly Part[];
}

export interface Part {
  readonly actor: ActorId;
  readonly subjectSpan: Span;
  readonly span: Span;
  readonly chain: readonly Action[];
}

export interface Action {
  readonly verb: Verb;
  readonly span: Span;
  readonly verbSpan: Span;
  /** Where the text sends it; null where the verb has no target, or the target is a person (then `to`). */
  readonly at: Located | null;
  /** The person played to, or whose station is run to. */
  readonly to: ActorId | null;
  /** The station named as the target, if one was. */
  readonly station: Id | null;
  /** The goal, gate or zone named as the target. */
  readonly thing: Id | null;
  readonly targetSpan: Span | null;
  /** What is gone around, pressed, marked, overlapped: a place, and the person or thing there. */
  readonly about: { readonly at: Point; readonly who: ActorId | null; readonly thing: Id | null; readonly span: Span } | null;
  readonly receiver: ActorId | null;
  readonly receiverSpan: Span | null;
  readonly firstTime: boolean;
  /** Touches written with `in N touches`; null when not written. */
  readonly touches: number | null;
  readonly touchesSpan: Span | null;
  readonly weight: 'soft' | 'firm' | 'driven' | null;
  readonly lofted: boolean;
  readonly inStride: boolean;
  readonly via: readonly Point[];
  readonly gait: Gait | null;
  /** Seconds to wait before starting. */
  readonly after: number;
  /** Seconds, of `waits`. */
  readonly length: number | null;
}

export type WrittenRotation =
  | { readonly kind: 'arrows'; readonly arrows: readonly { readonly from: Id; readonly to: Id; readonly span: Span }[]; readonly span: Span }
  | { readonly kind: 'follow'; readonly span: Span }
  | { readonly kind: 'read' };

export interface TouchRule {
  readonly most: number;
  /** Team, actor name, `floaters`, `attackers`, `defenders`, or null for everyone. */
  readonly who: string | null;
  readonly zone: Id | null;
  readonly span: Span;
}

/**
 * The other rules of a game, as the sheet and the checks of games need them. Where a zone is named, here and in
 * {@link TouchRule}, it is a zone's id, the name that several share (their `group`), or `area`.
 */
export type Rule =
  | { readonly kind: 'numbers'; readonly zone: Id; readonly bound: 'at most' | 'at least' | 'exactly' | 'no'; readonly count: number; readonly who: string; readonly span: Span }
  | { readonly kind: 'text'; readonly text: string; readonly span: Span }
  | { readonly kind: 'expect'; readonly ours: number; readonly theirs: number; readonly zone: Id; readonly span: Span }
  | { readonly kind: 'score'; readonly points: number; readonly by: 'passes' | 'pass' | 'dribble' | 'win' | 'goal'; readonly count: number | null; readonly from: Id | null; readonly into: Id | null; readonly through: Id | null; readonly team: Id | null; readonly span: Span };
