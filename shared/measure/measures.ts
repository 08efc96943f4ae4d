import { distance } from '../geometry/point.ts';
import type { Drill } from '../model/drill.ts';
import type { Rotation } from '../rotation/rotation.ts';
import { ballAt } from '../physics/ball.ts';
import type { Timeline, Track } from '../timeline/timeline.ts';
import { intervalOf } from './interval.ts';
import { kitOf } from './kit.ts';
import type { Measures, PassMeasure, PlayerMeasure } from './measure.ts';

/** Every computed number of a drill. Metres, seconds, metres a second. */
export function measure(drill: Drill, timeline: Timeline, rotation: Rotation | null): Measures {
  const players = drill.players?.value ?? headcount(drill);
  const interval = intervalOf(drill, timeline, rotation);
  const perPlayer = timeline.tracks.filter((track) => takesPart(track, timeline)).map((track) => playerMeasure(track, timeline.duration));
  return {
    name: drill.name,
    players,
    area: drill.area && { width: drill.area.width, length: drill.area.length, m2: drill.area.width * drill.area.length },
    spacePerPlayer: spaceOf(drill, players),
    passes: timeline.passes.map((pass): PassMeasure => ({
      from: pass.from,
      to: pass.to,
      length: distance(pass.fromAt, pass.toAt),
      flight: pass.flight.time,
      speed: pass.flight.launch,
      arrivalSpeed: ballAt(pass.flight, pass.flight.time).speed,
      slack: pass.slack,
      at: pass.start,
    })),
    duration: timeline.duration,
    rotation: rotation && {
      closed: rotation.closed,
      cycles: rotation.cycles.map((cycle) => cycle.map((index) => placeName(drill, rotation, index))),
      order: rotation.order,
    },
    interval,
    perPlayer,
    perMinute: interval && interval.seconds > 0 && players > 0 ? perMinute(perPlayer, interval.seconds, players) : null,
    kit: kitOf(drill),
  };
}

/** Everyone the text places: the queues, the players of teams, the keepers. */
export function headcount(drill: Drill): number {
  const queued = drill.stations.filter((station) => station.team === null).reduce((sum, station) => sum + station.holds, 0);
  return queued + drill.teams.reduce((sum, team) => sum + team.size, 0);
}

/** `Base1`, `Base2`; just `Left` where only one stands. */
function placeName(drill: Drill, rotation: Rotation, index: number): string {
  const place = rotation.places[index]!;
  const alone = drill.stations.find((station) => station.id === place.station)?.holds === 1;
  return alone ? place.station : `${place.station}${place.number}`;
}

function spaceOf(drill: Drill, players: number): Measures['spacePerPlayer'] {
  if (!drill.area || players === 0) return null;
  const keepers = drill.actors.filter((actor) => actor.kind === 'keeper').length;
  const m2 = drill.area.width * drill.area.length;
  return { outfield: m2 / Math.max(1, players - keepers), all: m2 / players };
}

function takesPart(track: Track, timeline: Timeline): boolean {
  return track.moves.length > 0 || track.touches.length > 0 || timeline.passes.some((pass) => pass.to === track.actor);
}

function playerMeasure(track: Track, duration: number): PlayerMeasure {
  const ways = [...track.moves, ...(track.walk ? [track.walk] : [])];
  const working = lengthOfUnion([...track.moves, ...track.touches]);
  return {
    actor: track.actor,
    touches: track.touches.reduce((sum, touch) => sum + touch.count, 0),
    distance: ways.reduce((sum, way) => sum + way.path.length, 0),
    working,
    waiting: Math.max(0, duration - working),
  };
}

/** Seconds covered by any of these stretches of time. */
function lengthOfUnion(stretches: readonly { readonly start: number; readonly end: number }[]): number {
  let covered = 0;
  let until = -Infinity;
  for (const { start, end } of [...stretches].sort((a, b) => a.start - b.start)) {
    covered += Math.max(0, end - Math.max(start, until));
    until = Math.max(until, end);
  }
  return covered;
}

function perMinute(perPlayer: readonly PlayerMeasure[], interval: number, players: number): Measures['perMinute'] {
  const sum = (value: (player: PlayerMeasure) => number): number => perPlayer.reduce((total, player) => total + value(player), 0);
  const rate = 60 / interval / players;
  return { touches: sum((player) => player.touches) * rate, metres: sum((player) => player.distance) * rate };
}
