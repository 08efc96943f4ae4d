import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from '../../grammar/parse.ts';
import { print, printExpression, printPlace, printQuote } from '../../grammar/printer.ts';
import type { Expression, Place } from '../../grammar/tree.ts';

const read = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8');

/** Two spaces before a comment at the end of a line. */
const closeUp = (text: string): string => text.replaceAll(/(?<=\S) {2,}\/\//g, '  //');

describe('what is printed already stays as it is', () => {
  test.each([['the kite', closeUp(read('../support/kite.drill'))], ['the games', read('games.drill')]])('%s', (_, text) => {
    expect(print(parse(text).file)).toBe(text);
  });
});

/** Lines of a drill as written, and as printed. */
const layout: readonly (readonly [name: string, written: string, printed: string])[] = [
  ['the header in columns', 'age U13\nplayers   7\ntempo steady', 'age      U13\nplayers  7\ntempo    steady'],
  ['a header line on its own', 'note "a"', 'note "a"'],
  ['furniture in columns by kind', 'pole Near at A\npole Far at A\ncone at A', 'pole Near at A\npole Far  at A\ncone at A'],
  ['values in columns', 'let wide = 7\nlet w = 1', 'let wide = 7\nlet w    = 1'],
  ['no columns across a blank line', 'let wide = 7\n\nlet w = 1', 'let wide = 7\n\nlet w = 1'],
  ['no columns across a comment', 'let wide = 7\n// narrow\nlet w = 1', 'let wide = 7\n// narrow\nlet w = 1'],
  ['one blank line at most', '\n\nball at A\n\n\n\nball at B\n\n', 'ball at A\n\nball at B'],
  ['tabs, form feeds and other line ends', '\tball\tat A\f\r\n\r\nball at B\rball at C', 'ball at A\n\nball at B\nball at C'],
  ['comments', '//above\nball at A//beside\n//', '// above\nball at A  // beside\n//'],
  ['comments of a block', 'sequence { // beside\n// end\n} // after', 'sequence {  // beside\n  // end\n}\n// after'],
  ['a comment after a brace', 'sequence {\nA turns\n} // after\n\nball at A', 'sequence {  // after\n  A turns\n}\n\nball at A'],
  ['comments inside a statement', 'sequence {\nA turns // one\n// two\nwhile B turns // three\n}', 'sequence {\n  // one\n  // two\n  A turns while B turns  // three\n}'],
  ['a block on one line', 'regress space "x" { let wide = 5 }', 'regress space "x" {\n  let wide = 5\n}'],
  ['a brace on the next line', 'sequence\n{\nA turns\n}', 'sequence {\n  A turns\n}'],
  ['an empty block', 'sequence { }', 'sequence {\n}'],
  ['numbers', 'let a = .5 + 1.50 - 007', 'let a = 0.5 + 1.5 - 7'],
  ['very large and very small numbers', 'let a = 1234567890123456789012 / 0.0000001', 'let a = 1234567890123456800000/0.0000001'],
  ['units', 'let a = 1 yards + 2metres - 3 feet / 4 seconds', 'let a = 1 yd + 2 m - 3 ft / 4 s'],
  ['unknown units', 'let a = 1 yrds', 'let a = 1 yrds'],
  ['values', 'let a=-( b+1 )*2/area.width', 'let a = -(b + 1) * 2 / area.width'],
  ['fractions', 'ball at 1 / 3 from A to B', 'ball at 1/3 from A to B'],
  ['signs', 'area 18×24\nrotate A→B→A', 'area 18 x 24\nrotate A -> B -> A'],
  ['texts', 'note “a”\nnote «say "go"»\nnote ‘don’t’', 'note  "a"\nnote  «say "go"»\nnote  "don’t"'],
  ['texts that need no quotes', 'tags "a", "b c"', 'tags a, "b c"'],
  ['what may stand in any order', 'station A at B of Reds holds 2', 'station A at B holds 2 of Reds'],
  ['corners that begin with a minus', 'zone A polygon B, -1 above C, D', 'zone A polygon B, -1 above C D'],
];

test.each(layout)('%s', (_, written, printed) => {
  const { file, faults } = parse(`drill "d" {\n${written}\n}`);
  expect(faults).toEqual([]);
  const lines = print(file).split('\n');
  const indented = printed.split('\n').map((line) => (line === '' ? '' : `  ${line}`)).join('\n');
  expect(lines.join('\n')).toBe(`drill "d" {\n${indented}\n}\n`);
});

const beats: readonly (readonly [name: string, written: string, printed: string])[] = [
  ['modifiers', 'A passes to B, first time, at run lofted in 1 touches', 'A passes to B first time at run, lofted, in 1 touch'],
  ['who moves at once', 'A turns, while B turns while C turns,\nD turns', 'A turns while B turns, C turns, D turns'],
  [
    'a long beat',
    'Screen passes to 3 left of Far, in 2 touches while Base follows, Left runs to 2 right of Far then shows to 1 below Near',
    `Screen passes to 3 left of Far, in 2 touches
  while Base follows,
  Left runs to 2 right of Far then shows to 1 below Near`,
  ],
  [
    'a very long beat',
    `Screen passes to 3 left of Far then runs to 2 above area.bottomLeft via 1 above Near then shows to 1 below Near then follows
     while Screen passes to 3 left of Far then runs to 2 above area.bottomLeft via 1 above Near then shows to 1 below Near, A turns`,
    `Screen passes to 3 left of Far
  then runs to 2 above area.bottomLeft via 1 above Near
  then shows to 1 below Near
  then follows
  while Screen passes to 3 left of Far
    then runs to 2 above area.bottomLeft via 1 above Near
    then shows to 1 below Near,
  A turns`,
  ],
];

test.each(beats)('%s', (_, written, printed) => {
  const { file, faults } = parse(`drill "d" {\nsequence {\n${written}\n}\n}`);
  expect(faults).toEqual([]);
  const indented = printed.split('\n').map((line) => `    ${line}`).join('\n');
  expect(print(file)).toBe(`drill "d" {\n  sequence {\n${indented}\n  }\n}\n`);
});

describe('a file', () => {
  test.each([
    ['with nothing in it', '', ''],
    ['with a byte order mark and comments only', '\ufeff\n\n// a\n\n// b', '// a\n// b\n'],
    ['with comments at its end', 'let a = 1\n// the end', 'let a = 1\n\n// the end\n'],
  ])('%s', (_, written, printed) => {
    expect(print(parse(written).file)).toBe(printed);
  });
});

describe('parts made by an edit', () => {
  const span = { from: 0, to: 0 };
  const number = (value: number): Expression => ({ kind: 'number', span, value, unit: null });
  const near: Place = { kind: 'name', span, name: { ...span, text: 'Near' }, next: false };

  test('values', () => {
    expect([0, -3, 0.1 + 0.2, 1e-7, -2.5e-9, 1e21, 123456.789].map((value) => printExpression(number(value)))).toEqual(
      ['0', '-3', '0.30000000000000004', '0.0000001', '-0.0000000025', '1000000000000000000000', '123456.789'],
    );
  });
  test('places', () => {
    expect(printPlace({ kind: 'at', span, x: number(6.5), y: number(-1) })).toBe('(6.5, -1)');
    expect(printPlace({ kind: 'beside', span, distance: number(2), side: 'left of', of: near })).toBe('2 left of Near');
  });
  test('texts in the quotation marks that can hold them', () => {
    expect(['a', 'say "go"', '“a” "b"', '«"»'].map((text) => printQuote({ text }))).toEqual(['"a"', '«say "go"»', '«“a” "b"»', '‘«"»’']);
  });
});
