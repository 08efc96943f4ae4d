/** Furniture and spare balls in their places. */
import { distance } from '../geometry/point.ts';
import type { Drill } from '../model/drill.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { furnitureNames, furnitureSymbol, supplyShapes } from './furniture.ts';
import { type Box, onSheet } from './ground.ts';
import { around, both, type Candidate, type Room } from './labels.ts';
import { radius } from './people.ts';
import type { Mark, Plan } from './scene.ts';
import { group } from './shapes.ts';

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

/** Balls beyond those in play, set beside whoever stands there. */
export function supplies(drill: Drill, timeline: Timeline, plan: Plan, room: Room): Mark[] {
  return drill.balls.flatMap((supply, index): Mark[] => {
    const count = supply.count - timeline.balls.filter((ball) => distance(ball.home, supply.at) < 0.01).length;
    if (count < 1) return [];
    const from = onSheet(plan, supply.at);
    const width = count > 3 ? 7.5 : 4;
    const here: Candidate = { at: from, cost: 0 };
    const place = room.take([here, ...around(from, both(radius.person + 0.4), width, 4, { x: 0, y: 1 })], width, 4) ?? here;
    const middle = { x: place.at.x - (count > 3 ? 1.7 : 0), y: place.at.y };
    return [{ id: `balls-${index + 1}`, layer: 'ball', span: supply.span, label: `${count} ball${count === 1 ? '' : 's'}`, shapes: [group(middle, supplyShapes(count))] }];
  });
}
