import type { Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import { viewOf } from '../games/view.ts';
import { blameOnChange } from '../model/changes.ts';
import type { Drill } from '../model/drill.ts';
import { within } from '../model/span.ts';
import type { Problem } from '../problem.ts';
import type { SessionAnalysis } from '../session/analysis.ts';
import type { Check } from './check.ts';
import { checks } from './index.ts';

/**
 * What the checks find in the drills, and in their progressions and regressions, which are told at their own names.
 * `broken` are the places of lines that could not be understood and on which the play hangs: a drill with one has only its
 * ground judged, because one mistake should give one problem.
 */
export function judge(drills: readonly DrillAnalysis[], broken: readonly number[], analyse: (drill: Drill) => DrillAnalysis): Problem[] {
  return drills.flatMap((analysis) => {
    const { changes, span } = analysis.drill;
    const all = offsetsIn(broken, span);
    const ofBase = all.filter((at) => !changes.some((change) => offsetsIn([at], change.span).length > 0));
    const own = found(analysis, ofBase.length > 0);
    const ofChanges = changes.flatMap((change) => {
      const name = { text: change.name, ...change.nameSpan };
      const unsure = ofBase.length > 0 || offsetsIn(all, change.span).length > 0;
      return firstOfEach(blameOnChange(own, found(analyse(change.drill), unsure), { name, span: change.span }));
    });
    return [...own, ...ofChanges];
  });
}

/** What the checks find in the sessions. */
export function judgeSessions(sessions: readonly SessionAnalysis[]): Problem[] {
  return sessions.flatMap((session) => checks.flatMap((check) => check.findInSession?.(session) ?? []));
}

function found(analysis: DrillAnalysis, broken: boolean): Problem[] {
  const problems = checks.flatMap((check) => (check.find && !(broken && check.group !== 'ground') ? [...check.find(analysis), ...foundInPhases(check, analysis)] : []));
  return withoutReflections(analysis.drill, problems);
}

/** What is wrong inside the phases. One that is part of the repetition, and all that lies outside of them, has been judged before. */
function foundInPhases(check: Check, analysis: DrillAnalysis): readonly Problem[] {
  const phases = analysis.phases.filter(({ phase }) => !analysis.drill.order.some((together) => together.includes(phase.id)));
  if (!check.inPhases || !check.find || phases.length === 0) return [];
  return phases.flatMap((phase) => check.find!(viewOf(analysis, phase)).filter((problem) => within(phase.phase.span, problem.span)));
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

/** Those of these offsets, which are in order, that lie in a span. */
function offsetsIn(offsets: readonly number[], span: Span): readonly number[] {
  let low = 0;
  let high = offsets.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (offsets[middle]! < span.from) low = middle + 1;
    else high = middle;
  }
  let end = low;
  while (end < offsets.length && offsets[end]! < span.to) end += 1;
  return offsets.slice(low, end);
}
