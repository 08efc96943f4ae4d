import { problem, type Check } from './check.ts';
import { Who } from './say.ts';

export const check: Check = {
  code: 'pass-to-self',
  group: 'ball',
  severity: 'error',
  title: 'A player passes to themselves',
  why: 'A pass needs a second player. Who moves the ball for themselves touches it (`touches to`) or runs with it (`dribbles to`); the next in the queue is `next Base`.',
  source: null,
  bad: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  ball at Base
  sequence {
    Base passes to Wall
    Wall passes to Base
    Base passes to ⟦Base⟧
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
    Wall passes to Base
  }
}
`,
  ],
  inPhases: true,
  find: ({ drill, timeline }) =>
    timeline.faults.flatMap((fault) => {
      if (fault.kind !== 'pass-to-self') return [];
      const queued = drill.stations.some((station) => station.id === fault.actor && station.holds >= 2);
      return problem(check, fault.action.receiverSpan ?? fault.action.targetSpan ?? fault.action.span, `${Who(fault.actor)} passes to themselves.`, {
        help: queued ? `For the next in the queue write \`next ${fault.actor}\`.` : 'Name who receives the ball, or write `touches to` or `dribbles to` to move with it.',
      });
    }),
};
