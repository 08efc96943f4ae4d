/** What happens to the things on the ground between two parts, with the least work. */
import { distance, type Point } from '../geometry/point.ts';
import { sameMarker } from '../measure/kit.ts';
import type { Changeover, Thing } from './analysis.ts';
import { carrying } from './carrying.ts';
import { cheapest } from './matching.ts';

type Work = Omit<Changeover, 'from' | 'to' | 'hands' | 'seconds' | 'available'>;

/** From the things of one part to those of the next. Things of a kind are alike, whatever their colour. */
export function changeoverOf(before: readonly Thing[], after: readonly Thing[], hands: number): Work & Pick<Changeover, 'hands' | 'seconds'> {
  const work = kindsOf([...before, ...after]).map((kind) => workOf(kind, placesOf(before, kind), placesOf(after, kind)));
  const walk = work.reduce((sum, each) => sum + each.walk, 0);
  const handled = work.reduce((sum, each) => sum + each.handled, 0);
  return {
    stays: work.flatMap(({ stays }) => stays),
    moves: work.flatMap(({ moves }) => moves),
    comesUp: work.flatMap(({ comesUp }) => comesUp),
    goesDown: work.flatMap(({ goesDown }) => goesDown),
    walk,
    hands,
    seconds: (walk / carrying.speed + handled) / hands,
  };
}

function kindsOf(things: readonly Thing[]): readonly Thing['kind'][] {
  return [...new Set(things.map(({ kind }) => kind))];
}

function placesOf(things: readonly Thing[], kind: Thing['kind']): readonly Point[] {
  return things.filter((thing) => thing.kind === kind).map(({ at }) => at);
}

/** `handled`: seconds of picking up and putting down. */
function workOf(kind: Thing['kind'], before: readonly Point[], after: readonly Point[]): Work & { readonly handled: number } {
  const { up: pick, down: put, load } = carrying.things[kind];
  const pairs = paired(kind, before, after);
  const lay = pairs.filter(({ from, to }) => from && to && isThere(from, to));
  const moved = pairs.flatMap(({ from, to }) => (from && to && !isThere(from, to) ? [{ kind, from, to }] : []));
  const up = pairs.flatMap(({ from, to }) => (from && !to ? [{ kind, at: from }] : []));
  const down = pairs.flatMap(({ from, to }) => (to && !from ? [{ kind, at: to }] : []));
  const metres = [...moved.map(({ from, to }) => distance(from, to)), ...[...up, ...down].map(({ at }) => distance(at, carrying.pile))];
  return {
    stays: lay.map(({ from }) => ({ kind, at: from! })),
    moves: moved,
    comesUp: up,
    goesDown: down,
    walk: metres.reduce((sum, each) => sum + each, 0) / load,
    handled: pick * (moved.length + up.length) + put * (moved.length + down.length),
  };
}

/** Null: the pile. */
interface Pair {
  readonly from: Point | null;
  readonly to: Point | null;
}

/** Each place is served from one of the places before it, or from the pile where there are too few; what is left over goes to the pile. */
function paired(kind: Thing['kind'], before: readonly Point[], after: readonly Point[]): readonly Pair[] {
  if (before.length === 0 || after.length === 0) return [...before.map((from) => ({ from, to: null })), ...after.map((to) => ({ from: null, to }))];
  const size = Math.max(before.length, after.length);
  if (before.length === after.length && before.every((from, index) => isThere(from, after[index]!))) return before.map((from, index) => ({ from, to: after[index]! }));
  if (size <= carrying.exactly) return exact(kind, before, after);
  const lying = new Set(before.map(keyOf));
  const wanted = new Set(after.map(keyOf));
  const still = before.filter((at) => wanted.has(keyOf(at))).map((at): Pair => ({ from: at, to: at }));
  const rest = [before.filter((at) => !wanted.has(keyOf(at))), after.filter((at) => !lying.has(keyOf(at)))].map(leftToRight);
  const blocks = Math.ceil(Math.max(rest[0]!.length, rest[1]!.length) / carrying.block);
  return [...still, ...Array.from({ length: blocks }, (_, index) => {
    const [from, to] = rest.map((all) => all.slice(index * carrying.block, (index + 1) * carrying.block));
    return exact(kind, from!, to!);
  }).flat()];
}

function keyOf({ x, y }: Point): string {
  return `${x} ${y}`;
}

function leftToRight(points: readonly Point[]): readonly Point[] {
  return [...points].sort((a, b) => a.x - b.x || a.y - b.y);
}

/** The pile stands in for as many as the shorter side lacks. */
function exact(kind: Thing['kind'], before: readonly Point[], after: readonly Point[]): readonly Pair[] {
  const size = Math.max(before.length, after.length);
  const filled = (points: readonly Point[]): readonly (Point | null)[] => [...points, ...Array.from({ length: size - points.length }, () => null)];
  const [rows, columns] = [filled(before), filled(after)];
  const chosen = cheapest(rows.map((from) => columns.map((to) => costOf(kind, from, to))));
  return rows.map((from, index): Pair => ({ from, to: columns[chosen[index]!]! }));
}

/** Seconds for one pair of hands. */
function costOf(kind: Thing['kind'], from: Point | null, to: Point | null): number {
  const { up, down, load } = carrying.things[kind];
  if (from && to && isThere(from, to)) return 0;
  const metres = distance(from ?? carrying.pile, to ?? carrying.pile);
  return (from ? up : 0) + (to ? down : 0) + metres / load / carrying.speed;
}

/** Near enough to stay where it is. */
function isThere(from: Point, to: Point): boolean {
  return distance(from, to) < sameMarker;
}
