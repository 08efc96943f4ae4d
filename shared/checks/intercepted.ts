import type { DrillAnalysis } from '../analyse.ts';
import type { Challenge } from '../games/dribbles.ts';
import { doubtful, type LaneReport } from '../games/lanes.ts';
import type { ActorId, Drill } from '../model/drill.ts';
import type { Problem, Related } from '../problem.ts';
import type { Pass } from '../timeline/timeline.ts';
import { problem, type Check } from './check.ts';
import { playOver } from './cures.ts';
import { list, seconds, spot, Who, who } from './say.ts';

const game = (pass: string, end: string): string => `drill "Two against one" {
  age U15
  area 30 x 30
  team Reds bib orange
  team Blues bib blue
  player Ann of Reds at (5, 15)
  player Bea of Reds at (25, 15)
  player Cid of Reds at (15, 4)
  player Dan of Blues at (15, 16)
  ball at Ann
  phase "Past the presser" {
    Ann ${pass}${end}
  }
}
`;

const shot = (dan: string): string => `drill "One on goal" {
  age U15
  area 30 x 30
  minigoal Top at area.top facing down
  team Reds bib orange
  team Blues bib blue
  player Ann of Reds at (15, 20)
  player Bea of Reds at (25, 15)
  player Dan of Blues at ${dan}
  ball at Ann
  phase "Finish" {
    Ann ⟦shoots at Top⟧
  }
}
`;

export const check: Check = {
  code: 'intercepted',
  group: 'games',
  severity: 'error',
  title: 'An opponent gets to the ball first',
  why: 'For every pass of a phase every opponent runs the race to the ball: they react, turn for it from a stand or out of their run, speed up as their age can, and reach a metre; a ball that comes within 0.8 m of them is stopped from the stand; one over 2.2 m flies over them. If there is a place on its way where they are before the ball and before its receiver, it is theirs. A tenth of a second is let be. A shot that they may block, a dribble past them, ten metres away at most, that they may step into, and a pass to an opponent are warnings.',
  source: 'Reaction 0.25 s, sprint times by age (Mendez-Villanueva et al. 2011) at match effort, braking 4 m/s². Reach of a foot (1 m) and of who stands in the way (0.8 m), height and the tenth are choices.',
  bad: [game('⟦passes to Bea⟧', ''), game('⟦passes to Dan⟧', ''), game('⟦dribbles to (25, 17)⟧', ''), shot('(15, 25)')],
  good: [game('passes to Cid', '\n    Cid passes to Bea'), shot('(8, 25)').replace(/[⟦⟧]/g, '')],
  find: ({ phases, drill }) =>
    phases.flatMap(({ lanes, challenges, timeline }) => [
      ...lanes.flatMap((report) => {
        const pass = report.pass === null ? undefined : timeline.passes[report.pass];
        return pass ? cutOut(drill, report, pass) : [];
      }),
      ...challenges.flatMap((challenge) => stoppedBy(drill, challenge)),
    ]),
  cures: (found, analysis) => {
    const report = reportAt(analysis, found.span.from);
    const pass = report && analysis.timeline.passes[report.pass!];
    if (!pass || pass.kind === 'shot') return [];
    const { verb, targetSpan } = pass.action;
    const others = targetSpan && verb === 'passes to' ? report.lanes.filter((lane) => lane.open === 'ground') : [];
    const other = others.map((lane) => ({ title: `Pass to ${lane.to} instead`, about: lane.to, edits: [{ span: targetSpan!, text: lane.to }] }));
    return report.lost || pass.flight.kind === 'loft' ? other : [playOver(found.span), ...other];
  },
};

function cutOut(drill: Drill, report: LaneReport, pass: Pass): Problem[] {
  const { race, lost } = report;
  if (lost) {
    return [problem(check, pass.action.span, `${Who(pass.from)} passes to ${who(pass.to!)}, an opponent: the ball is lost.`, {
      severity: 'warning',
      help: `If it is meant to be lost, let ${who(pass.to!)} win it (\`wins the ball from\`) or allow it with a reason; otherwise pass to a team-mate.`,
    })];
  }
  if (!race || race.margin >= -doubtful) return [];
  const first = `${Who(race.by)} is at ${spot(drill, race.at)} ${seconds(-race.margin)} before the`;
  const related = standsHere(drill, race.by);
  if (pass.kind === 'shot') {
    const help = 'Shoot from where the way is free, or draw them away first. The save of a goalkeeper is not judged.';
    return [problem(check, pass.action.span, `${first} shot of ${who(pass.from)}: it may be blocked.`, { severity: 'warning', help, related })];
  }
  return [problem(check, pass.action.span, `${first} ball from ${who(pass.from)}${pass.to === null ? '' : ` to ${who(pass.to)}`}.`, { help: helpOf(report), related })];
}

function stoppedBy(drill: Drill, { actor, action, by, margin, at }: Challenge): Problem[] {
  if (margin >= -doubtful) return [];
  return [problem(check, action.span, `${Who(by)} can be at ${spot(drill, at)}, on the way of ${who(actor)}, ${seconds(-margin)} before them.`, {
    severity: 'warning',
    help: 'Dribble where nobody can step in, draw them away first, or let them win the ball if that is meant.',
    related: standsHere(drill, by),
  })];
}

function standsHere(drill: Drill, id: ActorId): Related[] {
  return drill.actors.filter((actor) => actor.id === id).map(({ span }) => ({ span, message: `This is ${who(id)}.` }));
}

function helpOf({ lanes, from }: LaneReport): string {
  const open = lanes.filter((lane) => lane.open !== null);
  if (open.length === 0) return `No other lane is open to ${who(from)} either: let a team-mate show for it, or draw the opponent away first.`;
  const [rolled, lofted] = [false, true].map((air) => open.filter((lane) => (lane.open === 'lofted') === air).slice(0, 3).map((lane) => who(lane.to))) as [string[], string[]];
  const ways = [...(rolled.length > 0 ? [list(rolled)] : []), ...(lofted.length > 0 ? [`through the air ${list(lofted)}`] : [])];
  return `Open at that moment: ${ways.join('; ')}. Or draw the opponent away first.`;
}

function reportAt({ phases }: DrillAnalysis, from: number): LaneReport | undefined {
  return phases.flatMap(({ lanes, timeline }) => lanes.filter(({ pass }) => pass !== null && timeline.passes[pass]!.action.span.from === from))[0];
}
