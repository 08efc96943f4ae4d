/** A phase of a game in place of the repetition of its drill: all that draws a drill draws it in the same way. */
import type { DrillAnalysis } from '../analyse.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import { viewOf } from '../games/view.ts';

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

/** When each of the phase's lane reports is of interest: from when its player has the ball until the next one has it. */
export function momentsOf({ lanes, timeline }: PhaseAnalysis): Moment[] {
  const starts = lanes.map(({ time }, index) => {
    const before = lanes[index - 1];
    if (!before) return 0;
    return before.pass === null ? time : Math.min(time, timeline.passes[before.pass]?.received ?? time);
  });
  return starts.map((start, index) => ({ start, end: starts[index + 1] ?? pastEnd(timeline.end) }));
}

export function pastEnd(end: number): number {
  return end + 1;
}
