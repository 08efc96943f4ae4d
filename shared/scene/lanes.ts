/** Where the ball could go at each moment: open lanes to their receivers, closed ones as far as where they are cut, and by whom. */
import { capHeight, textWidth } from '../font/text.ts';
import { doubtful, type Lane, type LaneReport } from '../games/lanes.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import { closestOnSegment } from '../geometry/closest.ts';
import type { ActorId } from '../model/drill.ts';
import { personAt } from '../timeline/at.ts';
import { onSheet } from './ground.ts';
import { around, both, type Room } from './labels.ts';
import { momentsOf } from './phase.ts';
import { radius } from './people.ts';
import type { Mark, Plan, Shape } from './scene.ts';
import { box, circle, filled, line, mm, path, stroked, text, type Spot } from './shapes.ts';
import { gap } from './traces.ts';
import { figure } from './units.ts';

/** One mark a lane and moment; words that no longer fit stay away, for the mark says them aloud. */
export function laneMarks(phase: PhaseAnalysis, plan: Plan, room: Room): Mark[] {
  const moments = momentsOf(phase);
  return phase.lanes.flatMap((report, index): Mark[] => {
    const during = moments[index];
    if (!during) return [];
    const own = room.fork();
    const common = { layer: 'lanes', span: spanOf(phase, report), during } as const;
    const nearest = nearestShapes(phase, report, plan, own);
    const others = otherLanes(phase, report).flatMap((lane): Mark[] => {
      const shapes = laneShapes(phase, report, lane, plan, own);
      return shapes.length === 0 ? [] : [{ ...common, id: `lane-${index + 1}-${lane.to}`, label: laneWords(report, lane), shapes }];
    });
    return [...others, ...(nearest ? [{ ...common, id: `nearest-${index + 1}`, ...nearest }] : [])];
  });
}

/** Balls that an opponent is first to: a cross on their way that nobody overlooks, at any time. */
export function cutMarks(phase: PhaseAnalysis, plan: Plan, room: Room): Mark[] {
  return phase.lanes.flatMap((report): Mark[] => {
    const { race } = report;
    if (!race || race.margin >= -doubtful) return [];
    const at = onSheet(plan, race.at);
    const words = cutWords(race);
    const width = textWidth(words, 2.4, 'bold');
    const place = room.take(around(at, both(2.4), width, 2.6, { x: 0, y: -1 }), width + 0.8, 3);
    return [{
      id: `cut-${(report.pass ?? 0) + 1}`, layer: 'problems', span: spanOf(phase, report), label: words,
      shapes: [
        circle(at, 2, filled('paper', 'late', 0.5)), path(crossAt(at, 1.1), stroked('late', 0.6)),
        ...(place ? [box(place.at.x - width / 2 - 0.3, place.at.y - 1.3, width + 0.6, 2.6, filled('paper')), text({ x: place.at.x, y: place.at.y + 1.2 * capHeight }, words, 2.4, 'late', { weight: 'bold', anchor: 'middle' })] : []),
      ],
    }];
  });
}

export function cutWords({ by, margin }: { readonly by: ActorId; readonly margin: number }): string {
  return `${by} first by ${seconds(-margin)}`;
}

/** Samples for the key, drawn about (0, 0), 11 mm wide. */
export const laneSamples: Readonly<Record<'open' | 'lofted' | 'closed', readonly Shape[]>> = {
  lofted: openLane({ x: 0, y: 0 }, { x: 11, y: 0 }, true),
  open: openLane({ x: 0, y: 0 }, { x: 11, y: 0 }, false),
  closed: closedLane({ x: 0, y: 0 }, { x: 7, y: 0 }, { x: 11, y: 0 }),
};

/** All but the one that is played. */
export function otherLanes({ timeline }: PhaseAnalysis, { pass, lanes }: LaneReport): readonly Lane[] {
  const played = pass === null ? null : (timeline.passes[pass]?.to ?? null);
  return lanes.filter(({ to }) => to !== played);
}

function spanOf({ timeline, phase }: PhaseAnalysis, { beat }: LaneReport) {
  return timeline.beats.find(({ number }) => number === beat)?.span ?? phase.span;
}

function laneWords({ from }: LaneReport, { to, open, by, lead }: Lane): string {
  const how = open === 'ground' ? 'open' : open === 'lofted' ? 'open through the air' : by === null || lead === null ? 'too far' : `closed by ${by} by ${seconds(lead)}`;
  return `${from} to ${to}: ${how}`;
}

