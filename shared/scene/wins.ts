/** Where the ball changes sides: a lozenge half and half. */
import type { PhaseAnalysis } from '../games/phases.ts';
import { ballPosition } from '../timeline/at.ts';
import { onSheet } from './ground.ts';
import { around, both, type Room } from './labels.ts';
import { radius } from './people.ts';
import type { Mark, Plan, Shape } from './scene.ts';
import { filled, group, line, polygon, stroked } from './shapes.ts';

/** About (0, 0). */
export function wonSymbol(half: number): Shape[] {
  const [top, right, bottom, left] = [{ x: 0, y: -half }, { x: half, y: 0 }, { x: 0, y: half }, { x: -half, y: 0 }];
  return [polygon([top, right, bottom, left], filled('paper', 'ink', 0.35)), polygon([top, right, bottom], filled('ink'))];
}

export function wonMarks(phase: PhaseAnalysis, teams: ReadonlyMap<string, string>, plan: Plan, room: Room): Mark[] {
  const { possession, timeline } = phase;
  return possession.slice(1).flatMap(({ from, team }, index): Mark[] => {
    const ball = timeline.balls.find(({ stretches }) => stretches.some(({ kind }) => kind !== 'still'));
    if (!ball) return [];
    const at = onSheet(plan, ballPosition(ball, from));
    const place = room.take(around(at, both(radius.person + 0.4), 4.4, 4.4, { x: 0, y: -1 }), 4.6, 4.6);
    if (!place) return [];
    const beat = timeline.beats.find(({ start, end }) => start <= from && from <= end);
    return [{
      id: `won-${index + 1}`, layer: 'labels', span: beat?.span ?? phase.phase.span, label: `${teams.get(team) ?? team} win the ball`,
      shapes: [line(at, place.at, stroked('note', 0.15)), group(place.at, wonSymbol(2.1))],
    }];
  });
}
