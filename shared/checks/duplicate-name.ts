import type { Span } from '../../grammar/tree.ts';
import { spanOf } from '../model/span.ts';
import type { Problem } from '../problem.ts';
import { problem, type Check } from './check.ts';

export const check: Check = {
  code: 'duplicate-name',
  group: 'writing',
  severity: 'error',
  title: 'Declared twice',
  why: 'A name stands for one thing. With two, a pass to it could go to either, and a coach reading the sheet could not tell which. The first one counts.',
  source: null,
  bad: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  pole ⟦Base⟧ at (10, 6)
}
`,
    `drill "Two" {
  age U10
  ⟦age U12⟧
  area 12 x 12
}
`,
  ],
  good: [
    `drill "Two" {
  age U10
  area 12 x 12
  station Base at (2, 6)
  pole Far at (10, 6)
}
`,
  ],
  find: null,
};

/** `what` is the first one with its article: `a pole`. */
export function duplicateName(word: Span & { readonly text: string }, what: string, first: Span): Problem {
  return problem(check, spanOf(word), `\`${word.text}\` is already the name of ${what}.`, {
    help: 'Give one of the two another name.',
    related: [{ span: spanOf(first), message: `The first \`${word.text}\`.` }],
  });
}

/** A statement of which a drill has only one. */
export function writtenTwice(span: Span, keyword: string, first: Span): Problem {
  return problem(check, span, `\`${keyword}\` is written twice; the first one counts.`, {
    help: 'Take one of the two out.',
    related: [{ span: first, message: `The first \`${keyword}\`.` }],
  });
}
