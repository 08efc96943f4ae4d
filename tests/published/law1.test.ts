import { expect, test } from 'vitest';
import { law1, type LawLine } from '../../shared/space/law1.ts';
import { metresIn } from '../../shared/units.ts';

const lines: readonly LawLine[] = law1.lines;

// Laws of the Game 2024/25, The IFAB, Law 1 (READ): name, metres, yards or feet as printed.
test.each([
  ['touchline, least', 90, 100, 'yd'],
  ['touchline, most', 120, 130, 'yd'],
  ['goal line, least', 45, 50, 'yd'],
  ['goal line, most', 90, 100, 'yd'],
  ['international touchline, least', 100, 110, 'yd'],
  ['international touchline, most', 110, 120, 'yd'],
  ['international goal line, least', 64, 70, 'yd'],
  ['international goal line, most', 75, 80, 'yd'],
  ['centre circle, radius', 9.15, 10, 'yd'],
  ['goal area, from each post and deep', 5.5, 6, 'yd'],
  ['penalty area, from each post and deep', 16.5, 18, 'yd'],
  ['penalty mark, from the goal line', 11, 12, 'yd'],
  ['penalty arc, radius', 9.15, 10, 'yd'],
  ['corner arc, radius', 1, 1, 'yd'],
  ['flagpost, least height', 1.5, 5, 'ft'],
  ['goal, between the posts', 7.32, 8, 'yd'],
  ['goal, below the crossbar', 2.44, 8, 'ft'],
] as const)('%s: %d m, printed %d %s', (name, metres, value, unit) => {
  expect(lines.find((line) => line.name === name)).toMatchObject({ metres, printed: { value, unit } });
});

// The two columns are parallel roundings: no line converts exactly, and only these few to a tenth of a percent (COMPUTED).
test('converting one column does not give the other', () => {
  const off = ({ metres, printed }: LawLine) => Math.abs((printed.value * metresIn(printed.unit)) / metres - 1);
  const near = lines.filter((line) => off(line) < 0.001);
  expect(lines.filter((line) => off(line) < 1e-9)).toEqual([]);
  expect(near.map(({ printed }) => `${printed.value} ${printed.unit}`)).toEqual(['70 yd', '10 yd', '10 yd', '8 yd', '8 ft']);
});

// COMPUTED from the printed yards times 0.9144.
test.each([
  { name: 'touchline, least', off: -1.57 },
  { name: 'international goal line, most', off: 2.53 },
  { name: 'corner arc, radius', off: 9.36 },
])('$name is off by $off % when converted', ({ name, off }) => {
  const line = lines.find((each) => each.name === name) as LawLine;
  expect((line.metres / (line.printed.value * metresIn(line.printed.unit)) - 1) * 100).toBeCloseTo(off, 1);
});
