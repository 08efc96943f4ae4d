/** The names that the statements of a drill declare, and the order in which they can be worked out. */
import { markerKinds, type Expression, type Statement, type Word } from '../../grammar/tree.ts';
import { circularValue } from '../checks/circular-value.ts';
import { duplicateName, writtenTwice } from '../checks/duplicate-name.ts';
import type { Problem } from '../problem.ts';
import { inExpression, inPlace, inShape, inSize } from './mentions.ts';
import type { NameKind } from './names.ts';
import { ordered } from './ordered.ts';
import { called } from './things.ts';

/** The statements that bring something onto the ground, or a name. */
const declaring = [
  'let', 'area', 'zone', 'split', 'zones', ...markerKinds, 'gate', 'goal', 'minigoal', 'hurdle', 'ladder', 'coach',
  'station', 'team', 'floaters', 'player', 'keeper', 'place',
] as const;
export type Declaring = Extract<Statement, { kind: (typeof declaring)[number] }>;

export interface Declaration {
  readonly word: Word;
  readonly kind: NameKind;
  readonly statement: Declaring;
}

export interface Declarations {
  readonly byName: ReadonlyMap<string, Declaration>;
  /** `N3` when there is a `team N` and no statement of its own for `N3`. */
  readonly memberOf: (name: string) => { readonly team: string; readonly number: number } | null;
  /** Every statement after those it needs; those that need themselves come in any order and find nothing. */
  readonly order: readonly Declaring[];
}

export function declarationsOf(all: readonly Statement[], report: (problem: Problem) => void): Declarations {
  const statements = all.filter(isDeclaring);
  const byName = new Map<string, Declaration>();
  for (const statement of statements) {
    for (const { word, kind } of declaredBy(statement)) {
      const first = byName.get(word.text);
      if (!first) byName.set(word.text, { word, kind, statement });
      else if (kind === 'area' || kind === 'coach') report(writtenTwice(statement.span, kind, first.statement.span));
      else report(duplicateName(word, called(first.kind), first.word));
    }
  }
  const memberOf = (name: string) => {
    if (byName.has(name)) return null;
    for (let digits = name.length - 1; digits > 0 && /\d/.test(name.charAt(digits)); digits--) {
      const kind = byName.get(name.slice(0, digits))?.kind;
      if ((kind === 'team' || kind === 'floaters') && name.charAt(digits) !== '0') {
        return { team: name.slice(0, digits), number: Number(name.slice(digits)) };
      }
    }
    return null;
  };
  return { byName, memberOf, order: inOrder(statements, byName, memberOf, report) };
}

const declaringKinds: ReadonlySet<string> = new Set(declaring);

function isDeclaring(statement: Statement): statement is Declaring {
  return declaringKinds.has(statement.kind);
}

function declaredBy(statement: Declaring): readonly { readonly word: Word; readonly kind: NameKind }[] {
  switch (statement.kind) {
    case 'let':
    case 'zone':
    case 'station':
    case 'team':
    case 'floaters':
    case 'player':
    case 'keeper':
      return [{ word: statement.name, kind: statement.kind }];
    case 'area':
    case 'coach':
      return [{ word: keywordOf(statement), kind: statement.kind }];
    case 'split':
      return statement.into.map(({ name }) => ({ word: name, kind: 'zone' }));
    case 'zones':
      return [
        { word: statement.name, kind: 'zones' },
        ...cornerNames.map((corner) => {
          const word = { ...statement.name, text: statement.name.text + corner };
          return { word, kind: 'zone' as const };
        }),
      ];
    case 'cone':
    case 'disc':
    case 'pole':
    case 'mannequin':
    case 'gate':
    case 'goal':
    case 'minigoal':
    case 'hurdle':
    case 'ladder':
      return statement.name ? [{ word: statement.name, kind: statement.kind }] : [];
    case 'place':
      return [];
  }
}

