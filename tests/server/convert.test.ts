import { describe, expect, test } from 'vitest';
import { linesOf, lineText, positionAt } from '../../server/convert.ts';

describe('an offset, marked with |, as line and character from 0', () => {
  test.each([
    ['|', 0, 0],
    ['ab|', 0, 2],
    ['ab|\n', 0, 2],
    ['ab\n|', 1, 0],
    ['ab\r|\n', 0, 3],
    ['ab\r\n|cd', 1, 0],
    ['ab\rc|d', 1, 1],
    ['\n\n|\n', 2, 0],
    ['😀|a', 0, 2],
    ['前\n𝒳y|', 1, 3],
    ['\ufeffa|', 0, 2],
  ])('%j', (marked, line, character) => {
    expect(positionAt(linesOf(marked.replace('|', '')), marked.indexOf('|'))).toEqual({ line, character });
  });

  test.each([[-1, 0, 0], [99, 1, 1], [Infinity, 1, 1]])('outside the text: %d', (offset, line, character) => {
    expect(positionAt(linesOf('a\nb'), offset)).toEqual({ line, character });
  });
});

test('every offset of a text lies on the line it is cut from', () => {
  const text = 'one\r\ntwo\r\rthree 😀\n\nfour';
  const lines = linesOf(text);
  for (let offset = 0; offset <= text.length; offset += 1) {
    const { line, character } = positionAt(lines, offset);
    expect(lines.starts[line]! + character).toBe(offset);
  }
  expect(lines.starts.map((_, line) => lineText(lines, line))).toEqual(['one', 'two', '', 'three 😀', '', 'four']);
});
