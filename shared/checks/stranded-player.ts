import { distance } from '../geometry/point.ts';
import { problem, type Check } from './check.ts';
import { long, spot } from './say.ts';

export const check: Check = {
  code: 'stranded-player',
  group: 'rotation',
  severity: 'error',
  title: 'A player ends the repetition at no station',
  why: 'Without a `rotate` line the rotation is read from where the players’ movements end. Someone who ends between the stations has no place for the next repetition.',
  source: null,
  bad: [
    `drill "Pair" {
  area 20 x 20
  station Base at (2, 2)
  station Wall at (12, 2)
  ball at Base
  sequence {
    Base passes to Wall
    Wall passes to Base while Wall ⟦runs to (12, 12)⟧
    Base waits 3 s
  }
}
`,
  ],
  good: [
    `drill "Pair" {
  area 20 x 20
  station Base at (2, 2)
  station Wall at (12, 2)
  ball at Base
  sequence {
    Base passes to Wall
    Wall passes to Base while Wall runs to (12, 8) then runs to Wall
    Base waits 5 s
  }
}
`,
  ],
  find: ({ drill, timeline, rotation }) =>
    (rotation?.moves ?? []).flatMap((move) => {
      const last = timeline.tracks.find((track) => track.actor === move.actor)?.moves.at(-1);
      if (move.to !== null || !last) return [];
      const end = last.path.to;
      const near = [...drill.stations].sort((a, b) => distance(a.at, end) - distance(b.at, end))[0]!;
      return problem(check, last.action.span, `\`${move.actor}\` ends the repetition at ${spot(drill, end)}, at no station; \`${near.name}\` is the nearest, ${long(drill, distance(near.at, end))} away.`, {
        help: `Let them go on (then runs to ${near.name}), or write who goes where: rotate …`,
      });
    }),
  cures: (found, { drill }) =>
    drill.stations.map((station) => ({
      title: `Let them run on to ${station.name}`,
      about: station.name,
      edits: [{ span: { from: found.span.to, to: found.span.to }, text: ` then runs to ${station.name}` }],
    })),
};
