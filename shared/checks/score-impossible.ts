import { mostOf } from '../games/breaches.ts';
import type { Drill, Id, Rule } from '../model/drill.ts';
import { problem, type Check } from './check.ts';

type Score = Extract<Rule, { kind: 'score' }>;

const game = (rule: string): string => `drill "Points" {
  age U15
  area 30 x 30
  zone Box 8 x 8 in area.topRight
  team Reds bib orange
  team Blues bib blue
  player Ann of Reds at (6, 6)
  player Bea of Reds at (6, 18)
  player Cid of Blues at (15, 15)
  player Dan of Blues at (18, 9)
  ${rule}
  ⟦score 1 for pass into Box⟧
}
`;

export const check: Check = {
  code: 'score-impossible',
  group: 'games',
  severity: 'warning',
  title: 'A score that nobody can earn',
  why: 'Points steer a game only when they can be won. A pass into a zone needs somebody who may be in it, passes need a side of two at least, floaters counted in; who wins the ball in a zone may be there without it; floaters earn no points of their own.',
  source: null,
  bad: [
    game('rule Box no attackers'),
    game('rule Box no defenders').replace('pass into Box', 'winning the ball in Box'),
    game('rule Box no Blues').replace('into Box', 'into Box by Blues'),
  ],
  good: [game('rule Box no defenders').replace(/[⟦⟧]/g, '')],
  find: ({ drill }) =>
    drill.rules.flatMap((rule) => {
      const reason = rule.kind === 'score' ? impossible(drill, rule) : null;
      if (reason === null) return [];
      return problem(check, rule.span, reason.message, { help: reason.help, related: reason.rules.map(({ span }) => ({ span, message: 'This rule keeps them out.' })) });
    }),
};

interface Reason {
  readonly message: string;
  readonly help: string;
  readonly rules: readonly Rule[];
}

function impossible(drill: Drill, { by, from, into, team }: Score): Reason | null {
  const sides = drill.teams.filter(({ kind, id }) => kind === 'team' && (team === null || id === team));
  if (drill.teams.some(({ id, kind }) => id === team && kind === 'floaters')) {
    return { message: `\`${team}\` play for whoever has the ball, so points are never theirs.`, help: 'Write the side that earns them, or leave `by` out: then each side does.', rules: [] };
  }
  if (by === 'goal') return null;
  const part = by === 'win' ? 'defenders' : 'attackers';
  const closed = [from, into].filter((zone) => zone !== null).map((zone) => ({ zone, rules: closingRules(drill, zone, part, team) })).find(({ rules }) => rules.length > 0);
  if (closed) {
    const who = team !== null ? `Nobody of \`${team}\`` : part === 'attackers' ? 'Nobody of the side with the ball' : 'Nobody of the side without the ball';
    return { message: `${who} may be in \`${closed.zone}\`, so this cannot be scored.`, help: 'Let somebody in, or score something else.', rules: closed.rules };
  }
  if (by === 'win') {
    if (drill.teams.filter(({ kind }) => kind === 'team').length !== 1) return null;
    return { message: 'There is only one side, and nobody to win the ball from.', help: 'Add the other team.', rules: [] };
  }
  const largest = Math.max(0, ...sides.map(({ size }) => size));
  if (by === 'dribble' || drill.teams.length === 0 || largest + sum(drill, 'floaters') >= 2) return null;
  const few = team === null ? 'no side has two' : `\`${team}\` has not got two`;
  return { message: `A pass needs two players, and ${few}.`, help: 'Give a side more players, or add a floater.', rules: [] };
}

/**
 * The rules that keep whoever could score out of a zone: one for the part they play, one for the team, or those for every
 * team and the floaters.
 */
function closingRules(drill: Drill, zone: Id, part: 'attackers' | 'defenders', scorer: Id | null): readonly Rule[] {
  const group = drill.zones.find((each) => each.id === zone && !each.split)?.group;
  const closing = drill.rules.filter((rule) => rule.kind === 'numbers').filter((rule) => (rule.zone === zone || rule.zone === group) && mostOf(rule) === 0);
  const own = closing.filter((rule) => rule.who === part || (part === 'defenders' && rule.who === scorer));
  if (own.length > 0) return own;
  const shut = new Set(closing.map(({ who }) => who));
  const out = ({ id, kind }: Drill['teams'][number]): boolean => shut.has(id) || (kind === 'floaters' && shut.has('floaters'));
  const who = drill.teams.filter(({ id, kind }) => (kind === 'floaters' ? part === 'attackers' : scorer === null || id === scorer));
  return who.length > 0 && who.every(out) ? closing : [];
}

function sum(drill: Drill, kind: 'floaters'): number {
  return drill.teams.filter((team) => team.kind === kind).reduce((total, team) => total + team.size, 0);
}
