import { expect, test } from 'vitest';
import { goingRound, once } from '../../client/webview/rounds.ts';
import { analyse } from '../../shared/analyse.ts';
import { stage } from '../../shared/scene/scene.ts';

const text = `drill "Give and go" {
  age     U13
  players 5
  area 14 x 16

  station Base at (7, 3) holds 3
  station Wall at 8 above Base holds 2

  ball at Base

  sequence {
    Base passes to Wall
    Wall passes to next Base while Base follows, Wall follows
  }
}
`;
const analysis = analyse(text).drills[0]!;
const scene = stage(analysis, { theme: 'light', convention: 'solid pass' });
const { image, places, order } = analysis.rotation!;
const turn = { image, places, order, interval: analysis.measures.interval!.seconds };
const play = goingRound(scene, turn);

/** Metres, to a centimetre; those in the queue count from where they are drawn. */
function placesAt(time: number): Record<string, readonly [number, number]> {
  const { left, bottom, perMetre } = scene.plan;
  const round = (value: number): number => Math.round(value * 100) / 100;
  return Object.fromEntries([...play.spotsAt(play.momentAt(time))].filter(([id]) => !id.startsWith('ball')).map(([id, { x, y }]) => {
    const mark = scene.marks.find((each) => each.id === id)?.shapes[0];
    const base = mark?.kind === 'group' ? mark : { x: 0, y: 0 };
    return [id, [round((x + base.x - left) / perMetre), round((bottom - y - base.y) / perMetre)]];
  }));
}

test('goes on until everyone is where they began', () => {
  expect(play.count).toBe(order);
  expect(placesAt(play.length)).toEqual(placesAt(0));
});

test('begins every repetition where the rotation has brought people to', () => {
  const [before, after] = [placesAt(0), placesAt(play.period + 1e-9)];
  expect(after).toEqual({
    'person-Base': before['person-next Wall'], 'person-next Base': before['person-Base'], 'waiting-Base-2': before['person-next Base'],
    'person-Wall': before['waiting-Base-2'], 'person-next Wall': before['person-Wall'],
  });
});

test('nobody jumps, within a repetition or between two', () => {
  const step = 0.05;
  let before = placesAt(0);
  for (let time = step; time < play.length; time += step) {
    const now = placesAt(time);
    for (const [id, [x, y]] of Object.entries(now)) {
      const [fromX, fromY] = before[id]!;
      // Metres a second; a sprint is below 9.
      expect(Math.hypot(x - fromX, y - fromY) / step, `${id} at ${time}`).toBeLessThan(12);
    }
    before = now;
  }
});

test('once is one repetition, and holds the time within it', () => {
  const alone = once(scene);
  expect([alone.count, alone.length]).toEqual([1, scene.end]);
  expect(alone.momentAt(1e9)).toEqual({ round: 0, time: scene.end });
  expect(alone.momentAt(-1)).toEqual({ round: 0, time: 0 });
});
