/** Which thing of the one version is which of the other, whatever it is called and wherever it stands in the text. */
import { distance } from '../geometry/point.ts';
import { aligned, alike, best, type Features, featuresOf, type IndexPair } from './alike.ts';
import { type ThingKind, thingKinds } from './comparison.ts';
import type { Thing } from './thing.ts';

export interface Pair {
  /** Null: not there. One of the two always is. */
  readonly before: Thing | null;
  readonly after: Thing | null;
  /** Of beats: what was before it is behind it now, or in another sequence. */
  readonly outOfOrder: boolean;
}

/** Names of the one version as the other has them. */
export type Renames = ReadonlyMap<string, string>;

/** Everything of both, once. Total. */
export function pairsOf(before: readonly Thing[], after: readonly Thing[]): { readonly pairs: readonly Pair[]; readonly renames: Renames } {
  const pairs: Pair[] = [];
  const renames = new Map<string, string>();
  const partners = new Map<string, string>();
  for (const kind of order) {
    const [a, b] = [before.filter((each) => each.kind === kind), after.filter((each) => each.kind === kind)];
    const matches = matched(kind, { a, b, renames, partners });
    const [left, right] = [new Map(matches.pairs), new Set(matches.pairs.map(([, column]) => column))];
    for (const [row, one] of a.entries()) {
      const other = b[left.get(row) ?? -1] ?? null;
      pairs.push({ before: one, after: other, outOfOrder: matches.outOfOrder.has(row) });
      if (!other) continue;
      partners.set(`${kind} ${one.id}`, other.id);
      if (called.has(kind) && one.id !== other.id && one.traits[1] !== 'unnamed' && other.traits[1] !== 'unnamed') renames.set(one.id, other.id);
    }
    for (const [column, other] of b.entries()) if (!right.has(column)) pairs.push({ before: null, after: other, outOfOrder: false });
  }
  return { pairs: pairs.sort((a, b) => rank(a) - rank(b)), renames };
}

/** What goes by a name that other lines use. */
export const called: ReadonlySet<ThingKind> = new Set(['let', 'zone', 'furniture', 'team', 'station', 'player', 'sequence']);

/** A text with the names of the other version. */
export function renamed(text: string, renames: Renames): string {
  if (renames.size === 0) return text;
  return renames.get(text) ?? text.replace(/[\p{L}\p{N}_]+/gu, (word) => renames.get(word) ?? word);
}

/** Those first whose pairs others need: names before what mentions them, beats before their passes. */
const early: readonly ThingKind[] = ['let', 'team', 'zone', 'furniture', 'station', 'player', 'sequence', 'beat'];
const order: readonly ThingKind[] = [...early, ...thingKinds.filter((kind) => !early.includes(kind))];

function rank({ before, after }: Pair): number {
  return thingKinds.indexOf((after ?? before)!.kind);
}

interface Matches {
  readonly pairs: readonly IndexPair[];
  /** Rows of the pairs that cross others. */
  readonly outOfOrder: ReadonlySet<number>;
}

/** Things of one kind on both sides, and what is known by then: by `KIND ID` of the one the id of the other. */
interface Sides {
  readonly a: readonly Thing[];
  readonly b: readonly Thing[];
  readonly renames: Renames;
  readonly partners: ReadonlyMap<string, string>;
}

function matched(kind: ThingKind, sides: Sides): Matches {
  return kind === 'beat' ? beatPairs(sides) : { pairs: others(kind, sides), outOfOrder: new Set() };
}

function others(kind: Exclude<ThingKind, 'beat'>, { a, b, renames, partners }: Sides): IndexPair[] {
  const partner = (of: 'beat' | 'sequence', id: string | null | undefined): string => partners.get(`${of} ${id}`) ?? '';
  const newName = (name: string | undefined): string => renamed(name ?? '', renames);
  switch (kind) {
    case 'drill':
    case 'area':
    case 'rotation':
    case 'import':
    case 'kit':
      return same(a, b, ({ id }) => id);
    case 'repetition':
    case 'role':
      return same(a, b, ({ id }) => id, ({ id }) => newName(id));
    case 'let':
      return named(a, b, (one, other) => (one.words === other.words && one.words !== null ? 1 : 0));
    case 'zone':
    case 'station':
    case 'player':
      return named(a, b, standing);
    case 'furniture':
      return thenBest(a, b, same(a, b, standingId), (one, other) => (one.traits[0] === other.traits[0] ? 0.01 + near(one, other) : 0), 0.02);
    case 'balls':
      return thenBest(a, b, same(a, b, standingId), (one, other) => 0.3 + near(one, other) / 2 + (newName(one.traits[0]) === other.traits[0] ? 0.3 : 0), 0.5);
    case 'team':
      return named(a, b, byTraits(a, b, new Map()));
    case 'sequence':
      return named(a, b, byTraits(a, b, renames), 0.4);
    case 'action':
      return same(a, b,
        ({ parent, traits: [actor, , nth] }) => `${parent} ${actor} ${nth}`,
        ({ parent, traits: [actor, , nth] }) => `${partner('beat', parent)} ${newName(actor)} ${nth}`);
    case 'pass':
      return same(a, b,
        ({ parent, traits: [sequence, nth] }) => `${parent} ${sequence} ${nth}`,
        ({ parent, traits: [sequence, nth] }) => `${partner('beat', parent)} ${partner('sequence', sequence)} ${nth}`);
    case 'rule':
    case 'point':
    case 'question':
    case 'safety':
    case 'note': {
      const sure = same(a, b, ({ title }) => title, ({ title }) => renamed(title, renames));
      const numbers = sameOfRest(a, b, sure, ({ id, title }) => (id === 'bouts' ? id : withoutNumbers(title)), ({ id, title }) => (id === 'bouts' ? id : withoutNumbers(renamed(title, renames))));
      return thenBest(a, b, numbers, byTraits(a, b, renames), 0.4);
    }
    case 'part':
    case 'progression':
      return thenBest(a, b, same(a, b, ({ title }) => title, ({ title }) => renamed(title, renames)), byTraits(a, b, renames), 0.4);
    case 'problem': {
      const score = byTraits(a, b, renames);
      const sure = same(a, b, ({ title }) => title, ({ title }) => renamed(title, renames));
      return thenBest(a, b, sure, (one, other) => (one.traits[0] === other.traits[0] ? 0.5 + score(one, other) / 2 : 0), 0.5);
    }
  }
}

