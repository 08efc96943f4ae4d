import type { Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import type { PhaseAnalysis } from './phases.ts';

/** A drill with one of its phases in place of its repetition, so that what is true of one can be asked of the other. */
export function viewOf(analysis: DrillAnalysis, phase: PhaseAnalysis): DrillAnalysis {
  return { ...analysis, timeline: phase.timeline, rotation: null, phases: [phase] };
}

/** The view that a place in the text belongs to: of a phase inside of it, of the drill elsewhere. */
export function viewAt(analysis: DrillAnalysis, place: Span): DrillAnalysis {
  const phase = analysis.phases.find(({ phase: { span } }) => span.from <= place.from && place.to <= span.to);
  return phase ? viewOf(analysis, phase) : analysis;
}
