import type { Fault } from '../../grammar/fault.ts';
import type { Problem } from '../problem.ts';
import { problem, type Check } from './check.ts';
import { lineAt } from './lines.ts';

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

/** A file that is too long to be read at all. */
export function tooLong(length: number, most: number): Problem {
  const millions = (count: number): string => (count / 1e6).toFixed(1);
  return problem(check, { from: 0, to: 0 }, `This file has ${millions(length)} million characters; up to ${millions(most)} million are read.`, {
    help: 'Split it into several files.',
  });
}

/** Without the names that a line which cannot be read, or an import that fails, may declare or use: told by that line's own fault. */
export function withoutConsequences(problems: readonly Problem[], faults: readonly Fault[], text: string): Problem[] {
  const words = new Set(faults.flatMap((fault) => lineAt(text, fault.span.from).split(/[^\p{L}\p{M}\p{N}_]+/u)));
  const imports = new Set(['missing-import', 'outside-workspace', 'circular-import']);
  const missing = problems.some((each) => imports.has(each.code));
  return problems.filter((each) => {
    if (missing && each.code === 'unknown-name') return false;
    const aboutName = each.code === 'unknown-name' || each.code === 'unused-name';
    return !(aboutName && words.has(text.slice(each.span.from, each.span.to)));
  });
}
