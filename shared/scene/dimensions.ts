/**
 * Dimensions outside the drawing, in the manner of ISO 129-1: extension lines, the value above its line, oblique strokes
 * in the chain and arrowheads at the overall size. Values that would not fit are raised, then left out.
 */
import type { Drill } from '../model/drill.ts';
import { textWidth } from '../font/text.ts';
import type { Box } from './ground.ts';
import type { Mark, Plan, Shape } from './scene.ts';
import { line, polygon, filled, stroked, text, type Spot } from './shapes.ts';
import { lengthWords, type Measure } from './units.ts';

/** Room that the dimensions take beyond the drawing, millimetres. */
export const dimensionRoom = { left: 19.5, bottom: 17.5, top: 6, right: 5 } as const;

const tier = { chain: 8, overall: 14.5, alone: 7 } as const;
const size = 2.3;

/** A place on one axis that is set out; the lower the rank, the more it matters. */
interface Stop {
  readonly at: number;
  readonly rank: number;
}

/**
 * The extent and the chain of places along both axes. `extent` is what is measured overall, in metres; `drawn` is what
 * the dimensions must stay clear of, on the sheet.
 */
export function dimensionMarks(drill: Drill, extent: Box, drawn: Box, plan: Plan, measure: Measure): Mark[] {
  const x = axis(drill, 'x', extent.left, extent.right);
  const y = axis(drill, 'y', extent.top, extent.bottom);
  const across: Side = {
    spot: (at, out) => ({ x: plan.left + plan.perMetre * at, y: drawn.bottom + out }),
    edge: () => plan.bottom - plan.perMetre * extent.top,
    upright: false,
  };
  const along: Side = {
    spot: (at, out) => ({ x: drawn.left - out, y: plan.bottom - plan.perMetre * at }),
    edge: () => plan.left + plan.perMetre * extent.left,
    upright: true,
  };
  const mark = (id: string, label: string, shapes: Shape[]): Mark => ({ id, layer: 'dimensions', span: drill.area?.span ?? null, label, shapes });
  const words = (length: number) => `${lengthWords(length, measure)} ${measure.name}`;
  return [
    mark('dimension-width', `${words(extent.right - extent.left)} wide`, side(x, [extent.left, extent.right], across, plan, measure)),
    mark('dimension-length', `${words(extent.bottom - extent.top)} long`, side(y, [extent.top, extent.bottom], along, plan, measure)),
  ].filter((one) => one.shapes.length > 0);
}

interface Side {
  /** The spot on the sheet of a place on the axis, so far out from the drawing. */
  readonly spot: (at: number, out: number) => Spot;
  /** Where the edge of the measured extent lies, on the other axis of the sheet. */
  readonly edge: () => number;
  readonly upright: boolean;
}

function side(stops: readonly Stop[], [from, to]: readonly [number, number], where: Side, plan: Plan, measure: Measure): Shape[] {
  const [first, last] = [stops[0], stops[stops.length - 1]];
  if (!first || !last || to - from < 0.01) return [];
  const chain = thinned(stops, plan, measure);
  const outer = chain.length > 2 ? tier.overall : tier.alone;
  const overall = [where.spot(from, outer), where.spot(to, outer)] as const;
  const shapes: Shape[] = [
    line(...overall, stroked('note', 0.2)),
    arrowhead(overall[0], overall[1]),
    arrowhead(overall[1], overall[0]),
    value(where, (from + to) / 2, outer, lengthWords(to - from, measure), 0, size + 0.2),
  ];
  for (const stop of chain) {
    shapes.push(extension(where, stop.at, stop.rank === 0 ? outer : tier.chain));
    if (chain.length > 2) shapes.push(stroke(where.spot(stop.at, tier.chain), where.upright));
  }
  if (chain.length > 2) {
    shapes.push(line(where.spot(first.at, tier.chain), where.spot(last.at, tier.chain), stroked('note', 0.2)));
    for (const { middle, words, level } of values(chain, plan, measure)) shapes.push(value(where, middle, tier.chain, words, level, size));
  }
  return shapes;
}

