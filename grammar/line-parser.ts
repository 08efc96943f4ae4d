import type { IToken, TokenType } from 'chevrotain';
import type { Fault } from './fault.ts';
import type { Items, Piece, Reader, StatementForm } from './form.ts';
import { modifierPiece, modifierStarts } from './modifiers.ts';
import { PlaceParser, wordOf } from './place-parser.ts';
import type { Rule } from './place-parser.ts';
import { statementForms } from './statements/index.ts';
import { nearest } from './spelling.ts';
import { AnyWord, Comma, Dot, keyword, keywords, Minus, Plus, sameAs, signs, Slash, Star } from './tokens.ts';
import type { Action, Modifier, Part } from './tree.ts';
import { verbForms } from './verbs.ts';
import type { VerbForm } from './verbs.ts';

/** The fields of a node while it is read. */
export type Draft = Record<string, unknown>;

/** Where and why reading a line stopped. */
export interface Stop {
  readonly token: IToken;
  /** The tokens that could have stood there, by name; empty when the line should have ended. */
  readonly expected: readonly string[];
  /** A fault that the rule found itself. */
  readonly refusal: Fault | null;
}

/**
 * Reads the tokens of one line as a statement of this form, or as a beat when there is no form.
 * The draft lacks what a line cannot know: its margin, the span of its block and the block.
 */
export function readLine(form: StatementForm | null, tokens: IToken[]): Draft | Stop {
  return parser.read(form, tokens);
}

export function isStop(result: Draft | Stop): result is Stop {
  return 'expected' in result;
}

type Step = (draft: Draft) => void;

const whileWord = keyword('while');
const thenWord = keyword('then');
const times = keyword('x');
const modifierTypes: ReadonlySet<TokenType> = new Set([...modifierStarts].map(keyword));
const insideValue: ReadonlySet<TokenType> = new Set([times, Plus, Minus, Star, Slash, Dot]);

/** Builds a rule from every form, and adds those for beats. */
class LineParser extends PlaceParser {
  readonly #statements = new Map<StatementForm, Rule<Draft>>();
  /** Tells the productions of one rule apart, as chevrotain asks for. */
  #index = 0;
  readonly #action: Rule<Action>;
  readonly #part: Rule<Part>;
  readonly #beat: Rule<Draft>;

