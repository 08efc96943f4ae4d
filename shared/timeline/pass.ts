/** A ball played from one person to another: when, how hard, where to, and whether the receiver is there. */
import { distance, type Point } from '../geometry/point.ts';
import type { Action, Drill } from '../model/drill.ts';
import { greatestLaunch, loftTo, rollTo, type Dies, type Flight } from '../physics/ball.ts';
import { constants } from '../physics/constants.ts';
import { arriveInStride, goTo } from './move.ts';
import { atTheFeet, lieUntil, type Ball, type Person, type Play } from './play.ts';
import { queueSpot } from './queue.ts';
import type { Pass } from './timeline.ts';

/** How far from the place a ball is played to its receiver may end and still be there for it: metres. */
const meetingRadius = 1.5;

/** Strikes the ball at a time; returns when it is received (or, without a receiver, when it arrives). */
export function playBall(play: Play, passer: Person, ball: Ball, action: Action, beat: { readonly number: number; readonly sequence: string }, time: number): number {
  const receiver = receiverOf(play, passer, action, beat.number, time);
  const target = targetOf(play, receiver, action) ?? ball.at;
  if (receiver) meet(play, receiver, action, beat.number, target, time);
  const flight = flightOf(play, passer, action, beat.number, distance(ball.at, target));
  const arrival = time + flight.time;
  const ready = receiver ? readyAt(receiver) : null;
  const received = ready === null ? arrival : Math.max(arrival, ready);

  lieUntil(ball, time);
  const index = play.passes.length;
  ball.stretches.push({ kind: 'flight', start: time, end: arrival, pass: index, from: ball.at, to: target, flight });
  play.passes.push({
    index,
    ball: ball.id,
    beat: beat.number,
    sequence: beat.sequence,
    action,
    kind: kindOf(action),
    from: passer.actor.id,
    fromAt: ball.at,
    to: receiver?.actor.id ?? null,
    toAt: target,
    start: time,
    arrival,
    flight,
    slack: ready === null ? null : arrival - ready,
    received,
    receiverMove: receiver?.moves.at(-1) ?? null,
  });
  ball.at = target;
  ball.holder = receiver?.actor.id ?? null;
  ball.since = received;
  ball.fresh = true;
  ball.lost = receiver === null && action.verb !== 'shoots at';
  passer.playedTo = receiver?.actor.id ?? null;
  return received;
}

/** Speed a ball is meant to arrive with, metres a second. */
export function wantedArrival(drill: Drill, action: Pick<Action, 'weight' | 'verb'>): number {
  const base = drill.passPace?.value ?? constants.arrivalSpeed.value[drill.tempo.value];
  const weight = action.weight ?? (action.verb === 'shoots at' ? 'driven' : null);
  return weight === null ? base : base * constants.arrivalFactor.value[weight];
}

function kindOf(action: Action): Pass['kind'] {
  switch (action.verb) {
    case 'sets to':
    case 'sets into':
      return 'set';
    case 'crosses to':
      return 'cross';
    case 'shoots at':
      return 'shot';
    default:
      return 'pass';
  }
}

function receiverOf(play: Play, passer: Person, action: Action, beat: number, time: number): Person | null {
  if (action.verb === 'shoots at') return null;
  const wanted = action.receiver ?? action.to;
  if (wanted !== null) {
    const person = play.people.get(wanted) ?? null;
    if (person === passer) {
      play.faults.push({ kind: 'pass-to-self', action, actor: passer.actor.id, beat });
      return null;
    }
    return person?.actor.kind === 'next' ? whoWaits(play, person, action, beat, time) : person;
  }
  const others = [...play.people.values()].filter((person) => person !== passer && person.actor.kind !== 'next');
  const near = others
    .map((person) => ({ person, distance: distance(person.at, action.at ?? passer.at) }))
    .sort((a, b) => a.distance - b.distance)[0];
  if (near && near.distance <= meetingRadius) return near.person;
  play.faults.push({
    kind: 'nobody-there',
    action,
    actor: passer.actor.id,
    beat,
    nearest: near ? { actor: near.person.actor.id, distance: near.distance } : null,
  });
  return null;
}

/** `next Base` is the second in the queue; where only one stands, whoever has come to the station in the meantime. */
function whoWaits(play: Play, next: Person, action: Action, beat: number, time: number): Person | null {
  const station = next.station;
  if (!station || station.holds >= 2) {
    if (station) stepUp(play, next, action, beat, time);
    return next;
  }
  const comer = [...play.people.values()].find((person) => person.boundFor === station.id && person.station !== station);
  if (comer) return comer;
  play.faults.push({ kind: 'next-not-ready', action, actor: next.actor.id, beat, station: station.id });
  return null;
}

/** The second in the queue takes the front as soon as the first has left it. */
function stepUp(play: Play, next: Person, action: Action, beat: number, time: number): void {
  const station = next.station!;
  const front = queueSpot(play.drill, station, 0);
  if (next.moves.length > 0 || distance(next.at, front) < 0.1) return;
  const left = [...play.people.values()].find((person) => person.actor.kind === 'first' && person.station === station)?.moves[0];
  if (!left || left.start > time) return;
  goTo(play, next, { ...action, inStride: false, gait: 'jog' }, beat, front, left.start);
}

/** Where the ball is sent: the place written, or where its receiver will stand when their movement is over. */
function targetOf(play: Play, receiver: Person | null, action: Action): Point | null {
  if (action.at && (action.to === null || action.receiver !== null)) return action.at;
  const named = receiver ?? (action.to === null ? undefined : play.people.get(action.to));
  return named?.at ?? null;
}

/** Who is played into space goes to meet the ball; in stride, they do not brake for it. */
function meet(play: Play, receiver: Person, action: Action, beat: number, target: Point, time: number): void {
  if (distance(receiver.at, target) > atTheFeet) goTo(play, receiver, action, beat, target, time);
  else if (action.inStride) arriveInStride(play, receiver);
}

function flightOf(play: Play, passer: Person, action: Action, beat: number, length: number): Flight {
  const kind = action.lofted || action.verb === 'crosses to' ? 'loft' : 'roll';
  const flight = struck(play, action, kind, length, greatestLaunch(play.drill.age.value, kind));
  if (flight.kind !== 'dies') return flight;
  play.faults.push({ kind: 'ball-dies', action, actor: passer.actor.id, beat, stopsAfter: flight.stopsAfter, length });
  const helped = struck(play, action, kind, length, Infinity);
  return helped.kind === 'dies' ? noFlight : helped;
}

function struck(play: Play, action: Action, kind: Flight['kind'], length: number, mostLaunch: number): Flight | Dies {
  return kind === 'loft' ? loftTo(length, mostLaunch) : rollTo(length, wantedArrival(play.drill, action), play.friction, mostLaunch);
}

/** Farther than any ball flies: it is there at once, and `ball-dies` has been told. */
const noFlight: Flight = { kind: 'loft', length: 0, launch: 0, arrival: 0, time: 0, angle: 0, height: 0, drag: 0 };

/** When they can next play a ball: their last movement and their last touch are over. */
function readyAt(person: Person): number {
  return Math.max(person.free, person.touches.at(-1)?.end ?? 0);
}
