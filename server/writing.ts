/** A line of any script as it is drawn: pieces from left to right, each in one font and one direction. */
import bidiFactory, { type Bidi } from 'bidi-js';
import type { Weight } from '../shared/font/text.ts';
import type { Measure } from '../shared/sheet/lay.ts';
import { isInvisible, type Face, type Fonts } from './fonts.ts';

export interface Writing {
  readonly pieces: readonly WrittenPiece[];
  /** What is drawn is not in the order of reading, or not all of it could be drawn. */
  readonly differs: boolean;
}

export interface WrittenPiece {
  readonly face: Face;
  /** For the font, which joins and turns letters by itself. */
  readonly text: string;
  /** Latin letters, each with a glyph of its own. */
  readonly simple: boolean;
}

/** The package is CommonJS and its types are not. */
const bidi = (bidiFactory as unknown as () => Bidi)();
const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Stands for a sign that no font has. */
const unknown = '?';

/** That of the first strong letter (UAX #9, P2). */
export function runsFromRight(text: string): boolean {
  return !plain.test(text) && bidi.getEmbeddingLevels(text).paragraphs[0]?.level === 1;
}

/** The order of the Unicode bidirectional algorithm (UAX #9); `fromRight` is that of the paragraph the line is in. */
export function writingOf(text: string, weight: Weight, fonts: Fonts, fromRight = runsFromRight(text)): Writing {
  if (plain.test(text) && !fromRight) return { pieces: text === '' ? [] : [{ face: faceFor(unknown, weight, fonts), text, simple: true }], differs: false };
  const found = bidi.getEmbeddingLevels(text, fromRight ? 'rtl' : 'ltr');
  const pieces: Piece[] = [];
  for (const { segment, index } of graphemes.segment(text)) {
    const level = found.levels[index] ?? 0;
    const sign = [...(level % 2 === 1 ? bidi.getMirroredCharacter(segment) ?? segment : segment)].filter(isSeen).join('');
    if (sign === '') continue;
    const last = pieces.at(-1);
    const goesOn = sign === ' ' && last !== undefined && last.level === level && last.face.font.hasGlyphForCodePoint(0x20);
    const own = goesOn ? last.face : fonts.faceOf(sign, weight);
    const face = own ?? faceFor(unknown, weight, fonts);
    const drawn = own === null ? unknown : sign;
    if (last && last.level === level && last.face === face) last.text += drawn;
    else pieces.push({ level, face, text: drawn });
  }
  return {
    pieces: inOrder(pieces).map(({ level, face, text: words }) => ({ face, simple: plain.test(words), text: level % 2 === 1 && !joins.test(words) ? reversed(words) : words })),
    differs: pieces.some(({ level, text: words }) => level > 0 || words.includes(unknown)),
  };
}

/** Widths in the fonts that draw, for laying out. */
export function measureWith(fonts: Fonts): Measure {
  const known = new Map<string, number>();
  return (text, size, weight) => {
    const key = `${weight} ${text}`;
    const before = known.get(key);
    if (before !== undefined) return before * size;
    const share = writingOf(text, weight, fonts).pieces.reduce((sum, { face, text: words }) => sum + face.font.layout(words).advanceWidth / face.font.unitsPerEm, 0);
    known.set(key, share);
    return share * size;
  };
}

interface Piece {
  readonly level: number;
  readonly face: Face;
  text: string;
}

/** Nothing that the shipped font does not have, or that turns: most of what is ever written. */
const plain = /^[\x20-\x7e\u00a0-\u017f–—‘’“”…×·−]*$/;

/** Letters that are written from right to left: a font turns these by itself. */
const joins = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

function isSeen(char: string): boolean {
  return char === '\u200c' || char === '\u200d' || !isInvisible(char.codePointAt(0) as number);
}

function faceFor(sign: string, weight: Weight, fonts: Fonts): Face {
  return fonts.faceOf(sign, weight) as Face;
}

/** Rule L2: from the highest level down to the lowest odd one, what stands at it or above is turned round. */
function inOrder(pieces: readonly Piece[]): Piece[] {
  const order = [...pieces];
  const highest = Math.max(0, ...order.map(({ level }) => level));
  for (let level = highest; level > 0; level -= 1) {
    for (let from = 0; from < order.length; from += 1) {
      let to = from;
      while (to < order.length && (order[to] as Piece).level >= level) to += 1;
      if (to > from) order.splice(from, to - from, ...order.slice(from, to).reverse());
      from = Math.max(from, to);
    }
  }
  return order;
}

function reversed(text: string): string {
  return [...graphemes.segment(text)].map(({ segment }) => segment).reverse().join('');
}
