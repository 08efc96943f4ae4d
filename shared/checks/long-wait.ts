import type { Track } from '../timeline/timeline.ts';
import { problem, type Check } from './check.ts';
import { seconds, Who } from './say.ts';

/** A share of the repetition, and seconds, that somebody may stand still in one stretch before it is told. */
const share = 0.6;
const least = 15;

export const check: Check = {
  code: 'long-wait',
  group: 'time',
  severity: 'info',
  title: 'A player stands still for most of the repetition',
  why: 'Somebody with a part in the pattern stands for more than 15 seconds in a row, and for more than three fifths of the repetition. Players who wait that long get cold and look away; give them a movement, a second ball, or split the group.',
  source: 'Both limits are choices without a source.',
  bad: [
    `drill "Wait" {
  area 20 x 16
  station ⟦Base⟧ at (2, 8)
  station Wall at (10, 8)
  ball at Wall
  sequence {
    Wall dribbles to (18, 14) at walk
    Wall dribbles to (18, 2) at walk
    Wall dribbles to (10, 8) at walk
    Wall passes to Base
    Base passes to Wall
  }
}
`,
  ],
  good: [
    `drill "Wait" {
  area 20 x 16
  station Base at (2, 8)
  station Wall at (10, 8)
  ball at Wall
  sequence {
    Wall dribbles to (18, 14) at walk while Base runs to (2, 14) at walk
    Wall dribbles to (18, 2) at walk while Base runs to (2, 8) at walk
    Wall dribbles to (10, 8) at walk
    Wall passes to Base
    Base passes to Wall
  }
}
`,
  ],
  find: ({ drill, timeline }) =>
    timeline.tracks.flatMap((track) => {
      const actor = drill.actors.find((each) => each.id === track.actor);
      const busy = [...track.moves, ...track.touches, ...timeline.passes.filter((pass) => pass.to === track.actor).map((pass) => ({ start: pass.arrival, end: pass.arrival }))];
      if (!actor || actor.kind === 'coach' || actor.kind === 'next' || busy.length === 0) return [];
      const wait = longestGap(busy, timeline.duration);
      if (wait < least || wait < share * timeline.duration) return [];
      const station = drill.stations.find((each) => each.id === actor.station);
      return problem(check, station?.nameSpan ?? actor.span, `${Who(track.actor)} stands still for ${seconds(wait)} of the ${seconds(timeline.duration)} a repetition takes.`, {
        help: 'Give them a movement to make, start the next ball earlier, or make two smaller groups.',
      });
    }),
};

/** The longest time, in seconds, in which nothing happens to them. */
function longestGap(busy: readonly Pick<Track['moves'][number], 'start' | 'end'>[], duration: number): number {
  let longest = 0;
  let until = 0;
  for (const { start, end } of [...busy].sort((a, b) => a.start - b.start)) {
    longest = Math.max(longest, start - until);
    until = Math.max(until, end);
  }
  return Math.max(longest, duration - until);
}
