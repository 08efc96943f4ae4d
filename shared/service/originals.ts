/** What a mirrored sequence repeats: there is no text of its own to change, only that of the original. */
import type { Play, Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import type { Point } from '../geometry/point.ts';
import type { Action, Sequence } from '../model/drill.ts';
import { mirrored } from '../model/places.ts';
import { boundsOfArea } from '../model/things.ts';
import { wayId } from '../scene/lines.ts';
import { nodeAround } from './nodes.ts';
import type { Open } from './open.ts';

/**
 * The action that a movement of a mirrored sequence repeats, and where a place on its side (metres) lies on the original's.
 * `statement`: that of the mirrored sequence; `way`: the id of the movement's mark. Null for any other.
 */
export function originalOf(
  { analysis: { file } }: Open, { drill, timeline, phases }: DrillAnalysis, statement: Span, way: string,
): { readonly action: Action; readonly point: (at: Point) => Point } | null {
  const image = drill.sequences.find(({ mirrorOf, span }) => mirrorOf !== null && span.from === statement.from);
  const original = drill.sequences.find(({ id }) => id === image?.mirrorOf);
  const node = nodeAround(file, statement, isMirrored);
  const { area } = drill;
  if (!image || !original || !node || !area) return null;
  const moves = [timeline, ...phases.map((phase) => phase.timeline)]
    .flatMap(({ tracks }) => tracks.flatMap((track) => track.moves.filter((move, index) => wayId(move, track.actor, index) === way)));
  // Beat for beat and part for part the same.
  const place = actionsIn(image).findIndex((action) => moves.some((move) => move.action === action));
  const action = actionsIn(original)[place];
  return action ? { action, point: (at) => mirrored(at, node.across, boundsOfArea(area)) } : null;
}

function actionsIn({ beats }: Sequence): readonly Action[] {
  return beats.flatMap(({ lead, meanwhile }) => [lead, ...meanwhile]).flatMap(({ chain }) => chain);
}

function isMirrored(node: object): node is Extract<Play, { kind: 'mirrored' }> {
  return 'kind' in node && node.kind === 'mirrored';
}
