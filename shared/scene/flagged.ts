/** Which problems are flagged on which sheet. */
import type { DrillAnalysis } from '../analyse.ts';
import { within } from '../model/span.ts';
import type { Problem } from '../problem.ts';

/** What a flag needs to know of a problem. */
export type Flagged = Pick<Problem, 'message' | 'span'>;

/** A phase's sheet has its own problems and those of the drill around it. */
export function withoutOtherPhases<P extends Flagged>({ phases }: DrillAnalysis, name: string | null, problems: readonly P[]): readonly P[] {
  const others = phases.filter(({ phase }) => phase.name !== name);
  return problems.filter(({ span }) => !others.some(({ phase }) => within(phase.span, span)));
}
