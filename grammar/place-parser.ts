import { EmbeddedActionsParser, EOF, MismatchedTokenException } from 'chevrotain';
import type { IOrAlt, IToken, ParserMethod, TokenType } from 'chevrotain';
import type { Fault } from './fault.ts';
import { endOf, spanOf } from './span.ts';
import { nearest } from './spelling.ts';
import {
  allTokens, AnyWord, Close, Comma, Dot, keyword, keywords, Minus, Name, Noun, NumberToken, Open, OpenText, Plus, Slash,
  Speed, Star, Text,
} from './tokens.ts';
import type { Across, Beside, Expression, Facing, Place, Quote, Size, Span, Subject, Word } from './tree.ts';
import { unitSpellings } from './units.ts';

export type Rule<T> = ParserMethod<[], T>;
type Choice<T> = IOrAlt<T>[];

/** Deeper nesting than anyone can read. */
const deepest = 64;

const times = keyword('x');
const between = keyword('between');
const mirror = keyword('mirror');
const next = keyword('next');
const and = keyword('and');
const of = keyword('of');
const from = keyword('from');
const to = keyword('to');
const across = keyword('across');
const above = keyword('above');
const below = keyword('below');
const left = keyword('left');
const right = keyword('right');
const up = keyword('up');
const down = keyword('down');
const width = keyword('width');
const length = keyword('length');

const afterDistance: ReadonlySet<TokenType> = new Set([left, right, above, below, from, Star, Slash, Minus]);
const afterBracket: ReadonlySet<TokenType> = new Set([Plus, ...afterDistance]);
const sides: ReadonlySet<TokenType> = new Set([width, length]);
/** Words that are more likely meant than a unit when a word after a number looks like one of them. */
const longKeywords = [...keywords.keys()].filter((word) => word.length > 2);

/** The rules for values and places. A class because chevrotain's rules are methods. */
export class PlaceParser extends EmbeddedActionsParser {
  /** What is wrong with the line, when a rule found it itself. */
  protected refusal: Fault | null = null;
  /** How many brackets and places are open. */
  protected depth = 0;
  /** Whether numbers may carry a unit. */
  protected units = true;

  protected readonly declared: Rule<Word>;
  protected readonly noun: Rule<Word>;
  protected readonly text: Rule<Quote>;
  protected readonly label: Rule<Word | Quote>;
  protected readonly expression: Rule<Expression>;
  protected readonly product: Rule<Expression>;
  protected readonly factor: Rule<Expression>;
  protected readonly size: Rule<Size>;
  protected readonly place: Rule<Place>;
  protected readonly spot: Rule<Place>;
  protected readonly facing: Rule<Facing>;
  protected readonly subject: Rule<Subject>;

