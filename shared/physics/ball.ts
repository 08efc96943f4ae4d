/**
 * The ball between two feet: rolling or lofted, in closed form. Metres, seconds, metres a second.
 *
 * Rolling: dv/dt = -(a + k v²) with the friction a of the ground and the air drag k = ½ ρ Cd A / m, which changes once
 * with speed. The short skid before a kicked ball rolls is left out.
 * Lofted: drag proportional to the velocity, as strong as the quadratic drag at launch; one elevation for every ball;
 * from the ground and back to it, without bounce. A modelling choice that gives flight a closed form.
 */
import type { Ground } from '../model/drill.ts';
import { constants, sprint } from './constants.ts';
import { root } from './root.ts';

export type Flight = Roll | Loft;

interface Travel {
  /** Metres along the ground. */
  readonly length: number;
  /** Speed at the first foot and at the second. */
  readonly launch: number;
  readonly arrival: number;
  readonly time: number;
}

export interface Roll extends Travel {
  readonly kind: 'roll';
  /** Rolling deceleration, m/s². */
  readonly friction: number;
  /** One for each drag coefficient on the way, in order: at most two. */
  readonly parts: readonly RollPart[];
}

export interface RollPart {
  readonly time: number;
  readonly length: number;
  /** At the start of the part. */
  readonly speed: number;
  /** Air drag k, 1/m: the deceleration is k v². */
  readonly drag: number;
}

export interface Loft extends Travel {
  readonly kind: 'loft';
  /** Elevation at launch, radians. */
  readonly angle: number;
  /** Of the highest point. */
  readonly height: number;
  /** Linear drag c, 1/s: the deceleration is c v. */
  readonly drag: number;
}

/** The ball does not get there. */
export interface Dies {
  readonly kind: 'dies';
  /** How far it gets: where it stops rolling, or lands. */
  readonly stopsAfter: number;
}

/**
 * Rolling deceleration in m/s², from the distance that the ball of the turf test rolls; null takes the ground's own.
 * Energy down the ramp without slip gives a = g h / ((1 + k) d).
 */
export function friction(ground: Ground, rollDistance: number | null): number {
  const { gravity, rampHeight, shellFactor, rollDistanceLimits } = constants;
  const { least, most } = rollDistanceLimits.value;
  const roll = Math.min(Math.max(rollDistance ?? constants.rollDistance.value[ground], least), most);
  return (gravity.value * rampHeight.value) / ((1 + shellFactor.value) * roll);
}

/** Hardest pass along the ground, or hardest lofted ball, of a player of that age in years; m/s. */
export function greatestLaunch(age: number, kind: Flight['kind']): number {
  const share = sprint(age).topSpeed / constants.topSpeed.value[18];
  return constants.greatestLaunch.value * share * (kind === 'loft' ? constants.loftedFactor.value : 1);
}

/**
 * A pass along the ground that arrives at the wanted speed; if that takes more than `mostLaunch`, it leaves with
 * `mostLaunch` and arrives slower or not at all. `friction` must be positive.
 */
export function rollTo(distance: number, arrival: number, friction: number, mostLaunch: number): Roll | Dies {
  const length = Math.max(0, distance);
  const launch = Math.min(launchFor(length, arrival, friction), mostLaunch);
  const parts = rollParts(launch, length, friction);
  const reached = parts.reduce((sum, part) => sum + part.length, 0);
  if (reached < length - 1e-9) return { kind: 'dies', stopsAfter: reached };
  const last = parts[parts.length - 1];
  return {
    kind: 'roll',
    length,
    launch,
    arrival: last ? speedAfter(last.speed, last.length, last.drag, friction) : launch,
    time: parts.reduce((sum, part) => sum + part.time, 0),
    friction,
    parts,
  };
}

/**
 * A lofted ball that lands `length` away. With s = c T (drag times time of flight), c = k v and elevation θ,
 * landing where it should means 1 - e^(-s) = k L / cos θ, and coming down in that time v² = g (s / (1 - e^(-s)) - 1) / (k sin θ).
 */
