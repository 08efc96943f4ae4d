import { createToken, Lexer } from 'chevrotain';
import type { IToken, TokenType } from 'chevrotain';
import { endOf } from './span.ts';
import { reserved } from './words.ts';

/** Splits a text into tokens, comments and line ends among them, spaces not. Every character belongs to some token. */
export function tokenize(text: string): IToken[] {
  const { tokens } = lexer.tokenize(text);
  for (const token of tokens) {
    const { tokenType, image } = token;
    if (tokenType !== Name && tokenType !== TightSign && tokenType !== Times) continue;
    const meant = sameAs.get(image) ?? keywords.get(image);
    if (meant !== undefined) retype(token, meant);
  }
  return tokens;
}

export function retype(token: IToken, type: TokenType): void {
  token.tokenType = type;
  token.tokenTypeIdx = type.tokenTypeIdx!;
}

/** Any word, reserved or not. */
export const AnyWord = createToken({ name: 'any word', pattern: Lexer.NA });
/** A word for a thing: a name, or one that the language itself gives. */
export const Noun = createToken({ name: 'noun', pattern: Lexer.NA, categories: [AnyWord] });

/** The quotation marks that begin a text, each with those that end it. */
const closing: ReadonlyMap<string, string> = new Map([
  ['"', '"'], ['“', '“”"'], ['„', '“”"'], ['«', '»'], ['»', '«'], ['‘', '’‘'], ['‚', '’‘'],
]);

// chevrotain drops the `u` flag of a pattern, so those that need it are functions.
const wordCharacters = /[\p{L}_][\p{L}\p{Nd}\p{M}_]*/uy;
const speeds = /(?:m\/s|km\/h)(?![\p{L}\p{Nd}\p{M}_])/uy;
const oneCharacter = /[^]/uy;

// The characters a token can begin with, so that the lexer tries only what fits. It keeps characters past the first 256 in
// groups of 255 neighbours: one of each group stands for all.
const beyondLatin = Array.from({ length: 257 }, (_, group) => String.fromCharCode(Math.max(256, Math.min(65535, (group + 1) * 255))));
const latin = Array.from({ length: 256 }, (_, code) => String.fromCharCode(code));
const anyCharacter = [...latin, ...beyondLatin];
const spaces = [...latin.filter((character) => /[^\S\r\n]/.test(character)), ...beyondLatin];
const letters = [...latin.filter((character) => /[\p{L}_]/u.test(character)), ...beyondLatin];

const Space = createToken({ name: 'space', pattern: /(?:[^\S\r\n]|[\u200b\u2060])+/, start_chars_hint: spaces, group: Lexer.SKIPPED });
/** The end of a line with the blank lines below it. */
export const Newline = createToken({
  name: 'line end', pattern: /(?:\r\n?|\n)(?:[^\S\r\n]*(?:\r\n?|\n))*/, line_breaks: true,
});
export const Remark = createToken({ name: 'comment', pattern: /\/\/[^\r\n]*/ });
/** `4x4` and `4v2`: the sign would otherwise begin a word. */
const TightSign = createToken({ name: 'tight x or v', pattern: { exec: tightSign }, start_chars_hint: ['x', 'v'], line_breaks: false });
export const Speed = createToken({ name: 'speed', pattern: matcher(speeds), start_chars_hint: ['m', 'k'], line_breaks: false });
export const Name = createToken({ name: 'name', pattern: matcher(wordCharacters), start_chars_hint: letters, line_breaks: false, categories: [Noun] });
export const NumberToken = createToken({ name: 'number', pattern: /\d+(?:\.\d+)?|\.\d+/ });
export const Text = createToken({ name: 'text', pattern: { exec: closedText }, start_chars_hint: [...closing.keys()], line_breaks: false });
/** A text that is not closed on its line. */
export const OpenText = createToken({
  name: 'open text', pattern: { exec: openText }, start_chars_hint: [...closing.keys()], line_breaks: false, categories: [Text],
});
export const Arrow = createToken({ name: '->', pattern: /->|→/ });
export const Plus = createToken({ name: '+', pattern: '+' });
export const Minus = createToken({ name: '-', pattern: /[-−–]/ });
export const Star = createToken({ name: '*', pattern: '*' });
export const Slash = createToken({ name: '/', pattern: '/' });
export const Equals = createToken({ name: '=', pattern: '=' });
export const Comma = createToken({ name: ',', pattern: ',' });
export const Dot = createToken({ name: '.', pattern: '.' });
export const Open = createToken({ name: '(', pattern: '(' });
export const Close = createToken({ name: ')', pattern: ')' });
export const OpenBrace = createToken({ name: '{', pattern: '{' });
export const CloseBrace = createToken({ name: '}', pattern: '}' });
const Times = createToken({ name: '×', pattern: '×' });
/** A character that means nothing in the language. */
export const Stray = createToken({ name: 'stray', pattern: matcher(oneCharacter), start_chars_hint: anyCharacter, line_breaks: false });