/** Where things stand on an axis, in order, those within 5 cm of each other as one. */
function axis(drill: Drill, name: 'x' | 'y', from: number, to: number): Stop[] {
  const stops: Stop[] = [{ at: from, rank: 0 }, { at: to, rank: 0 }];
  for (const station of drill.stations) stops.push({ at: station.at[name], rank: 1 });
  for (const thing of drill.furniture) if (thing.kind !== 'coach') stops.push({ at: thing.at[name], rank: 2 });
  for (const { shape } of drill.zones) {
    if (shape.kind === 'polygon') for (const corner of shape.points) stops.push({ at: corner[name], rank: 3 });
  }
  stops.sort((a, b) => a.at - b.at || a.rank - b.rank);
  const merged: Stop[] = [];
  for (const stop of stops) {
    const before = merged[merged.length - 1];
    if (!before || stop.at - before.at > 0.05) merged.push(stop);
    else if (stop.rank < before.rank) merged[merged.length - 1] = stop;
  }
  return merged;
}

interface Value {
  readonly middle: number;
  readonly words: string;
  /** 0 on the line, 1 raised above its neighbours; null where it fits neither way. */
  readonly level: 0 | 1 | null;
}

/** Drops the places that matter least until every value has room. */
function thinned(stops: readonly Stop[], plan: Plan, measure: Measure): Stop[] {
  const kept = [...stops];
  for (;;) {
    const tight = measured(kept, plan, measure).findIndex((one) => one.level === null);
    if (tight < 0) return kept;
    const [a, b] = [kept[tight] as Stop, kept[tight + 1] as Stop];
    if (a.rank === 0 && b.rank === 0) return kept.length > 2 ? [kept[0] as Stop, kept[kept.length - 1] as Stop] : kept;
    kept.splice(a.rank > b.rank ? tight : tight + 1, 1);
  }
}

function values(stops: readonly Stop[], plan: Plan, measure: Measure): (Value & { readonly level: 0 | 1 })[] {
  return measured(stops, plan, measure).flatMap((one) => (one.level === null ? [] : [{ ...one, level: one.level }]));
}

function measured(stops: readonly Stop[], plan: Plan, measure: Measure): Value[] {
  let raisedTo = -Infinity;
  return stops.slice(1).map((stop, index) => {
    const before = stops[index] as Stop;
    const words = lengthWords(stop.at - before.at, measure);
    const width = textWidth(words, size, 'medium');
    const gap = (stop.at - before.at) * plan.perMetre;
    const middle = (stop.at + before.at) / 2;
    if (gap >= width + 0.8) return { middle, words, level: 0 };
    const left = middle * plan.perMetre - width / 2;
    if (gap < 1.5 || left < raisedTo + 0.8) return { middle, words, level: null };
    raisedTo = left + width;
    return { middle, words, level: 1 };
  });
}

function value(where: Side, middle: number, out: number, words: string, level: 0 | 1, height: number): Shape {
  const above = 0.8 + level * 2.5;
  const spot = where.spot(middle, out);
  const at = where.upright ? { x: spot.x - above, y: spot.y } : { x: spot.x, y: spot.y - above };
  return text(at, words, height, 'note', { anchor: 'middle', upright: where.upright });
}

/** From just off the edge of the extent to just beyond the dimension line. */
function extension(where: Side, at: number, out: number): Shape {
  const end = where.spot(at, out + 1.2);
  const start = where.upright ? { x: Math.min(where.edge(), where.spot(at, 0).x) - 1, y: end.y } : { x: end.x, y: Math.max(where.edge(), where.spot(at, 0).y) + 1 };
  return line(start, end, stroked('note', 0.15));
}

function stroke(at: Spot, upright: boolean): Shape {
  const reach = upright ? -0.8 : 0.8;
  return line({ x: at.x - 0.8, y: at.y + reach }, { x: at.x + 0.8, y: at.y - reach }, stroked('note', 0.4));
}

function arrowhead(tip: Spot, from: Spot): Shape {
  const length = Math.hypot(from.x - tip.x, from.y - tip.y) || 1;
  const [dx, dy] = [((from.x - tip.x) / length) * 2.4, ((from.y - tip.y) / length) * 2.4];
  return polygon([tip, { x: tip.x + dx - dy * 0.16, y: tip.y + dy + dx * 0.16 }, { x: tip.x + dx + dy * 0.16, y: tip.y + dy - dx * 0.16 }], filled('note'));
}
