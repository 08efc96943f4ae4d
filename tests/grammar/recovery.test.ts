import { expect, test } from 'vitest';
import { parse } from '../../grammar/parse.ts';

/** A text with mistakes, how many faults it has, and what is read all the same. */
const rows: readonly (readonly [name: string, text: string, faults: number, outline: string])[] = [
  ['a line that cannot be read', 'drill "d" {\n  area ?\n  ball at A\n}', 1, 'drill(ball)'],
  ['a misspelt first word', 'drill "d" {\n  statoin A at B\n}', 1, 'drill(station)'],
  ['a misspelt verb', 'drill "d" {\n  sequence {\n    A passs to B\n  }\n}', 1, 'drill(sequence(beat))'],
  ['a word left out', 'drill "d" {\n  pole Near 6 above A\n}', 1, 'drill(pole)'],
  ['a header without quotes', 'drill Kite {\n  area 1 x 2\n}', 1, 'drill(area)'],
  ['a header without a name', 'drill {\n  area 1 x 2\n}', 1, 'drill(area)'],
  ['a header with an open text', 'drill "Kite {\n  area 1 x 2\n}', 1, 'drill(area)'],
  ['a misspelt header', 'dril "Kite" {\n  area 1 x 2\n}', 1, 'drill(area)'],
  ['a header without its brace', 'drill "d"\n  area 1 x 2\n  sequence {\n    A turns\n  }\n}', 1, 'drill(area sequence(beat))'],
  ['a block that is not closed', 'drill "d" {\n  sequence {\n    A turns\n  ball at A\n}\ndrill "e" {\n}', 1, 'drill(sequence(beat) ball) drill()'],
  ['two that are not closed', 'drill "d" {\n  sequence {\n    A turns', 2, 'drill(sequence(beat))'],
  ['neither brace of a block', 'drill "d" {\n  sequence\n    A turns\n  ball at A\n}', 1, 'drill(sequence(beat) ball)'],
  ['a drill after one that is not closed', 'drill "d" {\n  area 1 x 2\n\ndrill "e" {\n}', 1, 'drill(area) drill()'],
  ['a brace too many', 'drill "d" {\n}\n}\ndrill "e" {\n}', 1, 'drill() drill()'],
  ['beats outside a sequence', 'drill "d" {\n  A turns\n  B turns\n  ball at A\n  C turns\n}', 2, 'drill(ball)'],
  ['a header of a change without its name', 'drill "d" {\n  progress task {\n    ball at A\n  }\n}', 1, 'drill(progress(ball))'],
  ['a statement with a block that takes none', 'drill "d" {\n  area 1 x 2 {\n    ball at A\n  }\n  ball at B\n}', 1, 'drill(area ball)'],
  ['a block of nothing', 'drill "d" {\n  {\n    ball at A\n  }\n}', 1, 'drill()'],
  ['a line that goes on after a blank line', 'drill "d" {\n  sequence {\n    A turns\n\n    while B turns\n  }\n}', 1, 'drill(sequence(beat))'],
];

test.each(rows)('%s', (_, text, faults, expected) => {
  const result = parse(text);
  expect(result.faults).toHaveLength(faults);
  expect(outline(result.file.items)).toBe(expected);
});

interface Nested {
  readonly kind: string;
  readonly body?: { readonly lines: readonly Nested[] };
}

function outline(statements: readonly Nested[]): string {
  return statements.map(({ kind, body }) => (body === undefined ? kind : `${kind}(${outline(body.lines)})`)).join(' ');
}
