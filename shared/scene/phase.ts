/** A phase of a game in place of the repetition of its drill: all that draws a drill draws it in the same way. */
import type { DrillAnalysis } from '../analyse.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import { viewOf } from '../games/view.ts';
import type { ActorId } from '../model/drill.ts';
import type { Timeline } from '../timeline/timeline.ts';

/** A span of the phase's own time, in seconds; the last one reaches past its end. */
export interface Moment {
  readonly start: number;
  readonly end: number;
}

/** The phase of this name, or the first of a game that has nothing else to show; null for the drill's own repetition. */
export function phaseShown({ drill, phases }: DrillAnalysis, name: string | undefined): PhaseAnalysis | null {
  if (name !== undefined) return phases.find(({ phase }) => phase.name === name || phase.id === name) ?? null;
  return drill.sequences.some(({ kind }) => kind === 'sequence') ? null : (phases[0] ?? null);
}

/** The drill as if the phase were all of its play, everyone standing where it begins. */
export function asDrill(analysis: DrillAnalysis, phase: PhaseAnalysis): DrillAnalysis {
  const { drill } = analysis;
  const homes = new Map(phase.timeline.tracks.map(({ actor, home }) => [actor, home]));
  const actors = drill.actors.map((actor) => ({ ...actor, home: homes.get(actor.id) ?? actor.home }));
  return { ...viewOf(analysis, phase), drill: { ...drill, actors, sequences: [phase.phase], order: [[phase.phase.id]] } };
}

/**
 * When each of the phase's lane reports is of interest: from when its player has the ball until they have played it, or the
 * next one has it. What is open to whoever wins the ball is not shown before they have won it.
 */
export function momentsOf({ lanes, timeline }: PhaseAnalysis): Moment[] {
  const received = (pass: number | null): number => (pass === null ? Infinity : (timeline.passes[pass]?.received ?? Infinity));
  const starts = lanes.map(({ time, from }, index) => {
    const before = lanes[index - 1];
    return before ? Math.min(time, Math.max(received(before.pass), wonBy(timeline, from, time))) : 0;
  });
  return lanes.map(({ pass }, index) => {
    const [start, next] = [starts[index]!, starts[index + 1] ?? pastEnd(timeline.end)];
    return { start, end: Math.max(start, Math.min(next, received(pass))) };
  });
}

/** When somebody last won the ball before a time; 0 when they did not. */
function wonBy({ tracks }: Timeline, actor: ActorId, time: number): number {
  const moves = tracks.find((track) => track.actor === actor)?.moves ?? [];
  return moves.reduce((last, { action, end }) => (action.verb === 'wins the ball from' && end <= time ? end : last), 0);
}

export function pastEnd(end: number): number {
  return end + 1;
}

/** A moment that is drawn by itself: its time within the play, and the number of the beat that is under way or was the last. */
export interface Instant {
  readonly time: number;
  readonly beat: number;
}

export function momentOf({ beats, end }: Timeline, time: number): Instant {
  const now = Math.min(Math.max(Number.isFinite(time) ? time : 0, 0), end);
  return { time: now, beat: beats.reduce((last, { number, start }) => (start <= now ? Math.max(last, number) : last), 0) };
}

/** A phase with the lanes of a moment, and the ball won only where that happens in its beat. */
export function atMoment(phase: PhaseAnalysis, { time, beat }: Instant): PhaseAnalysis {
  const moments = momentsOf(phase);
  const { start = 0, end = 0 } = phase.timeline.beats.find(({ number }) => number === beat) ?? {};
  const won = phase.possession.slice(1).filter(({ from }) => start <= from && from <= end);
  return {
    ...phase,
    lanes: phase.lanes.filter((_, index) => moments[index]!.start <= time && time < moments[index]!.end),
    possession: [...phase.possession.slice(0, 1), ...won],
  };
}
