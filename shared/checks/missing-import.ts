import type { Span } from '../../grammar/tree.ts';
import { spanOf } from '../model/span.ts';
import type { Problem } from '../problem.ts';
import { problem, type Check } from './check.ts';

export const check: Check = {
  code: 'missing-import',
  group: 'writing',
  severity: 'error',
  title: 'No such file',
  why: 'An import is looked for beside the file that names it. Without it the names it should bring are missing, and so is what is placed with them.',
  source: null,
  bad: [`import ⟦"nowhere.drill"⟧\n`],
  good: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
}
`,
  ],
  find: null,
};

/** `path` is where it was looked for, relative to the workspace. */
export function missingImport(span: Span, path: string): Problem {
  return problem(check, spanOf(span), `There is no file “${path}”.`, { help: 'A path is read from the folder of the file that imports it, with / between folders.' });
}
