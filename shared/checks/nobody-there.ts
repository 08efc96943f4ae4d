import { problem, type Check } from './check.ts';
import { long, spot, Who } from './say.ts';

export const check: Check = {
  code: 'nobody-there',
  group: 'ball',
  severity: 'error',
  title: 'Nobody is there to take the ball',
  why: 'A ball played to a place is for whoever stands there or is on the way there. When nobody is within a step and a half of it, it rolls out of the drill and the next line has nothing to play.',
  source: null,
  bad: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  ball at Base
  sequence {
    Base passes to Wall
    Wall passes to ⟦(6, 11)⟧
    Wall passes to Base
  }
}
`,
  ],
  good: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  ball at Base
  sequence {
    Base passes to Wall
    Wall passes into (3, 7) for Base
    Base touches to (2, 6)
  }
}
`,
  ],
  inPhases: true,
  find: ({ drill, timeline }) =>
    timeline.faults.flatMap((fault) => {
      if (fault.kind !== 'nobody-there') return [];
      const { action, nearest } = fault;
      const where = action.at ? spot(drill, action.at) : 'that place';
      const near = nearest ? ` ${Who(nearest.actor)} is the nearest, ${long(drill, nearest.distance)} away.` : '';
      return problem(check, action.targetSpan ?? action.span, `Nobody is at ${where} when the ball comes.${near}`, {
        help: `Say who it is for, and they go to meet it: passes into ${where} for ${nearest?.actor ?? 'Left'}`,
      });
    }),
  cures: (found, { timeline }, text) =>
    timeline.faults.flatMap((fault) => {
      const target = fault.action.targetSpan;
      if (fault.kind !== 'nobody-there' || target?.from !== found.span.from || !fault.nearest || fault.action.verb !== 'passes to') return [];
      const words = `passes into ${text.slice(target.from, target.to)} for ${fault.nearest.actor}`;
      const title = `Play it into space for ${fault.nearest.actor}`;
      return [{ title, about: 'for', edits: [{ span: { from: fault.action.verbSpan.from, to: target.to }, text: words }] }];
    }),
};
