/** What is written on the plan: numbers on lines, names, flags at problems; each where it covers nothing. */
import { contains, roundPolygon } from '../geometry/polygon.ts';
import type { Point } from '../geometry/point.ts';
import type { Drill } from '../model/drill.ts';
import type { Flagged } from './flagged.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { capHeight, textWidth, type Weight } from '../font/text.ts';
import { zoneInks } from './area.ts';
import type { Cast } from './cast.ts';
import type { PlacedThing } from './equipment.ts';
import { type Box, boxOf, onSheet } from './ground.ts';
import { alongLine, around, both, type Candidate, type Room } from './labels.ts';
import { type DrawnLine, isRun } from './lines.ts';
import { radius } from './people.ts';
import type { Ink, Paint } from './palette.ts';
import { flag } from './panels.ts';
import type { Mark, Plan } from './scene.ts';
import { box, filled, line, stroked, text, type Spot } from './shapes.ts';
import { lengthOf, walker } from './traces.ts';
import { plainWords } from './words.ts';

/** Millimetres of line that have to be seen before and behind a number that stands on it. */
const seen = 6;

/** What the beat is called, on its line or, where it would hide a short one, beside it. */
export function numbers(lines: readonly DrawnLine[], labels: ReadonlyMap<number, string>, room: Room): Mark[] {
  return lines.flatMap(({ way, points }): Mark[] => {
    if (way.beats.length === 0) return [];
    const names = way.beats.map((beat) => labels.get(beat) ?? `${beat}`);
    const words = names.length > 3 ? `${names.slice(0, 3).join(', ')} …` : names.join(', ');
    const half = Math.max(1.75, textWidth(words, 2.4, 'bold') / 2 + 0.6);
    const at = walker(points);
    const length = lengthOf(points);
    const middle = at(length / 2);
    const [width, height] = [half * 2 + 0.8, 4.2];
    const place = room.take(alongLine((share) => at(share * length), half + 1, length >= half * 2 + seen * 2), width, height)
      ?? room.take(around(middle, both(3), half * 2, 3.5, { x: 1, y: 0 }), width, height);
    if (!place) return [];
    const far = Math.min(...points.map((spot) => Math.hypot(spot.x - place.at.x, spot.y - place.at.y))) > 3.5;
    const ink = isRun(way.kind) ? 'run' : 'ball';
    return [{
      id: `number-${way.id}`, layer: 'labels', span: way.span, label: null,
      shapes: [
        ...(far ? [line(middle, place.at, stroked('note', 0.15))] : []),
        // The stroke rounds the corners.
        box(place.at.x - half + 0.5, place.at.y - 1.2, half * 2 - 1, 2.4, filled(ink, ink, 1)),
        text({ x: place.at.x, y: place.at.y + 2.4 * capHeight * 0.5 }, words, 2.4, 'paper', { weight: 'bold', anchor: 'middle' }),
      ],
    }];
  });
}

export function names(drill: Drill, letters: Cast['letters'], furniture: readonly PlacedThing[], plan: Plan, room: Room): Mark[] {
  const middle = drill.area ? onSheet(plan, { x: drill.area.width / 2, y: drill.area.length / 2 }) : { x: plan.left, y: plan.bottom };
  const marks: Mark[] = [];
  const beside = (id: string, span: Mark['span'], at: Spot, clear: Spot, words: string, size: number, ink: Paint, weight: Weight) => {
    const width = textWidth(words, size, weight);
    const far = Math.hypot(at.x - middle.x, at.y - middle.y) || 1;
    const away = { x: (at.x - middle.x) / far, y: (at.y - middle.y) / far };
    const place = room.take(around(at, clear, width, size, away), width + 0.6, size + 0.3);
    if (place) marks.push(word(id, span, place.at, words, size, ink, weight, width, Math.hypot(place.at.x - at.x, place.at.y - at.y) - width / 2 > Math.max(clear.x, clear.y) + 4 ? at : null));
  };
  // A name of one letter is on the badge already.
  for (const station of drill.stations.filter(({ name }) => name.toUpperCase() !== letters.get(name))) beside(`name-${station.id}`, station.span, onSheet(plan, station.at), both(radius.person + 0.9), short(station.name), 2.6, 'ink', 'bold');
  const inks = zoneInks(drill);
  const area = drill.area && boxOf([onSheet(plan, { x: 0, y: 0 }), onSheet(plan, { x: drill.area.width, y: drill.area.length })]);
  for (const [index, zone] of drill.zones.entries()) {
    const corners = zone.shape.kind === 'polygon' ? zone.shape.points.map((point) => onSheet(plan, point)) : roundPolygon(onSheet(plan, zone.shape.centre), zone.shape.radius * plan.perMetre, 24);
    const words = short(zone.name);
    const width = textWidth(words, 2.4, 'medium');
    const place = room.take(onEdges(corners, width, 2.1, area), width + 0.8, 2.9);
    if (place) marks.push(word(`name-zone-${zone.id}`, zone.span, place.at, words, 2.4, inks[index] as Ink, 'medium', width, null));
  }
  for (const { mark, name, solid } of furniture) {
    const at = { x: (solid.left + solid.right) / 2, y: (solid.top + solid.bottom) / 2 };
    const clear = { x: (solid.right - solid.left) / 2 + 0.3, y: (solid.bottom - solid.top) / 2 + 0.3 };
    if (name !== null) beside(`name-${mark.id}`, mark.span, at, clear, short(name), 2.2, 'note', 'medium');
  }
  return marks;
}

