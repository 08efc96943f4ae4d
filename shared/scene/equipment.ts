/** Furniture and spare balls in their places. */
import { distance, type Point } from '../geometry/point.ts';
import type { BallSupply, Drill } from '../model/drill.ts';
import type { BallTrack, Timeline } from '../timeline/timeline.ts';
import { furnitureNames, furnitureSymbol, heapWidth, supplyShapes } from './furniture.ts';
import { type Box, onSheet } from './ground.ts';
import { around, both, type Candidate, type Room } from './labels.ts';
import { radius } from './people.ts';
import type { Mark, Plan } from './scene.ts';
import { group, type Spot } from './shapes.ts';

export interface PlacedThing {
  readonly mark: Mark;
  readonly solid: Box;
  readonly name: string | null;
}

export function furnitureOf(drill: Drill, plan: Plan): PlacedThing[] {
  // The coach is one of the cast.
  return drill.furniture.filter((thing) => thing.kind !== 'coach').map((thing) => {
    const at = onSheet(plan, thing.at);
    const { shapes, box } = furnitureSymbol(thing, plan.perMetre);
    const what = furnitureNames[thing.kind];
    return {
      name: thing.name,
      solid: { left: at.x + box.left - 0.2, right: at.x + box.right + 0.2, top: at.y + box.top - 0.2, bottom: at.y + box.bottom + 0.2 },
      mark: { id: `thing-${thing.id}`, layer: 'furniture', span: thing.span, label: thing.name === null ? what : `${what} ${thing.name}`, shapes: [group(at, shapes)] },
    };
  });
}

/** Balls that are drawn one by one: those that are played, and one that lies ready where no other is. */
export function ballsInPlay(drill: Drill, timeline: Timeline): BallTrack[] {
  const played = timeline.balls.filter(({ stretches }) => stretches.some(({ kind }) => kind !== 'still'));
  const alone = timeline.balls.filter((ball, index) => drill.balls[index]?.count === 1
    && !played.some((other) => sameSpot(other.home, ball.home)) && !timeline.balls.slice(0, index).some((other) => sameSpot(other.home, ball.home)));
  return timeline.balls.filter((ball) => played.includes(ball) || alone.includes(ball));
}

/** Balls beyond those in play: a heap for everyone who serves, and for every place where nobody does, set beside whoever stands there. */
export function supplies(drill: Drill, timeline: Timeline, plan: Plan, room: Room): Mark[] {
  const heaps = new Map<string, { index: number; count: number }>();
  for (const [index, count] of spareBalls(drill, timeline).entries()) {
    const { at, holder, count: written } = drill.balls[index] as BallSupply;
    const key = holder ?? `${at.x}, ${at.y}`;
    const heap = heaps.get(key);
    // The largest supply says where the heap lies.
    heaps.set(key, heap ? { index: written > (drill.balls[heap.index]?.count ?? 0) ? index : heap.index, count: heap.count + count } : { index, count });
  }
  return [...heaps.values()].filter(({ count }) => count > 0).map(({ index, count }): Mark => {
    const supply = drill.balls[index] as BallSupply;
    const from = onSheet(plan, supply.at);
    const width = count > 1 ? heapWidth : 4;
    const here: Candidate = { at: from, cost: 0 };
    const near = [...around(from, both(radius.person + 1), width, 4, { x: 0, y: 1 })].filter(({ at }) => sameSide(drill, plan, from, at));
    const place = room.take([here, ...near], width + 0.6, 4.6) ?? here;
    const middle = { x: place.at.x - (count > 1 ? 1.7 : 0), y: place.at.y };
    return { id: `balls-${index + 1}`, layer: 'ball', span: supply.span, label: `${count} ball${count === 1 ? '' : 's'}`, shapes: [group(middle, supplyShapes(count))] };
  });
}

/** Whether what lies beside the area stays beside it, and what lies on it on it; on its line it may go either way. */
function sameSide({ area }: Drill, plan: Plan, from: Spot, to: Spot): boolean {
  if (!area) return true;
  const [a, b] = [onSheet(plan, { x: 0, y: area.length }), onSheet(plan, { x: area.width, y: 0 })];
  const depth = ({ x, y }: Spot) => Math.min(x - a.x, b.x - x, y - a.y, b.y - y);
  return Math.abs(depth(from)) < onTheLine || depth(from) > 0 === depth(to) > 0;
}

/** Millimetres. */
const onTheLine = 0.2;

/** How many balls of every supply are not in play. */
function spareBalls(drill: Drill, timeline: Timeline): number[] {
  const homes = new Map(drill.actors.map(({ id, home }) => [id, home]));
  const inPlay = new Set(ballsInPlay(drill, timeline));
  // Every supply gives the ball of its own rank first; those taken later start where it lies or where its player stands.
  const later = new Set(timeline.balls.slice(drill.balls.length).filter((ball) => inPlay.has(ball)));
  return drill.balls.map(({ at, holder, count }, index) => {
    const own = timeline.balls[index];
    const from = holder === null ? at : (homes.get(holder) ?? at);
    let left = count - (own && inPlay.has(own) ? 1 : 0);
    for (const ball of later) {
      if (left < 1 || !sameSpot(ball.home, from)) continue;
      later.delete(ball);
      left -= 1;
    }
    return left;
  });
}

function sameSpot(a: Point, b: Point): boolean {
  return distance(a, b) < 0.01;
}
