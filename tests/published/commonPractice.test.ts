import { expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';

/**
 * Common practice, no source: a pattern through the middle has about 10 yards from either end to the middle pair and about
 * 5 yards between the two, 25 in all; one touch in the middle, two out wide; smaller for younger players. The pattern is
 * our own.
 */
function throughTheMiddle(age: string, scale: number): string {
  return `drill "Show, set and through" {
  age     ${age}
  players 6
  units   yd

  let size   = ${scale}
  let gap    = 10 * size
  let middle = 5 * size

  area 16 * size x 29 * size

  station Base   at 2 * size above area.bottom holds 2
  station Screen at gap above Base
  station Link   at middle above Screen
  station Top    at gap above Link holds 2

  ball at Base

  rule touches 1 for Screen
  rule touches 1 for Link
  rule touches 2

  sequence {
    Base waits 1.5 s while Screen shows to 2 * size below Screen
    Base passes to Screen while Link runs to 3 * size right of Link
    Screen sets to Base then runs to 3 * size left of Link then runs to 4 * size left of Top
    Base passes to Link
    Link passes to Screen while Base runs to Screen
    Screen sets to Top while Link runs to Link
    Top passes to Link while Top runs to Base via 3 * size right of Link
    Link passes to next Base, lofted
  }

  rotate Base -> Screen -> Link -> Top -> Base
}
`;
}

const codes = (text: string): string[] => analyse(text).problems.map((problem) => problem.code);

test('sound at U14 and at its usual size', () => {
  expect(codes(throughTheMiddle('U14', 1))).toEqual([]);
});

test('stretched to twice the size, U9 come late', () => {
  expect(codes(throughTheMiddle('U9', 2))).toContain('late-receiver');
});
