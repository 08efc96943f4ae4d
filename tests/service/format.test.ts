import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from '../../grammar/parse.ts';
import { print } from '../../grammar/printer.ts';
import { applyEdits } from '../../shared/checks/edits.ts';
import { changes } from '../../shared/service/difference.ts';
import { format, formatTyped } from '../../shared/service/format.ts';
import { cursor, openIn, square } from './texts.ts';

const untidy = `drill "A" {
age   U13   // young
  area 20 x 20


  // Here.
  station   Base at ( 4,4 )
  sequence {
  Base turns
  }
}
`;

test('the printed form, by changing no more than what differs', () => {
  const open = openIn({ 'a.drill': untidy }, 'a.drill');
  const edits = format(open);
  expect(applyEdits(untidy, edits)).toBe(print(parse(untidy).file));
  for (const kept of ['// young', '// Here.', 'area 20 x 20']) {
    const at = untidy.indexOf(kept);
    expect(edits.some(({ span }) => span.from < at + kept.length && at < span.to)).toBe(false);
  }
});

test('a text in its printed form stays', () => {
  const printed = print(parse(square()).file);
  expect(format(openIn({ 'a.drill': printed }, 'a.drill'))).toEqual([]);
});

test('lines end as they did', () => {
  const text = untidy.replaceAll('\n', '\r\n');
  const formatted = applyEdits(text, format(openIn({ 'a.drill': text }, 'a.drill')));
  expect(formatted).toBe(print(parse(untidy).file).replaceAll('\n', '\r\n'));
});

test('only what was asked for', () => {
  const open = openIn({ 'a.drill': untidy }, 'a.drill');
  const at = untidy.indexOf('station');
  const formatted = applyEdits(untidy, format(open, { from: at, to: at + 5 }));
  expect(formatted).toContain('station Base at (4, 4)');
  expect(formatted).toContain('\nage   U13');
});

test('what cannot be read is left as it is', () => {
  expect(format(openIn({ 'a.drill': `${untidy}drill {\n` }, 'a.drill'))).toEqual([]);
});

test.each<[typed: '\n' | '}', text: string, after: string]>([
  ['\n', 'drill "A" {\n  area   20 x 20\n  |\n}\n', 'drill "A" {\n  area 20 x 20\n  \n}\n'],
  ['\n', 'drill "A" {\n  age   U13\n  area   20 x 20\n|\n}\n', 'drill "A" {\n  age   U13\n  area 20 x 20\n\n}\n'],
  ['}', 'drill "A" {\n  sequence {\n  coach   turns\n  }|\n    note   "a"\n}\n', 'drill "A" {\n  sequence {\n    coach turns\n  }\n    note   "a"\n}\n'],
])('after %j: %j', (typed, text, after) => {
  const { open, offset } = cursor(text);
  expect(applyEdits(open.text, formatTyped(open, offset, typed))).toBe(after);
});

test('the changes between two texts make the one of the other', () => {
  const line = fc.constantFrom('a\n', 'b\n', 'ab\n', '\n', 'a b\r\n', 'c');
  const text = fc.array(line, { maxLength: 12 }).map((lines) => lines.join(''));
  fc.assert(fc.property(text, text, (before, after) => {
    const edits = changes(before, after);
    expect(applyEdits(before, edits)).toBe(after);
    edits.slice(1).forEach((edit, index) => expect(edit.span.from).toBeGreaterThan(edits[index]!.span.to));
  }));
});