export function loftTo(length: number, mostLaunch: number): Loft | Dies {
  const angle = (constants.loftAngle.value * Math.PI) / 180;
  const drag = airDrag(constants.fastDrag.value);
  const gravity = constants.gravity.value;
  const fall = (s: number) => (gravity * (s / -Math.expm1(-s) - 1)) / (drag * Math.sin(angle));
  if (length < 1e-6) return { kind: 'loft', length: 0, launch: 0, arrival: 0, time: 0, angle, height: 0, drag: 0 };

  const share = (drag * length) / Math.cos(angle);
  const s = share < 1 ? -Math.log1p(-share) : Infinity;
  const launch = Math.sqrt(fall(s));
  if (!(launch <= mostLaunch)) {
    const most = root((x) => fall(x) - mostLaunch * mostLaunch, 1e-9, 1 + (drag * mostLaunch * mostLaunch) / gravity);
    return { kind: 'dies', stopsAfter: (Math.cos(angle) / drag) * -Math.expm1(-most) };
  }
  const c = drag * launch;
  const flight = { kind: 'loft', length, launch, time: s / c, angle, drag: c } as const;
  const up = Math.log1p((c * launch * Math.sin(angle)) / gravity) / c;
  return { ...flight, arrival: speedOf(velocityIn(flight, s / c)), height: heightIn(flight, up) };
}

/** Where the ball is `t` seconds after launch, clamped to its way: metres along the ground, metres up, m/s. */
export function ballAt(flight: Flight, t: number): { readonly distance: number; readonly height: number; readonly speed: number } {
  if (t <= 0) return { distance: 0, height: 0, speed: flight.launch };
  if (t >= flight.time) return { distance: flight.length, height: 0, speed: flight.arrival };
  switch (flight.kind) {
    case 'roll': {
      const { part, distance, time } = partWith(flight, 'time', t);
      const rate = Math.sqrt(flight.friction * part.drag);
      const phase = Math.atan(part.speed * Math.sqrt(part.drag / flight.friction));
      const later = phase - rate * (t - time);
      return {
        distance: distance + Math.log(Math.cos(later) / Math.cos(phase)) / part.drag,
        height: 0,
        speed: Math.tan(later) * Math.sqrt(flight.friction / part.drag),
      };
    }
    case 'loft':
      return {
        distance: (flight.launch * Math.cos(flight.angle) * -Math.expm1(-flight.drag * t)) / flight.drag,
        height: heightIn(flight, t),
        speed: speedOf(velocityIn(flight, t)),
      };
  }
}

/** Metres above the ground `t` seconds after launch, as {@link ballAt} has it. */
export function heightAt(flight: Flight, t: number): number {
  return flight.kind === 'roll' || t <= 0 || t >= flight.time ? 0 : heightIn(flight, t);
}

/** From when to when the ball is no higher than `height` metres: seconds after launch, to a hundredth of a millisecond. */
export function timesBelow(flight: Flight, height: number): readonly (readonly [number, number])[] {
  if (flight.kind === 'roll' || flight.height <= height) return [[0, flight.time]];
  const over = (t: number): number => heightAt(flight, t) - height;
  const top = Math.log1p((flight.drag * flight.launch * Math.sin(flight.angle)) / constants.gravity.value) / flight.drag;
  const halvings = 20;
  return [[0, root(over, 0, top, halvings)], [root((t) => -over(t), top, flight.time, halvings), flight.time]];
}

/** Seconds after launch at which the ball is `distance` metres along its way, clamped to it. */
export function timeAtDistance(flight: Flight, distance: number): number {
  if (distance <= 0) return 0;
  if (distance >= flight.length) return flight.time;
  switch (flight.kind) {
    case 'roll': {
      const found = partWith(flight, 'length', distance);
      const { speed, drag } = found.part;
      return found.time + timeBetween(speed, speedAfter(speed, distance - found.distance, drag, flight.friction), drag, flight.friction);
    }
    case 'loft':
      return -Math.log1p((-flight.drag * distance) / (flight.launch * Math.cos(flight.angle))) / flight.drag;
  }
}

