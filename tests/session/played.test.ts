import { expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import { folder } from '../support/folder.ts';
import { analysed, parts } from './evening.ts';

const far = 'let side = 8\ndrill "Far" {\n  area side x 9\n  progress space "Smaller" {\n    let side = 6\n  }\n}\n';
const near = 'drill "Near" {\n  area 10 x 10\n  regress space "Larger" {\n    area 14 x 14\n  }\n}\n';

test('a part plays a drill, or its progression, of this file or of another', () => {
  const { sessions, problems } = analysed(
    'part "A" 9 min of "Near"\npart "B" 9 min of "Near" with "Larger"\npart "C" 9 min of "Far"\npart "D" 9 min of "Far" with "Smaller"\npart "E" 9 min',
    `import "far.drill"\nlet side = 3\n${near}`, { 'far.drill': far },
  );
  expect(problems.map(({ code }) => code)).toEqual([]);
  expect(parts(sessions[0]!).map(({ part, drill, file }) => [part.name, drill?.drill.area?.width ?? null, file])).toEqual([
    ['A', 10, null], ['B', 14, null], ['C', 8, 'far.drill'], ['D', 6, 'far.drill'], ['E', null, null],
  ]);
});

test('problems of a drill in another file are not shown in this one', () => {
  const faulty = 'drill "Far" {\n  area 10 x 10\n  station Away at (40, 40)\n  let unused = 1\n}\n';
  const text = `import "far.drill"\n${'// A long way down.\n'.repeat(20)}session "S" {\n  part "A" 9 min of "Far"\n}\n`;
  expect(analyse(faulty).problems.map(({ code }) => code)).toEqual(['outside-area', 'unused-name']);
  expect(analyse(text, folder({ 'far.drill': faulty })).problems).toEqual([]);
});

test('a file without sessions has none, and a text too long is not read', () => {
  expect([analyse(near).sessions, analyse(' '.repeat(1_000_001)).sessions]).toEqual([[], []]);
});
