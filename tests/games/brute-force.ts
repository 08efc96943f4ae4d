/**
 * The race to the ball once more, knowing only the differential equations: ball and runners are stepped through time by the
 * midpoint rule, and every place on the ball's way is tried. It shares no code with what it checks but the constants.
 */
import type { Chaser, Effort, Struck } from '../../shared/games/race.ts';
import type { Flight } from '../../shared/physics/ball.ts';
import { constants } from '../../shared/physics/constants.ts';

const tick = 0.004;
/** Metres between two places that are tried first, and then around the best of them. */
const [coarse, fine] = [0.2, 0.01];

/** The least of: how much later than the ball, or than the receiver who is there before it. */
export function bruteForce(ball: Struck, chaser: Chaser, effort: Effort): number {
  const { length } = ball.flight;
  const times = stepBall(ball.flight);
  const late = (place: { readonly s: number; readonly time: number }): number => {
    const point = { x: ball.from.x + ((ball.to.x - ball.from.x) * place.s) / length, y: ball.from.y + ((ball.to.y - ball.from.y) * place.s) / length };
    const there = ball.receiver ? Math.min(place.time, run(ball.receiver, effort, point)) : place.time;
    return run(chaser, effort, point) - there;
  };
  const at = (s: number) => times(Math.min(length, Math.max(0, s)));
  const tried = Array.from({ length: Math.ceil(length / coarse) + 1 }, (_, index) => at(index * coarse)).filter((place) => place.low);
  const rated = tried.map((place) => ({ s: place.s, late: late(place) })).sort((a, b) => a.late - b.late);
  const around = rated.slice(0, 4).flatMap(({ s }) => Array.from({ length: (2 * coarse) / fine + 1 }, (_, index) => at(s - coarse + index * fine)).filter((place) => place.low));
  return Math.min(rated[0]!.late, ...around.map(late));
}

/** When the ball is `s` metres along, and whether it is low enough there. */
function stepBall(flight: Flight): (s: number) => { readonly s: number; readonly time: number; readonly low: boolean } {
  const { airDensity, ballCircumference, ballMass, slowDrag, fastDrag, dragChange, gravity } = constants;
  const perDrag = (airDensity.value * (ballCircumference.value ** 2 / (4 * Math.PI))) / (2 * ballMass.value);
  const rows: { s: number; height: number }[] = [];
  if (flight.kind === 'roll') {
    const slows = (v: number) => flight.friction + perDrag * (v > dragChange.value ? fastDrag.value : slowDrag.value) * v * v;
    for (let s = 0, v = flight.launch; s < flight.length && v > 1e-6; ) {
      rows.push({ s, height: 0 });
      const middle = v - (slows(v) * tick) / 2;
      s += middle * tick;
      v -= slows(middle) * tick;
    }
  } else {
    let [vx, vy] = [flight.launch * Math.cos(flight.angle), flight.launch * Math.sin(flight.angle)];
    for (let s = 0, height = 0; s < flight.length && rows.length < 10_000; ) {
      rows.push({ s, height });
      const [mx, my] = [vx - (flight.drag * vx * tick) / 2, vy - ((gravity.value + flight.drag * vy) * tick) / 2];
      s += mx * tick;
      height += my * tick;
      vx -= flight.drag * mx * tick;
      vy -= (gravity.value + flight.drag * my) * tick;
    }
  }
  return (s) => {
    let index = rows.findIndex((row) => row.s > s);
    if (index < 0) index = rows.length;
    const [a, b] = [rows[Math.max(0, index - 1)]!, rows[index]];
    const share = b ? (s - a.s) / (b.s - a.s) : 0;
    return { s, time: (Math.max(0, index - 1) + share) * tick, low: a.height + share * ((b?.height ?? 0) - a.height) <= constants.reachHeight.value };
  };
}

/** Seconds until a runner, stepped through time along the straight way to a point, has it within reach. */
function run({ at, velocity, reacted }: Chaser, { topSpeed, tau, braking }: Effort, point: { readonly x: number; readonly y: number }): number {
  const gap = Math.hypot(point.x - at.x, point.y - at.y);
  if (gap <= constants.standingReach.value) return 0;
  if (gap <= constants.reach.value) return reacted;
  let v = (velocity.x * (point.x - at.x) + velocity.y * (point.y - at.y)) / gap;
  let left = gap - constants.reach.value;
  for (let time = 0; ; time += tick) {
    const gains = v < 0 ? braking : (topSpeed - v) / tau;
    const middle = v + (gains * tick) / 2;
    const covered = middle * tick;
    if (covered >= left) return reacted + time + (left / covered) * tick;
    left -= covered;
    v += (v < 0 ? braking : (topSpeed - middle) / tau) * tick;
  }
}