/** The words that the language itself gives to things. */
const nouns = new Set(['area', 'coach', 'floaters']);
export const keywords: ReadonlyMap<string, TokenType> = new Map([...reserved].map((word) => [
  word, createToken({ name: word, pattern: Lexer.NA, categories: [nouns.has(word) ? Noun : AnyWord] }),
]));
/** Other ways to write a word or sign. */
export const sameAs: ReadonlyMap<string, TokenType> = new Map([['touch', keyword('touches')], ['keepers', keyword('keeper')], ['×', keyword('x')]]);

export const signs: readonly TokenType[] = [
  Arrow, Plus, Minus, Star, Slash, Equals, Comma, Dot, Open, Close, OpenBrace, CloseBrace,
];
const written = [
  Space, Newline, Remark, TightSign, Speed, Name, NumberToken, Text, OpenText, ...signs, Times, Stray,
];
export const allTokens: readonly TokenType[] = [AnyWord, Noun, ...written, ...keywords.values()];

const lexer = new Lexer(written, { positionTracking: 'onlyOffset', ensureOptimizations: true });

function matcher(pattern: RegExp): { exec: (text: string, offset: number) => RegExpExecArray | null } {
  return {
    exec: (text, offset) => {
      pattern.lastIndex = offset;
      return pattern.exec(text);
    },
  };
}

function tightSign(text: string, offset: number, before: IToken[]): [string] | null {
  const sign = text[offset]!;
  const number = before.at(-1);
  if ((sign !== 'x' && sign !== 'v') || number?.tokenType !== NumberToken || endOf(number) !== offset) return null;
  return /\d/.test(text[offset + 1] ?? '') ? [sign] : null;
}

function closedText(text: string, offset: number): [string] | null {
  const ends = closing.get(text[offset]!);
  if (ends === undefined) return null;
  for (let at = offset + 1; at < text.length && !/[\r\n]/.test(text[at]!); at++) {
    if (!ends.includes(text[at]!)) continue;
    // ‘don’t’: an apostrophe stands before a letter.
    if (text[at] === '’' && /\p{L}/u.test(text[at + 1] ?? '')) continue;
    return [text.slice(offset, at + 1)];
  }
  return null;
}

/** Up to the end of the line, but without the brace that opens a block there. */
function openText(text: string, offset: number): [string] | null {
  if (!closing.has(text[offset]!)) return null;
  let to = offset;
  while (to < text.length && !/[\r\n]/.test(text[to]!)) to++;
  const line = text.slice(offset, to);
  const body = line.trimEnd();
  return [(body.endsWith('{') ? body.slice(0, -1) : body).trimEnd()];
}

/** Whether a text can be written without quotation marks where a word may stand too. */
export function isOneWord(text: string): boolean {
  wordCharacters.lastIndex = 0;
  return wordCharacters.exec(text)?.[0] === text;
}

/** The quotation marks in which this text is read back whole. */
export function quoteFor(text: string): readonly [string, string] {
  const marks = [['"', '"'], ['“', '”'], ['«', '»'], ['‘', '’']] as const;
  return marks.find(([start, end]) => closedText(start + text + end, 0)?.[0].length === text.length + 2) ?? marks[0];
}

export function isWord(token: IToken): boolean {
  return token.tokenType === Name || keywords.has(token.image);
}

export function keyword(word: string): TokenType {
  return keywords.get(word)!;
}
