import type { Span } from '../../grammar/tree.ts';
import type { Point } from '../geometry/point.ts';
import type { Drill, Furniture } from '../model/drill.ts';
import { metresIn } from '../units.ts';
import { problem, type Check } from './check.ts';
import { lengthCures } from './cures.ts';
import { inSentence, Thing } from './ground.ts';
import { standingOutside } from './outside-area.ts';
import { long, Who } from './say.ts';

/** The guidance gives 3 yd or 3 m: each drill is measured by the figure of its own units. */
const runOff = { metres: 3, yards: 3 };
/** Metres behind the line within which a goalkeeper is still in the goal. */
const inGoal = 0.3;

export const check: Check = {
  code: 'tight-clearance',
  group: 'ground',
  severity: 'warning',
  title: 'Somebody close behind a goal',
  why: 'Shots go over and past a goal, and players run on behind it. Whoever stands behind the goal between the lines of its posts looks into both. No figure is published for training grids; the 3 m (3 yd) of free ground that guidance asks for around a pitch is used here as a caution. Where the venue or the association has its own rule, that one holds.',
  source: 'The FA Handbook 2016-17, "Goalpost and pitch sizes", p. 556: run-off of at least 3 yd (or 3 m) all round a pitch',
  bad: [
    `drill "Finish" {
  area 30 x 30
  goal Far 5 x 2 at (15, 27) facing down
  station Base at (15, 5)
  station Next at ⟦(15, 29)⟧
}
`,
  ],
  good: [
    `drill "Finish" {
  area 30 x 30
  goal Far 5 x 2 at (15, 27) facing down
  station Base at (15, 5)
  station Next at (20, 29)
}
`,
  ],
  find: ({ drill }) => {
    const goals = drill.furniture.filter((thing) => thing.kind === 'goal');
    const least = runOffOf(drill);
    const open = goals.filter((goal) => !goals.some((other) => isBackToBack(goal, other, least)));
    const people = open.length === 0 ? [] : peopleIn(drill);
    return people.flatMap((person) => {
      const goal = open.find((each) => isBehind(each, person.at, inGoal, least));
      if (!goal) return [];
      const { back } = fromGoal(goal, person.at);
      const message = `${person.name} stands ${long(drill, back)} behind ${inSentence(Thing(drill, goal))}; keep ${long(drill, least)} free there.`;
      return problem(check, person.span, message, {
        help: 'Move beside the goal or farther back. This is pitch guidance used as a caution: local rules come first.',
        related: [{ span: goal.span, message: 'This is the goal.' }],
      });
    });
  },
  cures: lengthCures,
};

interface Person {
  readonly name: string;
  readonly at: Point;
  readonly span: Span;
}

/** Everyone with a place of their own. Who is outside the area has that told already. */
function peopleIn(drill: Drill): Person[] {
  const outside = new Set(drill.area ? standingOutside(drill, drill.area).map((stray) => stray.span.from) : []);
  const stations = drill.stations.map((station): Person => ({ name: `\`${station.name}\``, at: station.at, span: station.at.span }));
  const others = drill.actors
    .filter((actor) => actor.kind !== 'first' && actor.kind !== 'next')
    .map((actor): Person => ({ name: Who(actor.id), at: actor.home, span: actor.span }));
  return [...stations, ...others].filter((person) => !outside.has(person.span.from));
}

/** Metres behind the goal line (negative in front) and to the side of the middle of the goal. */
function fromGoal(goal: Furniture, at: Point): { readonly back: number; readonly side: number } {
  const { x, y } = goal.facing ?? { x: 0, y: 0 };
  const [dx, dy] = [at.x - goal.at.x, at.y - goal.at.y];
  return { back: -(dx * x + dy * y), side: Math.abs(dx * y - dy * x) };
}

/** Between the lines of the posts, farther behind than one distance and nearer than another, in metres. */
function isBehind(goal: Furniture, at: Point, from: number, to: number): boolean {
  const { back, side } = fromGoal(goal, at);
  return back > from && back < to - 1e-9 && side <= (goal.width ?? 0) / 2 + 1e-9;
}

/** With another goal behind it that looks the other way: who stands there plays at that goal. */
function isBackToBack(goal: Furniture, other: Furniture, least: number): boolean {
  if (other === goal || !other.facing || !goal.facing) return false;
  const opposite = other.facing.x * goal.facing.x + other.facing.y * goal.facing.y < 0;
  return opposite && isBehind(goal, other.at, -inGoal, least);
}

/** Metres. */
function runOffOf({ units }: Drill): number {
  return units === 'm' || units === 'cm' ? runOff.metres : runOff.yards * metresIn('yd');
}