// ---------------------------------------------------------------- rolling

/** k = ½ ρ Cd A / m, 1/m. */
function airDrag(coefficient: number): number {
  const { airDensity, ballCircumference, ballMass } = constants;
  const area = ballCircumference.value ** 2 / (4 * Math.PI);
  return (airDensity.value * coefficient * area) / (2 * ballMass.value);
}

function launchFor(length: number, arrival: number, friction: number): number {
  const change = constants.dragChange.value;
  const slow = airDrag(constants.slowDrag.value);
  const fast = airDrag(constants.fastDrag.value);
  if (arrival >= change) return speedAfter(arrival, -length, fast, friction);
  const slowLength = lengthBetween(change, arrival, slow, friction);
  return length <= slowLength
    ? speedAfter(arrival, -length, slow, friction)
    : speedAfter(change, slowLength - length, fast, friction);
}

/** The way from launch to `length`, or to where the ball stops before it. */
function rollParts(launch: number, length: number, friction: number): RollPart[] {
  const change = constants.dragChange.value;
  const parts: RollPart[] = [];
  let left = length;
  let speed = launch;
  for (const [coefficient, until] of [[constants.fastDrag.value, change], [constants.slowDrag.value, 0]] as const) {
    if (speed <= until || (left <= 0 && parts.length > 0)) continue;
    const drag = airDrag(coefficient);
    const whole = lengthBetween(speed, until, drag, friction);
    const part = Math.min(left, whole);
    const after = part === whole ? until : speedAfter(speed, part, drag, friction);
    parts.push({ time: timeBetween(speed, after, drag, friction), length: part, speed, drag });
    left -= part;
    speed = after;
  }
  return parts;
}

/** Speed `length` metres further on (further back when negative): v² + a/k falls by e^(-2 k x). */
function speedAfter(speed: number, length: number, drag: number, friction: number): number {
  const ratio = friction / drag;
  return Math.sqrt(Math.max(0, speed * speed + (speed * speed + ratio) * Math.expm1(-2 * drag * length)));
}

function lengthBetween(speed: number, after: number, drag: number, friction: number): number {
  const ratio = friction / drag;
  return Math.log((speed * speed + ratio) / (after * after + ratio)) / (2 * drag);
}

function timeBetween(speed: number, after: number, drag: number, friction: number): number {
  const scale = Math.sqrt(drag / friction);
  return (Math.atan(speed * scale) - Math.atan(after * scale)) / Math.sqrt(friction * drag);
}

/** The part that a time or a length from launch falls into, and where that part starts. */
function partWith({ parts }: Roll, measure: 'time' | 'length', sought: number) {
  const first = parts[0] as RollPart;
  const second = parts[1];
  return second && sought >= first[measure] ? { part: second, distance: first.length, time: first.time } : { part: first, distance: 0, time: 0 };
}

// ---------------------------------------------------------------- lofted

type Aimed = Pick<Loft, 'launch' | 'angle' | 'drag'>;

function heightIn({ launch, angle, drag }: Aimed, t: number): number {
  const terminal = constants.gravity.value / drag;
  return ((launch * Math.sin(angle) + terminal) * -Math.expm1(-drag * t)) / drag - terminal * t;
}

function velocityIn({ launch, angle, drag }: Aimed, t: number): { across: number; up: number } {
  const terminal = constants.gravity.value / drag;
  const left = Math.exp(-drag * t);
  return { across: launch * Math.cos(angle) * left, up: (launch * Math.sin(angle) + terminal) * left - terminal };
}

function speedOf(velocity: { across: number; up: number }): number {
  return Math.hypot(velocity.across, velocity.up);
}
