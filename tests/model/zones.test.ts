import { expect, test } from 'vitest';
import type { Zone } from '../../shared/model/drill.ts';
import { drillWith } from './read.ts';

/** As left, bottom, right, top; or as centre and radius. */
function measured({ shape }: Zone): readonly number[] {
  if (shape.kind === 'circle') return [shape.centre.x, shape.centre.y, shape.radius];
  const xs = shape.points.map(({ x }) => x);
  const ys = shape.points.map(({ y }) => y);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

test.each<[lines: string, zones: Record<string, readonly number[]>]>([
  ['zone Box 4 x 6 at (10, 10)', { Box: [8, 7, 12, 13] }],
  ['zone Box 4 x 6 in area.topRight', { Box: [16, 24, 20, 30] }],
  ['zone Box 4 x 6 in area.bottom', { Box: [8, 0, 12, 6] }],
  ['zone Box 4 x 6 in area.centre', { Box: [8, 12, 12, 18] }],
  ['zone In 2 x 2 in Out.topLeft\nzone Out 10 x 10 at area.centre', { In: [5, 18, 7, 20], Out: [5, 10, 15, 20] }],
  ['zone Box from (6, 9) to (2, 3)', { Box: [2, 3, 6, 9] }],
  ['zone Ring circle 3 at area.centre', { Ring: [10, 15, 3] }],
  ['zone Tri polygon (0, 0) (6, 0) (0, 4)', { Tri: [0, 0, 6, 4] }],
  ['split area by length into Back 12, Mid 8, Front 10', { Back: [0, 0, 20, 12], Mid: [0, 12, 20, 20], Front: [0, 20, 20, 30] }],
  ['split area by width into L 5, R 15', { L: [0, 0, 5, 30], R: [5, 0, 20, 30] }],
  ['split Box by width into L 5, R 5\nzone Box 10 x 4 in area.top', { L: [5, 26, 10, 30], R: [10, 26, 15, 30], Box: [5, 26, 15, 30] }],
  [
    'zones Box 4 x 5 in corners of area',
    { BoxTopLeft: [0, 25, 4, 30], BoxTopRight: [16, 25, 20, 30], BoxBottomLeft: [0, 0, 4, 5], BoxBottomRight: [16, 0, 20, 5] },
  ],
])('%s', (lines, zones) => {
  const { drill, messages } = drillWith(lines);
  expect(messages).toEqual([]);
  expect(Object.fromEntries(drill.zones.map((zone) => [zone.name, measured(zone)]))).toEqual(zones);
});

test('zones of one statement share a group, and strips are marked as such', () => {
  const { drill } = drillWith('split area by length into Back 12, Front 18\nzones Box 2 x 2 in corners of Back\nzone Free 1 x 1 at (5, 15)');
  expect(drill.zones.map(({ name, group, split }) => [name, group, split])).toEqual([
    ['Back', 'area', true],
    ['Front', 'area', true],
    ['BoxTopLeft', 'Box', false],
    ['BoxTopRight', 'Box', false],
    ['BoxBottomLeft', 'Box', false],
    ['BoxBottomRight', 'Box', false],
    ['Free', null, false],
  ]);
});

test('a split keeps what it says beside the side it cuts', () => {
  const { drill, messages } = drillWith('split area by length into Back 12, Front 20');
  expect(messages).toEqual([]);
  expect(drill.splits.map(({ of, by, side, strips }) => [of, by, side, strips.map(({ name, size }) => [name, size])])).toEqual([
    ['area', 'length', 30, [['Back', 12], ['Front', 20]]],
  ]);
});
