/** Whose the ground is, as light hatching: along for one side, across for the other, dotted for floaters while no side has the ball. */
import { type Control, controlAt, sideOf } from '../games/control.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import type { Drill, Id } from '../model/drill.ts';
import { onSheet } from './ground.ts';
import { type Moment, momentsOf } from './phase.ts';
import type { Ink } from './palette.ts';
import type { Mark, Plan } from './scene.ts';
import { mm, path, stroked } from './shapes.ts';

/** The ground at one moment of a phase. */
export interface Ground extends Moment {
  readonly control: Control;
}

/** At every moment at which someone plays on; at the start of a phase in which nobody does. */
export function groundsOf(drill: Drill, phase: PhaseAnalysis): Ground[] {
  const moments = momentsOf(phase);
  const times = phase.lanes.length > 0 ? phase.lanes.map(({ time }, index) => ({ time, ...moments[index] as Moment })) : [{ time: 0, start: 0, end: phase.timeline.end + 1 }];
  return times.flatMap(({ time, start, end }) => {
    const control = controlAt(drill, phase, time);
    return control ? [{ control, start, end }] : [];
  });
}

export function controlMarks(drill: Drill, grounds: readonly Ground[], plan: Plan): Mark[] {
  const teams = new Map(drill.actors.map(({ id, team }) => [id, team]));
  return grounds.map(({ control, start, end }, index): Mark => ({
    id: `control-${index + 1}`, layer: 'control', span: null, label: null, during: { start, end },
    shapes: drill.teams.map(({ id }) => path(hatch(control, (cell) => sideOf(drill, control.floatersWith, teams.get(control.owners[cell] ?? '') ?? null) === id, hatchOf(drill, id), plan), stroked(controlInk, 0.18, hatchOf(drill, id) === 'dotted' ? '0.3 1.2' : null))),
  }));
}

/** One ink for all: the direction of the lines tells the side, and bibs may have any colour. */
export const controlInk: Ink = 'note';

type Hatch = 'along' | 'across' | 'dotted';

export function hatchOf({ teams }: Drill, id: Id): Hatch {
  const team = teams.find((each) => each.id === id);
  if (team?.kind === 'floaters') return 'dotted';
  return teams.filter(({ kind }) => kind === 'team').findIndex((each) => each.id === id) % 2 === 0 ? 'along' : 'across';
}

/** Lines through the middles of a side's cells, unbroken from neighbour to neighbour. */
function hatch({ cell, columns, rows }: Control, owned: (cell: number) => boolean, kind: Hatch, plan: Plan): string {
  const across = kind === 'across';
  const [lines, steps] = across ? [columns, rows] : [rows, columns];
  const spot = (line: number, step: number) => onSheet(plan, across ? { x: (line + 0.5) * cell.width, y: step * cell.length } : { x: step * cell.width, y: (line + 0.5) * cell.length });
  let d = '';
  for (let line = 0; line < lines; line += 1) {
    let from: number | null = null;
    for (let step = 0; step <= steps; step += 1) {
      const own = step < steps && owned(across ? step * columns + line : line * columns + step);
      if (own) from ??= step;
      else if (from !== null) {
        const [a, b] = [spot(line, from), spot(line, step)];
        d += `M${mm(a.x)} ${mm(a.y)}L${mm(b.x)} ${mm(b.y)}`;
        from = null;
      }
    }
  }
  return d;
}
