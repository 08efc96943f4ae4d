/** How many are in each zone at each time, as a tag on its edge: attackers and floaters v defenders. */
import { capHeight, textWidth } from '../font/text.ts';
import { roundPolygon } from '../geometry/polygon.ts';
import { countsOver } from '../games/zones.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import type { Drill } from '../model/drill.ts';
import { zoneInks } from './area.ts';
import { boxAround, boxOf, onSheet } from './ground.ts';
import type { Candidate, Room } from './labels.ts';
import { onEdges } from './lettering.ts';
import { type Moment, pastEnd } from './phase.ts';
import type { Mark, Plan } from './scene.ts';
import { box, filled, type Spot, text } from './shapes.ts';

const size = 2.5;
const height = 3.6;

/** One mark a zone and moment. Empty zones say nothing. */
export function tallies(drill: Drill, phase: PhaseAnalysis, plan: Plan, room: Room): Mark[] {
  const inks = zoneInks(drill);
  return drill.zones.flatMap((zone, index): Mark[] => {
    const counted = countsIn(drill, phase, zone.id);
    const words = counted.map(({ words }) => words).filter((each) => each !== '');
    if (words.length === 0) return [];
    const corners = zone.shape.kind === 'polygon' ? zone.shape.points.map((point) => onSheet(plan, point)) : roundPolygon(onSheet(plan, zone.shape.centre), zone.shape.radius * plan.perMetre, 24);
    const width = Math.max(...words.map((each) => textWidth(each, size, 'bold'))) + 1.8;
    const place = room.take([...onEdges(corners, width, height / 2 + 0.4), ...outside(corners, width)], width + 0.5, height + 0.4);
    if (!place) return [];
    const { left, top } = boxAround(place.at, width, height);
    return counted.flatMap(({ words, start, end }, rank): Mark[] => (words === '' ? [] : [{
      id: `tally-${zone.id}-${rank + 1}`, layer: 'labels', span: zone.span, label: `${zone.name}: ${words}`, during: { start, end },
      shapes: [
        box(left, top, width, height, filled('paper', inks[index] ?? 'note', 0.3)),
        text({ x: place.at.x, y: place.at.y + size * capHeight * 0.5 }, words, size, 'ink', { weight: 'bold', anchor: 'middle' }),
      ],
    }]));
  });
}

/** Where a zone has no room left: against its sides. */
function outside(corners: readonly Spot[], width: number): Candidate[] {
  const { left, right, top, bottom } = boxOf(corners);
  const [across, up] = [width / 2 + 0.5, height / 2 + 0.5];
  return [left + across, right - across].flatMap((x) => [top - up, bottom + up].map((y) => ({ at: { x, y }, cost: 6 })))
    .concat([left - across, right + across].flatMap((x) => [top + up, bottom - up].map((y) => ({ at: { x, y }, cost: 6.5 }))));
}

interface Counted extends Moment {
  readonly words: string;
}

/** From change to change; empty words while nobody is there. */
function countsIn(drill: Drill, { numbers, possession, timeline }: PhaseAnalysis, zone: string): Counted[] {
  const found: Counted[] = [];
  for (const { attackers, floaters, defenders, start, end } of countsOver(drill, numbers.filter((each) => each.zone === zone), possession, timeline.end)) {
    const words = attackers + floaters + defenders === 0 ? '' : `${attackers + floaters} v ${defenders}`;
    const before = found.at(-1);
    if (before?.words === words) found[found.length - 1] = { ...before, end };
    else found.push({ words, start, end });
  }
  const last = found.at(-1);
  return last ? [...found.slice(0, -1), { ...last, end: pastEnd(timeline.end) }] : [];
}
