import { problem, type Check } from './check.ts';

export const check: Check = {
  code: 'next-not-ready',
  group: 'rotation',
  severity: 'error',
  title: 'Nobody waits where the next repetition starts',
  why: 'The last ball goes to the next in the queue, so somebody must be waiting there: a second player at the station from the start, or one who has come to it in the meantime.',
  source: null,
  bad: [
    `drill "Triangle" {
  area 14 x 14
  station Base at (2, 2)
  station Left at (2, 12)
  station Right at (12, 12)
  ball at Base
  sequence {
    Base passes to Left
    Left passes to Right
    Right passes to ⟦next Base⟧
  }
  rotate Base -> Left -> Right -> Base
}
`,
  ],
  good: [
    `drill "Triangle" {
  area 14 x 14
  station Base at (2, 2) holds 2
  station Left at (2, 12)
  station Right at (12, 12)
  ball at Base
  sequence {
    Base passes to Left
    Left passes to Right
    Right passes to next Base
  }
  rotate Base -> Left -> Right -> Base
}
`,
  ],
  find: ({ drill, timeline }) =>
    timeline.faults.flatMap((fault) => {
      if (fault.kind !== 'next-not-ready') return [];
      const station = drill.stations.find((each) => each.id === fault.station)!;
      return problem(check, fault.action.receiverSpan ?? fault.action.targetSpan ?? fault.action.span, `Nobody waits at \`${station.name}\` for this ball: one player starts there, and no one has come since.`, {
        help: `Let two start there (holds 2), or send someone to \`${station.name}\` before.`,
        related: [{ span: station.span, message: `\`${station.name}\` holds ${station.holds}.` }],
      });
    }),
  cures: (found, { drill }, text) => {
    const station = drill.stations.find((each) => found.related.some((related) => related.span.from === each.span.from));
    if (!station || / holds /.test(text.slice(station.span.from, station.span.to))) return [];
    return [{ title: `Let two start at ${station.name}`, about: 'holds', edits: [{ span: { from: station.span.to, to: station.span.to }, text: ' holds 2' }] }];
  },
};
