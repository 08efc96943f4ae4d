/** Giving a thing another name, wherever it stands. */
import { isOneWord } from '../../grammar/tokens.ts';
import type { Span } from '../../grammar/tree.ts';
import { reserved } from '../../grammar/words.ts';
import type { Edit } from '../problem.ts';
import { kindWords } from './kinds.ts';
import { isQuoted, occurrencesIn, symbolAt, type Symbol } from './occurrences.ts';
import type { Open } from './open.ts';

export type Renaming =
  | { readonly kind: 'edits'; readonly files: readonly { readonly path: string | null; readonly edits: readonly Edit[] }[] }
  /** Why it cannot be done, for the person to read. */
  | { readonly kind: 'refused'; readonly why: string };

/** What can be renamed at an offset: its place without quotation marks, and its name; or why it cannot. Null where there is no name. */
export function renameable(open: Open, offset: number): { readonly span: Span; readonly name: string } | { readonly why: string } | null {
  const found = symbolAt(open, offset);
  if (!found) return null;
  const why = fixedBecause(found.symbol);
  return why === null ? { span: inner(open, found.symbol, found.span), name: found.symbol.name } : { why };
}

/** `others` are the files of the workspace that may use the name, the one that declares it among them. */
export function rename(open: Open, offset: number, name: string, others: readonly Open[]): Renaming | null {
  const found = symbolAt(open, offset);
  if (!found) return null;
  const { symbol } = found;
  const files = [open, ...others.filter((other) => other.workspace.path !== open.workspace.path)];
  const why = fixedBecause(symbol) ?? unfit(symbol, name, files);
  if (why !== null) return { kind: 'refused', why };
  return {
    kind: 'edits',
    files: files.flatMap((file) => {
      const edits = occurrencesIn(file, symbol).map(({ span, suffix }) => ({ span: inner(file, symbol, span), text: isBare(file, symbol, span) ? bare(name) : name + suffix }));
      return edits.length > 0 ? [{ path: file.workspace.path, edits }] : [];
    }),
  };
}

/** Without quotation marks; the one at the end may not have been written yet. */
function inner(open: Open, symbol: Symbol, { from, to }: Span): Span {
  return isQuoted(symbol.kind) && !isBare(open, symbol, { from, to }) ? { from: from + 1, to: from + 1 + symbol.name.length } : { from, to };
}

/** A sequence may be named without quotation marks where the order is given. */
function isBare({ text }: Open, { kind, name }: Symbol, { from, to }: Span): boolean {
  return isQuoted(kind) && text.slice(from, to) === name;
}

function bare(name: string): string {
  return isOneWord(name) && !reserved.has(name) ? name : `"${name}"`;
}

function fixedBecause({ name, kind, madeFrom }: Symbol): string | null {
  if (kind === 'area' || kind === 'coach') return `\`${name}\` is a word of the language.`;
  return madeFrom === null ? null : `\`${name}\` has its name from \`${madeFrom}\`: rename that.`;
}

function unfit(symbol: Symbol, name: string, files: readonly Open[]): string | null {
  if (isQuoted(symbol.kind)) {
    if (name.trim() === '') return 'A name needs at least one letter.';
    return /["\r\n]/.test(name) ? 'A name in quotation marks cannot hold a double quotation mark or a line end.' : null;
  }
  if (reserved.has(name)) return `\`${name}\` is a word of the language.`;
  if (!isOneWord(name)) return `\`${name}\` is no name: a name is one word that begins with a letter.`;
  const taken = files
    .filter((file) => occurrencesIn(file, symbol).length > 0)
    .flatMap((file) => file.analysis.names)
    .filter(({ drill, kind }) => !isQuoted(kind) && (drill === symbol.drill || drill === null || symbol.drill === null))
    .find((entry) => entry.name === name);
  return taken && taken.name !== symbol.name ? `There is a ${kindWords[taken.kind]} \`${name}\` already.` : null;
}
