/** What the play holds at a place of the text. */
import type { Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import type { Action, ActorId } from '../model/drill.ts';
import type { Move, Pass } from '../timeline/timeline.ts';
import { touches } from './open.ts';

export interface FoundAction {
  readonly actor: ActorId;
  readonly action: Action;
  /** Null when it is no pass, or was not played. */
  readonly pass: Pass | null;
  /** Null when it is no movement, or was not made. */
  readonly move: Move | null;
}

/** The action at an offset with what became of it; of a mirrored sequence, that of the one it mirrors. */
export function actionAt(analysis: DrillAnalysis, offset: number): FoundAction | null {
  return actionsOf(analysis).find(({ action }) => touches(action.span, offset)) ?? null;
}

/** In the order of the text. */
export function actionsOf({ drill, timeline }: DrillAnalysis): readonly FoundAction[] {
  const passes = new Map(timeline.passes.map((pass) => [pass.action, pass]));
  const moves = new Map(timeline.tracks.flatMap((track) => track.moves.map((move) => [move.action, move] as const)));
  return drill.sequences
    .filter((sequence) => sequence.mirrorOf === null)
    .flatMap(({ beats }) => beats.flatMap(({ lead, meanwhile }) => [lead, ...meanwhile]))
    .flatMap(({ actor, chain }) => chain.map((action) => ({ actor, action })))
    .map((each) => ({ ...each, pass: passes.get(each.action) ?? null, move: moves.get(each.action) ?? null }));
}

/** Where a hint about an action stands: after its target, before its modifiers. */
export function endOfTarget({ receiverSpan, targetSpan, verbSpan }: Action): Span['to'] {
  return Math.max(receiverSpan?.to ?? 0, targetSpan?.to ?? 0, verbSpan.to);
}
