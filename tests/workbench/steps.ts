/** Steps of a run: each passes or fails for itself and leaves a picture. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { pictures } from './workbench.ts';

let passed = 0;
let failed = 0;

export type Step = (name: string, act: () => Promise<void>) => Promise<void>;

export function stepsOn(run: string, page: Page): Step {
  let number = 0;
  mkdirSync(pictures, { recursive: true });
  return async (name, act) => {
    number += 1;
    const began = performance.now();
    const good = await act().then(() => true, (error: unknown) => {
      console.log(error instanceof Error ? error.message.split('\n').slice(0, 8).join('\n') : error);
      return false;
    });
    if (good) passed += 1;
    else failed += 1;
    console.log(`${good ? 'ok    ' : 'FAILED'}  ${run}: ${name} (${((performance.now() - began) / 1000).toFixed(1)} s)`);
    await page.screenshot({ path: join(pictures, `${run}-${`${number}`.padStart(2, '0')}-${name.replaceAll(/[^a-z]+/gi, '-')}.png`) });
  };
}

export function failure(words: string): void {
  failed += 1;
  console.log(`FAILED  ${words}`);
}

/** Prints the sum and sets the exit status. */
export function finish(): void {
  console.log(`${passed} passed, ${failed} failed`);
  process.exitCode = failed === 0 ? 0 : 1;
}

export function equal(found: unknown, expected: unknown): void {
  if (JSON.stringify(found) !== JSON.stringify(expected)) throw new Error(`found ${JSON.stringify(found)}, expected ${JSON.stringify(expected)}`);
}

export function matches(found: string, expected: RegExp): void {
  if (!expected.test(found)) throw new Error(`found ${JSON.stringify(found)}, expected ${expected}`);
}
