/** What can come next in a sentence, read from the same forms that the parser and the printer use. */
import type { Context, Items, Piece, Reader, Separator } from '../../grammar/form.ts';
import { modifierPiece } from '../../grammar/modifiers.ts';
import { statementForms } from '../../grammar/statements/index.ts';
import { Noun, NumberToken, OpenText, Speed, Text } from '../../grammar/tokens.ts';
import { anchors } from '../../grammar/tree.ts';
import { unitSpellings } from '../../grammar/units.ts';
import { verbForms } from '../../grammar/verbs.ts';
import { isWord, type Token } from './sentence.ts';

/** `field` is the statement's or the verb's own name for what is wanted: the `zone` of a rule, the `target` of a pass. */
export type Expected =
  | { readonly kind: 'word'; readonly word: string }
  | { readonly kind: 'verb'; readonly verb: string }
  | { readonly kind: 'noun' | 'word of' | 'text'; readonly field: string; readonly statement: string }
  | { readonly kind: 'place'; readonly verb: string | null }
  | { readonly kind: 'value' }
  | { readonly kind: 'unit'; readonly field: string; readonly statement: string }
  | { readonly kind: 'anchor' | 'measure'; readonly of: string }
  | { readonly kind: 'subject'; readonly verb: string | null }
  | { readonly kind: 'statement' };

/**
 * Everything that could stand after these words, each once. Empty where the words fit no form. `values` are the names that
 * stand for numbers: a place can go on after them, as in `wide above Near`.
 */
export function expectedAfter(context: Context, words: readonly Token[], values: ReadonlySet<string>): readonly Expected[] {
  if (words.length > mostWords) return [];
  const reader = new Reading(words, values);
  if (context === 'beats') reader.beat();
  else reader.statement(context);
  return [...reader.found.values()];
}

/** Each word is read within the one before: more would be too deep. */
const mostWords = 500;

/** Gives up on a sentence that can be read in more ways than any sentence should be. */
const mostSteps = 50_000;

type Rest = (at: number) => void;

/** Tries every way to read the words; whatever is wanted just after the last of them is kept. */
class Reading {
  readonly found = new Map<string, Expected>();
  readonly #words: readonly Token[];
  readonly #values: ReadonlySet<string>;
  #statement = '';
  #verb: string | null = null;
  #steps = 0;

  constructor(words: readonly Token[], values: ReadonlySet<string>) {
    this.#words = words;
    this.#values = values;
  }

  statement(context: Context): void {
    const first = this.#words[0];
    if (first === undefined) return this.#want({ kind: 'statement' });
    const form = statementForms.find(({ keyword, stands }) => keyword === first.image && stands.includes(context));
    if (!form) return;
    this.#statement = form.keyword;
    this.#pieces(form.pieces, 1, () => {});
  }

  beat(): void {
    this.#part(0, (at) => this.#phrase('while', at, (next) => this.#others(next)));
  }

