/**
 * The syntax tree: what the text says, word for word, before anything is looked up.
 * Plain readonly data that survives JSON. Offsets are UTF-16, half open.
 * The tree keeps what the printed form needs (comments, blank lines, units as written) and nothing else.
 */

export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A word of the text with its place: a name, or a value from a closed list. */
export interface Word extends Span {
  readonly text: string;
}

/** A string in double quotes; `text` is what stands between them, `from` and `to` include the quotes. */
export interface Quote extends Span {
  readonly text: string;
}

/** A comment; `text` is what follows the two slashes, trimmed. */
export interface Comment extends Span {
  readonly text: string;
}

/** What stands around a statement and is kept by the printer. */
export interface Margin {
  /** Comment lines above. */
  readonly above: readonly Comment[];
  /** The comment at the end of the line. */
  readonly beside: Comment | null;
  /** Whether a blank line comes before (before the comments above, if there are any). */
  readonly gap: boolean;
}

interface Node {
  readonly span: Span;
}

interface Line extends Node {
  readonly margin: Margin;
}

/** Statements in braces. `end` holds the comments between the last statement and the closing brace. */
export interface Block<T> {
  readonly span: Span;
  readonly lines: readonly T[];
  readonly end: readonly Comment[];
}

// ---------------------------------------------------------------- values

export type LengthUnit = 'm' | 'yd' | 'ft' | 'cm';
export type TimeUnit = 's' | 'min';
export type SpeedUnit = 'm/s' | 'km/h';
export type Unit = LengthUnit | TimeUnit | SpeedUnit;

export type Expression =
  | NumberValue
  | (Node & { readonly kind: 'name'; readonly name: Word })
  /** `area.width`, `Box.length` */
  | (Node & { readonly kind: 'measure'; readonly of: Word; readonly side: Word })
  | (Node & { readonly kind: 'group'; readonly inner: Expression })
  | (Node & { readonly kind: 'negative'; readonly of: Expression })
  /** Two or more terms; the first one's sign is always `+`. Flat, so that a long sum is not a deep tree. */
  | (Node & { readonly kind: 'sum'; readonly terms: readonly { readonly sign: '+' | '-'; readonly of: Expression }[] })
  /** Two or more factors; the first one's operator is always `*`. */
  | (Node & { readonly kind: 'product'; readonly factors: readonly { readonly by: '*' | '/'; readonly of: Expression }[] });

export type NumberValue = Node & {
  readonly kind: 'number';
  readonly value: number;
  /** As written (`yards`, `yrds`); the resolver knows which are units. Null: the drill's own unit. */
  readonly unit: Word | null;
};

/** `18 x 24`: wide by long. */
export type Size = Node & { readonly width: Expression; readonly length: Expression };

export const anchors = [
  'centre', 'top', 'bottom', 'left', 'right', 'topLeft', 'topRight', 'bottomLeft', 'bottomRight',
] as const;
export type Anchor = (typeof anchors)[number];

export type Beside = 'left of' | 'right of' | 'above' | 'below';
export type Across = 'width' | 'length';

export type Place =
  | (Node & { readonly kind: 'at'; readonly x: Expression; readonly y: Expression })
  /** A station, a player, a piece of furniture, a zone (its centre), `coach`, or `next Base` */
  | (Node & { readonly kind: 'name'; readonly name: Word; readonly next: boolean })
  /** `area.topRight`, `Box.centre`; `anchor` is as written, the resolver checks it. */
  | (Node & { readonly kind: 'anchor'; readonly of: Word; readonly anchor: Word })
  | (Node & { readonly kind: 'offset'; readonly from: Place; readonly dx: Expression; readonly dy: Expression })
  | (Node & { readonly kind: 'beside'; readonly distance: Expression; readonly side: Beside; readonly of: Place })
  | (Node & { readonly kind: 'between'; readonly a: Place; readonly b: Place })
  | (Node & { readonly kind: 'along'; readonly fraction: Expression; readonly start: Place; readonly end: Place })
  | (Node & { readonly kind: 'mirror'; readonly of: Place; readonly across: Across });

