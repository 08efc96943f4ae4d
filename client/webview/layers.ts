/** Which layers of a scene the page draws: the sheet around them is for paper. */
import type { Layer, Mark } from '../../shared/scene/scene.ts';

export const onPitch: ReadonlySet<Layer> = new Set(['zones', 'control', 'grid', 'area', 'dimensions', 'lanes', 'paths', 'labels', 'later', 'furniture', 'people', 'ball', 'problems']);
export const onStrip: ReadonlySet<Layer> = new Set(['strip']);

/** Whose label says how much of the ground each side is first to. */
export function isGround({ id }: Pick<Mark, 'id'>): boolean {
  return id.startsWith('ground-');
}

export function isOnPage(mark: Mark): boolean {
  return onPitch.has(mark.layer) || onStrip.has(mark.layer) || isGround(mark);
}
