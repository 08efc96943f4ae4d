/** For every moment at which someone plays on: who could have cut out the ball, and where else it could have gone. */
import { closestOnSegment } from '../geometry/closest.ts';
import { distance, type Point } from '../geometry/point.ts';
import type { ActorId, Drill, Sequence } from '../model/drill.ts';
import { loftTo, rollTo, type Flight } from '../physics/ball.ts';
import { constants } from '../physics/constants.ts';
import { personAt } from '../timeline/at.ts';
import { wantedArrival } from '../timeline/pass.ts';
import type { Pass, Timeline } from '../timeline/timeline.ts';
import { boardOf, sidesAt, type Board, type Sides, type Standing } from './board.ts';
import type { Possession } from './possession.ts';
import { isFirst, placeOf, race, wayOf, type Place, type Race, type Way } from './race.ts';

export interface LaneReport {
  /** Number of the beat. */
  readonly beat: number;
  /** When the ball is struck, or the player on it does something else with it. Seconds. */
  readonly time: number;
  readonly from: ActorId;
  readonly at: Point;
  /** Index of the pass or shot; null when the ball is kept. */
  readonly pass: number | null;
  /** It is played to an opponent. */
  readonly lost: boolean;
  /** Of the ball that is played, and of all opponents, the one who does best; null without opponents, when it is lost, and when it is kept. */
  readonly race: (Pick<Race, 'margin'> & Place & { readonly by: ActorId }) | null;
  /** To every team-mate and floater, as they stand at that moment; none in a phase that is far too long for a game. */
  readonly lanes: readonly Lane[];
}

export interface Lane {
  readonly to: ActorId;
  readonly at: Point;
  /** How it can be played; null when opponents close it, or it is too far. */
  readonly open: 'ground' | 'lofted' | null;
  /** Of the opponents who close it along the ground, the one who does best. */
  readonly by: ActorId | null;
  /** By how many seconds they are first; null without one. */
  readonly lead: number | null;
}

/** An opponent who is first by less than this, in seconds, is not told: whoever plays it sees them come. A choice without a source. */
export const doubtful = 0.1;

/** More lanes than this, opponents times team-mates times moments, are not looked at: the answer has to come while one types. */
const mostRaces = 2_000_000;

/** In order of time. */
export function lanesOf(drill: Drill, phase: Sequence, timeline: Timeline, possession: readonly Possession[]): readonly LaneReport[] {
  const board = boardOf(drill, timeline, possession);
  const passes = timeline.passes.filter((pass) => pass.kind === 'shot' || pass.to !== null);
  const keeps = kept(phase, timeline);
  const whole = (passes.length + keeps.length) * drill.actors.length ** 2 <= mostRaces;
  const reports = [
    ...passes.map((pass) => report(board, whole, pass.beat, pass.from, pass.start, pass)),
    ...keeps.map(({ beat, actor, time }) => report(board, whole, beat, actor, time, null)),
  ];
  return reports.filter((each) => each !== null).sort((a, b) => a.time - b.time);
}

/** The moments at which a player keeps the ball: takes it away, runs with it, turns, holds it. */
function kept(phase: Sequence, { tracks, beats, balls }: Timeline): { readonly beat: number; readonly actor: ActorId; readonly time: number }[] {
  const touches = tracks.flatMap(({ actor, touches: all }) =>
    all.flatMap(({ action, beat, start }) => (keeping.has(action.verb) ? [{ beat, actor, time: start }] : [])),
  );
  const leads = new Map(phase.beats.map((beat) => [beat.index, beat.lead]));
  const waits = beats.flatMap(({ number, index, start }) => {
    const lead = leads.get(index);
    const verb = lead?.chain[0]?.verb;
    if (!lead || (verb !== 'holds' && verb !== 'waits')) return [];
    const has = balls.some((ball) => ball.stretches.some((each) => each.kind === 'still' && each.holder === lead.actor && each.start <= start && start < each.end));
    return has ? [{ beat: number, actor: lead.actor, time: start }] : [];
  });
  return [...touches, ...waits];
}

const keeping: ReadonlySet<string> = new Set(['touches to', 'dribbles to', 'turns']);

/** Null where no side has the ball. `whole`: with the lanes that were not taken. */
function report(board: Board, whole: boolean, beat: number, from: ActorId, time: number, pass: Pass | null): LaneReport | null {
  const sides = sidesAt(board, from, time);
  if (!sides) return null;
  const { track, mates, opponents } = sides;
  const at = pass?.fromAt ?? personAt(track, time);
  return {
    beat,
    time,
    from,
    at,
    pass: pass?.index ?? null,
    lost: pass !== null && opponents.some(({ actor }) => actor.id === pass.to),
    race: pass && raceFor(board, pass, sides),
    lanes: (whole ? mates : []).map((mate) => laneTo(board, at, mate, opponents)),
  };
}

/** Who could cut out a pass to a team-mate, or stand in the way of a shot: there the goalkeeper is left out, whose save is no fault. */
function raceFor(board: Board, { kind, flight, fromAt, to, toAt }: Pass, { mates, opponents }: Sides): LaneReport['race'] {
  const receiver = mates.find(({ actor }) => actor.id === to)?.chaser ?? null;
  if (kind !== 'shot' && !receiver) return null;
  const way = wayOf({ flight, from: fromAt, to: toAt, receiver }, board.effort);
  const first = firstOf(way, kind === 'shot' ? opponents.filter(({ actor }) => actor.kind !== 'keeper') : opponents);
  return first && { margin: first.margin, ...placeOf(way, first.by.chaser, first), by: first.by.actor.id };
}

/** The opponent who does best. Whoever is near is asked first: then those far away are soon done with. */
function firstOf(way: Way, opponents: readonly Standing[]): (Race & { readonly by: Standing }) | null {
  const { ball } = way;
  const byGap = opponents.map((by) => ({ by, gap: closestOnSegment(by.chaser.at, ball.from, ball.to).distance })).sort((a, b) => a.gap - b.gap);
  let best: ReturnType<typeof firstOf> = null;
  for (const { by } of byGap) {
    const found = race(way, by.chaser, best?.margin);
    if (found) best = { ...found, by };
  }
  return best;
}

function laneTo(board: Board, from: Point, { actor, chaser }: Standing, opponents: readonly Standing[]): Lane {
  const to = chaser.at;
  const length = distance(from, to);
  const wayOn = (flight: Flight): Way => wayOf({ flight, from, to, receiver: chaser }, board.effort);
  const isClosed = (way: Way): boolean => opponents.some((each) => isFirst(way, each.chaser, doubtful));
  const rolled = rollTo(length, wantedArrival(board.drill, plain), board.friction, board.launch.roll);
  const ground = rolled.kind === 'dies' ? null : wayOn(rolled);
  const closer = ground && isClosed(ground) ? firstOf(ground, opponents) : null;
  if (ground && closer === null) return { to: actor.id, at: to, open: 'ground', by: null, lead: null };
  const lofted = loftTo(length, board.launch.loft);
  const over = lofted.kind !== 'dies' && lofted.height > constants.reachHeight.value && !isClosed(wayOn(lofted));
  return { to: actor.id, at: to, open: over ? 'lofted' : null, by: closer?.by.actor.id ?? null, lead: closer && -closer.margin };
}

/** How a lane is tried: as hard as a plain pass of the drill's tempo. */
const plain = { weight: null, verb: 'passes to' } as const;