/** `facing up`, `facing Top`: up is the way y grows. */
export type Facing = Node &
  ({ readonly kind: 'way'; readonly way: 'up' | 'down' | 'left' | 'right' } | { readonly kind: 'towards'; readonly at: Place });

// ---------------------------------------------------------------- files

export interface File {
  readonly kind: 'file';
  readonly span: Span;
  readonly items: readonly TopLevel[];
  readonly end: readonly Comment[];
}

export type TopLevel = Import | Let | DrillNode | SessionNode;

export type Import = Line & { readonly kind: 'import'; readonly path: Quote };
export type Let = Line & { readonly kind: 'let'; readonly name: Word; readonly value: Expression };
export type DrillNode = Line & { readonly kind: 'drill'; readonly name: Quote; readonly body: Block<Statement> };
export type SessionNode = Line & { readonly kind: 'session'; readonly name: Quote; readonly body: Block<SessionStatement> };

// ---------------------------------------------------------------- statements of a drill

export type Statement =
  | Header | Space | Furniture | People | Let | Play | Rotate | Rule | Bouts | Coaching | Change;
export type StatementKind = Statement['kind'];

export type Header =
  /** `U13` or `adult`, as written. */
  | (Line & { readonly kind: 'age'; readonly value: Word })
  | (Line & { readonly kind: 'players'; readonly count: Expression })
  | (Line & { readonly kind: 'units'; readonly value: Word })
  /** walk, steady or match, as written. */
  | (Line & { readonly kind: 'tempo'; readonly value: Word })
  /** Overrides the speed a pass arrives with, or the top speed of a run: `pace pass 5 m/s`, `pace run 6 m/s`. */
  | (Line & { readonly kind: 'pace'; readonly of: 'pass' | 'run'; readonly speed: Expression })
  | (Line & { readonly kind: 'theme'; readonly text: Quote })
  | (Line & { readonly kind: 'time'; readonly length: Expression })
  /** grass, turf or indoor, as written; `roll` overrides how far the ball of the turf test rolls: `ground grass roll 6`. */
  | (Line & { readonly kind: 'ground'; readonly value: Word; readonly roll: Expression | null })
  | (Line & { readonly kind: 'level'; readonly text: Quote })
  | (Line & { readonly kind: 'tags'; readonly tags: readonly (Word | Quote)[] })
  | (Line & { readonly kind: 'note'; readonly text: Quote });

export type Space =
  | (Line & { readonly kind: 'area'; readonly size: Size; readonly marked: Expression | null })
  | (Line & { readonly kind: 'zone'; readonly name: Word; readonly shape: ZoneShape })
  | (Line & { readonly kind: 'split'; readonly of: Word; readonly by: Across; readonly into: readonly { readonly name: Word; readonly size: Expression }[] })
  /** `zones Box 4 x 4 in corners of area` */
  | (Line & { readonly kind: 'zones'; readonly name: Word; readonly size: Size; readonly of: Word });

export type ZoneShape = Node &
  (
    | { readonly kind: 'box'; readonly size: Size; readonly at: Place }
    | { readonly kind: 'tucked'; readonly size: Size; readonly of: Word; readonly anchor: Word }
    | { readonly kind: 'corners'; readonly a: Place; readonly b: Place }
    | { readonly kind: 'circle'; readonly radius: Expression; readonly at: Place }
    | { readonly kind: 'polygon'; readonly points: readonly Place[] }
  );

export const markerKinds = ['cone', 'disc', 'pole', 'mannequin'] as const;
export type MarkerKind = (typeof markerKinds)[number];

