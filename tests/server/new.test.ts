import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import { folder, halfturn, sound } from './halfturn.ts';

test.each([
  ['wing', 'wing.drill', 'wing'],
  ['wing.drill', 'wing.drill', 'wing'],
  ['in/Flügel 前', 'in/Flügel 前.drill', 'Flügel 前'],
  ['say "go"', 'say "go".drill', 'say ’go’'],
])('new %s', async (name, file, title) => {
  const cwd = folder({ 'in/other.drill': sound });
  expect(await halfturn(cwd, ['new', name])).toMatchObject({ status: 0, err: '' });
  const analysis = analyse(readFileSync(join(cwd, file), 'utf8'));
  expect([analysis.drills.map(({ drill }) => drill.name), analysis.problems]).toEqual([[title], []]);
});

test('the starter is in its printed form', async () => {
  const cwd = folder({});
  await halfturn(cwd, ['new', 'wing']);
  expect(await halfturn(cwd, ['format', '--verify', 'wing.drill'])).toMatchObject({ status: 0 });
});

test('what is there stays as it is', async () => {
  const cwd = folder({ 'two.drill': sound });
  expect(await halfturn(cwd, ['new', 'two'])).toMatchObject({ status: 2 });
  expect(readFileSync(join(cwd, 'two.drill'), 'utf8')).toBe(sound);
});
