import type { DrillAnalysis } from '../analyse.ts';
import { doubtful, type LaneReport } from '../games/lanes.ts';
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

export const check: Check = {
  code: 'intercepted',
  group: 'games',
  severity: 'error',
  title: 'An opponent gets to the ball first',
  why: 'For every pass of a phase every opponent runs the race to the ball: they react, turn for it from a stand or out of their run, speed up as their age can, and reach a metre; a ball over 2.2 m flies over them. If there is a place on its way where they are before the ball and before its receiver, it is theirs. A tenth of a second is let be.',
  source: 'Reaction 0.25 s, sprint times by age (Mendez-Villanueva et al. 2011) at match effort, braking 4 m/s². Reach of a foot (1 m), height and the tenth are choices.',
  bad: [game('⟦passes to Bea⟧', '')],
  good: [game('passes to Cid', '\n    Cid passes to Bea')],
  find: ({ phases, drill }) =>
    phases.flatMap(({ lanes, timeline }) =>
      lanes.flatMap((report) => {
        const pass = report.pass === null ? undefined : timeline.passes[report.pass];
        if (!pass || !report.race || report.race.margin >= -doubtful) return [];
        const { by, margin, at } = report.race;
        const to = pass.to === null ? '' : ` to ${who(pass.to)}`;
        const actor = drill.actors.find((each) => each.id === by);
        return problem(check, pass.action.span, `${Who(by)} is at ${spot(drill, at)} ${seconds(-margin)} before the ball from ${who(pass.from)}${to}.`, {
          help: helpOf(report),
          related: actor ? [{ span: actor.span, message: `This is ${who(by)}.` }] : [],
        });
      }),
    ),
  cures: (found, analysis, text) => {
    const report = reportAt(analysis, found.span.from);
    const target = report && analysis.timeline.passes[report.pass!]!.action;
    const others = report && target?.targetSpan && target.verb === 'passes to' ? report.lanes.filter((lane) => lane.open === 'ground') : [];
    const other = others.map((lane) => ({ title: `Pass to ${lane.to} instead`, about: lane.to, edits: [{ span: target!.targetSpan!, text: lane.to }] }));
    return text.slice(found.span.from, found.span.to).includes('lofted') ? other : [playOver(found.span), ...other];
  },
};

function helpOf({ lanes, from }: LaneReport): string {
  const open = lanes.filter((lane) => lane.open !== null);
  if (open.length === 0) return `No other lane is open to ${who(from)} either: let a team-mate show for it, or draw the opponent away first.`;
  const ways = open.slice(0, 3).map((lane) => `${who(lane.to)}${lane.open === 'lofted' ? ' through the air' : ''}`);
  return `Open at that moment: ${list(ways)}. Or draw the opponent away first.`;
}

function reportAt({ phases }: DrillAnalysis, from: number): LaneReport | undefined {
  return phases.flatMap(({ lanes, timeline }) => lanes.filter(({ pass }) => pass !== null && timeline.passes[pass]!.action.span.from === from))[0];
}
