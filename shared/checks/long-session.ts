import { sessionLengthFor, sessionLengths } from '../session/guidance.ts';
import { problem, type Check } from './check.ts';
import { writtenTime } from './sessions.ts';

export const check: Check = {
  code: 'long-session',
  group: 'care',
  severity: 'info',
  title: 'A long session for this age',
  why: 'Young players learn and recover better in sessions made for their age. The length is put beside the longest that the guidance gives for the next age group it names; grown-ups are not compared. It is guidance of one association, not a rule: yours, and what the players have done that week, come first.',
  source: sessionLengths.source,
  bad: [
    `session "Tuesday" {
  age U10
  length ⟦90 min⟧
  part "Play" 90 min
}
`,
  ],
  good: [
    `session "Tuesday" {
  age U10
  length 75 min
  part "Play" 75 min
}
`,
  ],
  find: null,
  findInSession: ({ session: { age, ageLabel, length, parts, nameSpan } }) => {
    const row = age.span ? sessionLengthFor(age.value) : null;
    const time = length?.value ?? parts.reduce((sum, part) => sum + part.length, 0);
    if (!row || time <= row.most * 60) return [];
    const range = row.least === row.most ? `${row.most} min` : `${row.least} to ${row.most} min`;
    const message = `The session takes ${writtenTime(time)}; for ${row.label === ageLabel ? ageLabel : `${ageLabel} (${row.label} in the table)`} the guidance is ${range}.`;
    return [problem(check, length?.span ?? nameSpan, message, { help: `Fine if it is meant: this is guidance (${sessionLengths.source}), and local rules and the people on the spot come first.` })];
  },
};
