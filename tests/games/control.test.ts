import { Delaunay } from 'd3-delaunay';
import { expect, test } from 'vitest';
import { alone, analyse } from '../../shared/analyse.ts';
import { controlAt } from '../../shared/games/control.ts';
import { randomFrom } from './random.ts';

test.each([1, 2, 3, 4, 5])('while all stand still the ground is cut as by d3-delaunay, game %d', (seed) => {
  const random = randomFrom(seed);
  const places = Array.from({ length: 14 }, () => [random(0, 40), random(0, 60)] as const);
  const players = places.map(([x, y], index) => `player P${index} of ${index % 2 ? 'Red' : 'Blue'} at (${x.toFixed(3)}, ${y.toFixed(3)})`);
  const { drills } = analyse(['drill "Still" {', 'area 40 x 60', 'team Red', 'team Blue', ...players, '}'].join('\n'), alone);
  const { drill, timeline } = drills[0]!;
  const homes = drill.actors.map(({ home }): [number, number] => [home.x, home.y]);
  const cells = Delaunay.from(homes);
  const { owners, columns, cell, shares } = controlAt(drill, { timeline, possession: [] }, 0)!;
  const wanted = owners.map((_, index) => drill.actors[cells.find(((index % columns) + 0.5) * cell.width, (Math.floor(index / columns) + 0.5) * cell.length)]!.id);
  expect(owners).toEqual(wanted);
  expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
});

test('who runs controls the ground before them, and less of what is behind', () => {
  const { drills } = analyse('drill "Run" {\narea 40 x 20\nteam Red\nteam Blue\nplayer A of Red at (16, 10)\nplayer B of Blue at (24, 10)\nball at A\nphase "P" {\nA dribbles to (16, 10)\n A waits 2 s while B runs to (39, 10)\n}\n}', alone);
  const { drill, phases } = drills[0]!;
  const of = (time: number) => controlAt(drill, phases[0]!, time)!.shares.find(({ team }) => team === 'Blue')!.share;
  expect(of(0)).toBeCloseTo(0.5, 9);
  expect(of(0.9)).toBeLessThan(0.45);
});

test('the ground of floaters is that of the side with the ball', () => {
  const { drills } = analyse('drill "Three" {\narea 40 x 20\nteam Red\nteam Blue\nfloaters Joker\nplayer A of Red at (5, 10)\nplayer B of Blue at (35, 10)\nplayer C of Joker at (19, 10)\nball at A\nphase "P" {\nA passes to C\nB wins the ball from C\n}\n}', alone);
  const { drill, phases: [phase] } = drills[0]!;
  const shares = (time: number) => controlAt(drill, phase!, time)!.shares.map(({ team, share }) => [team, share]);
  // By hand: three who stand cut the length at 12 m and 27 m of 40.
  expect(shares(0)).toEqual([['Red', 27 / 40], ['Blue', 13 / 40]]);
  expect(controlAt(drill, phase!, phase!.timeline.end)!.floatersWith).toBe('Blue');
  expect(controlAt(drill, { timeline: phase!.timeline, possession: [] }, 0)!.shares.map(({ team }) => team)).toEqual(['Red', 'Blue', 'Joker']);
});
