import { applyEdits } from '../shared/checks/edits.ts';
import type { Edit, Fix, Problem } from '../shared/problem.ts';

/** A fix that was made, with the text it was made in. */
export interface Made {
  readonly problem: Problem;
  readonly fix: Fix;
  readonly text: string;
}

export interface Fixed {
  readonly text: string;
  /** Those left. */
  readonly problems: readonly Problem[];
  readonly made: readonly Made[];
}

/**
 * Takes the fix of every problem that has just one (where there are several, a person must choose), as long as their edits
 * stay clear of each other, and looks again, until nothing is left to fix or `rounds` are over. `find` gives the problems of a text. A round must leave fewer problems of the kinds it
 * set out to mend (it may uncover others); one that does not is tried again with its first fix alone, then given up.
 */
export function fixAll(text: string, find: (text: string) => readonly Problem[], rounds = 10): Fixed {
  let current = text;
  let problems = find(text);
  const made: Made[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const candidates = clear(problems);
    const tries = candidates.length > 1 ? [candidates, candidates.slice(0, 1)] : [candidates];
    const better = tries
      .filter((chosen) => chosen.length > 0)
      .map((chosen) => ({ chosen, text: applyEdits(current, chosen.flatMap(({ fix }) => fix.edits)) }))
      .map((attempt) => ({ ...attempt, problems: find(attempt.text) }))
      .find((attempt) => count(attempt.problems, attempt.chosen) < count(problems, attempt.chosen));
    if (!better) break;
    made.push(...better.chosen.map(({ problem, fix }) => ({ problem, fix, text: current })));
    current = better.text;
    problems = better.problems;
  }
  return { text: current, problems, made };
}

/** How many problems are of the kinds of those chosen. */
function count(problems: readonly Problem[], chosen: readonly { readonly problem: Problem }[]): number {
  return problems.filter(({ code }) => chosen.some((each) => each.problem.code === code)).length;
}

/** The one fix of each problem that has one, and whose edits do not touch those already chosen. */
function clear(problems: readonly Problem[]): readonly { readonly problem: Problem; readonly fix: Fix }[] {
  const chosen: { problem: Problem; fix: Fix }[] = [];
  for (const problem of problems) {
    const fix = problem.fixes.length === 1 ? problem.fixes[0] : undefined;
    if (fix && !chosen.some((other) => other.fix.edits.some((a) => fix.edits.some((b) => touch(a, b))))) chosen.push({ problem, fix });
  }
  return chosen;
}

function touch(a: Edit, b: Edit): boolean {
  return a.span.from <= b.span.to && b.span.from <= a.span.to;
}
