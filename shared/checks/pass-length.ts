import { distance } from '../geometry/point.ts';
import { greatestLaunch } from '../physics/ball.ts';
import { constants } from '../physics/constants.ts';
import { problem, type Check } from './check.ts';
import { lengthCures } from './cures.ts';
import { long, who } from './say.ts';

/** A ball played less far than this is handed over, not passed: metres. Common practice, no source. */
const shortest = { pass: 2, set: 1 };
/** A launch speed over the limit by less than this factor is not told: the limit is no sharper than that. */
const tolerance = 1.02;

export const check: Check = {
  code: 'pass-length',
  group: 'ball',
  severity: 'warning',
  title: 'The pass is too short or too long',
  why: 'Two players closer than two steps do not need a pass. And a ball that must be struck with more than two thirds of all their strength (four fifths through the air) to arrive at the tempo of the drill will not come cleanly again and again.',
  source: 'The hardest inside-foot pass of adults is 81.24 km/h (Qualls et al.); younger players are scaled by their top speed, a choice without a source. Two metres: common practice, no source.',
  bad: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at (3.5, 6)
  ball at Base
  sequence {
    Base ⟦passes to Wall⟧
    Wall dribbles to (3, 8)
    Wall passes to Base
  }
}
`,
    `drill "Two" {
  age U9
  area 40 x 12
  station Base at (2, 6)
  station Wall at (36, 6)
  station Middle at (19, 10)
  ball at Base
  sequence {
    Base ⟦passes to Wall⟧
    Wall passes to Middle
    Middle passes to Base
  }
}
`,
  ],
  good: [
    `drill "Two" {
  age U9
  area 20 x 12
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
    timeline.passes.flatMap((pass) => {
      const length = distance(pass.fromAt, pass.toAt);
      const to = pass.to === null ? '' : ` to ${who(pass.to)}`;
      const least = pass.kind === 'set' ? shortest.set : shortest.pass;
      if (length < least && pass.to !== null) {
        return problem(check, pass.action.span, `${long(drill, length)} from ${who(pass.from)}${to} is too short for a pass.`, {
          help: `Put at least ${long(drill, least)} between them.`,
        });
      }
      const { kind, launch } = pass.flight;
      const most = greatestLaunch(drill.age.value, kind) * constants.comfortableShare.value[kind];
      const died = timeline.faults.some((fault) => fault.kind === 'ball-dies' && fault.action === pass.action);
      if (launch <= most * tolerance || pass.kind === 'shot' || died) return [];
      const age = drill.ageLabel ?? 'grown players';
      return problem(
        check,
        pass.action.span,
        `${long(drill, length)} from ${who(pass.from)}${to} is long for ${age}: it must leave at ${speed(launch)}, and ${speed(most)} is what they play cleanly.`,
        { help: kind === 'loft' ? 'Shorten it, or put someone in between.' : 'Shorten it, play it soft, put someone in between, or take a slower tempo.' },
      );
    }),
  cures: lengthCures,
};

function speed(value: number): string {
  return `${value.toFixed(1)} m/s`;
}