/** Words on a patch of paper, as a draughtsman breaks a line for them; with a leader when they stand far off. */
function word(id: string, span: Mark['span'], at: Spot, words: string, size: number, ink: Paint, weight: Weight, width: number, leader: Spot | null): Mark {
  const left = at.x - width / 2;
  return {
    id, layer: 'labels', span, label: null,
    shapes: [
      ...(leader ? [line(leader, at, stroked('note', 0.15))] : []),
      box(left - 0.3, at.y - size * 0.5, width + 0.6, size, filled('paper')),
      text({ x: left, y: at.y + size * capHeight * 0.5 }, words, size, ink, { weight }),
    ],
  };
}

function short(name: string): string {
  const chars = [...name];
  return chars.length > 18 ? `${chars.slice(0, 17).join('')}…` : name;
}

/**
 * Within a zone, along its upper and lower edges, its middle so far from them: top left first. What is wider than the zone begins or
 * ends with it, within the area if it can.
 */
export function onEdges(corners: readonly Spot[], width: number, inset: number, area: Box | null = null): Candidate[] {
  const hull = boxOf(corners);
  const from = hull.left + width / 2 + 1;
  const to = hull.right - width / 2 - 1;
  const places = [0, 1, 0.5, 0.25, 0.75].flatMap((share, step) => [hull.top + inset, hull.bottom - inset].map((y, rank): Candidate => {
    const x = from + (to - from) * share;
    const within = contains(corners, { x: x - width / 2, y }, 1) && contains(corners, { x: x + width / 2, y }, 1);
    const beyond = area !== null && (x - width / 2 < area.left || x + width / 2 > area.right);
    return { at: { x, y }, cost: step * 0.6 + rank * 0.3 + (within ? 0 : 4) + (beyond ? 4 : 0) };
  }));
  return places.sort((a, b) => a.cost - b.cost);
}

/** A flag at the thing whose text the problem is about, the smallest that holds it. */
export function flags(problems: readonly Flagged[], drill: Drill, timeline: Timeline, plan: Plan, room: Room): Mark[] {
  const things = [
    ...timeline.passes.map((pass) => ({ span: pass.action.span, at: pass.toAt as Point })),
    ...timeline.tracks.flatMap((track) => track.moves.map((move) => ({ span: move.action.span, at: move.path.to }))),
    ...drill.stations.map(({ span, at }) => ({ span, at: at as Point })),
    ...drill.furniture.map(({ span, at }) => ({ span, at: at as Point })),
    ...drill.actors.map(({ span, home }) => ({ span, at: home as Point })),
    ...drill.zones.map(({ span, shape }) => ({ span, at: shape.kind === 'circle' ? shape.centre as Point : middleOf(shape.points) })),
  ];
  return problems.flatMap((problem, index): Mark[] => {
    const holding = things.filter(({ span }) => span.from <= problem.span.from && problem.span.to <= span.to);
    holding.sort((a, b) => a.span.to - a.span.from - (b.span.to - b.span.from));
    const thing = holding[0];
    if (!thing) return [];
    const at = onSheet(plan, thing.at);
    const place = room.take(around(at, both(radius.person + 0.5), 4.2, 4.2, { x: 0, y: -1 }), 4.2, 4.2);
    if (!place) return [];
    return [{ id: `problem-${index + 1}`, layer: 'problems', span: problem.span, label: `${index + 1}: ${plainWords(problem.message)}`, shapes: flag(place.at, index + 1) }];
  });
}

function middleOf(points: readonly Point[]): Point {
  const { left, right, top, bottom } = boxOf(points);
  return { x: (left + right) / 2, y: (top + bottom) / 2 };
}
