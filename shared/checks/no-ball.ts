import type { ActorId, Drill } from '../model/drill.ts';
import { problem, type Check } from './check.ts';
import { Who, who } from './say.ts';

export const check: Check = {
  code: 'no-ball',
  group: 'ball',
  severity: 'error',
  title: 'Someone plays a ball they do not have',
  why: 'A pass, a dribble or a shot needs a ball at the feet. Every ball is followed from where it lies at the start to whoever receives it; a player who is asked to play without one is mostly a line left out or in the wrong order.',
  source: null,
  bad: [
    `drill "Three" {
  area 12 x 12
  station Base at (2, 2)
  station Wall at (10, 2)
  station Far at (6, 10)
  ball at Base
  sequence {
    Base passes to Wall
    Far ⟦passes to Base⟧
    Base passes to Wall
    Wall passes to Base
  }
}
`,
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  sequence {
    Base ⟦passes to Wall⟧
    Wall passes to Base
  }
}
`,
  ],
  good: [
    `drill "Three" {
  area 12 x 12
  station Base at (2, 2)
  station Wall at (10, 2)
  station Far at (6, 10)
  ball at Base
  sequence {
    Base passes to Wall
    Wall passes to Far
    Far passes to Base
  }
}
`,
  ],
  inPhases: true,
  find: ({ drill, timeline }) =>
    timeline.faults.flatMap((fault) => {
      if (fault.kind !== 'no-ball') return [];
      if (drill.balls.length === 0) {
        return problem(check, fault.action.span, 'Nobody has a ball yet.', { help: `Write where it starts: ball at ${fault.actor}` });
      }
      const lost = fault.action.verb === 'wins the ball from';
      const where = fault.holder === null ? 'it lies free' : `it is with ${who(fault.holder)}`;
      return problem(check, fault.action.span, `${Who(fault.actor)} has no ball to ${lost ? 'lose' : 'play'}: ${where}.`, {
        help: `Let the pass before this one go to them, or give them a ball of their own with \`ball at\`.${queueHelp(drill, fault.actor)}`,
      });
    }),
  cures: (found, { drill, timeline }, text) =>
    timeline.faults.flatMap((fault) => {
      const last = drill.stations.at(-1);
      if (fault.kind !== 'no-ball' || fault.action.span.from !== found.span.from || !last) return [];
      const indent = text.slice(text.lastIndexOf('\n', last.span.from) + 1, last.span.from);
      const line = `\n${indent}ball at ${fault.actor}`;
      return [{ title: `Give ${fault.actor} a ball`, about: 'ball', edits: [{ span: { from: last.span.to, to: last.span.to }, text: line }] }];
    }),
};

/** Within a repetition a station's name stays with the one who began there. */
function queueHelp({ stations }: Drill, actor: ActorId): string {
  const station = stations.find(({ id, holds }) => id === actor && holds > 1);
  return station ? ` If whoever waits behind them is meant, write \`next ${station.name}\`.` : '';
}
