import type { ActorId, Action, Beat, Drill, Part, Sequence } from '../model/drill.ts';
import { along, distance, type Point } from '../geometry/point.ts';
import { constants } from '../physics/constants.ts';
import { touchLimit } from './limit.ts';
import { destination, go, goTo } from './move.ts';
import { playBall } from './pass.ts';
import { addBall, atTheFeet, ballOf, heldBy, kickOff, lieUntil, type Ball, type Opening, type Person, type Play } from './play.ts';
import type { BallTrack, Timeline, Track } from './timeline.ts';

/**
 * Plays one repetition of a drill as written and says where everyone and every ball is at any time.
 * Nobody is assumed to be on time: a lead starts when its player has the ball and the lead before is over, runs take the
 * time that age and tempo need, balls the time that friction gives them. What cannot be played as written becomes a fault
 * and the repetition goes on, so that one mistake is told once. Total: any drill gives a timeline.
 */
export function simulate(drill: Drill): Timeline {
  const play = kickOff(drill);
  let start = 0;
  for (const together of drill.order) {
    const sequences = together.flatMap((id) => drill.sequences.filter((sequence) => sequence.id === id));
    start = playTogether(play, sequences, start);
  }
  return timelineOf(play);
}

/** Plays one phase of a game in the same way, from how the drill is set out or from an opening. */
export function simulatePhase(drill: Drill, phase: Sequence, opening: Opening | null): Timeline {
  const play = kickOff(drill, opening);
  playTogether(play, [phase], 0);
  return timelineOf(play);
}

/** How a passage of play leaves everyone and every ball: where the next one can go on from. */
export function closing({ tracks, balls, passes }: Timeline): Opening {
  return {
    people: new Map(tracks.map((track) => [track.actor, track.moves.at(-1)?.path.to ?? track.home])),
    balls: balls.map((ball) => {
      const last = ball.stretches.at(-1);
      if (!last) return { at: ball.home, holder: null };
      switch (last.kind) {
        case 'still':
          return { at: last.at, holder: last.holder };
        case 'carried':
          return { at: last.move.path.to, holder: last.holder };
        case 'flight':
          return { at: last.to, holder: passes[last.pass]!.to };
      }
    }),
  };
}

/** Plays sequences side by side from a time on, always the beat that can start first; returns when all are over. */
function playTogether(play: Play, sequences: readonly Sequence[], start: number): number {
  const lanes = sequences.map((sequence) => ({ sequence, next: 0, over: start }));
  let end = start;
  for (;;) {
    const waiting = lanes.filter((lane) => lane.next < lane.sequence.beats.length);
    const lane = waiting.sort((a, b) => earliest(play, a) - earliest(play, b))[0];
    if (!lane) return end;
    lane.over = playBeat(play, lane.sequence, lane.sequence.beats[lane.next]!, lane.over);
    lane.next += 1;
    end = Math.max(end, lane.over);
  }
}

/** When the next beat of a sequence could start, as things stand. */
function earliest(play: Play, lane: { readonly sequence: Sequence; readonly next: number; readonly over: number }): number {
  const person = play.people.get(lane.sequence.beats[lane.next]!.lead.actor);
  return Math.max(lane.over, (person && heldBy(play, person)?.since) ?? 0);
}

/** Plays one beat after the one before is over; returns when its lead is over. */
function playBeat(play: Play, sequence: Sequence, beat: Beat, over: number): number {
  const number = play.beats.length + 1;
  const at = { number, sequence: sequence.id };
  const start = leadStart(play, beat.lead, over);
  const own = beat.meanwhile.filter((part) => part.actor === beat.lead.actor);
  const others = beat.meanwhile.filter((part) => part.actor !== beat.lead.actor);
  for (const part of others.filter((each) => !playsBall(each))) playPart(play, part, at, start, 'meanwhile');
  const end = playPart(play, beat.lead, at, start, 'lead');
  for (const part of own) playPart(play, part, at, start, 'own');
  for (const part of others.filter(playsBall)) playPart(play, part, at, start, 'meanwhile');
  play.beats.push({ sequence: sequence.id, index: beat.index, number, span: beat.span, start, end });
  return end;
}

/** Also the tackle: whoever is to lose the ball has it first. */
function playsBall(part: Part): boolean {
  return part.chain.some((action) => isBallAction(action) || action.verb === 'wins the ball from');
}