function keywordOf({ kind, span: { from } }: Declaring): Word {
  return { text: kind, from, to: from + kind.length };
}

/** What `zones Box` adds to the name of each of its zones. */
export const cornerNames = ['TopLeft', 'TopRight', 'BottomLeft', 'BottomRight'] as const;

/** Who is placed by hand comes before who is placed by the tool wherever that is possible. */
function inOrder(
  statements: readonly Declaring[],
  byName: ReadonlyMap<string, Declaration>,
  memberOf: Declarations['memberOf'],
  report: (problem: Problem) => void,
): readonly Declaring[] {
  const placings = statements.filter((statement) => statement.kind === 'place');
  /** Who stands where depends on how many the other `place` lines take. */
  const counts = placings.flatMap((placing) => inExpression(placing.count));
  const needsOf = new Map<Declaring, readonly Declaring[]>();
  const statementsNamed = (name: string): readonly Declaring[] => {
    const own = byName.get(name);
    if (own) return [own.statement];
    const team = memberOf(name)?.team;
    return team === undefined ? [] : [byName.get(team)!.statement, ...placings.filter((placing) => placing.of.text === team)];
  };
  const needs = (statement: Declaring): readonly Declaring[] => {
    const known = needsOf.get(statement);
    if (known) return known;
    const mentioned = [...mentionedBy(statement), ...(statement.kind === 'place' ? counts : [])];
    const found = [...new Set(mentioned)].flatMap(statementsNamed);
    needsOf.set(statement, found);
    return found;
  };

  const byHand = statements.filter((statement) => statement.kind === 'player' || statement.kind === 'keeper' || statement.kind === 'station');
  const { order, rings } = ordered([...byHand, ...statements.filter((statement) => statement.kind !== 'place'), ...placings], needs);
  for (const ring of rings) {
    const begin = ring.reduce((least, statement, at) => (statement.span.from < ring[least]!.span.from ? at : least), 0);
    const [first, ...others] = [...ring.slice(begin), ...ring.slice(0, begin)].map(shownName);
    if (first) report(circularValue([first, ...others]));
  }
  return order;
}

function shownName(statement: Declaring): { readonly name: string; readonly span: Word } {
  const word = declaredBy(statement)[0]?.word ?? keywordOf(statement);
  return { name: word.text, span: word };
}

/** The names a statement cannot do without. Where a thing looks is worked out last, so that two gates may face each other. */
function mentionedBy(statement: Declaring): readonly string[] {
  switch (statement.kind) {
    case 'let':
      return inExpression(statement.value);
    case 'area':
      return [...inSize(statement.size), ...inMaybe(statement.marked)];
    case 'zone':
      return inShape(statement.shape);
    case 'split':
      return [statement.of.text, ...statement.into.flatMap(({ size }) => inExpression(size))];
    case 'zones':
      return [statement.of.text, ...inSize(statement.size)];
    case 'team':
    case 'floaters':
      return inMaybe(statement.of);
    case 'place':
      return [statement.of.text, statement.zone.text, ...inExpression(statement.count)];
    case 'cone':
    case 'disc':
    case 'pole':
    case 'mannequin':
    case 'minigoal':
    case 'hurdle':
    case 'coach':
      return inPlace(statement.at);
    case 'gate':
      return [...inPlace(statement.at), ...inExpression(statement.width)];
    case 'goal':
      return [...inPlace(statement.at), ...inSize(statement.size)];
    case 'ladder':
      return [...inPlace(statement.at), ...inMaybe(statement.length)];
    case 'station':
      return [...inPlace(statement.at), ...inMaybe(statement.holds), ...(statement.of ? [statement.of.text] : [])];
    case 'player':
    case 'keeper':
      return [statement.of.text, ...inPlace(statement.at)];
  }
}

function inMaybe(expression: Expression | null): readonly string[] {
  return expression ? inExpression(expression) : [];
}
