import { analyseDrill, type Analysis, type DrillAnalysis } from '../analyse.ts';
import { within } from '../model/span.ts';
import type { Problem } from '../problem.ts';
import { withoutAllowed } from './allow.ts';
import { checks } from './index.ts';
import { judge } from './judge.ts';
import { breaks } from './playable.ts';

/** Those of the drill itself, or of a progression or regression by itself: each belongs on its own sheet. */
export function problemsOn(analysis: Analysis, shown: DrillAnalysis): readonly Problem[] {
  const { id, span } = shown.drill;
  const variation = analysis.drills.flatMap(({ drill }) => drill.changes).find((change) => change.id === id);
  const others = analysis.drills.flatMap(({ drill }) => drill.changes).filter((change) => change !== variation);
  const here = analysis.problems.filter((problem) => within(span, problem.span) && !others.some((change) => within(change.span, problem.span)));
  if (variation === undefined) return here;
  // The rest would tell the numbers of the drill that is changed.
  const writingCodes = new Set(checks.filter(({ group }) => group === 'writing').map((check) => check.code));
  const writing = here.filter(({ code }) => writingCodes.has(code));
  const judged = judge([shown], breaks(analysis.file, writing), analyseDrill).filter(({ code }) => !writingCodes.has(code));
  return [...writing, ...withoutAllowed(analysis.text, judged, true)].sort((a, b) => a.span.from - b.span.from || a.span.to - b.span.to);
}
