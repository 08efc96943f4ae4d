/** The numbers of the phases of a game. Metres and seconds; each phase on its own clock. */
import { controlAt } from '../games/control.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import type { Possession } from '../games/possession.ts';
import { countsOver } from '../games/zones.ts';
import { distance } from '../geometry/point.ts';
import type { ActorId, Drill, Id } from '../model/drill.ts';

export interface PhaseMeasures {
  readonly name: string | null;
  readonly duration: number;
  readonly possession: readonly Possession[];
  readonly passes: readonly PhasePass[];
  /** In every zone, from change to change: the side with the ball and the floaters against the others, goalkeepers left out. */
  readonly numbers: readonly { readonly zone: Id; readonly from: number; readonly to: number; readonly with: number; readonly against: number }[];
  /** Shares of the area, 0 to 1: at the start, at the end, and on average over the moments at which someone plays on. */
  readonly control: readonly { readonly team: Id; readonly start: number; readonly end: number; readonly mean: number }[];
}

export interface PhasePass {
  readonly at: number;
  readonly from: ActorId;
  /** Null for a shot, or when nobody is there. */
  readonly to: ActorId | null;
  readonly kind: 'pass' | 'set' | 'cross' | 'shot';
  readonly length: number;
  readonly slack: number | null;
  /** Of all opponents, who does best in the race to it, and how much later than the ball they are; negative: first by so much. */
  readonly nearest: ActorId | null;
  readonly margin: number | null;
  /** Team-mates who could have been played to, this one among them. */
  readonly openLanes: number;
}

export function phaseMeasures(drill: Drill, phases: readonly PhaseAnalysis[]): readonly PhaseMeasures[] {
  return phases.map((phase) => ({
    name: phase.phase.name,
    duration: phase.timeline.duration,
    possession: phase.possession,
    passes: passesOf(phase),
    numbers: phase.numbers.flatMap(({ zone }) =>
      countsOver(drill, phase.numbers.filter((each) => each.zone === zone), phase.possession, phase.timeline.end)
        .map(({ attackers, floaters, defenders, start, end }) => ({ zone, from: start, to: end, with: attackers + floaters, against: defenders })),
    ),
    control: controlOf(drill, phase),
  }));
}

function passesOf({ timeline, lanes }: PhaseAnalysis): PhasePass[] {
  const reports = new Map(lanes.map((report) => [report.pass, report]));
  return timeline.passes.map(({ index, start, from, to, kind, fromAt, toAt, slack }) => {
    const report = reports.get(index);
    return {
      at: start, from, to, kind, length: distance(fromAt, toAt), slack, nearest: report?.race?.by ?? null, margin: report?.race?.margin ?? null,
      openLanes: report?.lanes.filter(({ open }) => open !== null).length ?? 0,
    };
  });
}

function controlOf(drill: Drill, phase: PhaseAnalysis): PhaseMeasures['control'] {
  const at = (time: number, team: Id): number => controlAt(drill, phase, time)?.shares.find((each) => each.team === team)?.share ?? 0;
  const sides = controlAt(drill, phase, 0)?.shares ?? [];
  const moments = phase.lanes.map(({ time }) => time);
  return sides.map(({ team, share }) => ({
    team, start: share, end: at(phase.timeline.end, team),
    mean: moments.length === 0 ? share : moments.reduce((sum, time) => sum + at(time, team), 0) / moments.length,
  }));
}
