/** Where in a sentence an offset is: the words of its statement before it, and the block that the statement stands in. */
import type { Context } from '../../grammar/form.ts';
import { statementForms } from '../../grammar/statements/index.ts';
import { CloseBrace, Comma, Newline, OpenBrace, OpenText, Remark, Text, tokenize } from '../../grammar/tokens.ts';
import type { Span } from '../../grammar/tree.ts';

export type Token = ReturnType<typeof tokenize>[number];

export interface Sentence {
  readonly context: Context;
  /** The words of the statement before the one that is being written. */
  readonly before: readonly Token[];
  /** When there are none: the statement in the line above, which a word such as `while` would go on with. */
  readonly above: readonly Token[];
  /** The word or the inside of the text that the offset is in or at the end of; empty between words. */
  readonly word: Span;
  /** Whether the word is a text in quotation marks. */
  readonly quoted: boolean;
}

/** Null inside a comment. */
export function sentenceAt(text: string, offset: number): Sentence | null {
  const blocks: Context[] = ['file'];
  let line: Token[] = [];
  let above: readonly Token[] = [];
  let fresh = true;
  let blank = false;
  for (const token of tokenize(text)) {
    if (token.startOffset >= offset) break;
    const end = endOf(token);
    if (token.tokenType === Remark) {
      if (end >= offset) return null;
      continue;
    }
    if (token.tokenType === Newline) {
      blank = !/^(?:\r\n?|\n)$/.test(token.image);
      fresh ||= blank || line.at(-1)?.tokenType !== Comma;
      continue;
    }
    if (fresh && !joins(token)) [above, line] = [blank ? [] : line, []];
    [fresh, blank] = [false, false];
    const inside = token.tokenType === Text ? end > offset : end >= offset && (isWord(token) || token.tokenType === OpenText);
    if (inside) return { context: blocks.at(-1)!, before: line, above, ...wordOf(token, offset) };
    if (token.tokenType === OpenBrace) blocks.push(bodies.get(line[0]?.image ?? '') ?? blocks.at(-1)!);
    if (token.tokenType === CloseBrace && blocks.length > 1) blocks.pop();
    if (token.tokenType === OpenBrace || token.tokenType === CloseBrace) line = [];
    else line.push(token);
  }
  if (fresh) [above, line] = [blank ? [] : line, []];
  return { context: blocks.at(-1)!, before: line, above, word: { from: offset, to: offset }, quoted: false };
}

/** A line that begins with one of these goes on with the one before. */
function joins({ tokenType, image }: Token): boolean {
  return tokenType === Comma || image === 'while' || image === 'then';
}

export function endOf(token: Token): number {
  return token.startOffset + token.image.length;
}

export function isWord({ image }: Token): boolean {
  return /^[\p{L}_]/u.test(image);
}

const bodies: ReadonlyMap<string, Context> = new Map(
  statementForms.flatMap((form): [string, Context][] => (form.body === null ? [] : [[form.keyword, form.body]])),
);

function wordOf(token: Token, offset: number): Pick<Sentence, 'word' | 'quoted'> {
  if (isWord(token)) return { word: { from: token.startOffset, to: endOf(token) }, quoted: false };
  const to = token.tokenType === OpenText ? Math.max(offset, endOf(token)) : endOf(token) - 1;
  return { word: { from: token.startOffset + 1, to }, quoted: true };
}
