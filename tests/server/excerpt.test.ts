import { describe, expect, test } from 'vitest';
import { linesOf } from '../../server/convert.ts';
import { widthOfText } from '../../server/text/cells.ts';
import { excerpt } from '../../server/text/excerpt.ts';

/** The lines shown for the span between ⟦ and ⟧, each followed by its marks. */
function shown(marked: string, note: string | null = null): string[] {
  const from = marked.indexOf('⟦');
  const to = marked.indexOf('⟧') - 1;
  const lines = excerpt(linesOf(marked.replace(/[⟦⟧]/g, '')), { from, to }, '^', note);
  return lines.flatMap(({ number, source, marks }) => [`${number ?? ' '}|${source}`, ...(marks === null ? [] : [`  ${marks}`])]);
}

describe('marks stand under what they mean', () => {
  test.each([
    ['a name', 'pass to ⟦Bsae⟧ now', ['1|pass to Bsae now', '          ^^^^']],
    ['nothing', 'pass to⟦⟧', ['1|pass to', '         ^']],
    ['the end of an empty text', '⟦⟧', ['1|', '  ^']],
    ['after tabs', '\tpole\t⟦Near⟧', ['1|    pole    Near', '              ^^^^']],
    ['a wide word after wide words', '前 前 ⟦前前⟧', ['1|前 前 前前', '        ^^^^']],
    ['after a joined emoji', '👩‍👩‍👧 ⟦a⟧', ['1|👩‍👩‍👧 a', '     ^']],
    ['after a combining mark', 'e\u0301 ⟦a⟧', ['1|e\u0301 a', '    ^']],
    ['a control character is not passed on', '\u001b[31m⟦a⟧', ['1|\ufffd[31ma', '       ^']],
    ['two lines', 'x ⟦one\n  two⟧ y', ['1|x one', '    ^^^', '2|  two y', '    ^^^']],
    ['a span that ends with its line', '⟦one\n⟧two', ['1|one', '  ^^^']],
    ['only the beginning of many lines', '⟦a\nb\nc\nd\ne⟧', ['1|a', '  ^', '2|b', '  ^', '3|c', '  ^', ' |… to line 5']],
    ['Windows lines', 'a\r\n⟦b⟧\r\n', ['2|b', '  ^']],
  ])('%s', (_, marked, lines) => {
    expect(shown(marked)).toEqual(lines);
  });

  test('with a note', () => {
    expect(shown('a ⟦b⟧', 'here')).toEqual(['1|a b', '    ^ here']);
  });
});

describe('a long line is shown in a window', () => {
  const far = 'x'.repeat(300);
  test.each([
    ['at its beginning', `⟦ab⟧${far}`, /^ab/, /…$/, 2],
    ['in its middle', `${far}⟦ab⟧${far}`, /^…/, /…$/, 2],
    ['at its end', `${far}⟦ab⟧`, /^…/, /ab$/, 2],
    ['in wide characters', `${'前'.repeat(200)}⟦ab⟧${far}`, /^…/, /…$/, 2],
    ['with a mark longer than the window', `${far}⟦${far}⟧`, /^…/, /…$|x$/, 70],
  ])('%s', (_, marked, start, end, length) => {
    const [source, marks] = shown(marked).map((line) => line.slice(2)) as [string, string];
    expect(source).toMatch(start);
    expect(source).toMatch(end);
    expect(widthOfText(source)).toBeLessThanOrEqual(102);
    expect(widthOfText(marks)).toBeLessThanOrEqual(102);
    expect(marks.trim().length).toBeGreaterThanOrEqual(length);
    if (length === 2) expect(source.slice(source.indexOf('ab'))).toMatch(/^ab/);
    if (length === 2) expect(widthOfText(source.slice(0, source.indexOf('ab')))).toBe(marks.indexOf('^'));
  });
});
