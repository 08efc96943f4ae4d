import { expect, test } from 'vitest';
import { checks } from '../../shared/checks/index.ts';
import { halfturn } from './halfturn.ts';

test('without a code it lists them all under their groups', async () => {
  const { status, out } = await halfturn('/', ['explain']);
  expect(status).toBe(0);
  expect(out.match(/^ {2}[a-z-]+/gm)?.map((each) => each.trim()).sort()).toEqual(checks.map((check) => check.code).sort());
});

test.each(checks.map((check) => [check.code, check] as const))('%s', async (code, check) => {
  const { status, out, err } = await halfturn('/', ['explain', code]);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  for (const part of [check.title, check.why, check.source ?? '', check.bad[0]!.split('\n')[0]!, check.good[0]!.split('\n')[0]!]) expect(out).toContain(part);
});
