/** The ground of the plan: grid, area with its pegs and markers, zones. */
import { roundPolygon } from '../geometry/polygon.ts';
import type { Drill, Zone } from '../model/drill.ts';
import { onSheet, type Box } from './ground.ts';
import type { Ink } from './palette.ts';
import type { Mark, Pen, Plan, Shape } from './scene.ts';
import { box, circle, filled, mm, path, polygon, polyline, stroked, text, type Spot } from './shapes.ts';
import { lengthWords, type Measure } from './units.ts';

export function areaMarks(drill: Drill, plan: Plan, grass: Box, measure: Measure): Mark[] {
  const ranks = zoneRanks(drill);
  return [grid(drill, plan, grass, measure), ...drill.zones.flatMap((zone, index) => zoneMarks(zone, ranks[index] as number, plan)), ...(drill.area ? [outline(drill, plan, grass, measure)] : [])];
}

/** Hatching by the rank of the zone: direction and spacing tell zones apart without colour. */
const hatches = [{ dx: 1, dy: -1, gap: 2.6 }, { dx: 1, dy: 1, gap: 2.6 }, { dx: 0, dy: 1, gap: 2.2 }, { dx: 1, dy: 0, gap: 2.2 }] as const;

function grid(drill: Drill, plan: Plan, grass: Box, measure: Measure): Mark {
  const extent = drill.area ? { left: 0, right: drill.area.width, top: 0, bottom: drill.area.length } : grass;
  let step = 1;
  while (measure.grid * plan.perMetre * step < 1.8) step *= 5;
  const lines: Record<'gridMinor' | 'gridMajor', string> = { gridMinor: '', gridMajor: '' };
  const a = onSheet(plan, { x: extent.left, y: extent.top });
  const b = onSheet(plan, { x: extent.right, y: extent.bottom });
  const each = (from: number, to: number, draw: (at: number) => string) => {
    for (let index = Math.ceil(from / measure.grid - 1e-6); index * measure.grid <= to + 1e-6; index += 1) {
      if (index % step === 0) lines[index % (step * 5) === 0 || step > 1 ? 'gridMajor' : 'gridMinor'] += draw(index * measure.grid);
    }
  };
  each(extent.left, extent.right, (at) => `M${mm(onSheet(plan, { x: at, y: 0 }).x)} ${mm(a.y)}V${mm(b.y)}`);
  each(extent.top, extent.bottom, (at) => `M${mm(a.x)} ${mm(onSheet(plan, { x: 0, y: at }).y)}H${mm(b.x)}`);
  return {
    id: 'grid', layer: 'grid', span: null, label: null,
    shapes: [path(lines.gridMinor, stroked('gridMinor', 0.18)), path(lines.gridMajor, stroked('gridMajor', 0.25))],
  };
}

function outline(drill: Drill, plan: Plan, grass: Box, measure: Measure): Mark {
  const area = drill.area as NonNullable<Drill['area']>;
  const from = onSheet(plan, { x: 0, y: area.length });
  const to = onSheet(plan, { x: area.width, y: 0 });
  const diagonal = `diagonal ${lengthWords(Math.hypot(area.width, area.length), measure)} ${measure.name}`;
  return {
    id: 'area', layer: 'area', span: area.span, label: `Area ${lengthWords(area.width, measure)} by ${lengthWords(area.length, measure)} ${measure.name}, ${diagonal}`,
    shapes: [
      box(from.x, from.y, to.x - from.x, to.y - from.y, stroked('ink', 0.4)),
      ...sideMarkers(area, plan),
      text({ x: to.x - 3, y: Math.min(from.y, plan.bottom - plan.perMetre * grass.bottom) - 2.6 }, diagonal, 2.2, 'note', { anchor: 'end' }),
      text({ x: from.x - 1.2, y: to.y + 3.3 }, '0, 0', 1.9, 'note', { anchor: 'end' }),
      ...[from, to, { x: from.x, y: to.y }, { x: to.x, y: from.y }].flatMap(peg),
    ],
  };
}

