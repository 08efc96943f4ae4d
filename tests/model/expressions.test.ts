import { expect, test } from 'vitest';
import { drillWith, read } from './read.ts';

test.each<[expression: string, value: number]>([
  ['7', 7],
  ['7 m', 7],
  ['10 yd', 9.144], // a yard is exactly 0.9144 m: international yard and pound agreement, 1959
  ['6 ft', 1.8288],
  ['250 cm', 2.5],
  ['2 min', 120],
  ['36 km/h', 10],
  ['2 + 3 * 4', 14],
  ['(2 + 3) * 4', 20],
  ['10 - 4 - 3', 3],
  ['24 / 4 / 2', 3],
  ['-3 + 5', 2],
  ['-(2 + 1)', -3],
  ['6 m + 1', 7],
  ['1 + 6 m', 7],
  ['6 m / 3 m', 2],
  ['6 m / 2 s', 3],
  ['3 m/s * 4 s', 12],
  ['4 m * 3 m / 2 m', 6],
  ['area.width', 20],
  ['area.length / 2', 15],
  ['Box.width + Box.length', 10],
  ['Ring.width', 6],
  ['half * 2', 20],
])('%s is %d', (expression, value) => {
  const { drill, messages } = drillWith(
    `let value = ${expression}\nlet half = area.width / 2\nzone Box 4 x 6 at area.centre\nzone Ring circle 3 at area.centre\ncone at (half, 1)`,
  );
  expect(messages).toEqual(['Nothing uses `value`.']);
  expect(drill.lets.find((each) => each.name === 'value')?.value).toBeCloseTo(value, 9);
});

test.each<[lines: string, width: number, length: number]>([
  ['area 18 x 24', 18, 24],
  ['units yd\narea 10 x 20', 9.144, 18.288],
  ['area 10 x 20 yd', 9.144, 18.288],
  ['area 10 m x 20 yd', 10, 18.288],
  ['units yd\nlet wide = 10\narea wide x 20', 9.144, 18.288],
  ['units yd\nlet wide = 10 m\narea wide x 20', 10, 18.288],
  ['units yd\nlet wide = 10 m + 1\narea wide x 20', 10.9144, 18.288],
])('%s', (lines, width, length) => {
  const { drills, problems } = read(`drill "Test" {\n${lines}\n}`);
  expect(problems).toEqual([]);
  expect(drills[0]!.area?.width).toBeCloseTo(width, 9);
  expect(drills[0]!.area?.length).toBeCloseTo(length, 9);
});
