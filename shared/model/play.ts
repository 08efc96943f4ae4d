/** Sequences and phases, the order they are played in, and the written rotation. */
import type { Play, Quote, Span, Statement, Word } from '../../grammar/tree.ts';
import { circularValue } from '../checks/circular-value.ts';
import { duplicateName } from '../checks/duplicate-name.ts';
import { unknownName } from '../checks/unknown-name.ts';
import { wrongKind } from '../checks/wrong-kind.ts';
import { beatsOf } from './beats.ts';
import type { Id, Sequence, WrittenRotation } from './drill.ts';
import { only } from './header.ts';
import { mirroredSequence } from './mirrored.ts';
import { ordered } from './ordered.ts';
import type { Scope } from './scope.ts';
import { spanOf } from './span.ts';
import { called, kindOf } from './things.ts';

export type Passage = Extract<Play, { kind: 'sequence' | 'mirrored' | 'phase' }>;

export interface Played {
  readonly sequences: readonly Sequence[];
  /** By name; null for one that could not be worked out. */
  readonly named: ReadonlyMap<string, Sequence | null>;
}

export function sequencesOf(statements: readonly Statement[], scope: Scope): Played {
  const passages = distinct(statements.filter(isPassage), scope);
  const byName = new Map(passages.flatMap((passage) => (passage.name ? [[passage.name.text, passage] as const] : [])));
  const originalOf = (passage: Passage) => (passage.kind === 'mirrored' ? byName.get(passage.of.text) : undefined);
  const before = (passage: Passage) => (passage.kind === 'phase' && passage.after ? byName.get(passage.after.text) : undefined);
  const { order, rings } = ordered(passages, (passage) => [originalOf(passage), before(passage)].filter((other) => other !== undefined));
  for (const ring of rings) {
    const [first, ...others] = ring.flatMap(({ name }) => (name ? [{ name: name.text, span: name }] : []));
    if (first) scope.report(circularValue([first, ...others]));
  }
  const unnamed = new Map(passages.filter((passage) => passage.name === null).map((passage, index) => [passage, index + 1]));
  const stuck = new Set(rings.flat());
  const done = new Map<Passage, Sequence | null>();
  for (const passage of order) done.set(passage, stuck.has(passage) ? null : sequenceOf(passage, originalOf(passage)));

  function sequenceOf(passage: Passage, original: Passage | undefined): Sequence | null {
    if (passage.kind !== 'mirrored') return written(passage, passage.name?.text ?? idOf(unnamed.get(passage) ?? 1), followed(passage), scope);
    scope.used('quote', passage.of.text, passage.of);
    if (!original) scope.report(unknownName(passage.of, 'sequence', byName.keys()));
    const found = original && done.get(original);
    return found ? mirroredSequence(passage, found, scope) : null;
  }

  /** The phase that this one goes on from; only a phase has an end that others start from. */
  function followed(passage: Passage): Id | null {
    if (passage.kind !== 'phase' || !passage.after) return null;
    scope.used('quote', passage.after.text, passage.after);
    const other = before(passage);
    if (other?.kind === 'phase') return done.get(other)?.id ?? null;
    scope.report(unknownName(passage.after, 'phase', passages.flatMap((each) => (each.kind === 'phase' ? [each.name.text] : []))));
    return null;
  }

  return {
    sequences: passages.map((passage) => done.get(passage) ?? null).filter((sequence) => sequence !== null),
    named: new Map([...byName].map(([name, passage]) => [name, done.get(passage) ?? null])),
  };
}

/** By default the sequences as they are written, one after the other; phases only when they are named. */
export function orderOf(statements: readonly Statement[], { sequences, named }: Played, scope: Scope): readonly (readonly Id[])[] {
  const line = only(statements, 'order', scope);
  if (!line) return sequences.filter((sequence) => sequence.kind === 'sequence').map((sequence) => [sequence.id]);
  return line.steps
    .map((step) =>
      step.flatMap((name) => {
        scope.used('quote', name.text, name);
        const found = named.get(name.text);
        if (found === undefined) scope.report(unknownName(name, 'sequence', named.keys()));
        return found ? [found.id] : [];
      }),
    )
    .filter((step) => step.length > 0);
}

/** Arrows count only when all of them are sound: half a rotation would be taken for a wrong one. */
export function rotationOf(statements: readonly Statement[], scope: Scope): WrittenRotation {
  const line = only(statements, 'rotate', scope);
  if (!line) return { kind: 'read' };
  if (line.follow) return { kind: 'follow', span: line.span };
  const chains = line.chains.map((chain) => chain.map((word) => ({ word, station: stationNamed(word, scope) })));
  if (chains.flat().some(({ station }) => station === null)) return { kind: 'read' };
  const arrows = chains.flatMap((chain) =>
    chain.slice(1).map(({ word, station }, index) => {
      const before = chain[index]!;
      return { from: before.station ?? '', to: station ?? '', span: { from: before.word.from, to: word.to } };
    }),
  );
  return { kind: 'arrows', arrows, span: line.span };
}

export function isPassage(statement: Statement): statement is Passage {
  return statement.kind === 'sequence' || statement.kind === 'mirrored' || statement.kind === 'phase';
}

function distinct(passages: readonly Passage[], scope: Scope): readonly Passage[] {
  const first = new Map<string, Passage & { readonly name: Quote }>();
  return passages.filter((passage) => {
    if (passage.name === null) return true;
    const known = first.get(passage.name.text);
    if (known) scope.report(duplicateName(passage.name, called(known.kind === 'phase' ? 'phase' : 'sequence'), known.name));
    else first.set(passage.name.text, { ...passage, name: passage.name });
    return !known;
  });
}

/** Of a sequence that nobody named. */
function idOf(number: number): Id {
  return number === 1 ? 'sequence' : `sequence ${number}`;
}

function written(passage: Exclude<Passage, { kind: 'mirrored' }>, id: Id, after: Id | null, scope: Scope): Sequence {
  return {
    id,
    kind: passage.kind,
    name: passage.name?.text ?? null,
    span: passage.span,
    nameSpan: passage.name ? spanOf(passage.name) : keyword(passage.span, passage.kind),
    mirrorOf: null,
    after,
    beats: beatsOf(passage.body.lines, scope),
  };
}

function keyword({ from }: Span, word: string): Span {
  return { from, to: from + word.length };
}

function stationNamed(word: Word, scope: Scope): Id | null {
  const thing = scope.thing(word, 'station', new Set(['station']));
  if (thing === null || thing.kind === 'station') return thing?.station.id ?? null;
  scope.report(wrongKind(word, word.text, called(kindOf(thing)), 'players rotate from station to station'));
  return null;
}
