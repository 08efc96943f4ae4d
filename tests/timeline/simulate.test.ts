import { expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import { constants } from '../../shared/physics/constants.ts';
import { ballPosition, personAt } from '../../shared/timeline/at.ts';
import { queueSpot } from '../../shared/timeline/queue.ts';
import type { Timeline } from '../../shared/timeline/timeline.ts';

/** One drill of three stations in a row, 8 m apart, with these beats. */
function play(beats: string, more = ''): Timeline {
  const text = `drill "Row" {
  age U14
  area 20 x 12
  station A at (2, 6) holds 2
  station B at (10, 6)
  station C at (18, 6)
  ball at A
  ${more}
  sequence {
${beats}
  }
}`;
  return analyse(text).drills[0]!.timeline;
}

const round = (value: number): number => Math.round(value * 1000) / 1000;

test.each([
  { what: 'a reception takes two touches unless it says otherwise', second: 'B passes to A', wait: constants.controlTime.value },
  { what: 'first time', second: 'B passes to A first time', wait: 0 },
  { what: 'a set is first time', second: 'B sets to A', wait: 0 },
  { what: 'in 3 touches', second: 'B passes to A, in 3 touches', wait: constants.controlTime.value + constants.touchTime.value },
])('$what: the next pass leaves $wait s after the ball is there', ({ second, wait }) => {
  const [first, next] = play(`A passes to B\n${second}`).passes;
  expect(round(next!.start - first!.arrival)).toBe(round(wait));
});

test('a touch rule makes every pass that does not say its touches keep to it', () => {
  const [first, next] = play('A passes to B\nB passes to A', 'rule touches 1 for B').passes;
  expect(next!.start).toBe(first!.arrival);
});

test('a ball that nobody waits for is controlled when its receiver gets there', () => {
  const { passes } = play('A passes to B while B runs to (10, 11)\nB passes to A first time');
  expect(passes[0]!.slack).toBeLessThan(-0.5);
  expect(round(passes[0]!.received - passes[0]!.arrival)).toBe(round(-passes[0]!.slack!));
  expect(passes[1]!.start).toBe(passes[0]!.received);
});

test('a pass goes to where its receiver’s movement ends', () => {
  const { passes } = play('A waits 3 s while B runs to (10, 9)\nA passes to B');
  expect(passes[0]!.toAt).toMatchObject({ x: 10, y: 9 });
});

test('sequences joined by `and` run side by side, those after a comma one after the other', () => {
  const both = (order: string): number[] =>
    analyse(`drill "Two" {
  area 20 x 12
  station A at (2, 2)
  station B at (10, 2)
  station C at (2, 10)
  station D at (10, 10)
  ball at A
  ball at C
  sequence "low" {
    A passes to B
  }
  sequence "high" {
    C passes to D
  }
  order ${order}
}`).drills[0]!.timeline.beats.map((beat) => round(beat.start));
  const [together, apart] = [both('"low" and "high"'), both('"low", "high"')];
  expect(together).toEqual([0, 0]);
  expect(apart[1]).toBeGreaterThan(1);
});

test('whoever follows ends at the end of the queue of the one they played to', () => {
  const { tracks } = play('B waits 1 s\nA passes to B while A follows\nB passes to next A');
  expect(tracks.find((track) => track.actor === 'A')!.moves.at(-1)!.action.station).toBe('B');
});

test('a ball is taken away with the first touch, however far the dribble goes', () => {
  const { passes, tracks } = play('A passes to B\nB dribbles to (17, 11)\nB passes to C');
  expect(tracks.find((track) => track.actor === 'B')!.moves[0]!.start).toBe(passes[0]!.arrival);
});

test('of several balls the one at the feet is played', () => {
  const { passes } = play('A dribbles to (4, 10)\nA passes to B', 'balls 6 at 1 above A');
  expect(passes[0]!.fromAt).toMatchObject({ x: 4, y: 10 });
});

test('a slight bend costs little, a right angle more', () => {
  const time = (way: string): number => play(`A passes to B while C runs to (18, 2) ${way}`).tracks.find((track) => track.actor === 'C')!.moves[0]!.run.time;
  const straight = time('');
  expect(time('via (18.3, 4)') - straight).toBeLessThan(0.3);
  expect(time('via (14, 4)') - straight).toBeGreaterThan(0.5);
});

test('a queue keeps out of the way of the balls to and from its station', () => {
  const { drills } = analyse(`drill "Low" {
  area 20 x 30
  station A at (10, 2)
  station B at (10, 12) holds 4
  ball at A
  sequence {
    A passes to B
    B passes to A
  }
}`);
  const { drill } = drills[0]!;
  const spots = [1, 2, 3].map((number) => queueSpot(drill, drill.stations[1]!, number));
  expect(spots.every((spot) => spot.y >= 12 || spot.x !== 10)).toBe(true);
});

test('nobody and no ball jumps: between two looks everything moves no faster than it can', () => {
  const timeline = play(
    `A touches to (4, 6) while B runs to (10, 9) then shows to (8, 6)
    A passes to B while C runs to (18, 9)
    B sets to A
    A passes to C, lofted while B spins around B to (14, 8)
    C passes into (14, 9) for B
    B dribbles to (3, 8)`,
    'pole Post at (14, 6)',
  );
  const look = 0.01;
  const fastest = 30 * look;
  for (let time = 0; time < timeline.end; time += look) {
    for (const ball of timeline.balls) {
      const [a, b] = [ballPosition(ball, time), ballPosition(ball, time + look)];
      expect(Math.hypot(b.x - a.x, b.y - a.y, b.height - a.height)).toBeLessThan(fastest);
    }
    for (const track of timeline.tracks) {
      const [a, b] = [personAt(track, time), personAt(track, time + look)];
      expect(Math.hypot(b.x - a.x, b.y - a.y)).toBeLessThan(9 * look);
    }
  }
  expect(timeline.passes).toHaveLength(4);
});
