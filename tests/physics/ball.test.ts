import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ballAt, friction, greatestLaunch, loftTo, rollTo, timeAtDistance, type Loft, type Roll } from '../../shared/physics/ball.ts';
import { integrate } from './integrate.ts';

// Written out here a second time, so that a slip in the sources shows: Law 2, Palmer, and plain mechanics.
const mass = 0.43;
const crossSection = Math.PI * (0.69 / (2 * Math.PI)) ** 2;
const quadraticDrag = (coefficient: number) => (0.5 * 1.2 * coefficient * crossSection) / mass;
const gravity = 9.81;

const lengths = fc.double({ min: 0.5, max: 40, noNaN: true });
const arrivals = fc.double({ min: 0.5, max: 12, noNaN: true });
const frictions = fc.double({ min: 0.3, max: 2, noNaN: true });
const shares = fc.double({ min: 0, max: 1, noNaN: true });
const millimetre = 1e-3;
const millisecond = 1e-3;

const rolling = (friction: number) => (_: number, [, v]: number[]) => {
  const speed = v as number;
  return [speed, -friction - quadraticDrag(speed < 8 ? 0.47 : 0.22) * speed * speed];
};
const flying = (flight: Loft) => {
  const drag = quadraticDrag(0.22) * flight.launch;
  return (_: number, [, , vx, vz]: number[]) => [vx as number, vz as number, -drag * (vx as number), -gravity - drag * (vz as number)];
};

describe('a rolling ball', () => {
  test('moves as the differential equation says', () => {
    fc.assert(
      fc.property(lengths, arrivals, frictions, shares, (length, arrival, friction, share) => {
        const roll = rolls(length, arrival, friction);
        const t = share * roll.time;
        const [x, v] = integrate(rolling(friction), 0, [0, roll.launch], t) as [number, number];
        const ball = ballAt(roll, t);
        expect(Math.abs(ball.distance - x)).toBeLessThan(millimetre);
        expect(Math.abs(ball.speed - v)).toBeLessThan(1e-3);
        expect(ball.height).toBe(0);
      }),
      { numRuns: 250 },
    );
  });

  test('takes the time that the differential equation says', () => {
    fc.assert(
      fc.property(lengths, arrivals, frictions, (length, arrival, friction) => {
        const roll = rolls(length, arrival, friction);
        const perMetre = (_: number, [, v]: number[]) => [1 / (v as number), rolling(friction)(0, [0, v as number])[1]! / (v as number)];
        const [t, v] = integrate(perMetre, 0, [0, roll.launch], length) as [number, number];
        expect(Math.abs(roll.time - t)).toBeLessThan(millisecond);
        expect(Math.abs(roll.arrival - v)).toBeLessThan(1e-3);
      }),
      { numRuns: 250 },
    );
  });

  test('arrives at the speed that was asked for', () => {
    fc.assert(
      fc.property(lengths, arrivals, frictions, (length, arrival, friction) => {
        expect(rolls(length, arrival, friction).arrival).toBeCloseTo(arrival, 9);
      }),
    );
  });

  test('is at every distance when it says it is', () => {
    fc.assert(
      fc.property(lengths, arrivals, frictions, shares, (length, arrival, friction, share) => {
        const roll = rolls(length, arrival, friction);
        expect(ballAt(roll, timeAtDistance(roll, share * length)).distance).toBeCloseTo(share * length, 9);
      }),
    );
  });

  test('hit no harder than the player can arrives slower or dies where it stops', () => {
    fc.assert(
      fc.property(lengths, arrivals, frictions, fc.double({ min: 1, max: 15, noNaN: true }), (length, arrival, friction, most) => {
        const flight = rollTo(length, arrival, friction, most);
        if (flight.kind === 'roll') {
          expect(flight.launch).toBeLessThanOrEqual(most);
          expect(flight.arrival).toBeLessThanOrEqual(arrival + 1e-9);
        } else {
          expect(flight.stopsAfter).toBeLessThan(length);
          const perMetre = (_: number, [square]: number[]) => [2 * rolling(friction)(0, [0, Math.sqrt(Math.max(0, square as number))])[1]!];
          expect(integrate(perMetre, 0, [most * most], flight.stopsAfter)[0]).toBeCloseTo(0, 3);
        }
      }),
      { numRuns: 250 },
    );
  });

  test.each([
    { length: 0, arrival: 4, friction: 1, most: 20, expected: { kind: 'roll', launch: 4, arrival: 4, time: 0 } },
    { length: -3, arrival: 4, friction: 1, most: 20, expected: { kind: 'roll', length: 0, time: 0 } },
    { length: 10, arrival: 4, friction: 1, most: 0, expected: { kind: 'dies', stopsAfter: 0 } },
    { length: 1e6, arrival: 4, friction: 1, most: 20, expected: { kind: 'dies' } },
  ])('$length m at $arrival m/s with at most $most m/s', ({ length, arrival, friction, most, expected }) => {
    expect(rollTo(length, arrival, friction, most)).toMatchObject(expected);
  });
});

