import { expect, test } from 'vitest';
import { drillWith, read } from './read.ts';

/** The area is 20 by 30. */
test.each<[place: string, x: number, y: number]>([
  ['(3, 4)', 3, 4],
  ['(3 yd, 4)', 2.7432, 4],
  ['area.centre', 10, 15],
  ['area.top', 10, 30],
  ['area.bottom', 10, 0],
  ['area.left', 0, 15],
  ['area.right', 20, 15],
  ['area.topLeft', 0, 30],
  ['area.topRight', 20, 30],
  ['area.bottomLeft', 0, 0],
  ['area.bottomRight', 20, 0],
  ['Box.topRight', 6, 9],
  ['Box.left', 2, 6],
  ['Box', 4, 6],
  ['Ring.top', 12, 23],
  ['Slope.bottomRight', 14, 2],
  ['3 left of Near', 7, 6],
  ['3 right of Near', 13, 6],
  ['3 above Near', 10, 9],
  ['3 below Near', 10, 3],
  ['2 above 1 left of Near', 9, 8],
  ['Near + (1, -2)', 11, 4],
  ['between Near and area.top', 10, 18],
  ['1/3 from Near to area.top', 10, 14],
  ['2 * gap from (0, 0) to (10, 20)', 5, 10],
  ['mirror of (3, 4) across length', 17, 4],
  ['mirror of (3, 4) across width', 3, 26],
  ['coach', 1, 1],
  ['Home', 5, 5],
  ['next Home', 5, 5],
  ['Reds1', 8, 8],
  ['Last', 11, 11],
])('%s is (%d, %d)', (place, x, y) => {
  const { drill, messages } = drillWith(`cone Here at ${place}
    let gap = 0.25
    pole Near at (10, 6)
    zone Box 4 x 6 at (4, 6)
    zone Ring circle 3 at (12, 20)
    zone Slope polygon (10, 2) (14, 4) (12, 8)
    coach at (1, 1)
    station Home at (5, 5)
    team Reds of 1
    player Reds1 of Reds at (8, 8)
    mannequin Last at (11, 11)
    balls gap * 4 at Last`);
  expect(messages.filter((message) => !message.includes('Nothing uses'))).toEqual([]);
  const found = drill.furniture.find((thing) => thing.name === 'Here')?.at;
  expect(found?.x).toBeCloseTo(x, 9);
  expect(found?.y).toBeCloseTo(y, 9);
});

test('places may refer to things further down', () => {
  const { drill } = drillWith('station C at 1 above B\nstation A at (1, 1)\nstation B at 1 above A');
  expect(drill.stations.map(({ name, at }) => [name, at.x, at.y])).toEqual([['C', 1, 3], ['A', 1, 1], ['B', 1, 2]]);
});

test('numbers may be given names further down, wherever they are used', () => {
  const { drill, messages } = drillWith(
    'gate at (1, 1) width n\nladder at (1, 1) length n\ngoal n x n at (1, 1)\nstation A at (n, n) holds n\nzone Z n x n at (n, n)\nlet n = 3',
  );
  expect(messages).toEqual([]);
  expect(drill.furniture.map(({ width }) => width)).toEqual([3, 3, 3]);
  expect(drill.stations.map(({ at, holds }) => [at.x, holds])).toEqual([[3, 3]]);
});

test.each<[thing: string, facing: [number, number] | null]>([
  ['goal G 5 x 2 at area.top', [0, -1]],
  ['goal G 5 x 2 at area.bottom', [0, 1]],
  ['minigoal G at (2, 0)', [0, 1]],
  ['minigoal G at (0, 3)', [1, 0]],
  ['gate G at (16, 14) width 2', [-1, 0]],
  ['gate G at (11, 4) width 2', [0, 1]],
  ['gate G at (11, 4) width 2 facing left', [-1, 0]],
  ['gate G at (10, 4) width 2 facing (13, 8)', [0.6, 0.8]],
  ['gate G at (4, 4) width 2 facing H\ngate H at (8, 4) width 2 facing G', [1, 0]],
  ['hurdle G at (3, 3)', [0, 1]],
  ['cone G at (3, 3)', null],
])('%s faces %s', (thing, facing) => {
  const { drill } = drillWith(thing);
  const found = drill.furniture[0]!.facing;
  expect(found && [found.x, found.y]).toEqual(facing);
});

test.each<[thing: string, width: number | null, height: number | null]>([
  ['goal 5 x 2 at area.top', 5, 2],
  ['goal 16 x 7 ft at area.top', 16 * 0.3048, 7 * 0.3048],
  ['gate at area.top width 1.5', 1.5, null],
  ['minigoal at area.top', 1.2, 0.8],
  ['ladder at area.top', 4, null],
  ['ladder at area.top length 6', 6, null],
  ['pole at area.top', null, null],
])('%s is %s wide and %s high', (thing, width, height) => {
  const { drill } = drillWith(thing);
  expect(drill.furniture.map((each) => [each.width, each.height])).toEqual([[width, height]]);
});

test('a drill without an area says so once for each place measured from it', () => {
  const { problems } = read('drill "Test" {\nstation A at area.centre\n}');
  expect(problems.map(({ code, message }) => [code, message])).toEqual([
    ['unknown-name', 'The drill has no area yet, so nothing can be measured from it.'],
  ]);
});