  /** Looking for faults in the rules takes half the time of a start; they are the same every time, so only a test looks. */
  constructor({ validated = false } = {}) {
    super([...allTokens], {
      maxLookahead: 1,
      recoveryEnabled: false,
      skipValidations: !validated,
      // Messages are made elsewhere; here it is enough to name the tokens that could have stood there.
      errorMessageProvider: {
        buildMismatchTokenMessage: ({ expected }) => expected.name,
        buildNoViableAltMessage: ({ expectedPathsPerAlt }) => firstNames(expectedPathsPerAlt.flat()),
        buildEarlyExitMessage: ({ expectedIterationPaths }) => firstNames(expectedIterationPaths),
        buildNotAllInputParsedMessage: () => '',
      },
    });

    this.declared = this.RULE('Declared', () => wordOf(this.CONSUME(Name)));
    this.noun = this.RULE('Noun', () => wordOf(this.CONSUME(Noun)));
    this.text = this.RULE('Text', () => quoteOf(this.CONSUME(Text)));
    this.label = this.RULE('Label', () => this.OR<Choice<Word | Quote>>([
      { ALT: () => wordOf(this.CONSUME(AnyWord)) },
      { ALT: () => quoteOf(this.CONSUME(Text)) },
    ]));

    this.expression = this.RULE('Expression', (): Expression => {
      const start = this.start();
      const first = this.SUBRULE(this.product);
      const terms: { sign: '+' | '-'; of: Expression }[] = [{ sign: '+', of: first }];
      this.MANY(() => {
        const sign = this.OR<Choice<'+' | '-'>>([
          { ALT: () => { this.CONSUME(Plus); return '+'; } },
          { ALT: () => { this.CONSUME(Minus); return '-'; } },
        ]);
        terms.push({ sign, of: this.SUBRULE2(this.product) });
      });
      return terms.length === 1 ? first : { kind: 'sum', span: this.since(start), terms };
    });

    this.product = this.RULE('Product', (): Expression => {
      const start = this.start();
      const first = this.SUBRULE(this.factor);
      const factors: { by: '*' | '/'; of: Expression }[] = [{ by: '*', of: first }];
      this.MANY(() => {
        const by = this.OR<Choice<'*' | '/'>>([
          { ALT: () => { this.CONSUME(Star); return '*'; } },
          { ALT: () => { this.CONSUME(Slash); return '/'; } },
        ]);
        factors.push({ by, of: this.SUBRULE2(this.factor) });
      });
      return factors.length === 1 ? first : { kind: 'product', span: this.since(start), factors };
    });

    this.factor = this.RULE('Factor', () => {
      const start = this.start();
      return this.OR<Choice<Expression>>([
        {
          ALT: () => {
            const value = this.CONSUME(NumberToken);
            let unit: Word | null = null;
            this.OPTION1({
              GATE: () => this.units && isUnit(this.LA(1)),
              DEF: () => {
                unit = this.OR1<Choice<Word>>([
                  { ALT: () => wordOf(this.CONSUME(Name)) },
                  { ALT: () => wordOf(this.CONSUME(Speed)) },
                ]);
              },
            });
            return { kind: 'number', span: this.since(start), value: this.numberOf(value), unit };
          },
        },
        {
          ALT: () => {
            const name = wordOf(this.CONSUME(Noun));
            let side: Word | null = null;
            this.OPTION2(() => {
              this.CONSUME(Dot);
              side = wordOf(this.CONSUME(AnyWord));
            });
            return side === null
              ? { kind: 'name', span: this.since(start), name }
              : { kind: 'measure', span: this.since(start), of: name, side };
          },
        },
        {
          ALT: () => {
            this.enter(this.CONSUME(Open));
            const inner = this.SUBRULE(this.expression);
            this.CONSUME(Close);
            this.depth--;
            return { kind: 'group', span: this.since(start), inner };
          },
        },
        {
          ALT: () => {
            this.enter(this.CONSUME(Minus));
            const positive = this.SUBRULE(this.factor);
            this.depth--;
            return { kind: 'negative', span: this.since(start), of: positive };
          },
        },
      ]);
    });

    this.size = this.RULE('Size', () => {
      const start = this.start();
      const wide = this.SUBRULE(this.expression);
      this.CONSUME(times);
      const long = this.SUBRULE2(this.expression);
      return { span: this.since(start), width: wide, length: long };
    });

    this.place = this.RULE('Place', () => {
      const start = this.start();
      let place = this.SUBRULE(this.spot);
      const outside = this.depth;
      this.MANY(() => {
        this.enter(this.CONSUME(Plus));
        this.CONSUME(Open);
        const dx = this.SUBRULE(this.expression);
        this.CONSUME(Comma);
        const dy = this.SUBRULE2(this.expression);
        this.CONSUME(Close);
        place = { kind: 'offset', span: this.since(start), from: place, dx, dy };
      });
      this.depth = outside;
      return place;
    });

    this.spot = this.RULE('Spot', () => {
      const start = this.start();
      const distance = this.startsDistance();
      this.enter(this.LA(1));
      const place = this.OR<Choice<Place>>({
        // The gates decide between a place and the distance from one: both may begin with a bracket or a name.
        IGNORE_AMBIGUITIES: true,
        DEF: [
          {
            GATE: () => !distance,
            ALT: (): Place => {
              this.CONSUME(Open);
              const x = this.SUBRULE(this.expression);
              this.CONSUME(Comma);
              const y = this.SUBRULE2(this.expression);
              this.CONSUME(Close);
              return { kind: 'at', span: this.since(start), x, y };
            },
          },
          {
            GATE: () => !distance,
            ALT: (): Place => {
              const name = wordOf(this.CONSUME(Noun));
              let anchor: Word | null = null;
              this.OPTION(() => {
                this.CONSUME(Dot);
                anchor = wordOf(this.CONSUME(AnyWord));
              });
              return anchor === null
                ? { kind: 'name', span: this.since(start), name, next: false }
                : { kind: 'anchor', span: this.since(start), of: name, anchor };
            },
          },
          {
            ALT: (): Place => {
              this.CONSUME(next);
              const name = wordOf(this.CONSUME2(Noun));
              return { kind: 'name', span: this.since(start), name, next: true };
            },
          },
          {
            ALT: (): Place => {
              this.CONSUME(between);
              const a = this.SUBRULE(this.place);
              this.CONSUME(and);
              const b = this.SUBRULE2(this.place);
              return { kind: 'between', span: this.since(start), a, b };
            },
          },
          {
            ALT: (): Place => {
              this.CONSUME(mirror);
              this.CONSUME(of);
              const mirrored = this.SUBRULE3(this.place);
              this.CONSUME(across);
              const side = this.OR2<Choice<Across>>([
                { ALT: () => { this.CONSUME(width); return 'width'; } },
                { ALT: () => { this.CONSUME(length); return 'length'; } },
              ]);
              return { kind: 'mirror', span: this.since(start), of: mirrored, across: side };
            },
          },
          {
            ALT: (): Place => {
              const far = this.SUBRULE3(this.expression);
              return this.OR3<Choice<Place>>([
                {
                  ALT: () => {
                    const side = this.OR4<Choice<Beside>>([
                      { ALT: () => { this.CONSUME(left); this.CONSUME2(of); return 'left of'; } },
                      { ALT: () => { this.CONSUME(right); this.CONSUME3(of); return 'right of'; } },
                      { ALT: () => { this.CONSUME(above); return 'above'; } },
                      { ALT: () => { this.CONSUME(below); return 'below'; } },
                    ]);
                    const beside = this.SUBRULE4(this.place);
                    return { kind: 'beside', span: this.since(start), distance: far, side, of: beside };
                  },
                },
                {
                  ALT: () => {
                    this.CONSUME(from);
                    const a = this.SUBRULE5(this.place);
                    this.CONSUME(to);
                    const b = this.SUBRULE6(this.place);
                    return { kind: 'along', span: this.since(start), fraction: far, start: a, end: b };
                  },
                },
              ]);
            },
          },
        ],
      });
      this.depth--;
      return place;
    });

    this.facing = this.RULE('Facing', () => {
      const start = this.start();
      return this.OR<Choice<Facing>>([
        { ALT: () => { this.CONSUME(up); return { kind: 'way', span: this.since(start), way: 'up' }; } },
        { ALT: () => { this.CONSUME(down); return { kind: 'way', span: this.since(start), way: 'down' }; } },
        { ALT: () => { this.CONSUME(left); return { kind: 'way', span: this.since(start), way: 'left' }; } },
        { ALT: () => { this.CONSUME(right); return { kind: 'way', span: this.since(start), way: 'right' }; } },
        {
          ALT: () => {
            const at = this.SUBRULE(this.place);
            return { kind: 'towards', span: this.since(start), at };
          },
        },
      ]);
    });

    this.subject = this.RULE('Subject', () => {
      const start = this.start();
      let waiting = false;
      this.OPTION(() => {
        this.CONSUME(next);
        waiting = true;
      });
      const name = wordOf(this.CONSUME(Noun));
      return { span: this.since(start), name, next: waiting };
    });
  }

