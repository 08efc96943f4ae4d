/** Where people wait at the start, and where they are later, in metres. */
import { along, distance, type Point } from '../geometry/point.ts';
import type { Actor, Drill, Station } from '../model/drill.ts';
import { queueSpot } from '../timeline/queue.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { onSheet } from './ground.ts';
import { radius } from './people.ts';
import type { Plan } from './scene.ts';
import type { Spot } from './shapes.ts';

/** Of a longer queue so many are drawn, the one who plays among them. */
export const drawnOfQueue = 6;

/**
 * Where the player with this number in a queue is drawn, in metres: where they stand, or further back where the badges
 * would touch on the sheet. 0 plays.
 */
export function queuePlace(drill: Drill, station: Station, number: number, perMetre: number): Point {
  const stands = queueSpot(drill, station, number);
  const away = distance(station.at, stands);
  if (number === 0 || away === 0) return stands;
  const least = radius.person + radius.waiting + 0.5 + (number - 1) * (radius.waiting * 2 + 0.4);
  return along(station.at, stands, Math.max(away, least / perMetre) / away);
}

/** A place where someone stands after the start, as handbooks number them: A1, A2. */
export interface LaterPlace {
  readonly actor: Actor;
  readonly at: Spot;
  /** Counts this person's moves. */
  readonly index: number;
  /** Null where there is room for a small mark only. */
  readonly number: number | null;
}

/** Seconds at rest below which a place is only passed through. */
const pause = 0.25;
/** Millimetres between the middles of a later place and of other marks, and of its own first place. */
const fromOthers = 6.5;
const fromHome = 9;
const least = 4.4;

/**
 * Where runs end: a small mark where a full one would crowd others or hide the way to it, none where it would touch them. `standing` are the spots taken at the start; the limits are millimetres on the sheet.
 */
export function laterPlaces(drill: Drill, timeline: Timeline, standing: readonly Spot[], plan: Plan): LaterPlace[] {
  const actors = new Map(drill.actors.map((actor) => [actor.id, actor]));
  const taken = [...standing];
  const places: LaterPlace[] = [];
  for (const track of timeline.tracks) {
    const actor = actors.get(track.actor);
    if (!actor) continue;
    let number = 0;
    for (const [index, move] of track.moves.entries()) {
      const next = track.moves[index + 1];
      const at = onSheet(plan, move.path.to);
      if (next && next.start - move.end < pause) continue;
      const free = Math.min(...taken.map((other) => distance(other, at)));
      if (free < least) continue;
      const roomy = free >= fromOthers && distance(onSheet(plan, track.home), at) >= fromHome;
      if (roomy) number += 1;
      taken.push(at);
      places.push({ actor, at, index, number: roomy ? number : null });
    }
  }
  return places;
}
