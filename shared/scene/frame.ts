/** The moving part of a scene at one moment. Pure: the same scene and time give the same frame. */
import type { Mark, Mover, Scene } from './scene.ts';
import type { Spot } from './shapes.ts';

export interface Frame {
  /** Seconds, within the scene. */
  readonly time: number;
  readonly movers: readonly PlacedMover[];
  /** Where the cursor of the time line stands, millimetres from the left; null without a time line. */
  readonly cursor: number | null;
  /** Number of the beat that is being played; null before, between and after beats. */
  readonly beat: number | null;
}

export interface PlacedMover extends Spot {
  readonly id: string;
  /** Metres above the ground. */
  readonly height: number;
}

/** `time` in seconds is held within the scene. */
export function frameAt(scene: Scene, time: number): Frame {
  const now = Math.min(Math.max(Number.isFinite(time) ? time : 0, 0), scene.end);
  let beat: number | null = null;
  for (const one of scene.beats) if (one.start <= now && now < one.end) beat = one.number;
  return {
    time: now,
    movers: scene.movers.map((mover) => ({ id: mover.id, ...moverAt(mover.track, now) })),
    cursor: scene.strip && scene.strip.left + scene.strip.perSecond * now,
    beat,
  };
}

/** Between the two samples about this time; before the first and after the last at rest. */
export function moverAt(track: Mover['track'], time: number): Spot & { readonly height: number } {
  let low = 0;
  let high = track.length / 4 - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((track[middle * 4] as number) <= time) low = middle;
    else high = middle - 1;
  }
  const value = (sample: number, part: number) => track[sample * 4 + part] ?? 0;
  const start = value(low, 0);
  const next = Math.min(low + 1, track.length / 4 - 1);
  const span = value(next, 0) - start;
  const share = span > 0 ? Math.min(1, Math.max(0, (time - start) / span)) : 0;
  const between = (part: number) => value(low, part) + (value(next, part) - value(low, part)) * share;
  return { x: between(1), y: between(2), height: between(3) };
}

/** Whether a mark is there at a time. */
export function isShown({ during }: Pick<Mark, 'during'>, time: number): boolean {
  return during === undefined || (during.start <= time && time < during.end);
}