/** A peg as surveyors draw it: a circle on a cross. */
function peg(at: Spot): Shape[] {
  return [
    path(`M${mm(at.x - 2)} ${mm(at.y)}h4M${mm(at.x)} ${mm(at.y - 2)}v4`, stroked('ink', 0.2)),
    circle(at, 0.9, filled('paper', 'ink', 0.35)),
  ];
}

/** Discs along the sides of an area `marked every` so far, in one path. */
function sideMarkers({ width, length, marked }: NonNullable<Drill['area']>, plan: Plan): Shape[] {
  if (marked === null || !(marked > 0) || (width + length) / marked > 200) return [];
  const shapes: Shape[] = [];
  const dot = (x: number, y: number) => shapes.push(circle(onSheet(plan, { x, y }), 0.6, filled('paper', 'marker', 0.4)));
  for (let at = marked; at < width - 0.1; at += marked) {
    dot(at, 0);
    dot(at, length);
  }
  for (let at = marked; at < length - 0.1; at += marked) {
    dot(0, at);
    dot(width, at);
  }
  return shapes;
}

// ---------------------------------------------------------------- zones

/** Tint and hatching below the grid, the edge above it. */
function zoneMarks(zone: Zone, index: number, plan: Plan): Mark[] {
  const { shape } = zone;
  const r = shape.kind === 'circle' ? shape.radius * plan.perMetre : 0;
  const corners = shape.kind === 'circle' ? roundPolygon(onSheet(plan, shape.centre), r, 48) : shape.points.map((point) => onSheet(plan, point));
  const outlined = (pen: Pen) => (shape.kind === 'circle' ? circle(onSheet(plan, shape.centre), r, pen) : polygon(corners, pen));
  return [
    { id: `zone-${zone.id}`, layer: 'zones', span: zone.span, label: `Zone ${zone.name}`, shapes: [outlined(filled('tint')), hatch(corners, index)] },
    { id: `edge-${zone.id}`, layer: 'area', span: zone.span, label: null, shapes: [outlined(stroked(zoneInk(index), 0.35, '3 1 0.6 1'))] },
  ];
}

/** What the coordinates of the corner take. */
export function originBox(plan: Plan): Box {
  const { x, y } = onSheet(plan, { x: 0, y: 0 });
  return { left: x - 5, right: x - 1, top: y + 1.6, bottom: y + 3.8 };
}

/** Of every zone, in the order of the text: those that share a name look alike, strips of one split do not. */
export function zoneInks(drill: Drill): Ink[] {
  return zoneRanks(drill).map(zoneInk);
}

function zoneRanks({ zones }: Drill): number[] {
  const kinds = zones.map(({ id, group, split }) => (group === null || split ? id : group));
  const distinct = [...new Set(kinds)];
  return kinds.map((kind) => distinct.indexOf(kind));
}

function zoneInk(rank: number): Ink {
  return (['zone0', 'zone1', 'zone2', 'zone3'] as const)[rank % 4] as Ink;
}

/** Parallel lines within the polygon, cut at its sides. */
function hatch(corners: readonly Spot[], index: number): Shape {
  const { dx, dy, gap } = hatches[index % hatches.length] as (typeof hatches)[number];
  const norm = Math.hypot(dx, dy);
  const [ux, uy] = [dx / norm, dy / norm];
  const across = (spot: Spot) => spot.y * ux - spot.x * uy;
  const along = (spot: Spot) => spot.x * ux + spot.y * uy;
  const sides = corners.map(across);
  let d = '';
  for (let at = Math.ceil(Math.min(...sides) / gap) * gap; at < Math.max(...sides); at += gap) {
    const cuts: number[] = [];
    for (const [corner, a] of corners.entries()) {
      const b = corners[(corner + 1) % corners.length] as Spot;
      const [from, to] = [across(a), across(b)];
      if (from < at === to < at) continue;
      cuts.push(along(a) + ((along(b) - along(a)) * (at - from)) / (to - from));
    }
    cuts.sort((a, b) => a - b);
    for (let pair = 0; pair + 1 < cuts.length; pair += 2) {
      const ends = [cuts[pair] as number, cuts[pair + 1] as number].map((s) => ({ x: s * ux - at * uy, y: s * uy + at * ux }));
      d += polyline(ends);
    }
  }
  return path(d, stroked('gridMajor', 0.25));
}
