import type { DrillAnalysis } from '../analyse.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import type { Problem } from '../problem.ts';
import type { Track } from '../timeline/timeline.ts';
import { problem, type Check } from './check.ts';
import { seconds, Who, who } from './say.ts';

/** A share of the repetition, and seconds, that somebody may stand still in one stretch before it is told. */
const share = 0.6;
const least = 15;
/** Seconds that somebody may stand with the ball until an opponent comes to win it. */
const longestHold = 2.5;

const steal = (cid: string): string => `drill "Won" {
  age U15
  area 30 x 30
  team Reds bib orange
  team Blues bib blue
  player Ann of Reds at (5, 15)
  player Bea of Reds at (25, 5)
  player Cid of Blues at ${cid}
  ball at Ann
  phase "Lost" {
    Cid ⟦wins the ball from Ann⟧
  }
}
`;

export const check: Check = {
  code: 'long-wait',
  group: 'time',
  severity: 'info',
  title: 'A player stands still for too long',
  why: 'Somebody with a part in the pattern stands for more than 15 seconds in a row, and for more than three fifths of the repetition. Players who wait that long get cold and look away; give them a movement, a second ball, or split the group. In a game, whoever has the ball does not stand and wait until an opponent has come to win it: more than two and a half seconds of that is a warning.',
  source: 'The limits are choices without a source.',
  bad: [
    steal('(15, 26)'),
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
    steal('(8, 16)').replace(/[⟦⟧]/g, ''),
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
  find: (analysis) => [...standing(analysis), ...analysis.phases.flatMap(steals)],
};

function standing({ drill, timeline }: DrillAnalysis): Problem[] {
  return timeline.tracks.flatMap((track) => {
    const actor = drill.actors.find((each) => each.id === track.actor);
    const busy = [...track.moves, ...track.touches, ...timeline.passes.filter((pass) => pass.to === track.actor).map((pass) => ({ start: pass.arrival, end: pass.arrival }))];
    if (!actor || actor.kind === 'coach' || actor.kind === 'next' || busy.length === 0) return [];
    const wait = longestGap(busy, timeline.duration);
    if (wait < least || wait < share * timeline.duration) return [];
    const station = drill.stations.find((each) => each.id === actor.station);
    return problem(check, station?.nameSpan ?? actor.span, `${Who(track.actor)} stands still for ${seconds(wait)} of the ${seconds(timeline.duration)} a repetition takes.`, {
      help: 'Give them a movement to make, start the next ball earlier, or make two smaller groups.',
    });
  });
}

/** Balls that are won while their holder does nothing but wait for it. */
function steals({ timeline }: PhaseAnalysis): Problem[] {
  return timeline.tracks.flatMap(({ actor, moves }) =>
    moves.flatMap(({ action, end }) => {
      const loser = action.about?.who;
      if (action.verb !== 'wins the ball from' || !loser) return [];
      const kept = timeline.balls.flatMap(({ stretches }) => stretches.filter((each) => each.kind === 'still' && each.holder === loser && each.end >= end - 1e-6 && each.start < end));
      const wait = kept[0] ? end - kept[0].start : 0;
      if (wait <= longestHold) return [];
      return problem(check, action.span, `${Who(loser)} stands with the ball for ${seconds(wait)} until ${who(actor)} is there to win it.`, {
        severity: 'warning',
        help: `Let ${actor} press before that, or let somebody who is nearer win it; who has the ball for so long plays it on.`,
      });
    }),
  );
}

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
