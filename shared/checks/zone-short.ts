import type { Check } from './check.ts';
import { breached, culprit, whoOf } from './games.ts';

const game = (run: string): string => `drill "Rest defence" {
  age U15
  area 30 x 30
  zone Back 30 x 10 in area.bottomLeft
  team Reds bib orange
  team Blues bib blue
  player Ann of Reds at (6, 6)
  player Bea of Reds at (6, 18)
  player Cid of Reds at (20, 6)
  player Dan of Blues at (26, 26)
  ball at Ann
  rule Back at least 2 Reds
  phase "Build" {
    Ann passes to Bea while Cid runs to ${run}
  }
}
`;

export const check: Check = {
  code: 'zone-short',
  group: 'games',
  severity: 'error',
  title: 'Too few in a zone',
  why: 'The rule keeps players in a zone: as cover, as a target, as numbers to play against. Everyone is counted at every moment of every phase; who stands on the line is in. Half a second is forgiven, and 3 s after the ball is won. Goalkeepers are counted only by name.',
  source: 'Half a second and 3 s: choices without a source. On the line is in: common practice, no source.',
  bad: [game('⟦(20, 16)⟧')],
  good: [game('(16, 8)')],
  find: (analysis) =>
    breached(check, 'short', analysis, (breach) => {
      const { count, rule, zone, stay } = breach;
      const left = `${count === 0 ? 'no' : count} ${whoOf(breach)} in \`${zone}\`; the rule asks for ${rule.count}`;
      return {
        message: stay ? `${culprit(breach)} leaves ${left}` : `There ${count === 1 ? 'is' : 'are'} ${left}`,
        help: 'Let somebody take their place first, or change the rule.',
      };
    }),
};