function isBallAction(action: Action): boolean {
  switch (action.verb) {
    case 'passes to': case 'passes into': case 'sets to': case 'sets into': case 'touches to': case 'dribbles to': case 'crosses to':
    case 'shoots at': case 'turns':
      return true;
    case 'runs to': case 'shows to': case 'drops to': case 'spins around': case 'follows': case 'overlaps':
    case 'underlaps': case 'presses': case 'marks': case 'wins the ball from': case 'holds': case 'waits':
      return false;
  }
}

/** A ball lead starts when its player has controlled the ball; any lead when the one before is over. */
function leadStart(play: Play, lead: Part, over: number): number {
  const person = play.people.get(lead.actor);
  const first = lead.chain[0];
  if (!person || !first || !isBallAction(first)) return over;
  const ball = heldBy(play, person);
  return Math.max(over, ball ? ball.since + controlTime(play, person, ball, first) : 0, person.free);
}

/** Seconds from receiving a ball to playing it on. A ball taken away with the first touch, or played first time, needs none. */
function controlTime(play: Play, person: Person, ball: Ball, action: Action): number {
  if (!ball.fresh || action.verb === 'touches to' || action.verb === 'dribbles to') return 0;
  const count = touchesOf(play, person, ball, action);
  return count <= 1 ? 0 : constants.controlTime.value + (count - 2) * constants.touchTime.value;
}

/** Touches of one action, the striking one included. */
function touchesOf(play: Play, person: Person, ball: Ball, action: Action): number {
  if (action.firstTime || action.verb === 'turns') return 1;
  if (action.verb === 'touches to') return 1;
  if (action.verb === 'dribbles to') return 1 + Math.floor(distance(person.at, action.at ?? person.at) / constants.dribbleTouchLength.value);
  if (action.touches !== null) return action.touches;
  return ball.fresh ? Math.min(2, touchLimit(play.drill, person.actor, person.at) ?? 2) : 1;
}

/** Plays one person's chain from a time on; returns when the part of it that holds up the next lead is over. */
function playPart(play: Play, part: Part, at: { readonly number: number; readonly sequence: string }, start: number, role: 'lead' | 'own' | 'meanwhile'): number {
  const person = play.people.get(part.actor);
  if (!person) return start;
  let time = start;
  let over = start;
  part.chain.forEach((action, index) => {
    const reacts = role === 'meanwhile' && index === 0;
    time = isBallAction(action) ? playBallAction(play, person, action, at, time) : playRun(play, person, action, at.number, time, reacts);
    const struck = action.verb !== 'turns' && action.verb !== 'touches to' && action.verb !== 'dribbles to' && isBallAction(action);
    // A pass holds up the next lead until it is received, but its player goes on as soon as it is struck.
    over = struck ? Math.max(over, play.passes.at(-1)!.received) : index === 0 || isBallAction(action) ? Math.max(over, time) : over;
  });
  return over;
}

/** Returns when this person may go on. */
function playBallAction(play: Play, person: Person, action: Action, at: { readonly number: number; readonly sequence: string }, asked: number): number {
  const ball = ballOf(play, person) ?? ballFromNowhere(play, person, action, at.number, asked);
  if (distance(person.at, ball.at) > atTheFeet) goTo(play, person, { ...action, inStride: false }, at.number, ball.at, Math.max(asked, ball.since));
  const count = touchesOf(play, person, ball, action);
  const strike = Math.max(asked + action.after, ball.since + controlTime(play, person, ball, action), person.free);
  const begun = ball.fresh ? Math.min(ball.since, strike) : strike;
  switch (action.verb) {
    case 'touches to':
    case 'dribbles to': {
      lieUntil(ball, strike);
      const move = go(play, person, { ...action, after: 0 }, strike, { beat: at.number, to: destination(play, person, action), reacts: false, kind: 'dribble' });
      ball.stretches.push({ kind: 'carried', start: ball.stretches.at(-1)?.end ?? 0, end: move.end, move, holder: person.actor.id });
      ball.at = person.at;
      ball.since = move.end;
      ball.fresh = false;
      person.touches.push({ beat: at.number, action, start: move.start, end: move.end, count });
      return move.end;
    }
    case 'turns': {
      const end = strike + constants.turnTime.value;
      lieUntil(ball, end);
      ball.since = end;
      ball.fresh = false;
      person.touches.push({ beat: at.number, action, start: begun, end, count });
      return end;
    }
    default:
      person.touches.push({ beat: at.number, action, start: begun, end: strike, count });
      playBall(play, person, ball, action, at, strike);
      return strike;
  }
}

