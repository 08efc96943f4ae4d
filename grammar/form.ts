/**
 * A form says how a statement, a verb or a modifier is written. It is plain data: the parser builds a rule
 * from it, the printer prints by it, and the reference and the messages describe it.
 * A form must be decidable on one word at every choice.
 */

/** A word or sign of the language stands for itself; several may be written as one string: `at most`. */
export type Piece<F extends string = string> =
  | string
  | { readonly field: F; readonly as: Reader | readonly string[] }
  | { readonly field: F; readonly node: readonly Piece[] }
  | { readonly field: F; readonly list: Items; readonly between: Separator }
  | { readonly word: string; readonly one: string; readonly by: F }
  | { readonly maybe: readonly Piece<F>[] }
  | { readonly either: readonly Alternative<F>[] };

/** What a field holds; a list of strings instead is a closed list of words. */
export type Reader =
  /** A name that is declared here. */
  | 'name'
  /** A name declared elsewhere, or one of the things that the language names itself: `area`, `coach`, `floaters`. */
  | 'noun'
  /** Any word at all. */
  | 'word'
  | 'text'
  /** A word or a text. */
  | 'label'
  | 'place'
  /** An expression whose numbers may carry a unit, and one whose numbers may not. */
  | 'length'
  | 'count'
  | 'size'
  | 'facing'
  | 'subject';

export type Items = Reader | readonly Piece[] | { readonly list: Items; readonly between: Separator };
/** A space stands for nothing but the next item. `->` needs two items at least. */
export type Separator = ',' | 'and' | '->' | ' ';

export interface Alternative<F extends string = string> {
  readonly set: Readonly<Record<string, string | null | boolean | readonly []>>;
  readonly pieces: readonly Piece<F>[];
}

export type Context = 'file' | 'drill' | 'session' | 'beats';

/** Neighbouring statements of one family are printed in columns: all of the header, or those of one kind. */
export type Family = 'header' | 'kind';

export interface StatementForm {
  readonly keyword: string;
  /** The kind in the tree, unless the pieces set it. */
  readonly kind: string | null;
  /** What follows the keyword. */
  readonly pieces: readonly Piece[];
  /** The blocks the statement may stand in. */
  readonly stands: readonly Context[];
  /** What stands in its own block, when it has one. */
  readonly body: Context | null;
  readonly family: Family | null;
  /** How many pieces after the keyword belong to the first column. */
  readonly head: number;
  readonly doc: string;
  readonly example: string;
}

export const field = <F extends string>(name: F, as: Reader | readonly string[]): Piece<F> => ({ field: name, as });
export const node = <F extends string>(name: F, ...pieces: readonly Piece[]): Piece<F> => ({ field: name, node: pieces });
export const list = <F extends string>(name: F, items: Items, between: Separator): Piece<F> =>
  ({ field: name, list: items, between });
export const maybe = <F extends string>(...pieces: readonly Piece<F>[]): Piece<F> => ({ maybe: pieces });
export const either = <F extends string>(...alternatives: readonly Alternative<F>[]): Piece<F> =>
  ({ either: alternatives });
export const when = <F extends string>(set: Alternative['set'], ...pieces: readonly Piece<F>[]): Alternative<F> =>
  ({ set, pieces });

/** Every word of the language that a form can hold, in order. */
export function wordsOf(pieces: readonly Piece[]): string[] {
  return pieces.flatMap((piece) => {
    if (typeof piece === 'string') return piece.split(' ').filter((word) => /^\p{L}/u.test(word));
    if ('word' in piece) return [piece.word];
    if ('node' in piece) return wordsOf(piece.node);
    if ('list' in piece) return [...(piece.between === 'and' ? ['and'] : []), ...wordsOfItems(piece.list)];
    if ('maybe' in piece) return wordsOf(piece.maybe);
    if ('either' in piece) return piece.either.flatMap((one) => wordsOf(one.pieces));
    return typeof piece.as === 'string' ? [] : [...piece.as];
  });
}

function wordsOfItems(items: Items): string[] {
  if (typeof items === 'string') return [];
  if ('list' in items) return [...(items.between === 'and' ? ['and'] : []), ...wordsOfItems(items.list)];
  return wordsOf(items);
}

/** The form as a line of the reference: `station NAME at PLACE [holds COUNT] [of NAME]`. */
export function syntaxOf(pieces: readonly Piece[]): string {
  return pieces.map((piece) => {
    if (typeof piece === 'string') return piece;
    if ('word' in piece) return piece.word;
    if ('node' in piece) return syntaxOf(piece.node);
    if ('list' in piece) return syntaxOfItems(piece.list, piece.between);
    if ('maybe' in piece) return `[${syntaxOf(piece.maybe)}]`;
    if ('either' in piece) return syntaxOfChoice(piece.either);
    return typeof piece.as === 'string' ? placeholders[piece.as] : piece.as.join('|');
  }).join(' ').replaceAll(' . ', '.').trim();
}

export const placeholders: Readonly<Record<Reader, string>> = {
  name: 'NAME', noun: 'NAME', word: 'WORD', text: '"…"', label: 'LABEL', place: 'PLACE', length: 'LENGTH', count: 'COUNT',
  size: 'WIDTH x LENGTH', facing: 'DIRECTION', subject: 'PLAYER',
};

function syntaxOfItems(items: Items, between: Separator): string {
  const one = typeof items === 'string' ? placeholders[items]
    : 'list' in items ? syntaxOfItems(items.list, items.between) : syntaxOf(items);
  const separator = between === ',' ? ', ' : between === ' ' ? ' ' : ` ${between} `;
  return `${one}${separator}…`;
}

function syntaxOfChoice(alternatives: readonly Alternative[]): string {
  const all = alternatives.map((one) => syntaxOf(one.pieces));
  if (all.length === 1) return all[0]!;
  const choice = all.filter((one) => one !== '').join(' | ');
  return all.includes('') ? `[${choice}]` : `(${choice})`;
}
