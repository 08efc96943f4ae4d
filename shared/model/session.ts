/** A training session: its parts in order, by the names of their drills. */
import type { Quote, SessionNode, SessionStatement, Span, Statement } from '../../grammar/tree.ts';
import { outOfRange } from '../checks/impossible-value.ts';
import { colourFirst, unknownName } from '../checks/unknown-name.ts';
import type { Problem } from '../problem.ts';
import { declarationsOf } from './declarations.ts';
import type { Drill, Id, Located, Sourced } from './drill.ts';
import { countOf, positiveSize } from './expressions.ts';
import { durationOf, headerOf, only, unitsOf } from './header.ts';
import type { FileValues } from './lets.ts';
import type { NameBook } from './names.ts';
import { located } from './places.ts';
import { scopeOf, type Scope } from './scope.ts';
import { spanOf } from './span.ts';
import { workedOut } from './worked-out.ts';

export interface Session extends Pick<Drill, 'age' | 'ageLabel' | 'players' | 'units' | 'ground' | 'theme' | 'notes' | 'questions' | 'safety'> {
  readonly id: Id;
  readonly name: string;
  readonly span: Span;
  readonly nameSpan: Span;
  /** Seconds. */
  readonly length: Sourced<number> | null;
  /** Metres. */
  readonly pitch: { readonly width: number; readonly length: number; readonly span: Span } | null;
  readonly kit: readonly { readonly count: number; readonly what: KitKind; readonly colour: string | null; readonly span: Span }[];
  /** How many carry; one unless the text says otherwise. */
  readonly hands: Sourced<number>;
  /** Who cannot take part; in no part named means in all. */
  readonly without: readonly { readonly count: number; readonly reason: string; readonly parts: readonly string[]; readonly span: Span }[];
  readonly joins: readonly { readonly count: number; readonly keeper: boolean; readonly part: string; readonly span: Span }[];
  /** In order of time. */
  readonly parts: readonly (Part | Pause)[];
}

export interface Part {
  readonly kind: 'part';
  readonly name: string;
  /** Seconds. */
  readonly length: number;
  readonly lengthSpan: Span;
  /** How many do the same side by side. */
  readonly groups: number;
  /** How large each of them is; null: worked out. */
  readonly sizes: readonly number[] | null;
  /** The name of a drill of this file or of one it imports; null for a part without one. */
  readonly drill: string | null;
  readonly drillSpan: Span | null;
  /** The progression or regression that is played. */
  readonly change: { readonly name: string; readonly span: Span } | null;
  /** How many have a rest at a time. */
  readonly resting: Sourced<number>;
  /** The bottom left corner of each group on the pitch. */
  readonly at: readonly Located[];
  readonly span: Span;
  readonly nameSpan: Span;
}

export interface Pause {
  readonly kind: 'pause';
  readonly name: string | null;
  /** Seconds. */
  readonly length: number;
  readonly span: Span;
}

export const kitKinds = ['cone', 'disc', 'pole', 'mannequin', 'goal', 'minigoal', 'hurdle', 'ladder', 'ball', 'bib'] as const;
export type KitKind = (typeof kitKinds)[number];

/** Every drill a part can name, with the names of its progressions and regressions. */
export type KnownDrills = ReadonlyMap<string, readonly string[]>;

export function sessionOf(
  node: SessionNode,
  id: Id,
  drills: KnownDrills,
  file: FileValues,
  names: NameBook,
  report: (problem: Problem) => void,
): Session {
  const lines = node.body.lines;
  const shared = lines.filter(isShared);
  const declarations = declarationsOf(shared, report);
  const home = `session ${id}`;
  for (const { word, kind } of declarations.byName.values()) names.declare(home, kind, word.text, word);
  const units = unitsOf(shared, report);
  const scope = scopeOf(home, units, declarations, file, names, report);
  workedOut(shared, scope);

  const { age, ageLabel, players, ground, theme, notes, questions, safety } = headerOf(shared, scope);
  const length = only(lines, 'length', scope);
  const seconds = length ? durationOf(length.length, scope, 'The session') : null;
  const pitch = only(lines, 'pitch', scope);
  const size = pitch ? positiveSize(pitch.size, scope, 'the pitch') : null;
  const hands = only(lines, 'hands', scope);
  const carrying = hands ? countOf(hands.count, scope, { what: 'The number of hands', most: 50 }) : null;
  const timed = lines.filter((line) => line.kind === 'part' || line.kind === 'pause');
  const surplus = timed[mostParts];
  if (surplus) report(outOfRange(surplus.span, 'The number of parts and pauses', timed.length, 0, mostParts));
  const partNames = new Set(lines.flatMap((line) => (line.kind === 'part' ? [line.name.text] : [])));
  return {
    id,
    name: node.name.text,
    span: node.span,
    nameSpan: spanOf(node.name),
    age, ageLabel, players, units, ground, theme, notes, questions, safety,
    length: length && seconds !== null ? { value: seconds, span: length.length.span } : null,
    pitch: pitch && size ? { ...size, span: pitch.size.span } : null,
    kit: lines.flatMap((line) => (line.kind === 'kit' ? kitOf(line, scope) : [])),
    hands: { value: carrying ?? 1, span: hands && carrying !== null ? hands.count.span : null },
    without: lines.flatMap((line) => (line.kind === 'without' ? withoutOf(line, partNames, scope) : [])),
    joins: lines.flatMap((line) => (line.kind === 'joins' ? joinsOf(line, partNames, scope) : [])),
    parts: timed.slice(0, mostParts).flatMap((line): (Part | Pause)[] => {
      if (line.kind === 'part') return partOf(line, drills, names, scope);
      const time = durationOf(line.length, scope, 'The pause');
      return time === null ? [] : [{ kind: 'pause', name: line.name?.text ?? null, length: time, span: line.span }];
    }),
  };
}

