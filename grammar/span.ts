import type { IToken } from 'chevrotain';
import type { Span } from './tree.ts';

export function spanOf(first: IToken, last: IToken = first): Span {
  return { from: first.startOffset, to: endOf(last) };
}

/** The lexer keeps no end; a token made up for a repair has one, since its image is not in the text. */
export function endOf(token: IToken): number {
  return token.endOffset === undefined ? token.startOffset + token.image.length : token.endOffset + 1;
}

/** In backquotes, and not longer than a message can bear. */
export function shown({ image }: IToken): string {
  return `\`${image.length > 40 ? `${image.slice(0, 39)}…` : image}\``;
}

/** With spaces only where there are some in the text. */
export function spaced(tokens: readonly IToken[]): string {
  return tokens.map((token, index) => {
    const apart = index > 0 && endOf(tokens[index - 1]!) < token.startOffset;
    return apart ? ` ${token.image}` : token.image;
  }).join('');
}
