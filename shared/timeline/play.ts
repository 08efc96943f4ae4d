/** The state of a repetition while it is being worked out; only the files of this folder touch it. */
import { distance, type Point } from '../geometry/point.ts';
import type { Actor, ActorId, Drill, Id, Station } from '../model/drill.ts';
import { friction } from '../physics/ball.ts';
import { queueSpot } from './queue.ts';
import type { Fault, Move, Pass, Stretch, TimedBeat, Touch } from './timeline.ts';

export interface Play {
  readonly drill: Drill;
  readonly people: ReadonlyMap<ActorId, Person>;
  readonly balls: Ball[];
  readonly supplies: { readonly at: Point; readonly holder: ActorId | null; left: number }[];
  readonly passes: Pass[];
  readonly beats: TimedBeat[];
  readonly faults: Fault[];
  /** Rolling deceleration of this ground, metres a second squared. */
  readonly friction: number;
}

export interface Person {
  readonly actor: Actor;
  readonly station: Station | null;
  readonly home: Point;
  /** Where they will stand when the last move planned so far is over. */
  at: Point;
  /** When that is. */
  free: number;
  readonly moves: Move[];
  readonly touches: Touch[];
  /** The person they last played to, for `follows`. */
  playedTo: ActorId | null;
  /** The station they last set off to, if their last move had one as its target. */
  boundFor: Id | null;
}

export interface Ball {
  readonly id: Id;
  readonly home: Point;
  readonly stretches: Stretch[];
  at: Point;
  holder: ActorId | null;
  /** When the holder has it, or it lies still. */
  since: number;
  /** It came to the holder by a pass and they have not touched it yet. */
  fresh: boolean;
  /** It was played to nobody, and that has been told: whoever is asked to play next has it. */
  lost: boolean;
}

/** Where everyone and every ball is when a passage of play begins. */
export interface Opening {
  readonly people: ReadonlyMap<ActorId, Point>;
  readonly balls: readonly { readonly at: Point; readonly holder: ActorId | null }[];
}

/** Everything as the drill sets it out, or as an opening has it. */
export function kickOff(drill: Drill, opening: Opening | null = null): Play {
  const stations = new Map(drill.stations.map((station) => [station.id, station]));
  const people = new Map(
    drill.actors.map((actor) => {
      const station = actor.station === null ? null : (stations.get(actor.station) ?? null);
      const own = station ? queueSpot(drill, station, actor.kind === 'next' ? 1 : 0) : actor.home;
      const home = opening?.people.get(actor.id) ?? own;
      return [actor.id, person(actor, station, home)] as const;
    }),
  );
  const play: Play = {
    drill,
    people,
    balls: [],
    supplies: drill.balls.map((supply) => ({ at: supply.at, holder: supply.holder, left: supply.count })),
    passes: [],
    beats: [],
    faults: [],
    friction: friction(drill.ground.value, drill.roll?.value ?? null),
  };
  for (const supply of play.supplies) takeFrom(play, supply);
  if (opening) play.balls.splice(0, Infinity, ...opening.balls.map(({ at, holder }, index) => newBall(index + 1, at, holder, 0)));
  return play;
}

function person(actor: Actor, station: Station | null, home: Point): Person {
  return { actor, station, home, at: home, free: 0, moves: [], touches: [], playedTo: null, boundFor: null };
}

/** Puts the next ball of a supply into play, at the feet of whoever serves it. */
function takeFrom(play: Play, supply: Play['supplies'][number]): Ball {
  supply.left -= 1;
  const at = supply.holder === null ? supply.at : (play.people.get(supply.holder)?.home ?? supply.at);
  return addBall(play, at, supply.holder, 0);
}

export function addBall(play: Play, at: Point, holder: ActorId | null, since: number): Ball {
  const ball = newBall(play.balls.length + 1, at, holder, since);
  play.balls.push(ball);
  return ball;
}

function newBall(number: number, at: Point, holder: ActorId | null, since: number): Ball {
  return { id: `ball ${number}`, home: at, stretches: [], at, holder, since, fresh: false, lost: false };
}

/** A ball this close is played without a step: metres. */
export const atTheFeet = 0.3;

/** Close enough to a lying ball, or to a heap of balls, to play it: metres. */
const withinReach = 1.5;

/** The ball this person holds; of several the nearest, and of those the one they have had the longest. */
export function heldBy(play: Play, person: Person): Ball | null {
  const held = play.balls.filter((ball) => ball.holder === person.actor.id);
  const away = (ball: Ball): number => Math.max(atTheFeet, distance(ball.at, person.at));
  return held.reduce<Ball | null>((best, ball) => (best && (away(best) - away(ball) || ball.since - best.since) <= 0 ? best : ball), null);
}

/** The ball this person plays next: one they hold, one that lies at their feet, or the next from the heap they stand by. */
export function ballOf(play: Play, person: Person): Ball | null {
  const held = heldBy(play, person);
  if (held) return held;
  const lying = play.balls.find((ball) => ball.holder === null && distance(ball.at, person.at) <= withinReach);
  if (lying) return lying;
  const heap = play.supplies.find((supply) => supply.left > 0 && distance(supply.at, person.at) <= withinReach);
  if (!heap) return null;
  const ball = takeFrom(play, heap);
  ball.holder = person.actor.id;
  return ball;
}

/** Lets the ball lie where it is until a time. */
export function lieUntil(ball: Ball, time: number): void {
  const last = ball.stretches.at(-1);
  const start = last ? last.end : 0;
  if (time > start) ball.stretches.push({ kind: 'still', start, end: time, at: ball.at, holder: ball.holder });
}
