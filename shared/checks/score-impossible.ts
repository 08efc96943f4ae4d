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
  why: 'Points steer a game only when they can be won. A pass into a zone needs somebody who may be in it, passes need a side of two at least, floaters counted in.',
  source: null,
  bad: [game('rule Box no attackers')],
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

function impossible(drill: Drill, { by, from, into }: Score): Reason | null {
  if (by === 'goal') return null;
  const closed = [from, into].filter((zone) => zone !== null).map((zone) => ({ zone, rules: closingRules(drill, zone) })).find(({ rules }) => rules.length > 0);
  if (closed) return { message: `Nobody of the side with the ball may be in \`${closed.zone}\`, so this cannot be scored.`, help: 'Let somebody in, or score something else.', rules: closed.rules };
  const floaters = sum(drill, 'floaters');
  const largest = Math.max(0, ...drill.teams.filter((team) => team.kind === 'team').map((team) => team.size));
  if (drill.teams.length === 0 || largest + floaters >= 2) return null;
  return { message: 'A pass needs two players, and no side has two.', help: 'Give a side more players, or add a floater.', rules: [] };
}

/** The rules that keep a side out of a zone while it has the ball: one for attackers, or for every team and the floaters. */
function closingRules(drill: Drill, zone: Id): readonly Rule[] {
  const group = drill.zones.find((each) => each.id === zone && !each.split)?.group;
  const closing = drill.rules.filter((rule) => rule.kind === 'numbers' && (rule.zone === zone || rule.zone === group) && mostOf(rule) === 0);
  const shut = new Set(closing.flatMap((rule) => (rule.kind === 'numbers' ? [rule.who] : [])));
  if (shut.has('attackers')) return closing.filter((rule) => rule.kind === 'numbers' && rule.who === 'attackers');
  const out = (team: Drill['teams'][number]): boolean => shut.has(team.id) || (team.kind === 'floaters' && shut.has('floaters'));
  return drill.teams.length > 0 && drill.teams.every(out) ? closing : [];
}

function sum(drill: Drill, kind: 'floaters'): number {
  return drill.teams.filter((team) => team.kind === kind).reduce((total, team) => total + team.size, 0);
}
