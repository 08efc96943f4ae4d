/** Lines of a paragraph without losing anything: what is too long for a line goes on in the next. */

/** Width of a text in millimetres. */
export type WidthOf = (text: string) => number;

export interface Line {
  readonly text: string;
  /** Where the next line begins in the text. */
  readonly end: number;
}

/** Spaces count once, control signs not at all. */
export function tidy(text: string): string {
  return text.replaceAll(/[\s\p{Cc}]+/gu, ' ').trim();
}

/** Of a tidy text; an empty one gives one empty line. */
export function wrapped(text: string, width: number, widthOf: WidthOf): Line[] {
  const lines: Line[] = [];
  let start = 0;
  let used = 0;
  const close = (end: number) => {
    lines.push({ text: text.slice(start, end).trim(), end });
    start = end;
    used = 0;
  };
  for (const { 0: atom, index } of text.matchAll(atoms)) {
    const bare = widthOf(atom.trimEnd());
    if (used > 0 && used + bare > width) close(index);
    if (bare > width) {
      // No line holds it: by what a reader takes for one sign, so that none loses its accents.
      let at = index;
      for (const { segment } of graphemes.segment(atom)) {
        const wide = widthOf(segment);
        if (used > 0 && used + wide > width) close(at);
        used += wide;
        at += segment.length;
      }
    } else used += widthOf(atom);
  }
  if (start < text.length || lines.length === 0) close(text.length);
  return lines;
}

/** What stays together, with the spaces behind it: a word; of scripts without spaces a sign, with what may not begin a line. */
const atoms = /[\p{sc=Han}\p{sc=Hiragana}\p{sc=Katakana}\p{sc=Thai}][\p{M}、。，．！？：；）」』〉》】]*\s*|[^\s\p{sc=Han}\p{sc=Hiragana}\p{sc=Katakana}\p{sc=Thai}]+\s*|\s+/gu;

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });
