import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planPath, straight, type Path, type Segment } from '../../shared/geometry/path.ts';
import { ability, distanceAt, runAlong, runRadius, speedAt, timeToRun, type Ability, type Run } from '../../shared/physics/runner.ts';
import { integrate } from './integrate.ts';

const millimetre = 1e-3;

const numbers = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const abilities: fc.Arbitrary<Ability> = fc.record({
  topSpeed: numbers(1, 10),
  tau: numbers(0.5, 1.3),
  braking: numbers(2, 6),
  reaction: fc.constant(0.25),
  grip: numbers(2, 6),
});
const points = fc.record({ x: numbers(-20, 20), y: numbers(-20, 20) });
const paths: fc.Arbitrary<Path> = fc
  .tuple(points, points, fc.array(points, { maxLength: 2 }), fc.array(fc.record({ at: points, radius: numbers(0.3, 2) }), { maxLength: 2 }))
  .map(([from, to, via, around]) => planPath(from, to, { via, around }));
const options = fc.record({ startSpeed: numbers(0, 6), stop: fc.boolean() });

describe('a run', () => {
  test('moves as the differential equation of its parts says', () => {
    fc.assert(
      fc.property(abilities, paths, options, numbers(0, 1), (ability, path, option, share) => {
        const run = runAlong(path, ability, option);
        const t = share * run.time;
        const [x, v] = replay(run, ability, t);
        expect(Math.abs(distanceAt(run, t) - x)).toBeLessThan(millimetre);
        expect(Math.abs(speedAt(run, t) - v)).toBeLessThan(1e-3);
      }),
      { numRuns: 200 },
    );
  });

  test('covers its path exactly', () => {
    fc.assert(
      fc.property(abilities, paths, options, (ability, path, option) => {
        const run = runAlong(path, ability, option);
        expect(run.length).toBe(path.length);
        expect(run.parts.reduce((sum, part) => sum + part.length, 0)).toBeCloseTo(path.length, 8);
        expect(replay(run, ability, run.time)[0]).toBeCloseTo(path.length, 3);
      }),
      { numRuns: 200 },
    );
  });

  test('never jumps in speed, goes too fast for a curve or too hard on the brakes', () => {
    fc.assert(
      fc.property(abilities, paths, options, (ability, path, option) => {
        const run = runAlong(path, ability, option);
        let before = speedAt(run, 0);
        for (let step = 1; step <= 300; step += 1) {
          const dt = run.time / 300;
          const t = step * dt;
          const speed = speedAt(run, t);
          expect(speed - before).toBeGreaterThanOrEqual(-ability.braking * dt - 1e-9);
          expect(speed - before).toBeLessThanOrEqual((ability.topSpeed / ability.tau) * dt + 1e-9);
          expect(speed).toBeLessThanOrEqual(fastestAt(path, distanceAt(run, t), ability) + 1e-6);
          before = speed;
        }
      }),
      { numRuns: 100 },
    );
  });

  test('stops at its end, or not', () => {
    fc.assert(
      fc.property(abilities, paths, (ability, path) => {
        fc.pre(path.length > 0.1);
        const stopped = runAlong(path, ability);
        const inStride = runAlong(path, ability, { stop: false });
        expect(stopped.endSpeed).toBe(0);
        expect(inStride.endSpeed).toBeGreaterThan(0);
        expect(inStride.time).toBeLessThan(stopped.time);
      }),
    );
  });

  test('is at every distance when it says it is', () => {
    fc.assert(
      fc.property(abilities, paths, options, numbers(0, 1), (ability, path, option, share) => {
        const run = runAlong(path, ability, option);
        expect(distanceAt(run, timeToRun(run, share * run.length))).toBeCloseTo(share * run.length, 7);
      }),
      { numRuns: 200 },
    );
  });

  test('takes longer with a lower top speed', () => {
    fc.assert(
      fc.property(abilities, paths, numbers(0.3, 0.9), (ability, path, share) => {
        const slower = { ...ability, topSpeed: ability.topSpeed * share };
        expect(runAlong(path, slower).time).toBeGreaterThanOrEqual(runAlong(path, ability).time);
      }),
    );
  });

  test('without a length takes no time', () => {
    const here = { x: 3, y: 4 };
    const run = runAlong(straight(here, here), ability(13, 'match', null, null));
    expect(run).toEqual({ length: 0, time: 0, endSpeed: 0, parts: [] });
    expect([distanceAt(run, 1), speedAt(run, 1), timeToRun(run, 1)]).toEqual([0, 0, 0]);
  });

  test('stops at a hairpin that leaves no room for a curve', () => {
    const line = (from: number, to: number): Segment => ({ kind: 'line', from: { x: from, y: 0 }, to: { x: to, y: 0 }, length: Math.abs(to - from) });
    const path: Path = { segments: [line(0, 6), line(6, 0)], length: 12, from: { x: 0, y: 0 }, to: { x: 0, y: 0 } };
    const one = runAlong(straight({ x: 0, y: 0 }, { x: 6, y: 0 }), ability(16, 'match', null, null));
    expect(runAlong(path, ability(16, 'match', null, null)).time).toBeCloseTo(2 * one.time, 9);
  });
});

