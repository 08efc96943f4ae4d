import type { LaneReport } from '../games/lanes.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import type { Span } from '../../grammar/tree.ts';
import { problem, type Check } from './check.ts';
import { list, Who, who } from './say.ts';

const game = (bea: string): string => `drill "Shut in" {
  age U15
  area 24 x 24
  team Reds bib orange
  team Blues bib blue
  player Ann of Reds at (5, 15)
  player Bea of Reds at ${bea}
  player Cid of Blues at (9, 15)
  player Dan of Blues at (20, 15)
  ball at Ann
  phase "Away from the presser" {
    Ann ⟦dribbles to (5, 20)⟧
  }
}
`;

export const check: Check = {
  code: 'no-open-lane',
  group: 'games',
  severity: 'warning',
  title: 'The player on the ball has no pass',
  why: 'Whenever a player keeps the ball in a phase, the lanes to all team-mates and floaters are looked at, along the ground and through the air: would an opponent be first? A game that is about playing on needs somebody to play to. A pass that is cut out is told by itself.',
  source: null,
  bad: [game('(22, 15)')],
  good: [game('(5, 23)').replace(/[⟦⟧]/g, '')],
  find: ({ phases }) => phases.flatMap((phase) => shutIn(phase)),
};

/** Each stay on the ball once. */
function shutIn(phase: PhaseAnalysis) {
  const told = new Set<number>();
  return phase.lanes.flatMap((report) => {
    const span = report.pass === null && report.lanes.length > 0 && report.lanes.every((lane) => lane.open === null) ? placeOf(phase, report) : null;
    if (!span || told.has(span.from)) return [];
    told.add(span.from);
    const closed = report.lanes.slice(0, 3).map((lane) => (lane.by === null ? `${who(lane.to)} is too far away` : `${who(lane.by)} closes the one to ${who(lane.to)}`));
    return problem(check, span, `${Who(report.from)} has no pass: ${list(closed)}.`, {
      help: 'Let a team-mate come out from behind an opponent, add a floater, or give more space.',
    });
  });
}

function placeOf({ phase, timeline }: PhaseAnalysis, { beat, from }: LaneReport): Span | null {
  const index = timeline.beats.find((each) => each.number === beat)?.index;
  const parts = phase.beats.filter((each) => each.index === index).flatMap((each) => [each.lead, ...each.meanwhile]);
  return parts.find((part) => part.actor === from)?.chain[0]?.span ?? null;
}
