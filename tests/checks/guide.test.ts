import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { generated } from '../../shared/generated.ts';

test.each(Object.entries(generated()))('shared/generated/%s is current', (name, text) => {
  expect(readFileSync(new URL(`../../shared/generated/${name}`, import.meta.url), 'utf8')).toBe(text);
});
