/**
 * How long a run takes, and where the runner is on the way: mono-exponential acceleration, constant braking,
 * curves no faster than the grip allows. All in closed form. Metres, seconds, metres a second.
 */
import type { Gait } from '../../grammar/tree.ts';
import { directionOn, type Path, type Segment } from '../geometry/path.ts';
import type { Tempo } from '../model/drill.ts';
import { constants, sprint } from './constants.ts';
import { root } from './root.ts';

export interface Ability {
  /** The speed that a run aims for, m/s. */
  readonly topSpeed: number;
  /** Time constant of the acceleration, s. */
  readonly tau: number;
  /** m/s². */
  readonly braking: number;
  /** Time between being set off and setting off, s; not part of a run's own time. */
  readonly reaction: number;
  /** Greatest sideways acceleration in a curve, m/s². */
  readonly grip: number;
}

export interface Run {
  readonly length: number;
  readonly time: number;
  readonly endSpeed: number;
  readonly parts: readonly RunPart[];
}

interface Piece {
  readonly time: number;
  readonly length: number;
  /** At the start of the piece. */
  readonly speed: number;
}

export type RunPart =
  /** v(t) = V - (V - v0) e^(-t/τ), with V = `towards`. */
  | (Piece & { readonly kind: 'accelerate'; readonly towards: number; readonly tau: number })
  | (Piece & { readonly kind: 'cruise' })
  | (Piece & { readonly kind: 'brake'; readonly braking: number });

/**
 * What a player of that age in years does at a tempo. A written gait goes before the tempo, and before
 * `topSpeedOverride` (m/s), which stands in for what age and tempo give.
 */
export function ability(age: number, tempo: Tempo, gait: Gait | null, topSpeedOverride: number | null): Ability {
  const { topSpeed, tau } = sprint(age);
  const aim = gait === null ? (topSpeedOverride ?? speedAtTempo(topSpeed, tempo)) : speedInGait(topSpeed, gait);
  return {
    topSpeed: Math.max(aim, constants.slowestRun.value),
    tau,
    braking: constants.braking.value,
    reaction: constants.reaction.value,
    grip: constants.grip.value,
  };
}

/**
 * The fastest run along a path. It starts at `startSpeed` (0 when not given), or slower where that leaves no room to
 * brake, and ends standing, or with `stop: false` in stride. Curves are taken at √(grip · radius): braking before,
 * even speed within, accelerating after. A corner without a curve is a stop.
 */
export function runAlong(path: Path, ability: Ability, options: { startSpeed?: number; stop?: boolean } = {}): Run {
  const stretches = path.segments.filter((segment) => segment.length > 0);
  const limits = speedLimits(stretches, ability, options.stop ?? true);
  const parts: RunPart[] = [];
  let speed = Math.min(Math.max(options.startSpeed ?? 0, 0), limits[0]?.entry ?? 0);
  stretches.forEach((stretch, index) => {
    const covered = cover(stretch.length, speed, limits[index] as Limit, ability);
    parts.push(...covered.parts);
    speed = covered.endSpeed;
  });
  return {
    length: path.length,
    time: parts.reduce((sum, part) => sum + part.time, 0),
    endSpeed: speed,
    parts,
  };
}

/** Metres covered `t` seconds after the start, clamped to the run. */
export function distanceAt(run: Run, t: number): number {
  if (t >= run.time) return run.length;
  const found = partAt(run, t);
  return found ? found.distance + lengthIn(found.part, found.t) : 0;
}

/** Speed `t` seconds after the start, clamped to the run. */
export function speedAt(run: Run, t: number): number {
  if (t >= run.time) return run.endSpeed;
  const found = partAt(run, t);
  return found ? speedIn(found.part, found.t) : 0;
}

/** No moment of the run is faster, m/s. */
export function greatestSpeed({ parts }: Run): number {
  return parts.reduce((most, part) => Math.max(most, part.speed, part.kind === 'accelerate' ? part.towards : 0), 0);
}

/** Seconds after the start at which the run has covered `distance` metres, clamped to it. */
export function timeToRun(run: Run, distance: number): number {
  let covered = 0;
  let time = 0;
  for (const part of run.parts) {
    if (distance < covered + part.length) return time + timeIn(part, Math.max(0, distance - covered));
    covered += part.length;
    time += part.time;
  }
  return run.time;
}

// ---------------------------------------------------------------- effort

function speedAtTempo(topSpeed: number, tempo: Tempo): number {
  return tempo === 'walk' ? constants.walkSpeed.value : constants.effort.value[tempo] * topSpeed;
}

function speedInGait(topSpeed: number, gait: Gait): number {
  return gait === 'walk' ? constants.walkSpeed.value : constants.gait.value[gait] * topSpeed;
}

// ---------------------------------------------------------------- planning

/** Greatest speeds of a stretch: at its start, within it, at its end. */
interface Limit {
  readonly entry: number;
  readonly within: number;
  readonly exit: number;
}

