import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { numbersText } from '../../client/numbers.ts';
import { analyse } from '../../shared/analyse.ts';

test('is a readable document with the numbers of the drill', () => {
  const { measures } = analyse(readFileSync(new URL('../../shared/examples/two-balls.drill', import.meta.url), 'utf8')).drills[0]!;
  const lines = numbersText(measures).split('\n');
  expect(lines[0]).toBe('# Two balls round the square');
  expect(lines).toContain('- **Players**: 8');
  expect(lines).toContain('## Passes');
  // A table is as wide in every line, so that it reads as plain text too.
  const table = lines.slice(lines.indexOf('## Passes') + 2, lines.indexOf('## What one repetition asks of everyone') - 1);
  expect(table.length).toBe(2 + measures.passes.length);
  expect(new Set(table.map((line) => line.length)).size).toBe(1);
});

test('says that a rotation is open', () => {
  const { measures } = analyse(readFileSync(new URL('../../shared/examples/in-a-hurry.drill', import.meta.url), 'utf8')).drills[0]!;
  expect(numbersText(measures)).toContain('- **Rotation**: open');
});
