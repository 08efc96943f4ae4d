import type { Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import { blameOnChange } from '../model/changes.ts';
import type { Drill } from '../model/drill.ts';
import type { Problem } from '../problem.ts';
import { checks } from './index.ts';

/**
 * What the checks find in the drills, and in their progressions and regressions, which are told at their own names.
 * Where a line of a drill could not be understood (`writing`), only its ground is judged: who has the ball and who is where
 * hangs on every line, and one mistake should give one problem.
 */
export function judge(drills: readonly DrillAnalysis[], writing: readonly Problem[], analyse: (drill: Drill) => DrillAnalysis): Problem[] {
  const errors = writing.filter((problem) => problem.severity === 'error').map((problem) => problem.span.from).sort((a, b) => a - b);
  return drills.flatMap((analysis) => {
    const broken = anyWithin(errors, analysis.drill.span);
    const own = found(analysis, broken);
    const ofChanges = analysis.drill.changes.flatMap((change) => {
      const name = { text: change.name, ...change.nameSpan };
      return firstOfEach(blameOnChange(own, found(analyse(change.drill), broken), { name, span: change.span }));
    });
    return [...own, ...ofChanges];
  });
}

function found(analysis: DrillAnalysis, broken: boolean): Problem[] {
  const problems = checks.flatMap((check) => (check.find && !(broken && check.group !== 'ground') ? check.find(analysis) : []));
  return withoutReflections(analysis.drill, problems);
}

/** A mirrored sequence has the faults of its original once more: they are told there only. */
function withoutReflections(drill: Drill, problems: Problem[]): Problem[] {
  const mirrored = drill.sequences.filter((sequence) => sequence.mirrorOf !== null);
  if (mirrored.length === 0) return problems;
  const originals = drill.sequences.filter((sequence) => sequence.mirrorOf === null);
  const told = new Set(problems.filter((problem) => originals.some((sequence) => within(sequence.span, problem.span))).map((problem) => problem.code));
  return problems.filter((problem) => !(told.has(problem.code) && mirrored.some((sequence) => within(sequence.span, problem.span))));
}

/** One change mostly breaks several lines in the same way: the first is told. */
function firstOfEach(problems: readonly Problem[]): Problem[] {
  const first = new Map<string, Problem>();
  for (const problem of problems) {
    const key = `${problem.code} ${problem.span.from}`;
    if (!first.has(key)) first.set(key, problem);
  }
  return [...first.values()];
}

/** Whether one of these offsets, which are in order, lies in a span. */
function anyWithin(offsets: readonly number[], span: Span): boolean {
  let low = 0;
  let high = offsets.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (offsets[middle]! < span.from) low = middle + 1;
    else high = middle;
  }
  return low < offsets.length && offsets[low]! < span.to;
}

function within(outer: Span, inner: Span): boolean {
  return outer.from <= inner.from && inner.to <= outer.to;
}
