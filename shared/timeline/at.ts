/** Reading a timeline: where everyone and every ball is at a time. Closed form; nothing steps. */
import { directionAt, pointAt } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import { along } from '../geometry/point.ts';
import { ballAt } from '../physics/ball.ts';
import { distanceAt, speedAt } from '../physics/runner.ts';
import type { BallTrack, Move, Stretch, Track, Walk } from './timeline.ts';

/** Where this person is at a time; before their first move at home, after their last where it ended. */
export function personAt(track: Track, time: number): Point {
  const move = moveAt(track, time);
  return move ? onTheMove(move, time) : track.home;
}

/** Their speed at a time, metres a second. */
export function personSpeed(track: Track, time: number): number {
  const move = moveAt(track, time);
  return move && time < move.end ? speedAt(move.run, time - move.start) : 0;
}

/** The same with its direction: metres a second across and up. */
export function personVelocity(track: Track, time: number): Point {
  const move = moveAt(track, time);
  if (!move || time >= move.end || time < move.start) return { x: 0, y: 0 };
  const speed = speedAt(move.run, time - move.start);
  const { x, y } = directionAt(move.path, distanceAt(move.run, time - move.start));
  return { x: speed * x, y: speed * y };
}

function moveAt(track: Track, time: number): Move | Walk | undefined {
  return track.walk && track.walk.start <= time ? track.walk : lastBegun(track.moves, time);
}

export function onTheMove(move: Move | Walk, time: number): Point {
  return pointAt(move.path, distanceAt(move.run, time - move.start));
}

/** Where a ball is at a time, with its height above the ground in metres. */
export function ballPosition(ball: BallTrack, time: number): Point & { readonly height: number } {
  const stretch = lastBegun(ball.stretches, time);
  if (!stretch) return { ...ball.home, height: 0 };
  return onStretch(stretch, time);
}

/** The same while one stretch of its way lasts. */
export function onStretch(stretch: Stretch, time: number): Point & { readonly height: number } {
  switch (stretch.kind) {
    case 'still':
      return { x: stretch.at.x, y: stretch.at.y, height: 0 };
    case 'carried':
      return { ...onTheMove(stretch.move, Math.min(time, stretch.end)), height: 0 };
    case 'flight': {
      const { distance, height } = ballAt(stretch.flight, time - stretch.start);
      const share = stretch.flight.length > 0 ? distance / stretch.flight.length : 1;
      return { ...along(stretch.from, stretch.to, Math.min(1, share)), height };
    }
  }
}

/** The last of these that has begun at a time; they are in order of start. Undefined before the first. */
export function lastBegun<T extends { readonly start: number }>(list: readonly T[], time: number): T | undefined {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (list[middle]!.start <= time) low = middle + 1;
    else high = middle;
  }
  return list[low - 1];
}
