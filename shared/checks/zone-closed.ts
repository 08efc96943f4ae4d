import type { Check } from './check.ts';
import { breached, culprit, whoOf } from './games.ts';

const game = (run: string): string => `drill "Corner box" {
  age U15
  area 30 x 30
  zone Box 6 x 6 in area.topRight
  team Reds bib orange
  team Blues bib blue
  player Ann of Reds at (6, 6)
  player Bea of Reds at (6, 18)
  player Cid of Blues at (20, 18)
  ball at Ann
  rule Box no defenders
  phase "Press" {
    Ann passes to Bea while Cid runs to ${run}
  }
}
`;

export const check: Check = {
  code: 'zone-closed',
  group: 'games',
  severity: 'error',
  title: 'Someone is in a zone that is closed to them',
  why: 'A protected zone is only worth something when it is kept. Everyone is followed at every moment of every phase; who stands on the line is in, as everywhere; who passes through for less than half a second is let be, and after the ball is won those whose part has changed have 3 s to leave. Goalkeepers are spoken of only by name.',
  source: 'Half a second and 3 s: choices without a source. On the line is in: common practice, no source.',
  bad: [game('⟦(27, 27)⟧')],
  good: [game('(20, 22)')],
  find: (analysis) =>
    breached(check, 'closed', analysis, (breach) => ({
      message: `${culprit(breach)} is in \`${breach.zone}\`, where no ${whoOf(breach)} may be`,
      help: 'End the run outside, or change the rule.',
    })),
};
