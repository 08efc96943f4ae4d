import type { Span } from '../../grammar/tree.ts';
import { distance, type Point } from '../geometry/point.ts';
import type { Drill, FurnitureKind } from '../model/drill.ts';
import type { Problem } from '../problem.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { problem, type Check } from './check.ts';
import { lengthCures } from './cures.ts';
import { inSentence, Thing } from './ground.ts';
import { long, Who } from './say.ts';

/** Metres between the middles of two people: the width of a player and a little. */
const betweenPeople = 0.5;
/** Metres from the middle of a player to something that stands up: half the width of a player. */
const besideUpright = 0.3;
/** Metres between two markers, or between two goals, gates or ladders of one kind. */
const betweenThings = 0.2;

export const check: Check = {
  code: 'same-spot',
  group: 'ground',
  severity: 'warning',
  title: 'Two things on one spot',
  why: 'Two players need 0.5 m between them, a player 0.3 m to a pole, a mannequin or a hurdle, and two markers 0.2 m. Closer than that they cannot be set out, and one of the two places is a slip. A cone or disc under a station is how stations are marked, and a goalkeeper stands in a goal. A dribble that ends on a pole cannot be played; a run to one is understood.',
  source: null,
  bad: [
    `drill "Two" {
  age U13
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  station Side at ⟦(10.2, 6)⟧
}
`,
    `drill "Two" {
  age U13
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  pole Near at ⟦(2, 6.2)⟧
}
`,
    `drill "Two" {
  age U13
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  pole Near at (4, 9)
  ball at Base
  sequence {
    Base dribbles to ⟦Near⟧
    Base passes to Wall
    Wall passes to Base
    Base dribbles to (2, 6)
  }
}
`,
  ],
  good: [
    `drill "Two" {
  age U13
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  station Side at (10.5, 6)
  cone at (2, 6)
}
`,
    `drill "Two" {
  age U13
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  pole Near at (2, 6.5)
}
`,
  ],
  find: (analysis) => [...standing(analysis.drill), ...dribbled(analysis.drill, [analysis.timeline, ...analysis.phases.map(({ timeline }) => timeline)])],
  cures: lengthCures,
};

function standing(drill: Drill): Problem[] {
  const cells = new Map<string, Standing[]>();
  const told = new Set<number>();
  return standingIn(drill).flatMap((thing) => {
    const [column, row] = cellOf(thing.at);
    const near = neighbours.flatMap(([across, up]) => cells.get(`${column + across} ${row + up}`) ?? []);
    const other = near.find((each) => distance(each.at, thing.at) < apart(each.kind, thing.kind) - 1e-9);
    const cell = cells.get(`${column} ${row}`);
    if (cell) cell.push(thing);
    else cells.set(`${column} ${row}`, [thing]);
    if (!other || told.has(thing.span.from)) return [];
    told.add(thing.span.from);
    const gap = distance(other.at, thing.at);
    const where = gap < 0.05 ? 'on the same spot as' : `${long(drill, gap)} from`;
    const need = `they need ${long(drill, apart(other.kind, thing.kind))} between them`;
    return problem(check, thing.span, `${thing.name} stands ${where} ${inSentence(other.name)}; ${need}.`, {
      help: 'Move one of the two.',
      related: [{ span: other.span, message: `${other.name} stands here.` }],
    });
  });
}

/** Balls that are to be dribbled to where a pole or a mannequin stands. */
function dribbled(drill: Drill, timelines: readonly Timeline[]): Problem[] {
  const told = new Set<number>();
  return timelines.flatMap(({ tracks }) => tracks.flatMap(({ actor, moves }) => moves.flatMap((move) => {
    const at = move.kind === 'dribble' && move.action.at;
    const thing = at && drill.furniture.find((each) => each.kind !== 'coach' && uprights.has(each.kind) && distance(each.at, at) < besideUpright - 1e-9);
    if (!thing || told.has(move.action.span.from)) return [];
    told.add(move.action.span.from);
    return problem(check, move.action.targetSpan ?? move.action.span, `${Who(actor)} dribbles onto ${inSentence(Thing(drill, thing))}; they need ${long(drill, besideUpright)} between them.`, {
      help: 'End the dribble beside it.',
      related: [{ span: thing.span, message: `${Thing(drill, thing)} stands here.` }],
    });
  })));
}

type Kind = 'person' | Exclude<FurnitureKind, 'coach'>;

interface Standing {
  readonly kind: Kind;
  readonly name: string;
  readonly at: Point;
  readonly span: Span;
}

/** In the order of the text, so that the later of two is told. */
function standingIn(drill: Drill): Standing[] {
  const stations = drill.stations.map((station): Standing => ({ kind: 'person', name: `\`${station.name}\``, at: station.at, span: station.at.span }));
  const players = drill.actors
    .filter((actor) => actor.kind === 'player' || actor.kind === 'keeper')
    .map((actor): Standing => ({ kind: 'person', name: Who(actor.id), at: actor.home, span: actor.span }));
  const furniture = drill.furniture.map(
    (thing): Standing => ({ kind: thing.kind === 'coach' ? 'person' : thing.kind, name: Thing(drill, thing), at: thing.at, span: thing.at.span }),
  );
  return [...stations, ...players, ...furniture].sort((a, b) => a.span.from - b.span.from);
}

/** Metres that two kinds of things need between them; 0 where one may stand on the other. */
function apart(a: Kind, b: Kind): number {
  if (a === 'person' && b === 'person') return betweenPeople;
  if (a === 'person' || b === 'person') return uprights.has(a) || uprights.has(b) ? besideUpright : 0;
  return a === b || (markers.has(a) && markers.has(b)) ? betweenThings : 0;
}

const uprights: ReadonlySet<Kind> = new Set(['pole', 'mannequin', 'hurdle']);
const markers: ReadonlySet<Kind> = new Set(['cone', 'disc', 'pole', 'mannequin', 'hurdle']);

/** Squares of a side that no two things too close can be two apart. */
function cellOf(at: Point): readonly [number, number] {
  return [Math.floor(at.x / betweenPeople), Math.floor(at.y / betweenPeople)];
}

const neighbours = [-1, 0, 1].flatMap((across) => [-1, 0, 1].map((up) => [across, up] as const));
