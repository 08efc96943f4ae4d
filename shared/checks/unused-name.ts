import type { Span } from '../../grammar/tree.ts';
import { spanOf } from '../model/span.ts';
import type { Problem } from '../problem.ts';
import { problem, type Check } from './check.ts';

export const check: Check = {
  code: 'unused-name',
  group: 'writing',
  severity: 'hint',
  title: 'Declared, never used',
  why: 'A number that nothing uses changes nothing on the grass: either it is left over, or a place still has the number written out where the name was meant. A team that no statement mentions has no players and no part in the game. A remark that allows a problem which is not there will hide one that comes later.',
  source: null,
  bad: [
    `drill "Two" {
  area 12 x 12
  let ⟦gap⟧ = 3
  station Base at 2 above area.bottom
}
`,
  ],
  good: [
    `drill "Two" {
  area 12 x 12
  let gap = 3
  station Base at gap above area.bottom
}
`,
  ],
  find: null,
};

/** A remark that lets nothing through. */
export function unusedAllowance(span: Span, code: string): Problem {
  return problem(check, span, `Nothing here is told as \`${code}\`, so there is nothing to allow.`, {
    help: 'Take the remark out, or correct the name of the problem.',
    fixes: [{ title: 'Remove the remark', edits: [{ span, text: '' }] }],
  });
}

/** `statement` is the whole line, which the fix takes out. */
export function unusedName(span: Span, name: string, what: 'let' | 'team', statement: Span): Problem {
  const message = what === 'let' ? `Nothing uses \`${name}\`.` : `Nothing mentions \`${name}\`: the team has no players on the ground and no rule.`;
  return problem(check, spanOf(span), message, {
    fixes: [{ title: `Remove ${name}`, edits: [{ span: spanOf(statement), text: '' }] }],
  });
}