/** Someone plays a ball they do not have: the fault is told, and they are given one so that the rest can be judged. */
function ballFromNowhere(play: Play, person: Person, action: Action, beat: number, time: number): Ball {
  const lost = play.balls.find((each) => each.lost);
  if (!lost) {
    play.faults.push({ kind: 'no-ball', action, actor: person.actor.id, beat, holder: play.balls[0]?.holder ?? null });
    return addBall(play, person.at, person.actor.id, 0);
  }
  lieUntil(lost, time);
  lost.at = person.at;
  lost.holder = person.actor.id;
  lost.since = Math.min(lost.since, time);
  lost.fresh = false;
  lost.lost = false;
  return lost;
}

/** Returns when the movement is over. */
function playRun(play: Play, person: Person, action: Action, beat: number, asked: number, reacts: boolean): number {
  switch (action.verb) {
    case 'waits':
      return asked + action.after + (action.length ?? 0);
    case 'holds':
      return asked;
    case 'follows': {
      const station = stationOf(play, person.playedTo);
      if (!station) return asked;
      const bound = { ...action, station: station.id };
      const move = go(play, person, bound, asked, { beat, to: destination(play, person, bound), reacts, kind: 'run' });
      person.boundFor = station.id;
      return move.end;
    }
    case 'presses':
    case 'marks': {
      const other = action.about?.who ? play.people.get(action.about.who) : undefined;
      return other ? go(play, person, action, asked, { beat, to: shortOf(person.at, other.at, constants.reach.value), reacts, kind: 'run' }).end : asked;
    }
    case 'wins the ball from':
      return tackle(play, person, action, beat, asked, reacts);
    default: {
      const move = go(play, person, action, asked, { beat, to: destination(play, person, action), reacts, kind: 'run' });
      person.boundFor = action.station;
      return move.end;
    }
  }
}

function stationOf(play: Play, actor: ActorId | null): Person['station'] {
  return actor === null ? null : (play.people.get(actor)?.station ?? null);
}

/** Goes to the ball and takes it from who has it; returns when it is won. That the other has none is told. */
function tackle(play: Play, winner: Person, action: Action, beat: number, asked: number, reacts: boolean): number {
  const loser = action.about?.who ? play.people.get(action.about.who) : undefined;
  if (!loser || loser === winner) return asked;
  const ball = heldBy(play, loser);
  if (!ball) play.faults.push({ kind: 'no-ball', action, actor: loser.actor.id, beat, holder: play.balls[0]?.holder ?? null });
  // Who has been sent to press them goes on from there: the tackle is how the press ends.
  const last = winner.moves.at(-1)?.action;
  const pressed = last?.verb === 'presses' && last.about?.who === loser.actor.id;
  const to = shortOf(winner.at, ball?.at ?? loser.at, atTheFeet);
  const move = go(play, winner, action, asked, { beat, to, reacts: reacts && !pressed, kind: 'run', unasked: pressed });
  if (!ball) return move.end;
  const time = Math.max(move.end, ball.since);
  lieUntil(ball, time);
  ball.holder = winner.actor.id;
  ball.since = time;
  ball.fresh = true;
  // Also when nothing follows, the ball is theirs from now on.
  ball.stretches.push({ kind: 'still', start: time, end: time, at: ball.at, holder: ball.holder });
  return time;
}

/** The place on the way from one point to another that is `gap` metres short of it; where one stands when that is nearer. */
function shortOf(from: Point, to: Point, gap: number): Point {
  const whole = distance(from, to);
  return along(from, to, Math.max(0, whole - gap) / Math.max(whole, 1e-9));
}

function timelineOf(play: Play): Timeline {
  const duration = play.beats.reduce((latest, beat) => Math.max(latest, beat.end), 0);
  const tracks: Track[] = [...play.people.values()].map(({ actor, home, moves, touches }) => ({ actor: actor.id, home, moves, touches, walk: null }));
  const end = tracks.reduce((latest, track) => Math.max(latest, track.moves.at(-1)?.end ?? 0), duration);
  const balls: BallTrack[] = play.balls.map((ball) => {
    lieUntil(ball, end);
    return { id: ball.id, home: ball.home, stretches: ball.stretches };
  });
  return { duration, end, beats: play.beats, tracks, balls, passes: play.passes, faults: play.faults };
}
