import type { ActorId, Drill, Id } from '../model/drill.ts';
import type { Rotation } from '../rotation/rotation.ts';
import type { Timeline, Track } from '../timeline/timeline.ts';
import type { Measures } from './measure.ts';

/**
 * The shortest time between two starts: nobody is in two places, and there is a ball to start with. Whoever has a part in
 * the next repetition must be in place before that part begins; with a single ball it must have come back first.
 */
export function intervalOf(drill: Drill, timeline: Timeline, rotation: Rotation | null): Measures['interval'] {
  if (timeline.beats.length === 0) return null;
  const people = rotation ? drill.stations.flatMap((station) => roleBound(drill, timeline, rotation, station.id)) : [];
  const bounds = [...people, ...ballBounds(drill, timeline)];
  // Of equal ones the first, whatever the last digit of a double says.
  return bounds.reduce((worst, bound) => (bound.seconds > worst.seconds + 1e-9 ? bound : worst), { seconds: 0, because: 'nothing stands in the way of the next start' });
}

/** Seconds from the front becoming free until the next in the queue stands there: a step and a half. Common practice, no source. */
const stepUpTime = 1;

type Bound = NonNullable<Measures['interval']>;

function roleBound(drill: Drill, timeline: Timeline, rotation: Rotation, station: Id): Bound[] {
  const track = timeline.tracks.find((each) => each.actor === station);
  const needed = track ? firstNeeded(timeline, track) : null;
  if (!track || needed === null) return [];
  if ((drill.stations.find((each) => each.id === station)?.holds ?? 0) >= 2) {
    return [{ seconds: leaves(track) + stepUpTime - needed, because: `${station} has left and the next has stepped up` }];
  }
  const comer = rotation.moves.find((move) => move.to === station);
  const arriving = timeline.tracks.find((each) => each.actor === comer?.actor);
  if (!arriving) return [];
  const seconds = finished(arriving) - needed;
  return [{ seconds, because: arriving.actor === station ? `${station} is back in place` : `${arriving.actor} has come to ${station}` }];
}

/** When the front of the queue is free: they set off for good, or have played their last ball there. */
function leaves(track: Track): number {
  return track.moves.at(-1)?.start ?? track.walk?.start ?? track.touches.at(-1)?.end ?? 0;
}

/** When this repetition first needs them: they are asked to move, or the first ball reaches them. */
function firstNeeded(timeline: Timeline, track: Track): number | null {
  const times = [
    ...track.moves.slice(0, 1).map((move) => move.asked),
    ...track.touches.slice(0, 1).map((touch) => touch.start),
    ...timeline.passes.filter((pass) => pass.to === track.actor).slice(0, 1).map((pass) => pass.arrival),
  ];
  return times.length > 0 ? Math.min(...times) : null;
}

function finished(track: Track): number {
  return Math.max(track.walk?.end ?? 0, track.moves.at(-1)?.end ?? 0, track.touches.at(-1)?.end ?? 0);
}

function ballBounds(drill: Drill, timeline: Timeline): Bound[] {
  const spare = drill.balls.some((supply) => supply.count > 1);
  if (spare) return [];
  return timeline.balls.flatMap((ball) => {
    const moving = ball.stretches.filter((stretch) => stretch.kind !== 'still');
    const first = moving[0];
    const last = moving.at(-1);
    if (!first || !last) return [];
    const carrier = last.kind === 'flight' ? timeline.passes[last.pass] : null;
    const back = Math.max(carrier ? carrier.received : last.end, carriedHome(timeline, carrier?.to ?? null));
    return [{ seconds: back - first.start, because: 'the ball is back' }];
  });
}

/** Who received the last ball may have to bring it to the start. */
function carriedHome(timeline: Timeline, actor: ActorId | null): number {
  return timeline.tracks.find((track) => track.actor === actor)?.walk?.end ?? 0;
}
