import { expect, test } from 'vitest';
import { progressOn } from '../../server/progress.ts';

/** What is written to a terminal, or to something else, by one step at each of these milliseconds and a clearing at the end. */
function written(times: readonly number[], watched: boolean): string {
  let err = '';
  let now = 0;
  const io = { cwd: '/', out: () => {}, err: (text: string) => void (err += text), input: async () => new Uint8Array(), colour: false, watched, program: new URL(import.meta.url), onInterrupt: () => () => {} };
  const progress = progressOn(io, () => now);
  for (const [index, time] of times.entries()) {
    now = time;
    progress.step(index, times.length, 'files');
  }
  progress.clear();
  return err.replaceAll('\r\u001b[2K', '|');
}

test.each<[what: string, times: number[], watched: boolean, expected: string]>([
  ['short work is not shown', [0, 10, 499], true, ''],
  ['long work is', [0, 600, 1200], true, '|1 of 3 files|2 of 3 files|'],
  ['but no line is replaced before it could be read', [600, 650, 699, 700], true, '|0 of 4 files|3 of 4 files|'],
  ['and nothing at all where nobody watches', [0, 600, 1200], false, ''],
])('%s', (_, times, watched, expected) => {
  expect(written(times, watched)).toBe(expected);
});