type Score = (one: Thing, other: Thing) => number;

/** Those with the same key, in order where several have it. */
function same(a: readonly Thing[], b: readonly Thing[], keyOf: (other: Thing) => string, keyOfBefore = keyOf): IndexPair[] {
  const waiting = new Map<string, number[]>();
  for (const [column, other] of b.entries()) waiting.set(keyOf(other), [...(waiting.get(keyOf(other)) ?? []), column]);
  return a.flatMap((one, row) => {
    const column = waiting.get(keyOfBefore(one))?.shift();
    return column === undefined ? [] : [[row, column] as const];
  });
}

/** With the pairs that are sure, those of the same key among the others. */
function sameOfRest(a: readonly Thing[], b: readonly Thing[], sure: readonly IndexPair[], keyOf: (other: Thing) => string, keyOfBefore: (one: Thing) => string): IndexPair[] {
  const { rows, columns } = unpaired(a, b, sure);
  const more = same(rows.map((row) => a[row]!), columns.map((column) => b[column]!), keyOf, keyOfBefore);
  return [...sure, ...more.map(([row, column]): IndexPair => [rows[row]!, columns[column]!])];
}

/** The same for `at most 1 touch` and `at most 2 touches`. */
function withoutNumbers(text: string): string {
  return text.toLowerCase().replace(/\b(?:(?:at most |at least |exactly )?\d+(?:\.\d+)?|no)\b/g, '#').replace(/(?<=\p{L}{3})(?:(?<=ch|ss)es|s)(?!\p{L})/gu, '');
}

function named(a: readonly Thing[], b: readonly Thing[], score: Score, least = 0.5): IndexPair[] {
  return thenBest(a, b, same(a, b, ({ id }) => id), score, least);
}

/** The pairs that are sure, and of the rest those most alike. */
function thenBest(a: readonly Thing[], b: readonly Thing[], sure: readonly IndexPair[], score: Score, least: number): IndexPair[] {
  const { rows, columns } = unpaired(a, b, sure);
  const more = best(rows.length, columns.length, (row, column) => score(a[rows[row]!]!, b[columns[column]!]!), least);
  return [...sure, ...more.map(([row, column]): IndexPair => [rows[row]!, columns[column]!])];
}

function unpaired(a: readonly Thing[], b: readonly Thing[], pairs: readonly IndexPair[]): { readonly rows: readonly number[]; readonly columns: readonly number[] } {
  const [left, right] = [new Set(pairs.map(([row]) => row)), new Set(pairs.map(([, column]) => column))];
  return { rows: [...a.keys()].filter((row) => !left.has(row)), columns: [...b.keys()].filter((column) => !right.has(column)) };
}

/** Metres from which two places have nothing to do with each other. */
const far = 6;

function near({ at: a }: Thing, { at: b }: Thing): number {
  return a && b ? Math.max(0, 1 - distance(a, b) / far) : 0;
}

/** The same place, or the same part in the play. */
function standing(one: Thing, other: Thing): number {
  const place = near(one, other);
  if (one.traits.length + other.traits.length === 0) return place;
  return Math.max((place + alike(featuresOf(one.traits), featuresOf(other.traits))) / 2, place > 0.99 ? 0.6 : 0);
}

function standingId({ id, traits, at }: Thing): string {
  return traits[1] === 'named' ? `name ${id}` : `${traits.join(' ')} ${at?.x.toFixed(3)} ${at?.y.toFixed(3)}`;
}

function byTraits(a: readonly Thing[], b: readonly Thing[], renames: Renames): Score {
  const lower = new Map([...renames].map(([from, to]) => [from.toLowerCase(), to.toLowerCase()]));
  const features = new Map<Thing, Features>([
    ...a.map((one) => [one, featuresOf(one.traits.map((token) => lower.get(token) ?? renames.get(token) ?? token))] as const),
    ...b.map((other) => [other, featuresOf(other.traits)] as const),
  ]);
  return (one, other) => alike(features.get(one)!, features.get(other)!);
}

/** Sequence by sequence in order; then those that went elsewhere. */
function beatPairs({ a, b, renames, partners }: Sides): Matches {
  const score = byTraits(a, b, renames);
  const sure: IndexPair[] = [];
  for (const sequence of new Set(a.map(({ parent }) => parent ?? ''))) {
    const rows = [...a.keys()].filter((row) => a[row]!.parent === sequence);
    const partner = partners.get(`sequence ${sequence}`);
    const columns = [...b.keys()].filter((column) => b[column]!.parent === partner);
    const found = aligned(rows.length, columns.length, (row, column) => score(a[rows[row]!]!, b[columns[column]!]!), 0.5);
    sure.push(...found.map(([row, column]): IndexPair => [rows[row]!, columns[column]!]));
  }
  const pairs = thenBest(a, b, sure, score, 0.75);
  return { pairs, outOfOrder: new Set(pairs.slice(sure.length).map(([row]) => row)) };
}
