/** Movements of one person: where to, along which path, how fast. */
import type { RunVerb } from '../../grammar/tree.ts';
import { bowed, closestOnPath, planPath, type Circle, type Path } from '../geometry/path.ts';
import { distance, type Point } from '../geometry/point.ts';
import type { Action, Drill } from '../model/drill.ts';
import { constants } from '../physics/constants.ts';
import { ability, runAlong, type Ability } from '../physics/runner.ts';
import type { Person, Play } from './play.ts';
import { queueSpot } from './queue.ts';
import type { Move } from './timeline.ts';

/** Asked to go while still on the way: forgiven up to this many seconds, as a good runner rolls one run into the next. */
const overlapForgiven = 0.2;

/**
 * Sends a person off. They go when they are asked, have waited `after`, have reacted (unless they continue their own
 * movement) and are done with the movement before. `unasked`: no line asks for it at that moment, they go to meet a ball of
 * their own accord (that they come late is told by the pass), or on from a press to the tackle.
 */
export function go(
  play: Play,
  person: Person,
  action: Action,
  asked: number,
  options: { readonly beat: number; readonly to: Point; readonly reacts: boolean; readonly kind: Move['kind']; readonly unasked?: boolean },
): Move {
  const powers = powersOf(play.drill, action, options.kind);
  const ready = asked + action.after + (options.reacts ? powers.reaction : 0);
  const running = person.moves.at(-1);
  if (!options.unasked && running && running.end > asked + action.after + overlapForgiven) {
    play.faults.push({ kind: 'still-running', action, actor: person.actor.id, beat: options.beat, by: running.end - asked, during: running });
  }
  const start = Math.max(ready, person.free);
  const path = pathOf(play, person, action, options.to, start);
  const run = runAlong(path, powers, { stop: !action.inStride });
  const move: Move = { kind: options.kind, beat: options.beat, action, asked, start, end: start + run.time, path, run };
  person.moves.push(move);
  person.at = path.to;
  person.free = move.end;
  person.boundFor = null;
  return move;
}

/** A movement that no line asks for: to meet a ball, to fetch it, to step up in the queue. The action is the one that calls for it. */
export function goTo(play: Play, person: Person, action: Action, beat: number, to: Point, asked: number): Move {
  const plain = { ...action, station: null, via: [], about: null, after: 0 };
  return go(play, person, plain, asked, { beat, to, reacts: true, kind: 'run', unasked: true });
}

/** The same movement again, but arriving in stride instead of braking at its end. */
export function arriveInStride(play: Play, person: Person): void {
  const move = person.moves.at(-1);
  if (!move || move.kind !== 'run') return;
  const run = runAlong(move.path, powersOf(play.drill, move.action, move.kind), { stop: false });
  person.moves[person.moves.length - 1] = { ...move, run, end: move.start + run.time };
  person.free = move.start + run.time;
}

function powersOf(drill: Drill, action: Action, kind: Move['kind']): Ability {
  const powers = ability(drill.age.value, drill.tempo.value, action.gait, drill.runPace?.value ?? null);
  return kind === 'dribble' ? { ...powers, topSpeed: powers.topSpeed * constants.carryShare.value } : powers;
}

function pathOf(play: Play, person: Person, action: Action, to: Point, start: number): Path {
  const via = [...action.via];
  const around: Circle[] = [];
  if (action.about && (action.verb === 'overlaps' || action.verb === 'underlaps')) {
    via.unshift(beside(play.drill, action.about.at, action.verb));
  } else if (action.about && action.verb !== 'presses' && action.verb !== 'marks' && action.verb !== 'wins the ball from') {
    around.push({ at: action.about.at, radius: constants.poleClearance.value });
  }
  const turned = action.about?.at;
  const obstacles = standing(play, person, start).filter((circle) => !turned || distance(circle.at, turned) > 0.1);
  return (action.verb === 'follows' && outside(person.at, to, obstacles)) || planPath(person.at, to, { via, around, obstacles });
}

/** Who follows their pass keeps to the right, out of the way of the ball and of who comes back along it; null where something stands there. */
function outside(from: Point, to: Point, obstacles: readonly Circle[]): Path | null {
  const { share, most } = constants.followBow.value;
  const path = bowed(from, to, Math.min(most, share * distance(from, to)));
  const inTheWay = obstacles.filter(({ at, radius }) => distance(at, from) > radius && distance(at, to) > radius);
  return inTheWay.every((circle) => closestOnPath(circle.at, path).distance >= circle.radius) ? path : null;
}

/** Outside of a team-mate is the side away from the middle of the area; underlaps go inside. */
function beside(drill: Drill, mate: Point, verb: Extract<RunVerb, 'overlaps' | 'underlaps'>): Point {
  const middle = drill.area ? drill.area.width / 2 : mate.x;
  const out = mate.x >= middle ? 1 : -1;
  return { x: mate.x + (verb === 'overlaps' ? out : -out) * constants.overlapWidth.value, y: mate.y };
}

/** What a run goes round: poles, mannequins, and those who are not on the move when it starts. */
function standing(play: Play, runner: Person, start: number): Circle[] {
  const posts = play.drill.furniture
    .filter((thing) => thing.kind === 'pole' || thing.kind === 'mannequin')
    .map((thing) => ({ at: thing.at, radius: constants.poleClearance.value }));
  const players = [...play.people.values()]
    .filter((person) => person !== runner && person.free <= start)
    .map((person) => ({ at: person.at, radius: constants.mannequinClearance.value }));
  return [...posts, ...players];
}

/** Where a run ends: the place written, or the end of the queue of the station it goes to. */
export function destination(play: Play, person: Person, action: Action): Point {
  if (action.station !== null) {
    const station = play.drill.stations.find((each) => each.id === action.station);
    if (station) return station === person.station ? queueSpot(play.drill, station, 0) : queueSpot(play.drill, station, station.holds - 1);
  }
  if (action.at) return action.at;
  return person.at;
}
