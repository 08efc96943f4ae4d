import { problem, type Check } from './check.ts';
import { seconds, spot, Who } from './say.ts';

export const check: Check = {
  code: 'still-running',
  group: 'time',
  severity: 'error',
  title: 'Asked to act while on the way somewhere else',
  why: 'A beat asks for the next movement before the last one is over. Nobody can do both; on the grass the first run is cut short and ends somewhere else.',
  source: null,
  bad: [
    `drill "Runs" {
  age U13
  area 24 x 16
  station Base at (2, 2)
  station Wall at (10, 2)
  station Top at (12, 10)
  ball at Base
  sequence {
    Base passes to Wall while Top runs to (22, 14)
    Wall passes to Base while Top ⟦runs to (12, 12)⟧
    Base waits 6 s
  }
}
`,
  ],
  good: [
    `drill "Runs" {
  age U13
  area 24 x 16
  station Base at (2, 2)
  station Wall at (10, 2)
  station Top at (12, 10)
  ball at Base
  sequence {
    Base passes to Wall while Top runs to (22, 14) then runs to (12, 12)
    Wall passes to Base
    Base waits 6 s
  }
}
`,
  ],
  inPhases: true,
  find: ({ drill, timeline }) =>
    timeline.faults.flatMap((fault) => {
      if (fault.kind !== 'still-running') return [];
      const to = spot(drill, fault.during.path.to);
      return problem(check, fault.action.span, `${Who(fault.actor)} is still on the way to ${to} for another ${seconds(fault.by)}.`, {
        help: 'Join the two with `then`, or ask for the second one beat later.',
        related: [{ span: fault.during.action.span, message: 'This is the movement that is not over.' }],
      });
    }),
};
