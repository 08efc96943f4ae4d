import { describe, expect, test } from 'vitest';
import { anchors as inOrder, byAge, constants, sprint, type Constant } from '../../shared/physics/constants.ts';

test.each(Object.entries<Constant>(constants))('%s says what it is and where it comes from', (_, { unit, source, note }) => {
  expect(unit).not.toBe('');
  expect(source).not.toBe('');
  expect(note).toMatch(/^[A-Z].*\.$/);
});

describe('values by age', () => {
  const anchors = { 10: 5, 14: 7 };
  test.each([
    { age: 8, expected: 5 },
    { age: 10, expected: 5 },
    { age: 13, expected: 6.5 },
    { age: 14, expected: 7 },
    { age: 30, expected: 7 },
  ])('at $age', ({ age, expected }) => {
    expect(byAge(inOrder(anchors), age)).toBe(expected);
  });
});

test('players get faster with age', () => {
  const speeds = [5, 6, 8, 10, 12, 14, 16, 18].map((age) => sprint(age).topSpeed);
  expect(speeds).toEqual(speeds.toSorted((a, b) => a - b));
});
