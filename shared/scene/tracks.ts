/** The closed forms of the timeline as samples close enough together to be joined by straight lines. */
import { directionAt } from '../geometry/path.ts';
import { distance, type Point } from '../geometry/point.ts';
import { onStretch, onTheMove } from '../timeline/at.ts';
import type { BallTrack, Stretch, Track } from '../timeline/timeline.ts';
import { onSheet } from './ground.ts';
import type { Plan } from './scene.ts';
import type { Spot } from './shapes.ts';

/** Metres that a straight line between samples may miss the true way by. */
const tolerance = 0.015;
/** Seconds between samples before any are added. */
const stride = 0.4;

/** Until `end` in seconds. `aside` moves someone who waits off the spot (millimetres), until they first move. */
export function personTrack(track: Track, end: number, plan: Plan, aside: Spot): number[] {
  const moves = track.walk ? [...track.moves, track.walk] : track.moves;
  const begun = moves.filter((move) => move.start < end);
  const samples = begun.flatMap((move) => sampled(move.start, Math.min(move.end, end), (time) => onGround(onTheMove(move, time), time)));
  return flattened(samples.length > 0 ? samples : [{ time: 0, ...track.home, height: 0 }], plan, aside);
}

/**
 * The ball lies and travels `ahead` millimetres in front of whoever has it, not under them: it leaves towards its target,
 * arrives on the near side, and in between is brought round.
 */
export function ballTrack(ball: BallTrack, plan: Plan, ahead: number): number[] {
  const samples: Sample[] = [];
  let aside: Spot = { x: 0, y: 0 };
  for (const [index, stretch] of ball.stretches.entries()) {
    const next = ball.stretches[index + 1];
    // At the start it lies beside the feet, where it hides no line.
    const from = stretch.kind === 'flight' ? startAside(stretch, next) : index === 0 ? beside(startAside(stretch, next)) : aside;
    const to = endAside(stretch, next, from);
    const own = stretch.kind === 'still' ? [onGround(stretch.at, stretch.start), onGround(stretch.at, stretch.end)]
      : sampled(stretch.start, stretch.end, stretch.kind === 'carried'
        ? (time) => onGround(onTheMove(stretch.move, time), time)
        : (time) => {
          const { x, y, height } = onStretch(stretch, time);
          return { time, x, y, height };
        });
    const length = stretch.end - stretch.start;
    for (const { time, x, y, height } of own) {
      const share = length > 0 ? (time - stretch.start) / length : 1;
      const reach = ahead / plan.perMetre;
      samples.push({ time, x: x + (from.x + (to.x - from.x) * share) * reach, y: y + (from.y + (to.y - from.y) * share) * reach, height });
    }
    aside = to;
  }
  return flattened(samples.length > 0 ? samples : [onGround({ x: ball.home.x + (0.87 * ahead) / plan.perMetre, y: ball.home.y + (0.5 * ahead) / plan.perMetre }, 0)], plan, { x: 0, y: 0 });
}

function startAside(stretch: Stretch, next: Stretch | undefined): Spot {
  switch (stretch.kind) {
    case 'flight':
      return towards(stretch.from, stretch.to);
    case 'carried':
      return directionAt(stretch.move.path, 0);
    case 'still':
      return stretch.holder === null ? { x: 0, y: 0 } : next ? startAside(next, undefined) : { x: 0, y: 1 };
  }
}

function endAside(stretch: Stretch, next: Stretch | undefined, from: Spot): Spot {
  if (stretch.kind === 'flight') {
    const { x, y } = towards(stretch.from, stretch.to);
    return next ? { x: -x, y: -y } : { x: 0, y: 0 };
  }
  if (next?.kind === 'flight') return startAside(next, undefined);
  return stretch.kind === 'carried' ? directionAt(stretch.move.path, stretch.move.path.length) : from;
}

function beside({ x, y }: Spot): Spot {
  return { x: x * 0.5 + y * 0.87, y: y * 0.5 - x * 0.87 };
}

function towards(from: Point, to: Point): Spot {
  const length = distance(from, to) || 1;
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

function onGround(at: Point, time: number): Sample {
  return { time, x: at.x, y: at.y, height: 0 };
}

interface Sample extends Point {
  readonly time: number;
  readonly height: number;
}

function sampled(start: number, end: number, sample: (time: number) => Sample): Sample[] {
  const found: Sample[] = [sample(start)];
  const refine = (a: Sample, b: Sample, depth: number): void => {
    const middle = sample((a.time + b.time) / 2);
    const off = Math.abs(middle.x - (a.x + b.x) / 2) + Math.abs(middle.y - (a.y + b.y) / 2) + Math.abs(middle.height - (a.height + b.height) / 2);
    if (off > tolerance && depth > 0) {
      refine(a, middle, depth - 1);
      refine(middle, b, depth - 1);
    } else found.push(b);
  };
  const parts = Math.max(1, Math.ceil((end - start) / stride));
  let before = found[0] as Sample;
  for (let part = 1; part <= parts; part += 1) {
    const next = sample(start + ((end - start) * part) / parts);
    refine(before, next, 6);
    before = next;
  }
  return found;
}

/** `aside` moves the first sample, in millimetres. */
function flattened(samples: readonly Sample[], plan: Plan, aside: Spot): number[] {
  const track: number[] = [];
  for (const [index, sample] of samples.entries()) {
    const { x, y } = onSheet(plan, sample);
    const first = index === 0;
    track.push(round(sample.time, 1000), round(first ? x + aside.x : x, 100), round(first ? y + aside.y : y, 100), round(sample.height, 100));
  }
  return track;
}

function round(value: number, parts: number): number {
  return Number.isFinite(value) ? Math.round(value * parts) / parts + 0 : 0;
}
