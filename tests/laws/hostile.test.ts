import { expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import { hostile } from '../support/hostile.ts';

test.each(hostile)('$what gets a clear answer', ({ text, code }) => {
  expect(analyse(text()).problems[0]?.code ?? null).toBe(code);
});
