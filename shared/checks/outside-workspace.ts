import type { Span } from '../../grammar/tree.ts';
import { spanOf } from '../model/span.ts';
import type { Problem } from '../problem.ts';
import { problem, type Check } from './check.ts';

export const check: Check = {
  code: 'outside-workspace',
  group: 'writing',
  severity: 'error',
  title: 'An import that leaves the workspace',
  why: 'A drill is passed on with its folder. What lies outside it is not there on the next coach’s computer, and a file from elsewhere must not make this one read what it should not.',
  source: null,
  bad: [`import ⟦"../../elsewhere.drill"⟧\n`, `import ⟦"/elsewhere.drill"⟧\n`],
  good: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
}
`,
  ],
  find: null,
};

export function outsideWorkspace(span: Span, path: string): Problem {
  return problem(check, spanOf(span), `“${path}” lies outside the workspace.`, { help: 'Copy the file into the workspace and import it from there.' });
}

/** A text that has not been saved into a folder has nothing beside it. */
export function noWorkspace(span: Span): Problem {
  return problem(check, spanOf(span), 'This text lies in no workspace yet, so nothing can be imported.', { help: 'Save it into a folder and open that folder.' });
}
