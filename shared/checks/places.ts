/** Where in the text the problems of a drill as a whole are shown. */
import type { Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';

/** The `rotate` statement; without one the first sequence, where the rotation is read from; at last the drill's name. */
export function rotationSpan({ drill }: DrillAnalysis): Span {
  return drill.rotation.kind === 'read' ? (drill.sequences[0]?.nameSpan ?? drill.nameSpan) : drill.rotation.span;
}
