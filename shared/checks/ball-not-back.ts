import { distance, type Point } from '../geometry/point.ts';
import type { DrillAnalysis } from '../analyse.ts';
import type { BallTrack } from '../timeline/timeline.ts';
import { problem, type Check } from './check.ts';
import { long, spot, who } from './say.ts';

/** A ball this close to where one is needed can be played from there: metres. */
const near = 2.5;

export const check: Check = {
  code: 'ball-not-back',
  group: 'ball',
  severity: 'error',
  title: 'The next repetition has no ball',
  why: 'A pattern that runs round needs its ball back where it begins: at the place itself, with the next in the queue, or with someone whose way leads there. Otherwise put a supply of balls at the start (`balls 6 at Base`).',
  source: null,
  bad: [
    `drill "Two" {
  area 14 x 12
  station Base at (2, 6)
  station Wall at (12, 6)
  ball at Base
  sequence {
    Base ⟦passes to Wall⟧
  }
}
`,
  ],
  good: [
    `drill "Two" {
  area 14 x 12
  station Base at (2, 6)
  station Wall at (12, 6)
  balls 6 at Base
  sequence {
    Base passes to Wall
  }
}
`,
  ],
  find: (analysis) => {
    const { drill, timeline } = analysis;
    const used = timeline.balls.filter((ball) => ball.stretches.some((stretch) => stretch.kind !== 'still'));
    const spots = used.map((ball) => ball.home);
    if (timeline.faults.some((fault) => fault.kind === 'no-ball')) return [];
    return used.flatMap((ball) => {
      const end = endOf(ball);
      const back = spots.some((spot) => distance(end.at, spot) <= near) || comesBack(analysis, ball, spots) || isSpare(analysis, ball);
      const pass = timeline.passes.filter((each) => each.ball === ball.id).at(-1);
      const last = pass?.action ?? lastCarry(ball);
      if (back || !last) return [];
      const start = drill.actors.find((actor) => distance(actor.home, ball.home) <= near);
      const where = end.holder === null ? `lies at ${spot(drill, end.at)}` : `is with ${who(end.holder)} at ${spot(drill, end.at)}`;
      return problem(
        check,
        last.span,
        `The repetition ends here: the ball ${where}, ${long(drill, distance(end.at, ball.home))} from where it began, and the next one cannot start.`,
        { help: start ? `Bring it back, as with \`passes to next ${start.id}\`, or put a supply at the start: balls 6 at ${start.id}` : 'Bring it back, or put a supply of balls at the start.' },
      );
    });
  },
};

function endOf(ball: BallTrack): { readonly at: Point; readonly holder: string | null } {
  const last = ball.stretches.at(-1)!;
  switch (last.kind) {
    case 'still':
      return { at: last.at, holder: last.holder };
    case 'carried':
      return { at: last.move.path.to, holder: last.holder };
    case 'flight':
      return { at: last.to, holder: null };
  }
}

/** Whoever has the ball last walks to a place where a repetition begins. */
function comesBack({ drill, timeline, rotation }: DrillAnalysis, ball: BallTrack, spots: readonly Point[]): boolean {
  const pass = timeline.passes.filter((each) => each.ball === ball.id).at(-1);
  const holder = endOf(ball).holder ?? pass?.to ?? null;
  const next = rotation?.moves.find((move) => move.actor === holder)?.to ?? drill.actors.find((actor) => actor.id === holder)?.station;
  const station = drill.stations.find((each) => each.id === next);
  return station !== undefined && spots.some((spot) => distance(station.at, spot) <= near);
}

/** There is another ball where this one began. */
function isSpare({ drill }: DrillAnalysis, ball: BallTrack): boolean {
  return drill.balls.some((supply) => supply.count > 1 && distance(supply.at, ball.home) <= near);
}

function lastCarry(ball: BallTrack): { readonly span: { readonly from: number; readonly to: number } } | null {
  const carried = ball.stretches.filter((stretch) => stretch.kind === 'carried').at(-1);
  return carried ? carried.move.action : null;
}
