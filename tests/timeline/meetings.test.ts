import { expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import type { Point } from '../../shared/geometry/point.ts';
import { ballPosition, personAt } from '../../shared/timeline/at.ts';
import { crossings, meetings } from '../../shared/timeline/meetings.ts';
import type { Timeline } from '../../shared/timeline/timeline.ts';
import { randomFrom } from '../games/random.ts';

/** One pass and two runs, all at once, from and to places drawn anew. */
function played(random: (low: number, high: number) => number): Timeline {
  const place = (): string => `(${random(2, 18).toFixed(1)}, ${random(2, 18).toFixed(1)})`;
  const { drills } = analyse(`drill "Meet" {
  area 20 x 20
  tempo match
  station Cat at ${place()}
  station Dan at ${place()}
  station Ann at ${place()}
  station Bob at ${place()}
  ball at Cat
  sequence {
    Cat passes to Dan${random(0, 1) < 0.2 ? ', lofted' : ''} while Ann runs to ${place()}, Bob runs to ${place()}
  }
}
`);
  return drills[0]!.timeline;
}

interface Limits {
  readonly reach: number;
  readonly closing: number;
  readonly away: number;
}

/** Whether two things come within reach, seen every hundredth of a second. */
function comeClose(a: (time: number) => Point, b: (time: number) => Point, start: number, end: number, known: readonly Point[], { reach, closing, away }: Limits): boolean {
  const tick = 0.01;
  for (let time = start; time + tick <= end; time += tick) {
    const [a0, b0, a1, b1] = [a(time), b(time), a(time + tick), b(time + tick)];
    const speed = Math.hypot(a1.x - a0.x - b1.x + b0.x, a1.y - a0.y - b1.y + b0.y) / tick;
    if (Math.hypot(b0.x - a0.x, b0.y - a0.y) < reach && speed >= closing && known.every((each) => Math.hypot(each.x - b0.x, each.y - b0.y) > away)) return true;
  }
  return false;
}

test('600 random meetings of runners and of balls with runners agree with a look every hundredth of a second', () => {
  const random = randomFrom(20261128);
  const seen = { runners: 0, balls: 0 };
  for (let index = 0; index < 600; index += 1) {
    const timeline = played(random);
    const [ann, bob] = ['Ann', 'Bob'].map((name) => timeline.tracks.find(({ actor }) => actor.startsWith(name))!);
    const [pass, one, other] = [timeline.passes[0]!, ann!.moves[0]!, bob!.moves[0]!];
    const runners = (limits: Limits): boolean =>
      comeClose((time) => personAt(ann!, time), (time) => personAt(bob!, time), Math.max(one.start, other.start), Math.min(one.end, other.end), [one.path.to, other.path.to], limits);
    const overhead = (time: number): Point => {
      const at = ballPosition(timeline.balls[0]!, time);
      return at.height > 2 ? { x: 1e6, y: 1e6 } : at;
    };
    const balls = (limits: Limits): boolean =>
      [ann!, bob!].some((track) => comeClose(overhead, (time) => personAt(track, time), Math.max(pass.start, track.moves[0]!.start), Math.min(pass.arrival, track.moves[0]!.end), [pass.fromAt, pass.toAt], limits));
    const found = { runners: meetings(timeline).length > 0, balls: crossings(timeline).length > 0 };
    if (runners({ reach: 0.7, closing: 2.3, away: 1.9 })) expect(found.runners, `situation ${index}`).toBe(true);
    if (found.runners) expect(runners({ reach: 0.9, closing: 1.7, away: 0.7 }), `situation ${index}`).toBe(true);
    if (balls({ reach: 0.4, closing: 0, away: 1.9 })) expect(found.balls, `situation ${index}`).toBe(true);
    if (found.balls) expect(balls({ reach: 0.6, closing: 0, away: 0.7 }), `situation ${index}`).toBe(true);
    seen.runners += Number(found.runners);
    seen.balls += Number(found.balls);
  }
  expect(seen.runners).toBeGreaterThan(10);
  expect(seen.balls).toBeGreaterThan(10);
});
