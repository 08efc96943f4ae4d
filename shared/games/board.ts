/** Who plays with whom at a moment of a phase, and how all of them run for the ball. */
import type { Actor, ActorId, Drill } from '../model/drill.ts';
import { friction, greatestLaunch, type Flight } from '../physics/ball.ts';
import { constants } from '../physics/constants.ts';
import { ability } from '../physics/runner.ts';
import { personAt, personVelocity } from '../timeline/at.ts';
import type { Timeline, Track } from '../timeline/timeline.ts';
import { roleOf, sideAt, type Possession } from './possession.ts';
import type { Chaser, Effort } from './race.ts';

/** What is the same for every lane of a phase. */
export interface Board {
  readonly drill: Drill;
  readonly possession: readonly Possession[];
  readonly tracks: ReadonlyMap<ActorId, Track>;
  readonly effort: Effort;
  readonly friction: number;
  readonly launch: Readonly<Record<Flight['kind'], number>>;
}

export function boardOf(drill: Drill, timeline: Timeline, possession: readonly Possession[]): Board {
  const age = drill.age.value;
  return {
    drill,
    possession,
    tracks: new Map(timeline.tracks.map((track) => [track.actor, track])),
    effort: contestEffort(drill),
    friction: friction(drill.ground.value, drill.roll?.value ?? null),
    launch: { roll: greatestLaunch(age, 'roll'), loft: greatestLaunch(age, 'loft') },
  };
}

export interface Standing {
  readonly actor: Actor;
  readonly chaser: Chaser;
}

export interface Sides {
  /** Of whoever is on the ball. */
  readonly track: Track;
  readonly mates: readonly Standing[];
  readonly opponents: readonly Standing[];
}

/** As whoever is on the ball at a time sees it; null where no side has the ball. Opponents have to react first. */
export function sidesAt({ drill, tracks, possession }: Board, from: ActorId, time: number): Sides | null {
  const own = tracks.get(from);
  const player = drill.actors.find((actor) => actor.id === from);
  const side = sideAt(possession, time);
  if (!own || !player || side === null || roleOf(drill, player, side) === 'other') return null;
  const attacking = player.team !== null && roleOf(drill, player, side) === 'defender' ? player.team : side;
  const mates: Standing[] = [];
  const opponents: Standing[] = [];
  for (const actor of drill.actors) {
    const role = roleOf(drill, actor, attacking);
    const track = tracks.get(actor.id);
    if (actor.id === from || role === 'other' || !track) continue;
    if (role === 'defender') opponents.push({ actor, chaser: chaserOf(track, time, constants.reaction.value) });
    else mates.push({ actor, chaser: chaserOf(track, time, 0) });
  }
  return { track: own, mates, opponents };
}

/** How everyone runs when the ball is to be won: as in a match, whatever the tempo; only a walk-through is walked. */
export function contestEffort(drill: Drill): Effort {
  return ability(drill.age.value, drill.tempo.value === 'walk' ? 'walk' : 'match', null, drill.runPace?.value ?? null);
}

/** Somebody as they are once they have reacted to what happens at a time. Until then they go on with what they do. */
export function chaserOf(track: Track, time: number, reaction: number): Chaser {
  return { at: personAt(track, time + reaction), velocity: personVelocity(track, time + reaction), reacted: reaction };
}
