import type { Span } from '../../grammar/tree.ts';
import { spanOf } from '../model/span.ts';
import type { Problem } from '../problem.ts';
import { problem, type Check } from './check.ts';

export const check: Check = {
  code: 'circular-import',
  group: 'writing',
  severity: 'error',
  title: 'A file that imports itself',
  why: 'An import brings the names of another file. When that file in turn needs this one, neither comes first, and nobody can tell which of two equal names counts.',
  source: null,
  // The examples are read as `example.drill`.
  bad: [`import ⟦"example.drill"⟧\n`],
  good: [
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6)
}
`,
  ],
  find: null,
};

/** `chain`: the files from the one imported to this one. */
export function circularImport(path: Span, chain: readonly string[]): Problem {
  const message = chain.length > 1 ? `This import comes back to this file: ${chain.join(' → ')}.` : 'This file imports itself.';
  return problem(check, spanOf(path), message, { help: 'Move the names that both need into a third file and import that one.' });
}
