import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textWidth } from '../../shared/font/text.ts';
import { tidy, wrapped } from '../../shared/sheet/wrap.ts';

/** A sign is one wide. */
const counted = (text: string): number => [...text].length;
const lines = (text: string, width: number): string[] => wrapped(tidy(text), width, counted).map((line) => line.text);

describe('lines', () => {
  it.each([
    ['words go on in the next line', 'one two three', 7, ['one two', 'three']],
    ['what is too long is parted', 'a verylongword b', 5, ['a', 'veryl', 'ongwo', 'rd b']],
    ['signs of a script without spaces part anywhere', '传球然后跑', 2, ['传球', '然后', '跑']],
    ['a closing mark does not begin a line', '传球，跑。', 2, ['传', '球，', '跑。']],
    ['nothing is a line', '', 5, ['']],
    ['spaces and control signs count once', ' a\t\u0007 b\n', 5, ['a b']],
  ])('%s', (_, text, width, expected) => {
    expect(lines(text, width)).toEqual(expected);
  });

  const anyText = fc.oneof(fc.string({ unit: 'grapheme', maxLength: 200 }), fc.stringMatching(/^[a-z ]{0,300}$/));
  it('lose nothing, in order', () => {
    fc.assert(fc.property(anyText, fc.integer({ min: 1, max: 40 }), (text, width) => {
      expect(lines(text, width).join('').replaceAll(' ', '')).toBe(tidy(text).replaceAll(' ', ''));
    }));
  });
  it('are no wider than their column, but for a single sign', () => {
    fc.assert(fc.property(anyText, fc.integer({ min: 10, max: 90 }), (text, width) => {
      const widthOf = (words: string) => textWidth(words, 3.4, 'medium');
      for (const line of wrapped(tidy(text), width, widthOf)) expect(widthOf(line.text) <= width + 1e-9 || [...new Intl.Segmenter('en').segment(line.text)].length === 1).toBe(true);
    }));
  });
});