export type Furniture =
  | (Line & { readonly kind: MarkerKind; readonly name: Word | null; readonly at: Place })
  | (Line & { readonly kind: 'gate'; readonly name: Word | null; readonly at: Place; readonly width: Expression; readonly facing: Facing | null })
  | (Line & { readonly kind: 'goal'; readonly name: Word | null; readonly size: Size; readonly at: Place; readonly facing: Facing | null })
  | (Line & { readonly kind: 'minigoal'; readonly name: Word | null; readonly at: Place; readonly facing: Facing | null })
  | (Line & { readonly kind: 'hurdle'; readonly name: Word | null; readonly at: Place; readonly facing: Facing | null })
  | (Line & { readonly kind: 'ladder'; readonly name: Word | null; readonly at: Place; readonly length: Expression | null; readonly facing: Facing | null })
  | (Line & { readonly kind: 'ball'; readonly at: Place })
  | (Line & { readonly kind: 'balls'; readonly count: Expression; readonly at: Place })
  | (Line & { readonly kind: 'coach'; readonly at: Place });

export type People =
  | (Line & { readonly kind: 'station'; readonly name: Word; readonly at: Place; readonly holds: Expression | null; readonly of: Word | null })
  | (Line & { readonly kind: 'team'; readonly name: Word; readonly bib: Word | Quote | null; readonly of: Expression | null })
  | (Line & { readonly kind: 'floaters'; readonly name: Word; readonly bib: Word | Quote | null; readonly of: Expression | null })
  | (Line & { readonly kind: 'player'; readonly name: Word; readonly of: Word; readonly at: Place })
  | (Line & { readonly kind: 'keeper'; readonly name: Word; readonly of: Word; readonly at: Place })
  | (Line & { readonly kind: 'place'; readonly count: Expression; readonly of: Word; readonly zone: Word });

// ---------------------------------------------------------------- play

export type Play =
  | (Line & { readonly kind: 'sequence'; readonly name: Quote | null; readonly body: Block<Beat> })
  | (Line & { readonly kind: 'mirrored'; readonly name: Quote; readonly of: Quote; readonly across: Across })
  | (Line & { readonly kind: 'phase'; readonly name: Quote; readonly after: Quote | null; readonly body: Block<Beat> })
  /** Sequences and phases by name; those joined by `and` run at the same time, those split by commas one after the other. */
  | (Line & { readonly kind: 'order'; readonly steps: readonly (readonly (Quote | Word)[])[] });

/** One line of a sequence: the lead's actions, then those that start with it. */
export type Beat = Line & {
  readonly kind: 'beat';
  readonly lead: Part;
  readonly meanwhile: readonly Part[];
};

/** What one player does in a beat: a chain joined by `then`. */
export type Part = Node & {
  readonly subject: Subject;
  readonly chain: readonly Action[];
};

export type Subject = Node & { readonly name: Word; readonly next: boolean };

export type Action = Node & {
  readonly verb: Verb;
  readonly verbSpan: Span;
  /** Where to, at whom, around what: null for verbs that take none. Of `spins around X to P` this is P. */
  readonly target: Place | null;
  /** `spins around X`, `around X`, `overlaps X`, `underlaps X`, `presses X`, `marks X`, `wins the ball from X`. */
  readonly about: Subject | null;
  /** `passes into P for WHO` */
  readonly receiver: Subject | null;
  readonly modifiers: readonly Modifier[];
};

export type Verb = BallVerb | RunVerb;
export const ballVerbs = [
  'passes to', 'passes into', 'sets to', 'touches to', 'dribbles to', 'crosses to', 'shoots at', 'turns',
] as const;
export type BallVerb = (typeof ballVerbs)[number];
export const runVerbs = [
  'runs to', 'shows to', 'drops to', 'spins around', 'follows', 'overlaps', 'underlaps', 'presses', 'marks',
  'wins the ball from', 'holds', 'waits',
] as const;
export type RunVerb = (typeof runVerbs)[number];

export type Modifier = Node &
  (
    | { readonly kind: 'first time' | 'soft' | 'firm' | 'driven' | 'lofted' | 'in stride' }
    | { readonly kind: 'touches'; readonly count: Expression }
    | { readonly kind: 'via'; readonly at: Place }
    | { readonly kind: 'around'; readonly about: Subject }
    | { readonly kind: 'gait'; readonly gait: Gait }
    /** `after 0.5 s` */
    | { readonly kind: 'after'; readonly delay: Expression }
    /** The length of `waits 1 s`. */
    | { readonly kind: 'for'; readonly length: Expression }
  );

