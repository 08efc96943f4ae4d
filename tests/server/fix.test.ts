import { expect, test } from 'vitest';
import { fixAll } from '../../server/fix.ts';
import type { Problem } from '../../shared/problem.ts';

/** Finds every match of the rules and offers to put the replacement in its place; null offers nothing. */
function finder(...rules: readonly (readonly [code: string, pattern: RegExp, replacement: string | null])[]): (text: string) => readonly Problem[] {
  return (text) => rules.flatMap(([code, pattern, replacement]) => [...text.matchAll(pattern)].map(({ index, 0: found }) => {
    const span = { from: index, to: index + found.length };
    const fixes = replacement === null ? [] : [{ title: `${found} to ${replacement}`, edits: [{ span, text: replacement }] }];
    return { code, severity: 'error', message: found, help: null, span, related: [], fixes };
  }));
}

test.each([
  ['nothing to fix', 'abc', finder(['x', /x/g, 'y']), 'abc', 0, 0],
  ['no fix on offer', 'x', finder(['x', /x/g, null]), 'x', 0, 1],
  ['all at once', 'x.x.x', finder(['x', /x/g, 'longer']), 'longer.longer.longer', 3, 0],
  ['neighbours one after the other', 'xxxx', finder(['x', /x/g, 'y']), 'yyyy', 4, 0],
  ['what a fix uncovers', 'x', finder(['x', /x/g, 'yy'], ['y', /yy/g, 'z']), 'z', 2, 0],
  ['a fix that only moves the fault is taken back', 'x', finder(['x', /x/g, ' x']), 'x', 0, 1],
  ['a fix that makes more faults is taken back', 'x', finder(['x', /x/g, 'x x']), 'x', 0, 1],
  ['two that fix and break each other in turn end', 'x', finder(['x', /x/g, 'y'], ['y', /y/g, 'x']), 'x', 10, 1],
])('%s', (_, text, find, fixed, made, left) => {
  const result = fixAll(text, find);
  expect([result.text, result.made.length, result.problems.length]).toEqual([fixed, made, left]);
});