describe('ability', () => {
  // Bands of a published tutorial on tracking data (Metrica Tutorial 2): walk < 2, jog 2 to 4, run 4 to 7, sprint > 7 m/s.
  test.each([
    { gait: 'walk', band: [0, 2] },
    { gait: 'jog', band: [2, 4] },
    { gait: 'run', band: [4, 7] },
    { gait: 'sprint', band: [7, 12] },
  ] as const)('an adult at $gait lands in its published band', ({ gait, band }) => {
    const { topSpeed } = ability(30, 'steady', gait, null);
    expect(topSpeed).toBeGreaterThan(band[0]);
    expect(topSpeed).toBeLessThan(band[1]);
  });

  test.each<{ name: string; args: Parameters<typeof ability>; expected: number }>([
    { name: 'the tempo decides', args: [18, 'steady', null, null], expected: 0.6 * 8.55 },
    { name: 'everyone walks at tempo walk', args: [18, 'walk', null, null], expected: 1.6 },
    { name: 'the pace of the drill stands in for the tempo', args: [18, 'steady', null, 6], expected: 6 },
    { name: 'a written gait goes before both', args: [18, 'steady', 'sprint', 6], expected: 8.55 },
    { name: 'ages between two groups lie between them', args: [15, 'steady', 'sprint', null], expected: (7.02 + 7.91) / 2 },
    { name: 'the youngest', args: [4, 'match', 'sprint', null], expected: 4.6 },
    { name: 'a pace of nothing still gets there', args: [18, 'steady', null, 0], expected: 0.5 },
  ])('$name', ({ args, expected }) => {
    expect(ability(...args).topSpeed).toBeCloseTo(expected, 9);
  });
});

/** Where and how fast a runner is who follows the parts as differential equations. */
function replay(run: Run, ability: Ability, until: number): [number, number] {
  let state: [number, number] = [0, run.parts[0]?.speed ?? run.endSpeed];
  let left = until;
  for (const { kind, time } of run.parts) {
    const dt = Math.min(left, time);
    const push = (v: number) => ({ accelerate: (ability.topSpeed - v) / ability.tau, cruise: 0, brake: -ability.braking })[kind];
    state = integrate((_, [, v]) => [v as number, push(v as number)], 0, state, dt) as [number, number];
    left -= dt;
  }
  return state;
}

function fastestAt(path: Path, s: number, ability: Ability): number {
  let before = 0;
  const touching = path.segments.filter((segment) => {
    const start = before;
    before += segment.length;
    return s > start + 1e-6 && s < before - 1e-6;
  });
  return Math.min(ability.topSpeed, ...touching.map((segment) => (segment.kind === 'arc' ? Math.sqrt(ability.grip * runRadius(segment)) : Infinity)));
}
