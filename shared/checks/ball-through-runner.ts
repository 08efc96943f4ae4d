import { races } from '../games/possession.ts';
import { ballMeetings, crossings } from '../timeline/meetings.ts';
import { problem, type Check } from './check.ts';
import { playOver, startLater } from './cures.ts';
import { seconds, spot, Who, who } from './say.ts';

export const check: Check = {
  code: 'ball-through-runner',
  group: 'time',
  severity: 'warning',
  title: 'The ball crosses a runner’s path as they are there',
  why: 'The ball and a runner who is not meant to have it are at one place at one time: it hits their heels, or they stop to let it through. Both are followed in time; a ball that passes well before or behind is fine, and so is one over head height. Two balls that meet on their way are told as well.',
  source: 'Half a metre between the ball and the middle of the body, and 2 m of height: choices without a source.',
  bad: [
    `drill "Through" {
  area 20 x 16
  station Base at (2, 8)
  station Wall at (16, 8)
  station Low at (9, 6.7)
  ball at Base
  sequence {
    Base ⟦passes to Wall⟧ while Low runs to (9, 12) then waits 2 s then runs to Low
    Wall passes to Base
    Base waits 4 s
  }
}
`,
    `drill "Cross" {
  area 24 x 16
  station RightLow at (18, 2)
  station RightTop at (6, 14)
  station LeftLow at (6, 2)
  station LeftTop at (18, 14)
  ball at RightLow
  ball at LeftLow
  sequence "right" {
    RightLow ⟦passes to RightTop, lofted⟧
    RightTop passes to LeftLow
  }
  sequence "left" mirrors "right" across length
  order right and left
}
`,
  ],
  good: [
    `drill "Through" {
  area 20 x 16
  station Base at (2, 8)
  station Wall at (16, 8)
  station Low at (9, 6.7)
  ball at Base
  sequence {
    Base passes to Wall
    Wall passes to Base
    Base waits 4 s while Low runs to (9, 12) then runs to Low
  }
}
`,
  ],
  inPhases: true,
  find: ({ drill, timeline }) => [
    ...crossings(timeline).filter((crossing) => !races(drill, crossing.pass, crossing.actor)).map((crossing) =>
      problem(check, crossing.pass.action.span, `The ball from ${who(crossing.pass.from)} and ${who(crossing.actor)} are both at ${spot(drill, crossing.at)}, ${seconds(crossing.time)} into the repetition.`, {
        help: 'Let the run start earlier or later (`after 0.5 s`), take it round (`via`), or play over it (`lofted`).',
        related: [{ span: crossing.move.action.span, message: `${Who(crossing.actor)} comes this way.` }],
      }),
    ),
    ...ballMeetings(timeline).map(({ pass, other, at, time }) =>
      problem(check, pass.action.span, `The balls from ${who(pass.from)} and ${who(other.from)} meet at ${spot(drill, at)}, ${seconds(time)} into the repetition.`, {
        help: 'Let one of them be played later (`after 0.5 s`), over the other (`lofted`), or another way.',
        related: other.action.span.from === pass.action.span.from ? [] : [{ span: other.action.span, message: 'This is the other ball.' }],
      }),
    ),
  ],
  cures: (found, _, text) => [...found.related.flatMap((related) => startLater(related.span, text)), playOver(found.span)],
};
