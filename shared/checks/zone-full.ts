import type { Check } from './check.ts';
import { mostOf } from '../games/breaches.ts';
import { breached, culprit, whoOf } from './games.ts';

const game = (run: string): string => `drill "Box" {
  age U15
  area 30 x 30
  zone Box 10 x 10 in area.topRight
  team Reds bib orange
  team Blues bib blue
  player Ann of Reds at (6, 6)
  player Bea of Reds at (6, 18)
  player Cid of Blues at (24, 24)
  player Dan of Blues at (22, 12)
  ball at Ann
  rule Box at most 1 Blues
  phase "Press" {
    Ann passes to Bea while Dan runs to ${run}
  }
}
`;

export const check: Check = {
  code: 'zone-full',
  group: 'games',
  severity: 'error',
  title: 'Too many in a zone',
  why: 'A limit on a zone makes the overload that the game is about. Everyone is counted at every moment of every phase, for each zone of that name by itself; who stands on the line is in. Half a second is forgiven, and 3 s after the ball is won. Goalkeepers are counted only by name.',
  source: 'Half a second and 3 s: choices without a source. On the line is in: common practice, no source.',
  bad: [game('⟦(24, 22)⟧')],
  good: [game('(20, 16)')],
  find: (analysis) =>
    breached(check, 'full', analysis, (breach) => ({
      message: `With ${culprit(breach)} there are ${breach.count} ${whoOf(breach)} in \`${breach.zone}\`; the rule allows ${mostOf(breach.rule)}`,
      help: 'Let one leave first, end the run outside, or change the rule.',
    })),
};