  constructor() {
    super();
    for (const form of statementForms) {
      const steps = this.#rule(() => this.#steps([form.keyword, ...form.pieces]));
      const kind = form.kind === null ? {} : { kind: form.kind };
      this.#statements.set(form, this.RULE(`statement_${form.keyword}`, () => {
        const draft: Draft = { ...kind };
        steps(draft);
        return draft;
      }));
    }

    const [verb, modifier] = this.#rule(() => [this.#verb(), this.#step(modifierPiece)] as const);
    this.#action = this.RULE('Action', () => {
      const start = this.start();
      const draft: Draft = { target: null, about: null, receiver: null };
      verb(draft);
      const { wait, ...action } = draft;
      const modifiers: unknown[] = wait === undefined ? [] : [wait];
      this.many(0, {
        GATE: () => this.LA(1).tokenType !== Comma || modifierTypes.has(this.LA(2).tokenType),
        DEF: () => {
          this.option(0, () => { this.consume(0, Comma); });
          const from = this.start();
          const one: Draft = {};
          modifier(one);
          modifiers.push({ ...one, span: this.since(from) });
        },
      });
      return { ...action, span: this.since(start), modifiers: modifiers as Modifier[] } as unknown as Action;
    });

    this.#part = this.RULE('Part', () => {
      const start = this.start();
      const subject = this.SUBRULE(this.subject);
      const chain = [this.SUBRULE(this.#action)];
      this.MANY({
        GATE: () => this.LA(1).tokenType === thenWord || this.LA(2).tokenType === thenWord,
        DEF: () => {
          this.OPTION(() => { this.CONSUME(Comma); });
          this.CONSUME(thenWord);
          chain.push(this.SUBRULE2(this.#action));
        },
      });
      return { span: this.since(start), subject, chain };
    });

    this.#beat = this.RULE('Beat', () => {
      const lead = this.SUBRULE(this.#part);
      const meanwhile: Part[] = [];
      this.MANY({
        GATE: () => this.LA(1).tokenType === whileWord || this.LA(2).tokenType === whileWord || meanwhile.length > 0,
        DEF: () => {
          this.OR([
            {
              ALT: () => {
                this.CONSUME(Comma);
                this.OPTION(() => { this.CONSUME(whileWord); });
              },
            },
            { ALT: () => { this.CONSUME2(whileWord); } },
          ]);
          meanwhile.push(this.SUBRULE2(this.#part));
        },
      });
      return { kind: 'beat', lead, meanwhile };
    });
    this.performSelfAnalysis();
  }

  read(form: StatementForm | null, tokens: IToken[]): Draft | Stop {
    this.refusal = null;
    this.depth = 0;
    this.units = true;
    this.input = tokens;
    const draft = form === null ? this.#beat() : this.#statements.get(form)!.call(this);
    if (this.refusal !== null) return { token: tokens[0]!, expected: [], refusal: this.refusal };
    const error = this.errors[0];
    if (error === undefined) return draft;
    const { token, message } = error;
    return { token, expected: message === '' ? [] : message.split('\n'), refusal: null };
  }

  /** Compiles what makes up one rule. */
  #rule<T>(compile: () => T): T {
    this.#index = 0;
    return compile();
  }

  #steps(pieces: readonly Piece[]): Step {
    const options = trailingOptions(pieces);
    const fixed = options.length > 1 ? pieces.slice(0, -options.length) : pieces;
    const steps = fixed.map((piece) => this.#step(piece));
    if (options.length > 1) steps.push(this.#options(options));
    return (draft) => { for (const step of steps) step(draft); };
  }

  /** What may end a line, in any order. */
  #options(options: readonly Option[]): Step {
    const index = ++this.#index;
    const alternatives = options.map(({ maybe }) => this.#steps(maybe));
    const fields = absent(options.flatMap(({ maybe }) => maybe));
    return (draft) => {
      Object.assign(draft, fields);
      const seen = new Set<Step>();
      this.many(index, () => {
        this.or(index, alternatives.map((steps) => ({
          GATE: () => !seen.has(steps),
          ALT: () => {
            seen.add(steps);
            steps(draft);
          },
        })));
      });
    };
  }

  #step(piece: Piece): Step {
    const index = ++this.#index;
    if (typeof piece === 'string') return this.#words(piece);
    if ('word' in piece) return this.#words(piece.word);
    if ('maybe' in piece) return this.#maybe(piece.maybe, index);
    if ('node' in piece) {
      const steps = this.#steps(piece.node);
      return (draft) => {
        const start = this.start();
        const node: Draft = {};
        steps(node);
        node['span'] = this.since(start);
        draft[piece.field] = node;
      };
    }
    if ('list' in piece) {
      const read = this.#list(piece);
      return (draft) => { draft[piece.field] = read(); };
    }
    if ('either' in piece) {
      const alternatives = piece.either.map(({ set, pieces }) => ({ set, steps: this.#steps(pieces) }));
      return (draft) => {
        this.or(index, alternatives.map(({ set, steps }) => ({
          ALT: () => {
            Object.assign(draft, set);
            steps(draft);
          },
        })));
      };
    }
    const read = typeof piece.as === 'string' ? this.#reader(piece.as) : this.#oneOf(piece.as);
    return (draft) => { draft[piece.field] = read(); };
  }

  #words(text: string): Step {
    const types = text.split(' ').map((each) => (
      [++this.#index, sameAs.get(each) ?? keywords.get(each) ?? signs.find((sign) => sign.name === each)!] as const
    ));
    return () => { for (const [index, type] of types) this.consume(index, type); };
  }

  #maybe(pieces: readonly Piece[], index: number): Step {
    const steps = this.#steps(pieces);
    const fields = absent(pieces);
    const [first] = pieces;
    // `goal wide x 2`: a name before a sign is a value, not the name of the goal.
    const named = typeof first === 'object' && 'as' in first && first.as === 'name';
    return (draft) => {
      Object.assign(draft, fields);
      this.option(index, { GATE: () => !named || !insideValue.has(this.LA(2).tokenType), DEF: () => steps(draft) });
    };
  }

  #list({ list: items, between }: Extract<Items, { list: Items }>): () => unknown[] {
    const index = ++this.#index;
    const first = this.#item(items);
    const comma = ++this.#index;
    const separator: Step = between === ' '
      ? () => { this.option(comma, () => { this.consume(comma, Comma); }); }
      : this.#words(between);
    const further = this.#item(items);
    return () => {
      const all = [first()];
      const more = (): void => {
        separator({});
        all.push(further());
      };
      if (between === '->') this.atLeastOne(index, more);
      else this.many(index, more);
      return all;
    };
  }

  #item(items: Items): () => unknown {
    if (typeof items === 'string') return this.#reader(items);
    if ('list' in items) return this.#list(items);
    const steps = this.#steps(items);
    return () => {
      const item: Draft = {};
      steps(item);
      return item;
    };
  }

  #reader(reader: Reader): () => unknown {
    const index = ++this.#index;
    switch (reader) {
      case 'name': return () => this.subrule(index, this.declared);
      case 'noun': return () => this.subrule(index, this.noun);
      case 'word': return () => wordOf(this.consume(index, AnyWord));
      case 'text': return () => this.subrule(index, this.text);
      case 'label': return () => this.subrule(index, this.label);
      case 'place': return () => this.subrule(index, this.place);
      case 'length': return () => this.subrule(index, this.expression);
      case 'count': return () => {
        this.units = false;
        const count = this.subrule(index, this.expression);
        this.units = true;
        return count;
      };
      case 'size': return () => this.subrule(index, this.size);
      case 'facing': return () => this.subrule(index, this.facing);
      case 'subject': return () => this.subrule(index, this.subject);
    }
  }

  #oneOf(choice: readonly string[]): () => string {
    const index = ++this.#index;
    return () => {
      const token = this.consume(index, AnyWord);
      this.ACTION(() => {
        if (choice.includes(token.image)) return;
        const meant = nearest(token.image, choice);
        const all = choice.map((each) => `\`${each}\``).join(', ').replace(/, ([^,]*)$/, ' or $1');
        if (meant === null) this.refuse(token, `\`${token.image}\` cannot stand here: it is one of ${all}.`);
        this.refuse(token, `\`${token.image}\`: did you mean \`${meant}\`?`, { title: `Write \`${meant}\``, text: meant });
      });
      return token.image;
    };
  }

  /** Verbs that begin with the same word are told apart by the next. */
  #verb(): Step {
    const firsts = [...new Set(verbForms.map(({ verb }) => verb.split(' ')[0]!))];
    const alternatives = firsts.map((first) => ({
      index: ++this.#index, type: keyword(first), choice: ++this.#index,
      rest: verbForms.filter(({ verb }) => verb.split(' ')[0] === first).map((form) => this.#restOfVerb(form)),
    }));
    const index = ++this.#index;
    return (draft) => {
      const start = this.start();
      this.or(index, alternatives.map(({ index: own, type, rest, choice }) => ({
        ALT: () => {
          this.consume(own, type);
          const [only] = rest;
          if (rest.length === 1) only!(draft, start);
          else this.or(choice, rest.map((each) => ({ ALT: () => each(draft, start) })));
        },
      })));
    };
  }

  #restOfVerb({ verb, pieces }: VerbForm): (draft: Draft, start: number) => void {
    const rest = verb.split(' ').slice(1).join(' ');
    const words = rest === '' ? () => {} : this.#words(rest);
    const steps = this.#steps(pieces);
    return (draft, start) => {
      draft['verb'] = verb;
      words(draft);
      draft['verbSpan'] = this.since(start);
      steps(draft);
    };
  }
}

type Option = Extract<Piece, { maybe: unknown }>;

function trailingOptions(pieces: readonly Piece[]): readonly Option[] {
  const last = pieces.findLastIndex((piece) => typeof piece === 'string' || !('maybe' in piece));
  return pieces.slice(last + 1) as readonly Option[];
}

/** What the fields of an optional piece hold when it is not written. */
function absent(pieces: readonly Piece[]): Draft {
  return Object.fromEntries(pieces.flatMap((piece): [string, null | []][] => (
    typeof piece !== 'string' && 'field' in piece ? [[piece.field, 'list' in piece ? [] : null]] : []
  )));
}

const parser = new LineParser();