export const gaits = ['walk', 'jog', 'run', 'sprint'] as const;
export type Gait = (typeof gaits)[number];

/** `rotate A -> B -> A, C -> D -> C`, or `rotate follow` (then `chains` is empty). */
export type Rotate = Line & { readonly kind: 'rotate'; readonly follow: boolean; readonly chains: readonly (readonly Word[])[] };

// ---------------------------------------------------------------- rules, time, coaching, change

/** A team, `floaters`, `attackers` or `defenders`. */
export type Who = Word;

export type Rule = Line &
  (
    | { readonly kind: 'rule'; readonly rule: 'touches'; readonly count: Expression; readonly who: Who | null; readonly zone: Word | null }
    /** `rule ZONE at most 2 WHO`; for `no` the count is null. */
    | { readonly kind: 'rule'; readonly rule: 'at most' | 'at least' | 'exactly' | 'no'; readonly zone: Word; readonly count: Expression | null; readonly who: Who }
    | { readonly kind: 'rule'; readonly rule: 'text'; readonly text: Quote }
    | { readonly kind: 'expect'; readonly ours: Expression; readonly theirs: Expression; readonly zone: Word }
    | { readonly kind: 'score'; readonly points: Expression; readonly for: Scoring }
  );

export type Scoring = Node &
  (
    | { readonly kind: 'passes'; readonly count: Expression }
    | { readonly kind: 'pass'; readonly from: Word | null; readonly into: Word }
    | { readonly kind: 'goal'; readonly goal: Word }
  );

export type Bouts = Line & { readonly kind: 'bouts'; readonly count: Expression; readonly length: Expression; readonly rest: Expression | null };

export const corners = ['technical', 'psychological', 'physical', 'social'] as const;
export type Corner = (typeof corners)[number];
export const levers = ['space', 'task', 'equipment', 'people'] as const;
export type Lever = (typeof levers)[number];

export type Coaching =
  | (Line & { readonly kind: 'point'; readonly corner: Corner; readonly text: Quote })
  | (Line & { readonly kind: 'question'; readonly text: Quote })
  | (Line & { readonly kind: 'safety'; readonly text: Quote });

/** `progress task "…" { … }`: the statements that differ from the drill around it. */
export type Change = Line & {
  readonly kind: 'progress' | 'regress';
  readonly lever: Lever;
  readonly name: Quote;
  readonly body: Block<Statement>;
};

// ---------------------------------------------------------------- sessions

export type SessionStatement =
  | Let
  | Extract<Header, { kind: 'age' | 'players' | 'units' | 'theme' | 'note' | 'ground' }>
  | (Line & { readonly kind: 'length'; readonly length: Expression })
  | (Line & { readonly kind: 'pitch'; readonly size: Size })
  /** `kit 20 cones, 4 poles, 8 balls, 7 bibs red` */
  | (Line & { readonly kind: 'kit'; readonly items: readonly { readonly count: Expression; readonly what: Word; readonly colour: Word | null }[] })
  | (Line & { readonly kind: 'hands'; readonly count: Expression })
  /** `without 1 "sore ankle" for "Game"`: no part is every part. */
  | (Line & { readonly kind: 'without'; readonly count: Expression; readonly reason: Quote; readonly parts: readonly Quote[] })
  /** `joins 1 keeper for "Game"` */
  | (Line & { readonly kind: 'joins'; readonly count: Expression; readonly keeper: boolean; readonly part: Quote })
  /** `groups 2` is how many, `groups 8, 7` how large. */
  | (Line & {
      readonly kind: 'part'; readonly name: Quote; readonly length: Expression; readonly groups: readonly Expression[];
      readonly of: Quote | null; readonly change: Quote | null; readonly resting: Expression | null; readonly at: readonly Place[];
    })
  | (Line & { readonly kind: 'pause'; readonly length: Expression; readonly name: Quote | null })
  | Extract<Coaching, { kind: 'question' | 'safety' }>;
