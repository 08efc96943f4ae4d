/** Rules, expectations, scores and bouts. */
import type { Scoring, Statement, Word } from '../../grammar/tree.ts';
import { wrongKind } from '../checks/wrong-kind.ts';
import { unknownName } from '../checks/unknown-name.ts';
import type { Drill, Id, Rule, TouchRule } from './drill.ts';
import { countOf } from './expressions.ts';
import { durationOf, only } from './header.ts';
import type { NameKind } from './names.ts';
import { teamNamed } from './people.ts';
import type { Scope } from './scope.ts';
import { called, kindOf } from './things.ts';

export function touchRulesOf(statements: readonly Statement[], scope: Scope): readonly TouchRule[] {
  return statements.flatMap((statement): TouchRule[] => {
    if (statement.kind !== 'rule' || statement.rule !== 'touches') return [];
    const most = countOf(statement.count, scope, { what: 'The number of touches', most: 99 });
    const who = statement.who && whoNamed(statement.who, scope);
    const zone = statement.zone && zoneNamed(statement.zone, scope);
    if (most === null || (statement.who && !who) || (statement.zone && !zone)) return [];
    return [{ most, who, zone, span: statement.span }];
  });
}

/** All others, in the order of the text. */
export function rulesOf(statements: readonly Statement[], scope: Scope): readonly Rule[] {
  return statements.map((statement) => ruleOf(statement, scope)).filter((rule) => rule !== null);
}

function ruleOf(statement: Statement, scope: Scope): Rule | null {
  if (statement.kind === 'expect') {
    const ours = countOf(statement.ours, scope, { what: 'The number of players', least: 0 });
    const theirs = countOf(statement.theirs, scope, { what: 'The number of players', least: 0 });
    const zone = zoneNamed(statement.zone, scope);
    return ours === null || theirs === null || zone === null ? null : { kind: 'expect', ours, theirs, zone, span: statement.span };
  }
  if (statement.kind === 'score') return scoreOf(statement, scope);
  if (statement.kind !== 'rule' || statement.rule === 'touches') return null;
  if (statement.rule === 'text') return { kind: 'text', text: statement.text.text, span: statement.span };
  const zone = zoneNamed(statement.zone, scope);
  const count = statement.count ? countOf(statement.count, scope, { what: 'The number of players', least: 0 }) : 0;
  const who = whoNamed(statement.who, scope);
  return zone === null || count === null || who === null
    ? null
    : { kind: 'numbers', zone, bound: statement.rule, count, who, span: statement.span };
}

function scoreOf(statement: Extract<Statement, { kind: 'score' }>, scope: Scope): Rule | null {
  const { for: way, span } = statement;
  const points = countOf(statement.points, scope, { what: 'The score', most: 100 });
  const team = statement.by && teamNamed(statement.by, scope)?.id;
  const scored = scoredBy(way, scope);
  if (points === null || scored === null || (statement.by && !team)) return null;
  return { kind: 'score', points, count: null, from: null, into: null, through: null, ...scored, team: team ?? null, span };
}

type Scored = Pick<Extract<Rule, { kind: 'score' }>, 'by'> & Partial<Extract<Rule, { kind: 'score' }>>;

/** Null when a part of it cannot be worked out. */
function scoredBy(way: Scoring, scope: Scope): Scored | null {
  switch (way.kind) {
    case 'passes': {
      const count = countOf(way.count, scope, { what: 'The number of passes' });
      return count === null ? null : { by: 'passes', count };
    }
    case 'pass':
    case 'dribble': {
      const from = way.from && zoneNamed(way.from, scope);
      const into = way.into && zoneNamed(way.into, scope);
      const through = way.through && named(way.through, 'gate', gates, 'only a gate can be gone through', scope);
      if ((way.from && !from) || (way.into && !into) || (way.through && !through)) return null;
      return { by: way.kind, from, into, through };
    }
    case 'win': {
      const into = way.zone && zoneNamed(way.zone, scope);
      return way.zone && !into ? null : { by: 'win', into };
    }
    case 'goal': {
      const into = named(way.goal, 'goal', goals, 'only a goal or a gate can be scored in', scope);
      return into === null ? null : { by: 'goal', into };
    }
  }
}

export function boutsOf(statements: readonly Statement[], scope: Scope): Drill['bouts'] {
  const line = only(statements, 'bouts', scope);
  if (!line) return null;
  const count = countOf(line.count, scope, { what: 'The number of bouts' });
  const length = durationOf(line.length, scope, 'The bout');
  const rest = line.rest ? durationOf(line.rest, scope, 'The rest') : 0;
  return count === null || length === null || rest === null ? null : { count, length, rest, span: line.span };
}

const roles = ['attackers', 'defenders', 'floaters'] as const;

/** A team, a player, or one of the words for whoever plays that part at the moment. */
function whoNamed(word: Word, scope: Scope): string | null {
  if (word.text === 'attackers' || word.text === 'defenders') return word.text;
  if (word.text === 'floaters') {
    if ([...scope.declarations.byName.values()].some(({ kind }) => kind === 'floaters')) return word.text;
    scope.report(unknownName(word, 'group of', []));
    return null;
  }
  const role = roles.find((each) => each === `${word.text}s`);
  if (role && !scope.declarations.byName.has(word.text)) {
    scope.report(unknownName(word, 'team or player', [role]));
    return null;
  }
  return named(word, 'team or player', who, 'a rule is for a team, a player, the floaters, attackers or defenders', scope);
}

/** Also the name that several zones share, and `area` for all of the ground. */
function zoneNamed(word: Word, scope: Scope): Id | null {
  return named(word, 'zone', zones, 'a zone is wanted here', scope);
}

function named(word: Word, wanted: string, kinds: ReadonlySet<NameKind>, because: string, scope: Scope): string | null {
  const thing = scope.thing(word, wanted, kinds);
  if (thing === null) return null;
  if (kinds.has(kindOf(thing))) return word.text;
  scope.report(wrongKind(word, word.text, called(kindOf(thing)), because));
  return null;
}

const who: ReadonlySet<NameKind> = new Set<NameKind>(['team', 'floaters', 'player', 'keeper', 'station', 'coach']);
const zones: ReadonlySet<NameKind> = new Set<NameKind>(['zone', 'zones', 'area']);
const gates: ReadonlySet<NameKind> = new Set<NameKind>(['gate']);
const goals: ReadonlySet<NameKind> = new Set<NameKind>(['goal', 'minigoal', 'gate']);