function laneShapes({ timeline }: PhaseAnalysis, report: LaneReport, lane: Lane, plan: Plan, room: Room): Shape[] {
  const [from, to] = [report.at, lane.at].map((at) => onSheet(plan, at)) as [Spot, Spot];
  const length = gap(from, to);
  const start = radius.person + 1.4;
  const end = length - radius.person - 1.2;
  if (end - start < 3) return [];
  const at = (along: number): Spot => ({ x: from.x + ((to.x - from.x) * along) / length, y: from.y + ((to.y - from.y) * along) / length });
  if (lane.open !== null) return openLane(at(start), at(end), lane.open === 'lofted');
  const closer = timeline.tracks.find(({ actor }) => actor === lane.by);
  if (!closer || lane.lead === null) return [];
  const stands = onSheet(plan, personAt(closer, report.time));
  const cut = at(start + 1 + closestOnSegment(stands, at(start + 1), at(end)).fraction * (end - start - 1));
  const apart = gap(stands, cut) > radius.person + 2;
  return [...closedLane(at(start), cut, apart ? stands : cut), ...leadShapes(`${lane.by} first by ${seconds(lane.lead)}`, cut, apart ? 1.2 : radius.person + 1, room)];
}

/** Beside the cross; nowhere else, for it would not be known which one it is about. */
function leadShapes(words: string, cut: Spot, clear: number, room: Room): Shape[] {
  const width = textWidth(words, 1.8, 'medium');
  const beside = [...around(cut, both(clear), width, 2, { x: 0, y: -1 })].slice(0, 8);
  const place = room.take(beside, width + 0.4, 2.2);
  return place ? [text({ x: place.at.x, y: place.at.y + 0.9 * capHeight }, words, 1.8, 'lane', { anchor: 'middle' })] : [];
}

function openLane(from: Spot, to: Spot, lofted: boolean): Shape[] {
  const length = gap(from, to);
  const [x, y] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const wings = [1, -1].map((side) => `M${mm(to.x)} ${mm(to.y)}l${mm(-1.3 * x - side * 0.7 * y)} ${mm(-1.3 * y + side * 0.7 * x)}`).join('');
  return [line(from, to, stroked('lane', 0.22, lofted ? '0.35 0.9' : null)), path(wings, stroked('lane', 0.3))];
}

/** As far as the cross, then dotted towards who stands there to cut it. */
function closedLane(from: Spot, cut: Spot, by: Spot): Shape[] {
  return [line(from, cut, stroked('lane', 0.22, '0.9 0.7')), path(crossAt(cut, 0.95), stroked('lane', 0.45)), ...(by === cut ? [] : [line(cut, by, stroked('lane', 0.22, '0.3 0.6'))])];
}

function crossAt({ x, y }: Spot, half: number): string {
  return `M${mm(x - half)} ${mm(y - half)}l${mm(2 * half)} ${mm(2 * half)}m0 ${mm(-2 * half)}l${mm(-2 * half)} ${mm(2 * half)}`;
}

/** Where the best of the opponents comes closest to the ball that is played, and how much later than it. */
function nearestShapes({ timeline }: PhaseAnalysis, { race, pass }: LaneReport, plan: Plan, room: Room): Pick<Mark, 'label' | 'shapes'> | null {
  if (!race || pass === null || race.margin < -doubtful || race.margin > 1) return null;
  const struck = timeline.passes[pass];
  if (!struck) return null;
  const at = onSheet(plan, race.at);
  const words = race.margin < 0.05 ? `${race.by} just too late` : `${race.by} ${seconds(race.margin)} too late`;
  const width = textWidth(words, 2, 'medium');
  const places = [...around(at, both(1.6), width, 2.2, { x: 0, y: -1 })].map((place) => ({ ...place, cost: place.cost / 4 }));
  const place = room.take(places, width + 0.8, 2.6);
  if (!place) return null;
  return {
    label: `${struck.from} to ${struck.to ?? 'nobody'}: ${words}`,
    shapes: [
      box(place.at.x - width / 2 - 0.3, place.at.y - 1.1, width + 0.6, 2.2, filled('paper')),
      text({ x: place.at.x, y: place.at.y + capHeight }, words, 2, 'lane', { anchor: 'middle' }),
    ],
  };
}

function seconds(value: number): string {
  return `${figure(Math.round(value * 10) / 10)} s`;
}
