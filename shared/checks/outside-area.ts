import type { Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import { distance, plus, type Point } from '../geometry/point.ts';
import { contains } from '../geometry/polygon.ts';
import type { Area, Drill, Furniture, Id } from '../model/drill.ts';
import type { Problem } from '../problem.ts';
import { formatNumber, metresIn } from '../units.ts';
import { problem, type Check, type Cure } from './check.ts';
import { lengthCures } from './cures.ts';
import { beyond, inSentence, Thing } from './ground.ts';
import { long, spot, Who } from './say.ts';

/** Metres: on the line is inside, and so is what rounding puts next to it. */
const tolerance = 0.05;
/** Metres that a goal may stand behind a line. */
const behindLine = 2;

export const check: Check = {
  code: 'outside-area',
  group: 'ground',
  severity: 'error',
  title: 'Outside the area',
  why: 'The area is what gets marked out and what the players keep to. Whoever stands or runs outside it is in the space of the next group, or a number in the text is a slip. The coach, floaters who serve from the edge, spare balls and the rest of a queue may be outside, and a goal may stand up to 2 m behind a line.',
  source: null,
  bad: [
    `drill "Two" {
  age U13
  area 12 x 12
  station Base at (2, 6)
  station Wall at ⟦(13, 6)⟧
}
`,
    `drill "Two" {
  age U13
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  gate Door at ⟦(11.5, 2)⟧ width 2 facing up
}
`,
    `drill "Two" {
  age U13
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  ball at Base
  sequence {
    Base passes to Wall
    Wall passes to Base then runs to ⟦(13, 6)⟧ then runs to Wall
  }
}
`,
  ],
  good: [
    `drill "Two" {
  age U13
  area 12 x 12
  station Base at (2, 6)
  station Wall at (12, 6)
  coach at (13, 2)
}
`,
    `drill "Two" {
  age U13
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  gate Door at (11, 2) width 2 facing up
}
`,
  ],
  inPhases: true,
  find: (analysis) => {
    const { area } = analysis.drill;
    if (!area) return [];
    const standing = standingOutside(analysis.drill, area);
    return [...standing, ...runningOutside(analysis, area, standing)].map(({ span, sentence, at }) => {
      const { across, along } = beyond(area, at);
      const roomier = [across > 0 ? 'wider' : '', along > 0 ? 'longer' : ''].filter(Boolean).join(' and ');
      return problem(check, span, sentence, { help: `Move it inside, or make the area ${roomier}.` });
    });
  },
  cures: (found, analysis, text) => {
    const inside = movedInside(found, analysis.drill, text);
    return inside ? [inside, ...lengthCures({ ...found, span: { from: 0, to: 0 } }, analysis, text)] : lengthCures(found, analysis, text);
  },
};

interface Stray {
  readonly span: Span;
  readonly sentence: string;
  /** The place that is outside. */
  readonly at: Point;
}

/** The people and things that stand outside and may not. */
export function standingOutside(drill: Drill, area: Area): Stray[] {
  const stations = drill.stations
    .filter((station) => !mayBeOutside(drill, station.team))
    .map((station) => ({ name: `\`${station.name}\``, span: station.at.span, places: [station.at], allowed: tolerance }));
  const players = drill.actors
    .filter((actor) => (actor.kind === 'player' || actor.kind === 'keeper') && !mayBeOutside(drill, actor.team))
    .map((actor) => ({ name: Who(actor.id), span: actor.span, places: [actor.home], allowed: tolerance }));
  const furniture = drill.furniture
    .filter((thing) => thing.kind !== 'coach')
    .map((thing) => ({ name: shown(drill, thing), span: thing.at.span, places: placesOf(thing), allowed: isGoal(thing) ? behindLine + tolerance : tolerance }));
  return [...stations, ...players, ...furniture].flatMap(({ name, span, places, allowed }) => {
    const [at] = [...places].sort((a, b) => beyond(area, b).distance - beyond(area, a).distance);
    const out = at ? beyond(area, at).distance : 0;
    if (!at || out <= allowed || inZone(drill, at)) return [];
    return { span, at, sentence: `${name} stands at ${spot(drill, at)}, ${long(drill, out)} outside the area.` };
  });
}

/** Runs to places outside. Where a station or a thing stands is looked at already, so runs there are not. */
function runningOutside({ drill, timeline }: DrillAnalysis, area: Area, known: readonly Stray[]): Stray[] {
  const strays = new Map<number, Stray>();
  for (const { actor, moves } of timeline.tracks) {
    const person = drill.actors.find((each) => each.id === actor);
    if (!person || person.kind === 'coach' || mayBeOutside(drill, person.team)) continue;
    for (const { action, path } of moves) {
      const places = action.via.map((at) => ({ at, way: 'runs through', span: action.span }));
      const ownEnd = action.station === null && action.thing === null && action.verb !== 'follows';
      if (ownEnd) places.push({ at: path.to, way: 'runs to', span: action.targetSpan ?? action.span });
      for (const { at, way, span } of places) {
        const out = beyond(area, at).distance;
        if (out <= tolerance || strays.has(span.from) || inZone(drill, at)) continue;
        if (known.some((stray) => distance(stray.at, at) < 0.1)) continue;
        strays.set(span.from, { span, at, sentence: `${Who(actor)} ${way} ${spot(drill, at)}, ${long(drill, out)} outside the area.` });
      }
    }
  }
  return [...strays.values()];
}

/** A zone that sticks out has a problem of its own, which what stands in it does not repeat. */
function inZone(drill: Drill, at: Point): boolean {
  return drill.zones.some(({ shape }) =>
    shape.kind === 'circle' ? distance(shape.centre, at) <= shape.radius + tolerance : contains(shape.points, at, tolerance),
  );
}

/** Floaters may serve from the edge. */
function mayBeOutside(drill: Drill, team: Id | null): boolean {
  return team !== null && drill.teams.some((each) => each.id === team && each.kind === 'floaters');
}

function isGoal(thing: Furniture): boolean {
  return thing.kind === 'goal' || thing.kind === 'minigoal';
}

function shown(drill: Drill, thing: Furniture): string {
  return thing.kind === 'gate' ? `A marker of ${inSentence(Thing(drill, thing))}` : Thing(drill, thing);
}

/** Both markers of a gate; the middle of everything else. */
function placesOf(thing: Furniture): Point[] {
  if (thing.kind !== 'gate' || thing.facing === null || thing.width === null) return [thing.at];
  const { facing, width } = thing;
  return [-width / 2, width / 2].map((side) => plus(thing.at, -facing.y * side, facing.x * side));
}

/** A place written as two plain numbers, each put onto the line it lies beyond; null for other places, or where that is no change. */
function movedInside(found: Problem, { area, units }: Drill, text: string): Cure | null {
  const written = /^\(\s*(-?\d+(?:\.\d+)?)\s*,\s*(-?\d+(?:\.\d+)?)\s*\)$/.exec(text.slice(found.span.from, found.span.to));
  if (!written || !area) return null;
  const [x, y] = [Number(written[1]), Number(written[2])];
  const inside = [
    Math.min(Math.max(x, 0), area.width / metresIn(units)),
    Math.min(Math.max(y, 0), area.length / metresIn(units)),
  ];
  if (inside[0] === x && inside[1] === y) return null;
  const place = `(${inside.map((value) => formatNumber(value, 2)).join(', ')})`;
  return { title: `Move it to ${place}`, about: 'place', edits: [{ span: found.span, text: place }] };
}