const mostGroups = 50;
/** Parts and pauses of one session: more than any evening has, and so few that they are worked out at once. */
const mostParts = 100;

type Line<K extends SessionStatement['kind']> = Extract<SessionStatement, { kind: K }>;

/** A part whose drill cannot be found keeps its time. */
function partOf(line: Line<'part'>, drills: KnownDrills, names: NameBook, scope: Scope): Part[] {
  const { name, of, change, span } = line;
  const length = durationOf(line.length, scope, 'The part');
  const single = line.groups.length === 1;
  const numbers = line.groups.map((group) => countOf(group, scope, single ? { what: 'The number of groups', most: mostGroups } : { what: 'The size of a group' }));
  const groups = numbers.filter((number) => number !== null);
  const at = line.at.map((place) => located(place, scope)).filter((place) => place !== null);
  const resting = line.resting ? countOf(line.resting, scope, { what: 'The number who rest', least: 0 }) : null;
  if (of) names.use(null, 'quote', of.text, of);
  const changes = of ? drills.get(of.text) : undefined;
  if (of && !changes) scope.report(unknownName(of, 'drill', drills.keys()));
  if (of && change) names.use(of.text, 'quote', change.text, change);
  const known = change !== null && changes?.includes(change.text);
  if (change && changes && !known) scope.report(unknownName(change, 'progression or regression', changes));
  const surplus = line.groups[mostGroups];
  if (surplus) scope.report(outOfRange(surplus.span, 'The number of groups', numbers.length, 1, mostGroups));
  if (length === null || surplus || groups.length < numbers.length) return [];
  return [{
    kind: 'part', name: name.text, length, lengthSpan: line.length.span,
    groups: numbers.length > 1 ? numbers.length : groups[0] ?? 1,
    sizes: numbers.length > 1 ? groups : null,
    drill: of && changes ? of.text : null,
    drillSpan: of && spanOf(of),
    change: known ? { name: change.text, span: spanOf(change) } : null,
    resting: { value: resting ?? 0, span: line.resting?.span ?? null },
    at, span, nameSpan: spanOf(name),
  }];
}

function kitOf(line: Line<'kit'>, scope: Scope): Session['kit'] {
  return line.items.flatMap(({ count, what, colour }) => {
    const number = countOf(count, scope, { what: 'The number in the kit', least: 0, most: 1000 });
    const kind = kitKind(what.text);
    if (!kind) scope.report(colour && kitKind(colour.text) ? colourFirst(what, colour) : unknownName(what, 'kit', kitKinds.map((each) => `${each}s`)));
    return number === null || !kind ? [] : [{ count: number, what: kind, colour: colour?.text ?? null, span: spanOf(what) }];
  });
}

function kitKind(text: string): KitKind | undefined {
  return kitKinds.find((each) => text === each || text === `${each}s`);
}

function withoutOf(line: Line<'without'>, parts: ReadonlySet<string>, scope: Scope): Session['without'] {
  const count = countOf(line.count, scope, { what: 'The number who cannot take part' });
  const known = line.parts.filter((part) => isPart(part, parts, scope));
  if (count === null || known.length < line.parts.length) return [];
  return [{ count, reason: line.reason.text, parts: known.map((part) => part.text), span: line.span }];
}

function joinsOf(line: Line<'joins'>, parts: ReadonlySet<string>, scope: Scope): Session['joins'] {
  const count = countOf(line.count, scope, { what: 'The number who join' });
  if (!isPart(line.part, parts, scope) || count === null) return [];
  return [{ count, keeper: line.keeper, part: line.part.text, span: line.span }];
}

function isPart(quote: Quote, parts: ReadonlySet<string>, scope: Scope): boolean {
  if (parts.has(quote.text)) return true;
  scope.report(unknownName(quote, 'part', parts));
  return false;
}

/** What sessions and drills have in common. */
function isShared(line: SessionStatement): line is SessionStatement & Statement {
  return !own.has(line.kind);
}

const own: ReadonlySet<SessionStatement['kind']> = new Set<SessionStatement['kind']>(['length', 'pitch', 'kit', 'hands', 'without', 'joins', 'part', 'pause']);
