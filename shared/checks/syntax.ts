import type { Fault } from '../../grammar/fault.ts';
import type { Problem } from '../problem.ts';
import { problem, type Check } from './check.ts';

export const check: Check = {
  code: 'syntax',
  group: 'writing',
  severity: 'error',
  title: 'This line cannot be read',
  why: 'A statement that cannot be read is left out; reading goes on with the next one, so that the rest of the drill is still drawn and checked.',
  source: null,
  bad: [
    `drill "Two" {
  area 12 x 12
  station Base ⟦on⟧ (2, 6)
}
`,
  ],
  good: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
}
`,
  ],
  find: null,
};

export function syntax({ span, message, help, fix }: Fault): Problem {
  return problem(check, span, message, { help, fixes: fix ? [{ title: fix.title, edits: [{ span, text: fix.text }] }] : [] });
}