  #others(at: number): void {
    this.#part(at, (end) => this.#sign(',', end, (next) => this.#others(next)));
  }

  #part(at: number, rest: Rest): void {
    this.#verb = null;
    this.#subject(at, (next) => this.#chain(next, rest));
  }

  #chain(at: number, rest: Rest): void {
    for (const { verb, pieces } of verbForms) {
      this.#verbWords(verb, at, (next) => {
        this.#verb = verb;
        this.#pieces(pieces, next, (end) => this.#modifiers(end, (after) => {
          this.#phrase('then', after, (again) => this.#chain(again, rest));
          rest(after);
        }));
      });
    }
  }

  #modifiers(at: number, rest: Rest): void {
    rest(at);
    const verb = this.#verb;
    const more = (next: number): void => this.#piece(modifierPiece, next, (end) => {
      this.#verb = verb;
      this.#modifiers(end, rest);
    });
    more(at);
    this.#sign(',', at, more);
  }

  #pieces(pieces: readonly Piece[], at: number, rest: Rest): void {
    const [first, ...others] = pieces;
    if (first === undefined) rest(at);
    else this.#piece(first, at, (next) => this.#pieces(others, next, rest));
  }

  #piece(piece: Piece, at: number, rest: Rest): void {
    if (++this.#steps > mostSteps) return;
    if (typeof piece === 'string') return this.#phrase(piece, at, rest);
    if ('word' in piece) return [piece.word, piece.one].forEach((word) => this.#phrase(word, at, rest));
    if ('maybe' in piece) {
      rest(at);
      return this.#pieces(piece.maybe, at, rest);
    }
    if ('either' in piece) return piece.either.forEach(({ pieces }) => this.#pieces(pieces, at, rest));
    if ('node' in piece) return this.#pieces(piece.node, at, rest);
    if ('list' in piece) return this.#list(piece.list, piece.between, piece.field, at, rest);
    if (typeof piece.as === 'string') return this.#reader(piece.as, piece.field, at, rest);
    for (const word of piece.as) this.#phrase(word, at, rest);
  }

  #list(items: Items, between: Separator, field: string, at: number, rest: Rest): void {
    if (++this.#steps > mostSteps) return;
    const again: Rest = (next) => {
      rest(next);
      const more: Rest = (after) => this.#list(items, between, field, after, rest);
      if (between === ' ') more(next);
      else if (between === 'and') this.#phrase('and', next, more);
      else this.#sign(between, next, more);
    };
    if (typeof items === 'string') this.#reader(items, field, at, again);
    else if ('list' in items) this.#list(items.list, items.between, field, at, again);
    else this.#pieces(items, at, again);
  }

  #reader(reader: Reader, field: string, at: number, rest: Rest): void {
    const token = this.#words[at];
    const statement = this.#statement;
    switch (reader) {
      case 'name': return token && isWord(token) ? rest(at + 1) : undefined;
      case 'noun': return token ? this.#noun(token, at, rest) : this.#want({ kind: 'noun', field, statement });
      case 'word':
      case 'label': {
        if (!token) return this.#want({ kind: 'word of', field, statement });
        return isWord(token) || isText(token) ? rest(at + 1) : undefined;
      }
      case 'text': return token ? this.#if(isText(token), at, rest) : this.#want({ kind: 'text', field, statement });
      case 'place': return this.#place(at, rest);
      case 'length': return this.#expression(at, field, rest);
      case 'count': return this.#expression(at, null, rest);
      case 'size': return this.#expression(at, null, (x) => this.#phrase('x', x, (next) => this.#expression(next, field, rest)));
      case 'facing': {
        for (const way of ['up', 'down', 'left', 'right']) this.#phrase(way, at, rest);
        return this.#place(at, rest);
      }
      case 'subject': return this.#subject(at, rest);
    }
  }

  #subject(at: number, rest: Rest): void {
    const token = this.#words[at];
    if (!token) return this.#want({ kind: 'subject', verb: this.#verb });
    if (token.image !== 'next') return this.#noun(token, at, rest);
    const station = this.#words[at + 1];
    if (station) this.#noun(station, at + 1, rest);
    else this.#want({ kind: 'noun', field: 'next', statement: '' });
  }

  #place(at: number, rest: Rest): void {
    if (++this.#steps > mostSteps) return;
    const shifted: Rest = (end) => {
      rest(end);
      if (this.#is('+', end) && this.#is('(', end + 1)) this.#pair(end + 1, shifted);
    };
    const token = this.#words[at];
    if (!token) {
      this.#want({ kind: 'place', verb: this.#verb });
      return;
    }
    if (token.image === '(') this.#pair(at, shifted);
    if (token.image === 'next') this.#subject(at, shifted);
    if (!this.#values.has(token.image)) {
      this.#noun(token, at, (next) => {
        shifted(next);
        this.#dot('anchor', token.image, next, shifted);
      });
    }
    this.#phrase('between', at, (a) => this.#place(a, (and) => this.#phrase('and', and, (b) => this.#place(b, shifted))));
    this.#phrase('mirror of', at, (of) => this.#place(of, (across) => this.#phrase('across', across, (side) => {
      for (const each of ['width', 'length']) this.#phrase(each, side, shifted);
    })));
    this.#expression(at, 'place', (end) => {
      if (end === at + 1 && isWord(token) && !this.#values.has(token.image)) return;
      for (const side of ['left of', 'right of', 'above', 'below']) this.#phrase(side, end, (of) => this.#place(of, shifted));
      this.#phrase('from', end, (a) => this.#place(a, (to) => this.#phrase('to', to, (b) => this.#place(b, shifted))));
    });
  }

  #pair(at: number, rest: Rest): void {
    this.#sign('(', at, (x) => this.#expression(x, 'place', (comma) => this.#sign(',', comma, (y) =>
      this.#expression(y, 'place', (close) => this.#sign(')', close, rest)))));
  }

  /** `units` is the field when its numbers may carry a unit, or null. */
  #expression(at: number, units: string | null, rest: Rest): void {
    if (++this.#steps > mostSteps) return;
    const token = this.#words[at];
    if (!token) return this.#want({ kind: 'value' });
    const end: Rest = (next) => {
      rest(next);
      if (['+', '-', '*', '/'].some((sign) => this.#is(sign, next))) this.#expression(next + 1, units, rest);
    };
    if (token.image === '-') return this.#expression(at + 1, units, rest);
    if (token.image === '(') return this.#expression(at + 1, units, (next) => this.#sign(')', next, end));
    if (token.tokenType === NumberToken) {
      const unit = this.#words[at + 1];
      if (units !== null && !unit) this.#want({ kind: 'unit', field: units, statement: this.#statement });
      if (units !== null && unit && (unit.tokenType === Speed || unitSpellings.has(unit.image))) end(at + 2);
      return end(at + 1);
    }
    this.#noun(token, at, (next) => {
      end(next);
      this.#dot('measure', token.image, next, end);
    });
  }

  #dot(kind: 'anchor' | 'measure', of: string, at: number, rest: Rest): void {
    if (!this.#is('.', at)) return;
    const word = this.#words[at + 1];
    if (!word) this.#want({ kind, of });
    else if (kind === 'measure' || anchors.some((anchor) => anchor === word.image)) rest(at + 2);
  }

  #noun(token: Token, at: number, rest: Rest): void {
    this.#if(token.tokenType.CATEGORIES?.includes(Noun) ?? false, at, rest);
  }

  #verbWords(verb: string, at: number, rest: Rest): void {
    const words = verb.split(' ');
    const written = this.#words.slice(at, at + words.length);
    if (!written.every((token, index) => token.image === words[index])) return;
    if (written.length === words.length) rest(at + words.length);
    else if (written.length === 0) this.#want({ kind: 'verb', verb });
    else this.#want({ kind: 'word', word: words.slice(written.length).join(' ') });
  }

  /** Words of the language, or a sign; a sign is not worth offering. */
  #phrase(phrase: string, at: number, rest: Rest): void {
    const words = phrase.split(' ');
    const written = this.#words.slice(at, at + words.length);
    if (!written.every((token, index) => token.image === words[index])) return;
    if (written.length === words.length) rest(at + words.length);
    else if (/^\p{L}/u.test(phrase)) this.#want({ kind: 'word', word: words.slice(written.length).join(' ') });
  }

  #sign(sign: string, at: number, rest: Rest): void {
    if (this.#is(sign, at)) rest(at + 1);
  }

  #is(sign: string, at: number): boolean {
    return this.#words[at]?.image === sign;
  }

  #if(fits: boolean, at: number, rest: Rest): void {
    if (fits) rest(at + 1);
  }

  #want(expected: Expected): void {
    this.found.set(JSON.stringify(expected), expected);
  }
}

function isText({ tokenType }: Token): boolean {
  return tokenType === Text || tokenType === OpenText;
}
