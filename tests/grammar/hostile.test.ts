import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse } from '../../grammar/parse.ts';
import { print } from '../../grammar/printer.ts';

const kite = readFileSync(new URL('../support/kite.drill', import.meta.url), 'utf8');
const inDrill = (line: string): string => `drill "d" {\n${line}\n}`;
const tooDeep = 'This is more than 64 deep: give a part of it a name with `let`, a pole or a station.';

/** Texts that would overflow a stack or take long if they were read carelessly, and the first fault in each. */
const texts: readonly (readonly [name: string, text: string, fault: string | null])[] = [
  ['10,000 brackets', inDrill(`let a = ${'('.repeat(10_000)}1${')'.repeat(10_000)}`), tooDeep],
  ['10,000 open brackets for a place', inDrill(`ball at ${'('.repeat(10_000)}`), tooDeep],
  ['10,000 minus signs', inDrill(`let a = ${'- '.repeat(10_000)}1`), tooDeep],
  ['10,000 places beside each other', inDrill(`ball at ${'2 left of '.repeat(10_000)}P`), tooDeep],
  ['10,000 places between places', inDrill(`ball at ${'between '.repeat(10_000)}P`), tooDeep],
  ['10,000 moves of a place', inDrill(`ball at P${' + (1, 1)'.repeat(10_000)}`), tooDeep],
  ['64 brackets', inDrill(`let a = ${'('.repeat(64)}1${')'.repeat(64)}`), null],
  ['60 moves of a place', inDrill(`ball at P${' + (1, 1)'.repeat(60)}`), null],
  ['10,000 open braces', '{'.repeat(10_000), 'This block is not closed: its `}` is missing.'],
  ['10,000 closing braces', '}'.repeat(10_000), '`}` closes nothing here: every block before it is closed already.'],
  [
    '10,000 blocks in blocks', inDrill(`${'progress task "x" {'.repeat(10_000)}${'}'.repeat(10_000)}`),
    'This is inside 64 blocks already: no drill needs so many braces.',
  ],
  ['a sum of 100,000 terms', inDrill(`let a = 1${' + 1'.repeat(100_000)}`), null],
  ['a zone with 10,000 corners', inDrill(`zone Z polygon${' (1, 2)'.repeat(10_000)}`), null],
  ['a long line with a fault at its end', inDrill(`zone Z polygon${' (1, 2)'.repeat(10_000)} )`), '`)` cannot stand here. Before it the line is complete.'],
  ['1,000 drills', kite.repeat(1_000), null],
  ['50,000 misspelt lines', inDrill('stattion A on (1, 2)\n'.repeat(50_000)), '`stattion`: did you mean `station`?'],
  ['100,000 open texts', '"\n'.repeat(100_000), 'This text has no closing quote.'],
  ['100,000 curly quotes', '“'.repeat(100_001), 'This text has no closing quote.'],
  ['100,000 comments', '// x\n'.repeat(100_000), null],
  ['2,000,000 blank lines', '\n'.repeat(2_000_000), null],
  ['a word of 2,000,000 letters', 'a'.repeat(2_000_000), `No line outside a drill begins with \`${'a'.repeat(39)}…\`. A file holds \`drill "…" {\` and \`session "…" {\`.`],
];

test.each(texts)('%s', (_, text, fault) => {
  const { file, faults } = parse(text);
  expect(faults[0]?.message ?? null).toBe(fault);
  expect(faults.length).toBeLessThanOrEqual(400);
  expect(parse(print(file)).faults.length).toBeLessThanOrEqual(faults.length);
});
