/** How much room a text takes in a terminal, where every character has one cell, two or none. */

/** What the reader sees as one character. */
export interface Cell {
  readonly text: string;
  readonly width: number;
  /** UTF-16 offsets in the line. */
  readonly from: number;
  readonly to: number;
}

/** A tab becomes spaces up to the next multiple of four; what could steer the terminal becomes a replacement character. */
export function cellsOf(line: string): readonly Cell[] {
  const cells: Cell[] = [];
  let column = 0;
  for (const { segment, index } of graphemes.segment(line)) {
    const text = segment === '\t' ? ' '.repeat(tab - (column % tab)) : harmless(segment);
    const width = segment === '\t' ? text.length : widthOf(segment);
    cells.push({ text, width, from: index, to: index + segment.length });
    column += width;
  }
  return cells;
}

export function widthOfText(text: string): number {
  return cellsOf(text).reduce((sum, cell) => sum + cell.width, 0);
}

/** Names and strings come from files of unknown origin: no control character of theirs reaches the terminal. */
export function harmless(text: string): string {
  return text.replace(/[\p{Cc}\u202a-\u202e\u2066-\u2069]/gu, '\ufffd');
}

const tab = 4;
const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** East Asian wide and full-width characters and emoji; Unicode Standard Annex 11 in coarse blocks. */
const wide = /^(?:\p{Emoji_Presentation}|.\ufe0f|[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\ua960-\ua97f\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff01-\uff60\uffe0-\uffe6]|[\u{20000}-\u{3fffd}])/u;

function widthOf(grapheme: string): number {
  if (wide.test(grapheme)) return 2;
  return /^[\p{Mn}\p{Me}\u200b-\u200f\ufeff]+$/u.test(grapheme) ? 0 : 1;
}
