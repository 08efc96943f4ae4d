/** A training session: its parts in order, by the names of their drills. */
import type { SessionNode, SessionStatement, Span, Statement } from '../../grammar/tree.ts';
import { unknownName } from '../checks/unknown-name.ts';
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

export interface Session extends Pick<Drill, 'age' | 'ageLabel' | 'players' | 'ground' | 'theme' | 'notes' | 'questions' | 'safety'> {
  readonly id: Id;
  readonly name: string;
  readonly span: Span;
  readonly nameSpan: Span;
  /** Seconds. */
  readonly length: Sourced<number> | null;
  /** Metres. */
  readonly pitch: { readonly width: number; readonly length: number; readonly span: Span } | null;
  readonly kit: readonly { readonly count: number; readonly what: KitKind; readonly colour: string | null; readonly span: Span }[];
  /** In order of time. */
  readonly parts: readonly (Part | Pause)[];
}

export interface Part {
  readonly kind: 'part';
  readonly name: string;
  /** Seconds. */
  readonly length: number;
  readonly groups: number;
  /** The name of a drill of this file or of one it imports; null for a part without one. */
  readonly drill: string | null;
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

/** `drills`: every name a part can give. */
export function sessionOf(
  node: SessionNode,
  id: Id,
  drills: ReadonlySet<string>,
  file: FileValues,
  names: NameBook,
  report: (problem: Problem) => void,
): Session {
  const lines = node.body.lines;
  const shared = lines.filter(isShared);
  const declarations = declarationsOf(shared, report);
  const home = `session ${id}`;
  for (const { word, kind } of declarations.byName.values()) names.declare(home, kind, word.text, word);
  const scope = scopeOf(home, unitsOf(shared, report), declarations, file, names, report);
  workedOut(shared, scope);

  const { age, ageLabel, players, ground, theme, notes, questions, safety } = headerOf(shared, scope);
  const length = only(lines, 'length', scope);
  const seconds = length ? durationOf(length.length, scope, 'The session') : null;
  const pitch = only(lines, 'pitch', scope);
  const size = pitch ? positiveSize(pitch.size, scope, 'the pitch') : null;
  return {
    id,
    name: node.name.text,
    span: node.span,
    nameSpan: spanOf(node.name),
    age, ageLabel, players, ground, theme, notes, questions, safety,
    length: length && seconds !== null ? { value: seconds, span: length.length.span } : null,
    pitch: pitch && size ? { ...size, span: pitch.size.span } : null,
    kit: lines.flatMap((line) => (line.kind === 'kit' ? kitOf(line, scope) : [])),
    parts: lines.flatMap((line): (Part | Pause)[] => {
      if (line.kind === 'part') return partOf(line, drills, names, scope);
      if (line.kind !== 'pause') return [];
      const time = durationOf(line.length, scope, 'The pause');
      return time === null ? [] : [{ kind: 'pause', name: line.name?.text ?? null, length: time, span: line.span }];
    }),
  };
}

type Line<K extends SessionStatement['kind']> = Extract<SessionStatement, { kind: K }>;

function partOf(line: Line<'part'>, drills: ReadonlySet<string>, names: NameBook, scope: Scope): Part[] {
  const { name, of, span } = line;
  const length = durationOf(line.length, scope, 'The part');
  const groups = line.groups ? countOf(line.groups, scope, { what: 'The number of groups', most: 50 }) : 1;
  const at = line.at.map((place) => located(place, scope)).filter((place) => place !== null);
  if (of) names.use(null, 'quote', of.text, of);
  if (of && !drills.has(of.text)) scope.report(unknownName(of, 'drill', drills));
  if (length === null || groups === null || (of && !drills.has(of.text))) return [];
  return [{ kind: 'part', name: name.text, length, groups, drill: of?.text ?? null, at, span, nameSpan: spanOf(name) }];
}

function kitOf(line: Line<'kit'>, scope: Scope): Session['kit'] {
  return line.items.flatMap(({ count, what, colour }) => {
    const number = countOf(count, scope, { what: 'The number in the kit', least: 0, most: 1000 });
    const kind = kitKinds.find((each) => what.text === each || what.text === `${each}s`);
    if (!kind) scope.report(unknownName(what, 'kit', kitKinds.map((each) => `${each}s`)));
    return number === null || !kind ? [] : [{ count: number, what: kind, colour: colour?.text ?? null, span: spanOf(what) }];
  });
}

/** What sessions and drills have in common. */
function isShared(line: SessionStatement): line is SessionStatement & Statement {
  return line.kind !== 'length' && line.kind !== 'pitch' && line.kind !== 'kit' && line.kind !== 'part' && line.kind !== 'pause';
}