describe('a lofted ball', () => {
  test('moves as the differential equation says', () => {
    fc.assert(
      fc.property(lengths, shares, (length, share) => {
        const loft = lofts(length);
        const t = share * loft.time;
        const start = [0, 0, loft.launch * Math.cos(loft.angle), loft.launch * Math.sin(loft.angle)];
        const [x, z, vx, vz] = integrate(flying(loft), 0, start, t) as [number, number, number, number];
        const ball = ballAt(loft, t);
        expect(Math.abs(ball.distance - x)).toBeLessThan(millimetre);
        expect(Math.abs(ball.height - z)).toBeLessThan(millimetre);
        expect(Math.abs(ball.speed - Math.hypot(vx, vz))).toBeLessThan(1e-3);
      }),
      { numRuns: 250 },
    );
  });

  test('lands at its length, after its time, from its highest point', () => {
    fc.assert(
      fc.property(lengths, (length) => {
        const loft = lofts(length);
        const start = [0, 0, loft.launch * Math.cos(loft.angle), loft.launch * Math.sin(loft.angle)];
        const [x, z, vx, vz] = integrate(flying(loft), 0, start, loft.time) as [number, number, number, number];
        expect([x, z, Math.hypot(vx, vz)].map((each) => Math.round(each * 1000) / 1000)).toEqual(
          [length, 0, loft.arrival].map((each) => expect.closeTo(each, 2)),
        );
        const heights = Array.from({ length: 101 }, (_, step) => ballAt(loft, (step / 100) * loft.time).height);
        expect(Math.max(...heights)).toBeLessThanOrEqual(loft.height + 1e-9);
        expect(Math.max(...heights)).toBeGreaterThan(loft.height * 0.999);
      }),
      { numRuns: 250 },
    );
  });

  test('is at every distance when it says it is', () => {
    fc.assert(
      fc.property(lengths, shares, (length, share) => {
        const loft = lofts(length);
        expect(ballAt(loft, timeAtDistance(loft, share * length)).distance).toBeCloseTo(share * length, 9);
      }),
    );
  });

  test('too far for the player lands where the hardest kick comes down', () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 30, noNaN: true }), fc.double({ min: 1, max: 500, noNaN: true }), (most, length) => {
        const flight = loftTo(length, most);
        if (flight.kind === 'loft') {
          expect(flight.launch).toBeLessThanOrEqual(most);
        } else {
          expect(flight.stopsAfter).toBeLessThan(length);
          expect(lofts(flight.stopsAfter).launch).toBeCloseTo(most, 6);
        }
      }),
    );
  });

  test('without a length stays where it is', () => {
    const loft = lofts(0);
    expect([ballAt(loft, 0), ballAt(loft, 1)]).toEqual(Array(2).fill({ distance: 0, height: 0, speed: 0 }));
  });
});

test.each([
  { t: -1, expected: { distance: 0, speed: 4.472136 } },
  { t: 100, expected: { distance: 0.01 } },
])('the ball is clamped to its way at $t s', ({ t, expected }) => {
  const roll = { ...rolls(0.01, 4.472136, 1), launch: 4.472136 };
  expect(ballAt(roll, t)).toMatchObject(expected);
});

test.each([
  { roll: 0, most: true },
  { roll: 1e9, most: false },
  { roll: -5, most: true },
])('friction stays positive and finite for a roll of $roll m', ({ roll, most }) => {
  const value = friction('grass', roll);
  expect(value > 0 && Number.isFinite(value)).toBe(true);
  expect(value > friction('grass', 5)).toBe(most);
});

test('a harder ground rolls farther', () => {
  expect(friction('grass', null)).toBeGreaterThan(friction('turf', null));
  expect(friction('turf', null)).toBeGreaterThan(friction('indoor', null));
});

test('older players can hit it harder, and lofted harder than along the ground', () => {
  const ages = [6, 8, 10, 12, 13, 14, 16, 18];
  const launches = ages.map((age) => greatestLaunch(age, 'roll'));
  expect(launches).toEqual(launches.toSorted((a, b) => a - b));
  expect(greatestLaunch(40, 'roll')).toBe(22.6);
  expect(greatestLaunch(40, 'loft')).toBeGreaterThan(22.6);
});

function rolls(length: number, arrival: number, friction: number): Roll {
  const flight = rollTo(length, arrival, friction, Infinity);
  if (flight.kind === 'dies') throw new Error(`${length} m at ${arrival} m/s died`);
  return flight;
}

function lofts(length: number): Loft {
  const flight = loftTo(length, Infinity);
  if (flight.kind === 'dies') throw new Error(`${length} m cannot be reached`);
  return flight;
}
