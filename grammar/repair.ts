import type { IToken, TokenType } from 'chevrotain';
import type { StatementForm } from './form.ts';
import { isStop, readLine } from './line-parser.ts';
import type { Draft } from './line-parser.ts';
import { endOf } from './span.ts';
import { keywords, Minus, Open, signs } from './tokens.ts';

/** The only one of the expected words and signs with which the line can be read; null when none or several can. */
export function onlyOne(
  expected: readonly string[], draftWith: (type: TokenType, word: string) => Draft | null,
): { word: string; draft: Draft } | null {
  const found: { word: string; draft: Draft }[] = [];
  for (const word of expected) {
    const type = keywords.get(word) ?? signs.find((sign) => sign.name === word);
    if (type === undefined || type === Open || type === Minus) continue;
    const draft = draftWith(type, word);
    if (draft !== null) found.push({ word, draft });
    if (found.length > 1) return null;
  }
  return found[0] ?? null;
}

/** Trying takes as long as reading, so very long lines are not repaired. */
const longestRepaired = 1000;

export function draftOf(form: StatementForm | null, tokens: readonly IToken[]): Draft | null {
  if (tokens.length > longestRepaired) return null;
  const result = readLine(form, [...tokens]);
  return isStop(result) ? null : result;
}

export function spliced(tokens: readonly IToken[], at: number, count: number, ...made: readonly IToken[]): IToken[] {
  return [...tokens.slice(0, at), ...made, ...tokens.slice(at + count)];
}

export function insertion(type: TokenType, image: string, offset: number): IToken {
  return { image, startOffset: offset, endOffset: offset - 1, tokenType: type, tokenTypeIdx: type.tokenTypeIdx! };
}

export function replacement(type: TokenType, image: string, first: IToken, last: IToken): IToken {
  return { ...insertion(type, image, first.startOffset), endOffset: endOf(last) - 1 };
}
