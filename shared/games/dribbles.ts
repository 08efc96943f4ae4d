/** Runs with the ball: which opponents could be on the way first. */
import { closestOnPath, pointAt } from '../geometry/path.ts';
import type { Point } from '../geometry/point.ts';
import type { Action, ActorId, Drill } from '../model/drill.ts';
import { timeToRun } from '../physics/runner.ts';
import type { Move, Timeline } from '../timeline/timeline.ts';
import { boardOf, sidesAt, type Standing } from './board.ts';
import type { Possession } from './possession.ts';
import { timeToReach, type Effort } from './race.ts';

export interface Challenge {
  readonly actor: ActorId;
  readonly action: Action;
  /** Of all opponents whom the dribble goes past, the one who is there first by most. */
  readonly by: ActorId;
  /** How much later than the dribbler they are there at best, seconds. Negative: they are first by so much. */
  readonly margin: number;
  /** Where that is. */
  readonly at: Point;
}

/** Metres between two places that are tried. */
const step = 0.1;
/** Who is less than this ahead of the first touch, metres, is being left behind. A choice without a source. */
const ahead = 0.5;
/** Who is farther from the way than this, metres, steps into another picture when they come. A choice without a source. */
const beside = 10;

/**
 * One for every run with the ball past opponents. Who stands beyond its end is not asked: running at a defender and playing
 * on before them is what a dribble is for. A dribble after which the ball is won is meant to end so.
 */
export function challengesOf(drill: Drill, timeline: Timeline, possession: readonly Possession[]): readonly Challenge[] {
  const board = boardOf(drill, timeline, possession);
  return timeline.tracks.flatMap(({ actor, moves }) =>
    moves.filter((move) => move.kind === 'dribble' && !isWon(timeline, actor, move)).flatMap((move): Challenge[] => {
      const opponents = sidesAt(board, actor, move.start)?.opponents ?? [];
      const found = opponents
        .filter((each) => isPassed(move, each))
        .map((each) => ({ actor, action: move.action, by: each.actor.id, ...best(move, each, board.effort) }));
      return found.length === 0 ? [] : [found.reduce((first, each) => (each.margin < first.margin ? each : first))];
    }),
  );
}

function isPassed({ path }: Move, { chaser }: Standing): boolean {
  const { s, distance } = closestOnPath(chaser.at, path);
  return s > ahead && s < path.length - step && distance <= beside;
}

/** Whether the ball is won from the dribbler before they have played it. */
function isWon({ tracks, passes }: Timeline, dribbler: ActorId, { start }: Move): boolean {
  const played = passes.reduce((first, pass) => (pass.from === dribbler && pass.start >= start ? Math.min(first, pass.start) : first), Infinity);
  return tracks.some(({ moves }) => moves.some(({ action, end }) => action.verb === 'wins the ball from' && action.about?.who === dribbler && start <= end && end <= played));
}

function best({ path, run }: Move, { chaser }: Standing, effort: Effort): Pick<Challenge, 'margin' | 'at'> {
  let found = { margin: Infinity, at: path.from };
  for (let s = 0; s <= path.length; s += step) {
    const at = pointAt(path, s);
    const margin = timeToReach(chaser, effort, at) - timeToRun(run, s);
    if (margin < found.margin) found = { margin, at };
  }
  return found;
}
