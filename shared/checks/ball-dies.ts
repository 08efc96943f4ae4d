import { problem, type Check } from './check.ts';
import { long, Who } from './say.ts';

export const check: Check = {
  code: 'ball-dies',
  group: 'ball',
  severity: 'error',
  title: 'The ball stops before it gets there',
  why: 'Grass and air slow a rolling ball down, and a young player can only strike it so hard. The ball is struck as hard as the age allows, and still comes to rest short of its target.',
  source: 'Rolling friction from the ball-roll requirement of the turf test; the hardest pass from 81.24 km/h of adults (Qualls et al.), scaled by age.',
  bad: [
    `drill "Long" {
  age U8
  area 40 x 20
  ground grass roll 3
  station Base at (2, 10)
  station Wall at (38, 10)
  station Far at (29, 13)
  station Middle at (20, 13)
  station Near at (11, 13)
  ball at Base
  sequence {
    Base passes to ⟦Wall⟧
    Wall passes to Far first time
    Far passes to Middle first time
    Middle passes to Near first time
    Near passes to Base first time
  }
}
`,
  ],
  good: [
    `drill "Long" {
  age U8
  area 20 x 20
  ground grass roll 3
  station Base at (2, 10)
  station Wall at (10, 10)
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
      if (fault.kind !== 'ball-dies') return [];
      const { action, length, stopsAfter } = fault;
      const age = drill.ageLabel === null ? 'a grown player' : `a player of ${drill.ageLabel}`;
      return problem(
        check,
        action.receiverSpan ?? action.targetSpan ?? action.span,
        `${Who(fault.actor)} plays ${long(drill, length)}, but the hardest ball of ${age} ${action.lofted || action.verb === 'crosses to' ? 'comes down' : 'stops on this ground'} after ${long(drill, stopsAfter)}.`,
        { help: 'Shorten the pass, or put someone in between.' },
      );
    }),
};
