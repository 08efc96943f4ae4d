import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { parse } from '../../grammar/parse.ts';
import { print } from '../../grammar/printer.ts';
import { check } from '../../shared/library.ts';
import { folder } from '../server/halfturn.ts';

/** Milliseconds: for a busy machine. */
const patience = 240_000;
const root = fileURLToPath(new URL('../../', import.meta.url));

test('the example makes a thousand drills that differ in more than their name, without a problem and in printed form', () => {
  const out = folder({});
  const { status, stderr } = spawnSync(process.execPath, [join(root, 'server/examples/thousand.ts'), out], { encoding: 'utf8' });
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  const texts = readdirSync(out).map((name) => readFileSync(join(out, name), 'utf8'));
  expect(new Set(texts.map((text) => text.slice(text.indexOf('\n')))).size).toBe(1000);
  for (const text of texts) expect(print(parse(text).file)).toBe(text);
  const problems = texts.filter((_, index) => index % 20 === 0).flatMap((text) => check(text)).filter(({ severity }) => severity === 'error' || severity === 'warning');
  expect(problems).toEqual([]);
}, patience);