  protected start(): number {
    return this.LA(1).startOffset;
  }

  protected since(from: number): Span {
    return { from, to: endOf(this.LA(0)) };
  }

  protected refuse(token: IToken, message: string, fix: Fault['fix'] = null): never {
    this.refusal = { span: spanOf(token), message, help: null, fix };
    throw new MismatchedTokenException(message, token, this.LA(0));
  }

  /** Guards against nesting that would overflow the stack, here or in whatever walks the tree later. */
  protected enter(token: IToken): void {
    if (++this.depth <= deepest) return;
    this.refuse(token, `This is more than ${deepest} deep: give a part of it a name with \`let\`, a pole or a station.`);
  }

  protected numberOf(token: IToken): number {
    const value = Number(token.image);
    if (value === Infinity) this.refuse(token, 'This number is too large.');
    return value;
  }

  /** Whether a place begins with a distance, as in `2 left of P` or `wide above P`. */
  protected startsDistance(): boolean {
    const first = this.LA(1).tokenType;
    if (first === NumberToken || first === Minus) return true;
    if (first === Open) return this.bracketHoldsDistance();
    const second = this.LA(2).tokenType;
    if (second === Dot) return sides.has(this.LA(3).tokenType);
    return afterDistance.has(second) || (second === Plus && this.LA(3).tokenType !== Open);
  }

  /** Whether the bracket that comes next is no point but part of a distance, as in `(a + b) above P`. */
  protected bracketHoldsDistance(): boolean {
    let open = 0;
    for (let ahead = 1; ; ahead++) {
      const type = this.LA(ahead).tokenType;
      if (type === Open) open++;
      else if (type === Close && --open === 0) return afterBracket.has(this.LA(ahead + 1).tokenType);
      else if ((type === Comma && open === 1) || type === EOF) return false;
    }
  }
}

export function wordOf(token: IToken): Word {
  return { ...spanOf(token), text: token.image };
}

/** Without its marks. */
export function quoteOf(token: IToken): Quote {
  return { ...spanOf(token), text: token.tokenType === OpenText ? token.image.slice(1).trim() : token.image.slice(1, -1) };
}

function isUnit(token: IToken): boolean {
  if (token.tokenType !== Name) return token.tokenType === Speed;
  return unitSpellings.has(token.image)
    || nearest(token.image, unitSpellings.keys()) !== null || nearest(token.image, longKeywords) === null;
}

function firstNames(paths: readonly (readonly TokenType[])[]): string {
  return [...new Set(paths.map((path) => path[0]!.name))].join('\n');
}
