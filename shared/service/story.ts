import type { DrillAnalysis } from '../analyse.ts';
import { long, seconds } from '../checks/say.ts';
import { distance } from '../geometry/point.ts';
import type { Pass } from '../timeline/timeline.ts';
import { formatNumber } from '../units.ts';
import type { FoundAction } from './lookup.ts';

/** What became of a pass or a run, in a sentence of numbers. */
export function storyOf({ pass, move }: FoundAction, { drill }: DrillAnalysis): string[] {
  if (pass) {
    const { flight, fromAt, toAt, start } = pass;
    const length = `**${long(drill, distance(fromAt, toAt))}**`;
    const launch = `leaves the foot at ${formatNumber(flight.launch, 1)} m/s`;
    return [`${length}, ${seconds(flight.time)} on the way, ${launch}, ${seconds(start)} after the start.${readiness(pass)}`];
  }
  if (!move) return [];
  const { path, run, start, end } = move;
  return [`**${long(drill, path.length)}** in ${seconds(run.time)}, from ${seconds(start)} to ${seconds(end)} after the start.`];
}

function readiness({ slack, to }: Pass): string {
  if (slack === null) return '';
  return slack < 0 ? ` ${to} is ready ${seconds(-slack)} **after** the ball.` : ` ${to} is ready ${seconds(slack)} before the ball.`;
}
