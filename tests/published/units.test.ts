import { expect, test } from 'vitest';
import { formatLength, metresIn, unitNamed, unitWords } from '../../shared/units.ts';

// International yard and pound agreement, 1 July 1959 (READ-2, encyclopaedia pages): exact.
test.each([
  { unit: 'yd', metres: 0.9144 },
  { unit: 'ft', metres: 0.3048 },
] as const)('one $unit is exactly $metres m', ({ unit, metres }) => {
  expect(metresIn(unit)).toBe(metres);
});

test.each([
  { word: 'yards', expected: { kind: 'length', unit: 'yd', factor: 0.9144 } },
  { word: 'feet', expected: { kind: 'length', unit: 'ft', factor: 0.3048 } },
  { word: 'metres', expected: { kind: 'length', unit: 'm', factor: 1 } },
  { word: 'min', expected: { kind: 'time', unit: 'min', factor: 60 } },
  { word: 'km/h', expected: { kind: 'speed', unit: 'km/h', factor: 1 / 3.6 } },
  { word: 'yrd', expected: null },
])('$word as a unit', ({ word, expected }) => {
  expect(unitNamed(word)).toEqual(expected);
});

test('every word that is offered is a unit of its kind', () => {
  for (const kind of ['length', 'time', 'speed'] as const) {
    expect(unitWords(kind).map((word) => unitNamed(word)?.kind)).toEqual(unitWords(kind).map(() => kind));
  }
});

test.each([
  { metres: 7.3152, unit: 'yd', decimals: 1, expected: '8 yd' },
  { metres: 7.5, unit: 'm', decimals: 2, expected: '7.5 m' },
  { metres: 10, unit: 'm', decimals: 0, expected: '10 m' },
  { metres: -0.001, unit: 'm', decimals: 1, expected: '0 m' },
  { metres: 2.4384, unit: 'ft', decimals: 2, expected: '8 ft' },
  { metres: 1.234, unit: 'cm', decimals: 0, expected: '123 cm' },
] as const)('$metres m written as $expected', ({ metres, unit, decimals, expected }) => {
  expect(formatLength(metres, unit, decimals)).toBe(expected);
});
