import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { broken, folder, inProcess, misspelt, sound } from './halfturn.ts';

describe('exit status', () => {
  test.each<[words: string[], input: string, status: number]>([
    [['check', 'a.drill'], '', 0],
    [['check', 'in/*.drill'], '', 1],
    [['check', '-'], broken, 1],
    [['check', 'none.drill'], '', 2],
    [['format', '--verify', 'a.drill'], '', 0],
    [['nonsense'], '', 2],
    [['--help'], '', 0],
  ])('%j', (words, input, status) => {
    const told = inProcess(folder({ 'a.drill': sound, 'in/b.drill': misspelt }), words, { input });
    expect([told.status, told.err.includes('    at ')]).toEqual([status, false]);
  });
});

test('a picture comes whole, or nothing of it', () => {
  const cwd = folder({ 'a.drill': sound, 'out/a.svg': 'old' });
  expect(inProcess(cwd, ['draw', 'a.drill', '-o', 'out/a.svg'])).toEqual({ status: 0, out: '', err: '' });
  expect(readFileSync(join(cwd, 'out/a.svg'), 'utf8')).toMatch(/<\/svg>\n$/);
  expect(readdirSync(join(cwd, 'out'))).toEqual(['a.svg']);
});

test.each([{}, { NO_COLOR: '1' }])('nothing but text goes into a pipe: %j', (env) => {
  const told = inProcess(folder({ 'a.drill': misspelt }), ['check', 'a.drill'], { env });
  expect(told.out + told.err).not.toContain('\u001b');
});

test('much JSON arrives whole in a pipe', () => {
  const files = Object.fromEntries(Array.from({ length: 150 }, (_, index) => [`${index}.drill`, broken]));
  const told = inProcess(folder(files), ['check', '.', '--format', 'json']);
  expect(told.out.length).toBeGreaterThan(65_536);
  expect(JSON.parse(told.out).files).toHaveLength(150);
});
