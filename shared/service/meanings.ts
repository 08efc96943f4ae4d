/** What the words of the language mean. */
import { tokenize } from '../../grammar/tokens.ts';
import type { Span } from '../../grammar/tree.ts';
import { words, type WordEntry, type WordGroup } from '../../grammar/words.ts';
import { endOf, isWord, sentenceAt, type Token } from './sentence.ts';

/** The word at an offset as it is meant there, in Markdown; null inside comments and between words. */
export function meaningAt(text: string, offset: number): { readonly span: Span; readonly text: string } | null {
  const tokens = tokenize(text);
  const at = tokens.findIndex((token) => isWord(token) && token.startOffset <= offset && offset <= endOf(token));
  if (at < 0 || !sentenceAt(text, offset)) return null;
  const groups = groupsHere(text, tokens[at]!);
  const [best] = words
    .flatMap((entry) => placesOf(entry, tokens, at).map((span) => ({ entry, span })))
    .sort((a, b) => lengthOf(b.span) - lengthOf(a.span) || groups.indexOf(a.entry.group) - groups.indexOf(b.entry.group));
  return best ? { span: best.span, text: textOf(best.entry) } : null;
}

/** A word of one group, in Markdown. */
export function meaningOf(group: WordGroup, word: string): string[] {
  return words.filter((entry) => entry.group === group && entry.word === word).map(textOf);
}

/** An entry of several words may begin before the one that is pointed at. */
function placesOf(entry: WordEntry, tokens: readonly Token[], at: number): Span[] {
  const parts = entry.word.split(' ');
  return parts.flatMap((_, index) => {
    const written = tokens.slice(Math.max(0, at - index), at - index + parts.length);
    if (written.length < parts.length || !parts.every((part, each) => written[each]?.image === part)) return [];
    return [{ from: written[0]!.startOffset, to: endOf(written.at(-1)!) }];
  });
}

function lengthOf({ from, to }: Span): number {
  return to - from;
}

/** The likeliest use first: the first word of a line names a statement, one after a dot a side, one after a number a unit. */
function groupsHere(text: string, token: Token): readonly WordGroup[] {
  const rest: readonly WordGroup[] = ['modifier', 'value', 'place', 'joining', 'side', 'anchor', 'verb', 'statement', 'unit'];
  const before = sentenceAt(text, token.startOffset)?.before.at(-1);
  if (!before) return ['statement', ...rest];
  if (before.image === '.') return ['anchor', 'side', ...rest];
  return /^[\d.]+$/.test(before.image) ? ['unit', 'place', ...rest] : rest;
}

function textOf({ word, doc, example }: WordEntry): string {
  return `**${word}**: ${doc}\n\n\`\`\`drill\n${example}\n\`\`\``;
}
