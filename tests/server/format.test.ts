import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { broken, folder, halfturn, sound } from './halfturn.ts';

const loose = sound.replace('area 12 x 12', 'area   12x12').replace('    Base passes', '  Base   passes');
const left = 'a.drill is left as it is, for line 7 cannot be read: `ball` cannot stand here. After `ball` comes `at`.';
const stdin = left.replace('a.drill', 'Standard input');
const differs = 'a.drill is not in its printed form; halfturn format a.drill writes it.\n';

test.each<[what: string, words: string[], text: string, status: number, out: string, err: string, after: string]>([
  ['writes the printed form', ['a.drill'], loose, 0, 'a.drill formatted.\n', '', sound],
  ['leaves a printed file alone', ['a.drill'], sound, 0, '', '', sound],
  ['leaves what cannot be read', ['a.drill'], broken, 1, '', `halfturn: ${left}\n`, broken],
  ['verifies a printed file', ['--verify', 'a.drill'], sound, 0, '1 file in printed form.\n', '', sound],
  ['verifies and changes nothing', ['--verify', 'a.drill'], loose, 1, differs, '', loose],
  ['verifies what cannot be read', ['--verify', 'a.drill'], broken, 1, '', `halfturn: ${left}\n`, broken],
  ['takes a folder', ['.'], loose, 0, 'a.drill formatted.\n', '', sound],
  ['filters', ['-'], loose, 0, sound, '', loose],
  ['filters nothing that cannot be read', ['-'], broken, 1, '', `halfturn: ${stdin}\n`, broken],
])('%s', async (_, words, text, status, out, err, after) => {
  const cwd = folder({ 'a.drill': text });
  expect(await halfturn(cwd, ['format', ...words], { input: text })).toEqual({ status, out, err });
  expect(readFileSync(join(cwd, 'a.drill'), 'utf8')).toBe(after);
});
