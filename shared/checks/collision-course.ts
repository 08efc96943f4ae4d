import { meetings } from '../timeline/meetings.ts';
import { problem, type Check } from './check.ts';
import { startLater } from './cures.ts';
import { seconds, spot, Who, who } from './say.ts';

export const check: Check = {
  code: 'collision-course',
  group: 'time',
  severity: 'warning',
  title: 'Two players run into each other',
  why: 'Two players come within arm’s reach of each other while both are moving. In a crowded grid with young players that is how heads meet. The ways of both are followed in time, so paths that cross one after the other are fine.',
  source: 'Arm’s reach taken as 0.8 m between the middles of two bodies: a choice without a source.',
  bad: [
    `drill "Cross" {
  area 16 x 16
  station Base at (2, 2)
  station Wall at (10, 2)
  station Left at (2, 14)
  station Right at (14, 14)
  ball at Base
  sequence {
    Base passes to Wall while Left runs to (10, 14) then runs to Left, Right ⟦runs to (6, 14)⟧ then runs to Right
    Wall passes to Base
    Base waits 5 s
  }
}
`,
  ],
  good: [
    `drill "Cross" {
  area 16 x 16
  station Base at (2, 2)
  station Wall at (10, 2)
  station Left at (2, 14)
  station Right at (14, 14)
  ball at Base
  sequence {
    Base passes to Wall while Left runs to (10, 14) then runs to Left, Right runs to (6, 10) then runs to Right
    Wall passes to Base
    Base waits 5 s
  }
}
`,
  ],
  inPhases: true,
  find: ({ drill, timeline }) =>
    meetings(timeline).map((meeting) =>
      problem(check, meeting.later.action.span, `${Who(meeting.laterActor)} and ${who(meeting.earlierActor)} meet at ${spot(drill, meeting.at)}, ${seconds(meeting.time)} into the repetition.`, {
        help: 'Send one of them round the other side (`via`), or let one go a moment later (`after 0.5 s`).',
        related: [{ span: meeting.earlier.action.span, message: `${Who(meeting.earlierActor)} comes this way.` }],
      }),
    ),
  cures: (found, _, text) => [found.span, ...found.related.map((related) => related.span)].flatMap((span) => startLater(span, text)),
};
