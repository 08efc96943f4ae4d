/** The phases of a game, each played through and measured at every moment. */
import type { ActorId, Drill, Id, Sequence } from '../model/drill.ts';
import { closing, simulatePhase } from '../timeline/simulate.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { challengesOf, type Challenge } from './dribbles.ts';
import { lanesOf, type LaneReport } from './lanes.ts';
import { possessionOf, type Possession } from './possession.ts';
import { numbersOf, type ZoneNumbers } from './zones.ts';

export interface PhaseAnalysis {
  readonly phase: Sequence;
  /** Its own: it begins at 0. */
  readonly timeline: Timeline;
  readonly possession: readonly Possession[];
  /** In order of time. */
  readonly lanes: readonly LaneReport[];
  readonly challenges: readonly Challenge[];
  readonly numbers: readonly ZoneNumbers[];
  /** Who has nothing to do in it and keeps their place. */
  readonly standing: readonly ActorId[];
}

/** In the order of the text. A drill without phases has none, and nothing is worked out for it. */
export function phasesOf(drill: Drill): readonly PhaseAnalysis[] {
  const phases = drill.sequences.filter((sequence) => sequence.kind === 'phase');
  if (phases.length === 0) return [];
  const played = playedOf(drill, phases);
  return phases.map((phase) => {
    const { timeline, possession } = played.get(phase.id)!;
    return {
      phase,
      timeline,
      possession,
      lanes: lanesOf(drill, phase, timeline, possession),
      challenges: challengesOf(drill, timeline, possession),
      numbers: numbersOf(drill, timeline),
      standing: standing(drill, timeline),
    };
  });
}

type Played = Pick<PhaseAnalysis, 'timeline' | 'possession'>;

/** Each after the one it goes on from. */
function playedOf(drill: Drill, phases: readonly Sequence[]): ReadonlyMap<Id, Played> {
  const byId = new Map(phases.map((phase) => [phase.id, phase]));
  const played = new Map<Id, Played>();
  for (const phase of phases) {
    const chain: Sequence[] = [];
    for (let each: Sequence | undefined = phase; each && !played.has(each.id); each = each.after === null ? undefined : byId.get(each.after)) chain.push(each);
    for (const each of chain.reverse()) {
      const before = each.after === null ? undefined : played.get(each.after);
      const timeline = simulatePhase(drill, each, before ? closing(before.timeline) : null);
      played.set(each.id, { timeline, possession: possessionOf(drill, timeline, before?.possession.at(-1)?.team) });
    }
  }
  return played;
}

function standing(drill: Drill, { tracks, passes }: Timeline): ActorId[] {
  const playing = new Set(drill.actors.filter((actor) => actor.kind !== 'coach' && actor.kind !== 'next').map((actor) => actor.id));
  return tracks
    .filter(({ actor, moves, touches }) => playing.has(actor) && moves.length === 0 && touches.length === 0 && passes.every((pass) => pass.to !== actor))
    .map(({ actor }) => actor);
}
