import type { IToken } from 'chevrotain';
import type { Span } from './tree.ts';

export function spanOf(first: IToken, last: IToken = first): Span {
  return { from: first.startOffset, to: endOf(last) };
}

/** The lexer keeps no end; a token made up for a repair has one, since its image is not in the text. */
export function endOf(token: IToken): number {
  return token.endOffset === undefined ? token.startOffset + token.image.length : token.endOffset + 1;
}
