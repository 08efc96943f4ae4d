import { expect, test } from 'vitest';
import { gripOf, keyGrip } from '../../client/webview/handles.ts';
import { analyse } from '../../shared/analyse.ts';
import type { Point } from '../../shared/geometry/point.ts';
import { stage } from '../../shared/scene/scene.ts';
import { onSheet } from '../../shared/scene/ground.ts';

const text = `drill "Handles" {
  age U13
  players 3
  area 20 x 20

  zone Box 6 x 4 at (10, 10)
  zone Round circle 2 at (4, 4)
  zone Slant polygon (14, 2) (18, 2) (16, 6)

  station Base at (2, 15) holds 2
  station Wall at (12, 16)
  cone Post at (17, 12)

  ball at Base

  sequence {
    Base passes to Wall while Base runs to (7, 18)
  }
}
`;
const scene = stage(analyse(text).drills[0]!, { theme: 'light', convention: 'solid pass' });

/** What is taken from a mark at a place in metres: the kind with its side or corner, the text it stands for, and where it is now. */
function taken(id: string, at: Point): string | null {
  const thing = [...scene.marks, ...scene.movers].find((each) => each.id === id);
  if (!thing) return `no ${id}`;
  const grip = gripOf(scene, thing, onSheet(scene.plan, at));
  if (!grip) return null;
  const { handle } = grip;
  const span = handle.kind === 'end' ? handle.action : handle.statement;
  const what = handle.kind === 'side' ? handle.side : handle.kind === 'corner' ? `corner ${handle.index}` : handle.kind;
  return `${what} of ${text.slice(span.from, span.to).trim()} at ${[grip.at.x, grip.at.y].map((value) => Math.round(value * 10) / 10).join(', ')}`;
}

test.each<[string, Point, string | null]>([
  ['person-Base', { x: 2, y: 15 }, 'thing of station Base at (2, 15) holds 2 at 2, 15'],
  ['name-Base', { x: 1, y: 16 }, 'thing of station Base at (2, 15) holds 2 at 2, 15'],
  ['person-next Base', { x: 1, y: 15 }, null],
  ['thing-Post', { x: 17, y: 12 }, 'thing of cone Post at (17, 12) at 17, 12'],
  ['zone-Box', { x: 13, y: 10.5 }, 'right of zone Box 6 x 4 at (10, 10) at 13, 10.5'],
  ['zone-Box', { x: 10, y: 12 }, 'top of zone Box 6 x 4 at (10, 10) at 10, 12'],
  ['zone-Box', { x: 10, y: 10 }, 'thing of zone Box 6 x 4 at (10, 10) at 10, 10'],
  ['zone-Round', { x: 2, y: 4 }, 'left of zone Round circle 2 at (4, 4) at 2, 4'],
  ['zone-Slant', { x: 16, y: 6 }, 'corner 2 of zone Slant polygon (14, 2) (18, 2) (16, 6) at 16, 6'],
  ['area', { x: 20, y: 9 }, 'right of area 20 x 20 at 20, 9'],
  ['area', { x: 0, y: 9 }, null],
  ['run-Base-1', { x: 7, y: 18 }, 'end of runs to (7, 18) at 7, 18'],
  ['run-Base-1', { x: 3, y: 16 }, null],
  ['pass-1', { x: 11, y: 15.9 }, null],
])('%s at %o', (id, at, expected) => {
  expect(taken(id, at)).toBe(expected);
});

test('the keyboard takes a run by its end', () => {
  const run = scene.marks.find(({ id }) => id === 'run-Base-1')!;
  expect(keyGrip(scene, run)?.handle.kind).toBe('end');
});