/** Worked out from the end backwards, so that there is always room to brake. */
function speedLimits(stretches: readonly Segment[], ability: Ability, stop: boolean): Limit[] {
  const limits: Limit[] = [];
  let next = stop ? 0 : Infinity;
  for (let index = stretches.length - 1; index >= 0; index -= 1) {
    const stretch = stretches[index] as Segment;
    const within = stretch.kind === 'arc' ? Math.min(ability.topSpeed, Math.sqrt(ability.grip * runRadius(stretch))) : ability.topSpeed;
    const exit = Math.min(next, within);
    const entry = Math.min(within, Math.sqrt(exit * exit + 2 * ability.braking * stretch.length));
    limits[index] = { entry, within, exit };
    const before = stretches[index - 1];
    next = before && turns(before, stretch) ? 0 : entry;
  }
  return limits;
}

/**
 * The radius a curve is run at, metres. A slight turn is run wider than it is drawn, as much as keeps within `cornerCut` of
 * it: an arc of sweep φ may be cut by R = r + c / (1 / cos(φ / 2) - 1); from a half turn on there is nothing to cut.
 */
export function runRadius({ radius, sweep }: { readonly radius: number; readonly sweep: number }): number {
  const half = Math.abs(sweep) / 2;
  return half >= Math.PI / 2 ? radius : radius + constants.cornerCut.value / (1 / Math.cos(half) - 1);
}

/** Whether the direction jumps from the end of one stretch to the start of the next. */
function turns(before: Segment, after: Segment): boolean {
  const a = directionOn(before, before.length);
  const b = directionOn(after, 0);
  return Math.hypot(b.x - a.x, b.y - a.y) > 1e-6;
}

/** Accelerate, hold, brake: whichever of them the stretch has room for. */
function cover(length: number, entry: number, limit: Limit, { topSpeed, tau, braking }: Ability): { parts: RunPart[]; endSpeed: number } {
  const speedUp = accelerate(entry, topSpeed, tau);
  const brakingLength = (speed: number) => Math.max(0, speed * speed - limit.exit * limit.exit) / (2 * braking);
  const beyond = (t: number) => speedUp.lengthAt(t) + brakingLength(speedUp.speedAt(t)) - length;

  const toLimit = limit.within < topSpeed ? speedUp.timeTo(limit.within) : Infinity;
  const holds = beyond(toLimit) < 0;
  const time = holds ? toLimit : root(beyond, 0, Math.min(toLimit, length / topSpeed + tau));
  const peak = holds ? limit.within : speedUp.speedAt(time);
  const brakeLength = brakingLength(peak);
  const held = holds ? length - speedUp.lengthAt(time) - brakeLength : 0;
  const endSpeed = Math.min(peak, limit.exit);

  const parts: RunPart[] = [
    { kind: 'accelerate', time, length: length - held - brakeLength, speed: entry, towards: topSpeed, tau },
    { kind: 'cruise', time: held / peak, length: held, speed: peak },
    { kind: 'brake', time: (peak - endSpeed) / braking, length: brakeLength, speed: peak, braking },
  ];
  return { parts: parts.filter((part) => part.time > 1e-12), endSpeed };
}

// ---------------------------------------------------------------- evaluation

/** v(t) = V - (V - v0) e^(-t/τ) and its integral. */
function accelerate(speed: number, towards: number, tau: number) {
  const missing = towards - speed;
  return {
    speedAt: (t: number) => towards - missing * Math.exp(-t / tau),
    lengthAt: (t: number) => towards * t + missing * tau * Math.expm1(-t / tau),
    timeTo: (wanted: number) => Math.max(0, tau * Math.log(missing / (towards - wanted))),
  };
}

function partAt(run: Run, t: number): { part: RunPart; distance: number; t: number } | null {
  let distance = 0;
  let start = 0;
  for (const part of run.parts) {
    if (t < start + part.time) return { part, distance, t: Math.max(0, t - start) };
    distance += part.length;
    start += part.time;
  }
  return null;
}

function lengthIn(part: RunPart, t: number): number {
  switch (part.kind) {
    case 'accelerate':
      return accelerate(part.speed, part.towards, part.tau).lengthAt(t);
    case 'cruise':
      return part.speed * t;
    case 'brake':
      return part.speed * t - (part.braking * t * t) / 2;
  }
}

function speedIn(part: RunPart, t: number): number {
  switch (part.kind) {
    case 'accelerate':
      return accelerate(part.speed, part.towards, part.tau).speedAt(t);
    case 'cruise':
      return part.speed;
    case 'brake':
      return part.speed - part.braking * t;
  }
}

function timeIn(part: RunPart, length: number): number {
  switch (part.kind) {
    case 'accelerate': {
      const { lengthAt } = accelerate(part.speed, part.towards, part.tau);
      return root((t) => lengthAt(t) - length, 0, part.time);
    }
    case 'cruise':
      return length / part.speed;
    case 'brake':
      return (part.speed - Math.sqrt(Math.max(0, part.speed ** 2 - 2 * part.braking * length))) / part.braking;
  }
}
