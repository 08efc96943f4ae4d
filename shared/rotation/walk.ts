import { straight } from '../geometry/path.ts';
import { distance } from '../geometry/point.ts';
import type { Drill } from '../model/drill.ts';
import { ability, runAlong } from '../physics/runner.ts';
import { queueSpot } from '../timeline/queue.ts';
import type { Timeline, Track } from '../timeline/timeline.ts';
import type { Rotation } from './rotation.ts';

/** Closer than this nobody walks: metres. */
const already = 0.3;

/** Adds the way of everyone to their place for the next repetition, at a jog once their own part is over. */
export function withWalks(drill: Drill, timeline: Timeline, rotation: Rotation | null): Timeline {
  if (!rotation) return timeline;
  return { ...timeline, tracks: timeline.tracks.map((track) => walkOf(drill, track, rotation)) };
}

function walkOf(drill: Drill, track: Track, rotation: Rotation): Track {
  const move = rotation.moves.find((each) => each.actor === track.actor);
  const station = drill.stations.find((each) => each.id === move?.to);
  if (!move || !station) return track;
  const to = queueSpot(drill, station, placeAfter(rotation, move.from) - 1);
  const from = track.moves.at(-1)?.path.to ?? track.home;
  if (distance(from, to) < already) return track;
  const path = straight(from, to);
  const run = runAlong(path, ability(drill.age.value, drill.tempo.value, drill.tempo.value === 'walk' ? 'walk' : 'jog', null));
  const start = Math.max(track.moves.at(-1)?.end ?? 0, track.touches.at(-1)?.end ?? 0);
  return { ...track, walk: { start, end: start + run.time, path, run } };
}

/** The number in the queue that the one who played at a station has next; the last where the rotation does not close. */
function placeAfter(rotation: Rotation, station: string): number {
  const front = rotation.places.findIndex((place) => place.station === station && place.number === 1);
  const next = rotation.image?.[front];
  return next === undefined ? 1 : rotation.places[next]!.number;
}
