import { problem, type Check } from './check.ts';
import { seconds } from './say.ts';

/** Standing in a queue for more than this many times as long as one plays, and for more than this many seconds, is told. */
const ratio = 3;
const least = 30;

export const check: Check = {
  code: 'queue-length',
  group: 'rotation',
  severity: 'info',
  title: 'The queue is long',
  why: 'The wait of whoever joins the end of a queue is the number in front of them times the time between two starts. Past three times the length of their own turn, and half a minute, children stand more than they play. A second ball, a shorter interval or two groups mend it. When the drill sets its own `bouts`, their rest is what counts.',
  source: 'No published figure for queues was found: three to one and 30 s are choices. Small-sided games use work to rest between 4:1 and 1:1 (Casamichana et al. 2013; Kelly & Drust 2009).',
  bad: [
    `drill "Queue" {
  area 16 x 14
  station ⟦Base⟧ at (2, 7) holds 9
  station Wall at (14, 7)
  ball at Base
  sequence {
    Base passes to Wall while Base follows
    Wall passes to next Base while Wall follows
  }
}
`,
  ],
  good: [
    `drill "Queue" {
  area 16 x 14
  station Base at (2, 7) holds 3
  station Wall at (14, 7)
  ball at Base
  sequence {
    Base passes to Wall while Base follows
    Wall passes to next Base while Wall follows
  }
}
`,
  ],
  find: ({ drill, timeline, measures }) => {
    const interval = measures.interval?.seconds ?? 0;
    return drill.stations.flatMap((station) => {
      const part = timeline.tracks.find((track) => track.actor === station.id);
      const turn = part ? Math.max(part.moves.at(-1)?.end ?? 0, part.touches.at(-1)?.end ?? 0) : 0;
      const wait = (station.holds - 1) * interval;
      const most = drill.bouts && drill.bouts.rest > 0 ? drill.bouts.rest : Math.max(least, ratio * turn);
      if (station.holds < 2 || wait <= most) return [];
      return problem(check, station.nameSpan, `The last of ${station.holds} at \`${station.name}\` waits ${seconds(wait)} for a turn of ${seconds(turn)}.`, {
        help: 'Work with a second ball, start the next one earlier, or make two groups.',
      });
    });
  },
};
