/** JSON (RFC 8259) with the places of its values, which `JSON.parse` does not tell. */
import type { Span } from '../../grammar/tree.ts';

export type Json =
  | { readonly kind: 'object'; readonly span: Span; readonly members: readonly Member[] }
  | { readonly kind: 'array'; readonly span: Span; readonly items: readonly Json[] }
  | { readonly kind: 'value'; readonly span: Span; readonly value: string | number | boolean | null };

export interface Member {
  readonly name: string;
  readonly nameSpan: Span;
  readonly value: Json;
}

export interface Misfit {
  readonly span: Span;
  readonly message: string;
}

/** Total; a text with a fault gives its first one. */
export function readJson(text: string): Json | Misfit {
  const tokens = [...text.matchAll(/"(?:[^"\\]|\\.)*"?|[{}[\]:,]|[^\s"{}[\]:,]+/gs)].filter(({ 0: found }) => found !== '\ufeff');
  let next = 0;
  const spanOf = (token: RegExpExecArray | undefined): Span =>
    (token ? { from: token.index, to: token.index + token[0].length } : { from: text.length, to: text.length });
  const isNext = (word: string): boolean => tokens[next]?.[0] === word;

  function value(depth: number): Json {
    const token = tokens[next++];
    const { from, to } = spanOf(token);
    if (token?.[0] === '{' || token?.[0] === '[') {
      if (depth >= deepest) throw new Unreadable({ from, to }, 'Braces are nested too deep here.');
      const list = token[0] === '[' ? items(depth) : members(depth);
      return { ...list, span: { from, to: spanOf(tokens[next - 1]).to } };
    }
    return { kind: 'value', span: { from, to }, value: plain(token) };
  }

  function members(depth: number): { kind: 'object'; members: Member[] } {
    const all: Member[] = [];
    separated('}', () => {
      const nameSpan = spanOf(tokens[next]);
      const name = plain(tokens[next++]);
      if (typeof name !== 'string') throw new Unreadable(nameSpan, 'A name in double quotes should stand here.');
      expect(':');
      all.push({ name, nameSpan, value: value(depth + 1) });
    });
    return { kind: 'object', members: all };
  }

  function items(depth: number): { kind: 'array'; items: Json[] } {
    const all: Json[] = [];
    separated(']', () => all.push(value(depth + 1)));
    return { kind: 'array', items: all };
  }

  function separated(end: string, one: () => void): void {
    if (!isNext(end)) one();
    while (!isNext(end)) {
      expect(',', end);
      one();
    }
    next += 1;
  }

  function expect(...words: string[]): void {
    const wanted = words.map((word) => `\`${word}\``).join(' or ');
    if (!words.includes(tokens[next]?.[0] ?? '')) throw new Unreadable(spanOf(tokens[next]), `${wanted} should stand here.`);
    next += 1;
  }

  function plain(token: RegExpExecArray | undefined): string | number | boolean | null {
    try {
      return JSON.parse(token?.[0] ?? '') as string;
    } catch {
      throw new Unreadable(spanOf(token), token ? `\`${token[0]}\` cannot stand here: words stand in double quotes.` : 'The file ends too soon.');
    }
  }

  try {
    const all = value(0);
    if (tokens[next]) throw new Unreadable(spanOf(tokens[next]), 'The file should end here.');
    return all;
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    return { span: error.span, message: error.message };
  }
}

const deepest = 100;

class Unreadable extends Error {
  readonly span: Span;
  constructor(span: Span, message: string) {
    super(message);
    this.span = span;
  }
}
