import { minutes } from '../session/words.ts';
import { problem, type Check } from './check.ts';
import { writtenTime } from './sessions.ts';

export const check: Check = {
  code: 'time-mismatch',
  group: 'session',
  severity: 'error',
  title: 'The parts do not fill the session',
  why: 'The length of a session is the time the ground is yours. Parts and pauses that take longer run into the next team; those that take less leave players standing. They are added up and must come to the length.',
  source: null,
  bad: [
    `drill "Wall" {
  players 3
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}

session "Tuesday" {
  length ⟦60 min⟧
  part "First" 25 min of "Wall"
  pause 5 min
  part "Second" 20 min of "Wall"
}
`,
  ],
  good: [
    `drill "Wall" {
  players 3
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}

session "Tuesday" {
  length 60 min
  part "First" 25 min of "Wall"
  pause 5 min
  part "Second" 30 min of "Wall"
}
`,
  ],
  find: null,
  findInSession: ({ session: { length, parts } }) => {
    const sum = parts.reduce((total, part) => total + part.length, 0);
    const off = length ? sum - length.value : 0;
    if (!length?.span || parts.length === 0 || Math.abs(off) < 0.5) return [];
    const message = `Parts and pauses take ${minutes(sum)}; that is ${minutes(Math.abs(off))} ${off > 0 ? 'more' : 'less'} than the ${minutes(length.value)} of the session.`;
    return [problem(check, length.span, message, {
      help: off > 0 ? `Shorten a part or a pause by ${writtenTime(off)}, or write \`length ${writtenTime(sum)}\`.`
        : `Lengthen a part by ${writtenTime(-off)}, add a pause of ${writtenTime(-off)}, or write \`length ${writtenTime(sum)}\`.`,
    })];
  },
  curesInSession: (_, { session: { length, parts } }) => {
    const sum = parts.reduce((total, part) => total + part.length, 0);
    if (!length?.span) return [];
    const fitting = parts.flatMap((part) => {
      const time = part.length + length.value - sum;
      return part.kind === 'part' && time > 0 ? [{ part, time }] : [];
    });
    return [
      ...fitting.sort((a, b) => b.part.length - a.part.length).map(({ part, time }) => ({
        title: `Let "${part.name}" take ${writtenTime(time)}`,
        about: part.name,
        edits: [{ span: part.lengthSpan, text: writtenTime(time) }],
      })),
      { title: `Let the session take ${writtenTime(sum)}`, about: 'length', edits: [{ span: length.span, text: writtenTime(sum) }] },
    ];
  },
};
