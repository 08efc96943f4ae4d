import type { Span } from '../../grammar/tree.ts';
import { spanOf } from '../model/span.ts';
import type { Problem } from '../problem.ts';
import { problem, type Check } from './check.ts';

export const check: Check = {
  code: 'circular-value',
  group: 'writing',
  severity: 'error',
  title: 'Needs itself',
  why: 'Numbers and places may refer to each other in any order, as long as one of them stands on its own. When two cones are each placed beside the other, nobody can put down the first.',
  source: null,
  bad: [
    `drill "Two" {
  area 12 x 12
  let ⟦a⟧ = b + 1
  let b = a - 1
  station Base at (a, b)
}
`,
    `drill "Two" {
  area 12 x 12
  station ⟦Base⟧ at 2 above Wall
  station Wall at 2 below Base
}
`,
  ],
  good: [
    `drill "Two" {
  area 12 x 12
  let a = b + 1
  let b = 2
  station Base at (a, b)
  station Wall at 2 above Base
}
`,
  ],
  find: null,
};

interface Member {
  readonly name: string;
  readonly span: Span;
}

/** `ring`: the things of the circle, each needing the next and the last the first; shown at the first. */
export function circularValue(ring: readonly [Member, ...Member[]]): Problem {
  const [first, ...others] = ring;
  const names = ring.map(({ name }) => name);
  const shown = names.length > 8 ? [...names.slice(0, 4), '…', ...names.slice(-2)] : names;
  return problem(check, spanOf(first.span), `\`${first.name}\` needs itself: ${[...shown, first.name].join(' → ')}.`, {
    help: others.length > 0 ? 'Give one of them a value or a place of its own.' : 'Give it a value or a place of its own.',
    related: others.slice(0, 8).map(({ name, span }) => ({ span: spanOf(span), message: `\`${name}\` is part of the circle.` })),
  });
}
