/** The benchmark's part of the language with a concrete tree first, and a visitor that makes the tree of it. */
import { CstParser, EOF, type CstElement, type CstNode, type IToken } from 'chevrotain';
import {
  allTokens, AnyWord, Arrow, Close, CloseBrace, Comma, Dot, Equals, keyword, Minus, Name, Newline, Noun, NumberToken, Open, OpenBrace,
  Plus, Remark, Slash, Star, Text, tokenize,
} from '../../grammar/tokens.ts';

/** Throws on a text outside the benchmark's part of the language. */
export function parseConcrete(text: string): unknown {
  const tokens = tokenize(text).filter((token) => token.tokenType !== Remark);
  for (const each of tokens) each.endOffset = each.startOffset + each.image.length - 1;
  parser.input = tokens.filter((token, index) => token.tokenType !== Newline || endsStatement(tokens[index + 1]));
  const tree = parser.file();
  if (parser.errors.length > 0) throw new Error(`concrete: ${parser.errors[0]!.message}`);
  return { kind: 'file', items: lower.lines(child(tree, 'lines')).lines };
}

function endsStatement(next: IToken | undefined): boolean {
  return next?.image !== 'while' && next?.image !== 'then' && next?.tokenType !== Comma;
}

const units = new Set(['m', 'yd', 'ft', 'cm', 's', 'min']);
const sides = ['left', 'right', 'above', 'below'] as const;
/** After a name: it begins a distance or a fraction, not a place by itself. */
const measuring: ReadonlySet<string> = new Set([...sides, 'from', '*', '/']);
const toVerbs = ['passes', 'sets', 'touches', 'dribbles', 'crosses', 'runs', 'shows', 'drops'] as const;

class ConcreteParser extends CstParser {
  constructor() {
    super([...allTokens], { nodeLocationTracking: 'onlyOffset', maxLookahead: 2 });
    this.performSelfAnalysis();
  }

  oneOf(...texts: readonly string[]): void {
    this.OR9(texts.map((text) => ({ ALT: () => this.CONSUME9(keyword(text), { LABEL: 'word' }) })));
  }

  file = this.RULE('file', () => {
    this.SUBRULE(this.lines);
    this.CONSUME(EOF);
  });

  lines = this.RULE('lines', () => {
    this.MANY(() => this.OR([{ ALT: () => this.CONSUME(Newline) }, { ALT: () => this.SUBRULE(this.statement) }]));
  });

  block = this.RULE('block', () => {
    this.CONSUME(OpenBrace);
    this.SUBRULE(this.lines);
    this.CONSUME(CloseBrace);
  });

  beats = this.RULE('beats', () => {
    this.CONSUME(OpenBrace);
    this.MANY(() => this.OR([{ ALT: () => this.CONSUME(Newline) }, { ALT: () => this.SUBRULE(this.beat) }]));
    this.CONSUME(CloseBrace);
  });

  statement = this.RULE('statement', () => {
    this.OR([
      { ALT: () => this.SUBRULE(this.drillLine) },
      { ALT: () => this.SUBRULE(this.setting) },
      { ALT: () => this.SUBRULE(this.playersLine) },
      { ALT: () => this.SUBRULE(this.remark) },
      { ALT: () => this.SUBRULE(this.areaLine) },
      { ALT: () => this.SUBRULE(this.variable) },
      { ALT: () => this.SUBRULE(this.marker) },
      { ALT: () => this.SUBRULE(this.stationLine) },
      { ALT: () => this.SUBRULE(this.ballLine) },
      { ALT: () => this.SUBRULE(this.sequenceLine) },
      { ALT: () => this.SUBRULE(this.rotateLine) },
      { ALT: () => this.SUBRULE(this.pointLine) },
      { ALT: () => this.SUBRULE(this.boutsLine) },
      { ALT: () => this.SUBRULE(this.ruleLine) },
      { ALT: () => this.SUBRULE(this.change) },
    ]);
  });

  drillLine = this.RULE('drillLine', () => {
    this.CONSUME(keyword('drill'));
    this.CONSUME(Text);
    this.SUBRULE(this.block);
  });

  setting = this.RULE('setting', () => {
    this.oneOf('age', 'units', 'tempo');
    this.CONSUME(AnyWord);
  });

  playersLine = this.RULE('playersLine', () => {
    this.CONSUME(keyword('players'));
    this.SUBRULE(this.sum);
  });

  remark = this.RULE('remark', () => {
    this.oneOf('theme', 'question', 'safety');
    this.CONSUME(Text);
  });

  areaLine = this.RULE('areaLine', () => {
    this.CONSUME(keyword('area'));
    this.SUBRULE(this.size);
    this.OPTION(() => {
      this.CONSUME(keyword('marked'));
      this.CONSUME(keyword('every'));
      this.SUBRULE(this.sum);
    });
  });

  variable = this.RULE('variable', () => {
    this.CONSUME(keyword('let'));
    this.CONSUME(Name);
    this.CONSUME(Equals);
    this.SUBRULE(this.sum);
  });

  marker = this.RULE('marker', () => {
    this.oneOf('cone', 'disc', 'pole', 'mannequin');
    this.OPTION(() => this.CONSUME(Name));
    this.CONSUME(keyword('at'));
    this.SUBRULE(this.target);
  });

  stationLine = this.RULE('stationLine', () => {
    this.CONSUME(keyword('station'));
    this.CONSUME(Name);
    this.CONSUME(keyword('at'));
    this.SUBRULE(this.target);
    this.OPTION(() => {
      this.CONSUME(keyword('holds'));
      this.SUBRULE(this.sum);
    });
  });

  ballLine = this.RULE('ballLine', () => {
    this.CONSUME(keyword('ball'));
    this.CONSUME(keyword('at'));
    this.SUBRULE(this.target);
  });

  sequenceLine = this.RULE('sequenceLine', () => {
    this.CONSUME(keyword('sequence'));
    this.OPTION(() => this.CONSUME(Text));
    this.SUBRULE(this.beats);
  });

  rotateLine = this.RULE('rotateLine', () => {
    this.CONSUME(keyword('rotate'));
    this.AT_LEAST_ONE_SEP({ SEP: Arrow, DEF: () => this.CONSUME(Name) });
  });

  pointLine = this.RULE('pointLine', () => {
    this.CONSUME(keyword('point'));
    this.CONSUME(AnyWord);
    this.CONSUME(Text);
  });

  boutsLine = this.RULE('boutsLine', () => {
    this.CONSUME(keyword('bouts'));
    this.SUBRULE(this.size);
    this.OPTION(() => {
      this.CONSUME(keyword('rest'));
      this.SUBRULE(this.sum);
    });
  });

  ruleLine = this.RULE('ruleLine', () => {
    this.CONSUME(keyword('rule'));
    this.OR([
      { ALT: () => this.CONSUME(Text) },
      {
        ALT: () => {
          this.CONSUME(keyword('touches'));
          this.SUBRULE(this.sum);
          this.OPTION(() => {
            this.CONSUME(keyword('for'));
            this.CONSUME(Name);
          });
        },
      },
    ]);
  });

  change = this.RULE('change', () => {
    this.oneOf('progress', 'regress');
    this.CONSUME(AnyWord);
    this.CONSUME(Text);
    this.SUBRULE(this.block);
  });

  beat = this.RULE('beat', () => {
    this.SUBRULE(this.role);
    this.MANY(() => {
      this.CONSUME(keyword('while'));
      this.AT_LEAST_ONE_SEP({ SEP: Comma, DEF: () => this.SUBRULE2(this.role) });
    });
  });

  role = this.RULE('role', () => {
    this.SUBRULE(this.subject);
    this.SUBRULE(this.action);
    this.MANY(() => {
      this.CONSUME(keyword('then'));
      this.SUBRULE2(this.action);
    });
  });

  subject = this.RULE('subject', () => {
    this.OPTION(() => this.CONSUME(keyword('next')));
    this.CONSUME(Name);
  });

  action = this.RULE('action', () => {
    this.OR([
      { ALT: () => this.SUBRULE(this.towards) },
      { ALT: () => this.SUBRULE(this.roundSomeone) },
      { ALT: () => this.oneOf('turns', 'follows') },
    ]);
    this.MANY({
      GATE: () => this.LA(1).tokenType !== Comma || this.LA(2).tokenType !== Name,
      DEF: () => {
        this.OPTION(() => this.CONSUME(Comma));
        this.SUBRULE(this.modifier);
      },
    });
  });

  towards = this.RULE('towards', () => {
    this.oneOf(...toVerbs, 'shoots');
    this.OR([
      { ALT: () => this.CONSUME(keyword('to')) },
      { ALT: () => this.CONSUME(keyword('at')) },
      { ALT: () => this.CONSUME(keyword('into')) },
    ]);
    this.SUBRULE(this.target);
    this.OPTION(() => {
      this.CONSUME(keyword('for'));
      this.SUBRULE(this.subject);
    });
  });

  roundSomeone = this.RULE('roundSomeone', () => {
    this.oneOf('spins', 'overlaps', 'underlaps', 'presses', 'marks');
    this.OPTION(() => this.CONSUME(keyword('around')));
    this.SUBRULE(this.subject);
    this.OPTION2(() => {
      this.CONSUME(keyword('to'));
      this.SUBRULE(this.target);
    });
  });

  modifier = this.RULE('modifier', () => {
    this.OR([
      { ALT: () => this.oneOf('soft', 'firm', 'driven', 'lofted') },
      { ALT: () => [this.CONSUME(keyword('first')), this.CONSUME(keyword('time'))] },
      { ALT: () => [this.CONSUME(keyword('in')), this.SUBRULE(this.sum), this.CONSUME(keyword('touches'))] },
      { ALT: () => [this.CONSUME(keyword('via')), this.SUBRULE(this.target)] },
      { ALT: () => [this.CONSUME(keyword('around')), this.SUBRULE(this.subject)] },
      { ALT: () => [this.CONSUME(keyword('at')), this.CONSUME(AnyWord)] },
      { ALT: () => [this.CONSUME(keyword('after')), this.SUBRULE2(this.sum)] },
    ]);
  });

  target = this.RULE('target', () => {
    this.SUBRULE(this.spot);
    this.OPTION(() => {
      this.CONSUME(Plus);
      this.CONSUME(Open);
      this.SUBRULE(this.sum);
      this.CONSUME(Comma);
      this.SUBRULE2(this.sum);
      this.CONSUME(Close);
    });
  });

  spot = this.RULE('spot', () => {
    this.OR([
      { ALT: () => this.SUBRULE(this.coordinates), IGNORE_AMBIGUITIES: true },
      { ALT: () => this.SUBRULE(this.middle) },
      { ALT: () => this.SUBRULE(this.reflection) },
      { GATE: () => this.LA(2).tokenType === Dot && !measuring.has(this.LA(4).image), ALT: () => this.SUBRULE(this.anchor) },
      { GATE: () => this.LA(1).image === 'next' || !measuring.has(this.LA(2).image), ALT: () => this.SUBRULE(this.subject) },
      { ALT: () => this.SUBRULE(this.beside), IGNORE_AMBIGUITIES: true },
    ]);
  });

  coordinates = this.RULE('coordinates', () => {
    this.CONSUME(Open);
    this.SUBRULE(this.sum);
    this.CONSUME(Comma);
    this.SUBRULE2(this.sum);
    this.CONSUME(Close);
  });

  middle = this.RULE('middle', () => {
    this.CONSUME(keyword('between'));
    this.SUBRULE(this.spot);
    this.CONSUME(keyword('and'));
    this.SUBRULE2(this.spot);
  });

  reflection = this.RULE('reflection', () => {
    this.CONSUME(keyword('mirror'));
    this.CONSUME(keyword('of'));
    this.SUBRULE(this.spot);
    this.CONSUME(keyword('across'));
    this.oneOf('width', 'length');
  });

  anchor = this.RULE('anchor', () => {
    this.CONSUME(Noun);
    this.CONSUME(Dot);
    this.CONSUME(AnyWord);
  });

  beside = this.RULE('beside', () => {
    this.SUBRULE(this.sum);
    this.OR([
      {
        ALT: () => {
          this.oneOf(...sides);
          this.OPTION(() => this.CONSUME(keyword('of')));
          this.SUBRULE(this.spot);
        },
      },
      {
        ALT: () => {
          this.CONSUME(keyword('from'));
          this.SUBRULE2(this.spot);
          this.CONSUME(keyword('to'));
          this.SUBRULE3(this.spot);
        },
      },
    ]);
  });

  size = this.RULE('size', () => {
    this.SUBRULE(this.sum);
    this.CONSUME(keyword('x'));
    this.SUBRULE2(this.sum);
  });

  sum = this.RULE('sum', () => {
    this.SUBRULE(this.product);
    this.MANY(() => {
      this.OR([{ ALT: () => this.CONSUME(Plus, { LABEL: 'sign' }) }, { ALT: () => this.CONSUME(Minus, { LABEL: 'sign' }) }]);
      this.SUBRULE2(this.product);
    });
  });

  product = this.RULE('product', () => {
    this.SUBRULE(this.factor);
    this.MANY(() => {
      this.OR([{ ALT: () => this.CONSUME(Star, { LABEL: 'sign' }) }, { ALT: () => this.CONSUME(Slash, { LABEL: 'sign' }) }]);
      this.SUBRULE2(this.factor);
    });
  });

  factor = this.RULE('factor', () => {
    this.OR([
      { ALT: () => [this.CONSUME(NumberToken), this.OPTION({ GATE: () => units.has(this.LA(1).image), DEF: () => this.CONSUME2(AnyWord, { LABEL: 'unit' }) })] },
      { ALT: () => [this.CONSUME(Minus), this.SUBRULE(this.factor)] },
      { ALT: () => [this.CONSUME(Open), this.SUBRULE(this.sum), this.CONSUME(Close)] },
      { GATE: () => this.LA(2).tokenType === Dot, ALT: () => this.SUBRULE(this.anchor) },
      { ALT: () => this.CONSUME(Name) },
    ]);
  });
}

const parser = new ConcreteParser();

/** From a rule's concrete node to the tree. */
const lower = {
  lines: (node: CstNode) => ({ span: spanOf(node), lines: children(node, 'statement').map((each) => lower.statement(only(each))) }),
  beats: (node: CstNode) => ({ span: spanOf(node), lines: children(node, 'beat').map(lower.beat) }),
  block: (node: CstNode) => ({ ...lower.lines(child(node, 'lines')), span: spanOf(node) }),
  statement: (node: CstNode): unknown => {
    const span = spanOf(node);
    const sums = children(node, 'sum').map(lower.sum);
    const name = wordOf(token(node, 'name'));
    const text = quoteOf(token(node, 'text'));
    const at = node.children['target'] && lower.place(child(node, 'target'));
    const body = node.children['block'] && lower.block(child(node, 'block'));
    const value = wordOf(token(node, 'any word'));
    const kind = token(node, 'word')?.image;
    switch (node.name) {
      case 'drillLine': return { kind: 'drill', span, name: text, body };
      case 'setting': return { kind, span, value };
      case 'playersLine': return { kind: 'players', span, count: sums[0] };
      case 'remark': return { kind, span, text };
      case 'areaLine': return { kind: 'area', span, size: lower.size(child(node, 'size')), marked: sums[0] ?? null };
      case 'variable': return { kind: 'let', span, name, value: sums[0] };
      case 'marker': return { kind, span, name, at };
      case 'stationLine': return { kind: 'station', span, name, at, holds: sums[0] ?? null };
      case 'ballLine': return { kind: 'ball', span, at };
      case 'sequenceLine': return { kind: 'sequence', span, name: text, body: lower.beats(child(node, 'beats')) };
      case 'rotateLine': return { kind: 'rotate', span, chains: [node.children['name']!.map((each) => wordOf(each as IToken))] };
      case 'pointLine': return { kind: 'point', span, corner: value, text };
      case 'boutsLine': {
        const { width, length } = lower.size(child(node, 'size'));
        return { kind: 'bouts', span, count: width, length, rest: sums[0] ?? null };
      }
      case 'ruleLine': return text ? { kind: 'rule', span, text } : { kind: 'rule', span, count: sums[0], who: name };
      default: return { kind, span, lever: value, name: text, body };
    }
  },
  beat: (node: CstNode) => {
    const [lead, ...meanwhile] = children(node, 'role').map(lower.part);
    return { kind: 'beat', span: spanOf(node), lead, meanwhile };
  },
  part: (node: CstNode) => ({
    span: spanOf(node), subject: lower.subject(child(node, 'subject')), chain: children(node, 'action').map(lower.action),
  }),
  subject: (node: CstNode) => ({ span: spanOf(node), name: wordOf(token(node, 'name')), next: 'next' in node.children }),
  action: (node: CstNode) => {
    const core = node.children['towards'] ? child(node, 'towards') : node.children['roundSomeone'] ? child(node, 'roundSomeone') : node;
    const subject = core.children['subject'] ? lower.subject(child(core, 'subject')) : null;
    const particle = ['to', 'at', 'into', 'around'].find((each) => each in core.children && !(each === 'to' && core.name === 'roundSomeone'));
    return {
      span: spanOf(node),
      verb: [token(core, 'word')!.image, particle].filter(Boolean).join(' '),
      target: core.children['target'] ? lower.place(child(core, 'target')) : null,
      about: core.name === 'roundSomeone' ? subject : null,
      receiver: core.name === 'towards' ? subject : null,
      modifiers: children(node, 'modifier').map(lower.modifier),
    };
  },
  modifier: (node: CstNode): unknown => {
    const span = spanOf(node);
    const has = (word: string): boolean => word in node.children;
    if (has('first')) return { kind: 'first time', span };
    if (has('in')) return { kind: 'touches', span, count: lower.sum(child(node, 'sum')) };
    if (has('via')) return { kind: 'via', span, at: lower.place(child(node, 'target')) };
    if (has('around')) return { kind: 'around', span, about: lower.subject(child(node, 'subject')) };
    if (has('at')) return { kind: 'gait', span, gait: token(node, 'any word')!.image };
    if (has('after')) return { kind: 'after', span, delay: lower.sum(child(node, 'sum')) };
    return { kind: token(node, 'word')!.image, span };
  },
  place: (node: CstNode): unknown => {
    const from = lower.spot(child(node, 'spot'));
    const [dx, dy] = children(node, 'sum').map(lower.sum);
    return dx ? { kind: 'offset', span: spanOf(node), from, dx, dy } : from;
  },
  spot: (outer: CstNode): unknown => {
    const node = only(outer);
    const span = spanOf(node);
    const [x, y] = children(node, 'sum').map(lower.sum);
    const [a, b] = children(node, 'spot').map(lower.spot);
    const side = token(node, 'word')?.image;
    switch (node.name) {
      case 'coordinates': return { kind: 'at', span, x, y };
      case 'middle': return { kind: 'between', span, a, b };
      case 'reflection': return { kind: 'mirror', span, of: a, across: side };
      case 'anchor': return { kind: 'anchor', span, of: wordOf(token(node, 'noun')), anchor: wordOf(token(node, 'any word')) };
      case 'subject': return { kind: 'name', ...lower.subject(node) };
      default: return side ? { kind: 'beside', span, distance: x, side: 'of' in node.children ? `${side} of` : side, of: a } : { kind: 'along', span, fraction: x, start: a, end: b };
    }
  },
  size: (node: CstNode) => {
    const [width, length] = children(node, 'sum').map(lower.sum);
    return { span: spanOf(node), width, length };
  },
  sum: (node: CstNode): unknown => {
    const [first, ...rest] = children(node, 'product').map(lower.product);
    if (rest.length === 0) return first;
    return { kind: 'sum', span: spanOf(node), terms: [{ sign: '+', of: first }, ...rest.map((of, index) => ({ sign: signs(node)[index], of }))] };
  },
  product: (node: CstNode): unknown => {
    const [first, ...rest] = children(node, 'factor').map(lower.factor);
    if (rest.length === 0) return first;
    return { kind: 'product', span: spanOf(node), factors: [{ by: '*', of: first }, ...rest.map((of, index) => ({ by: signs(node)[index], of }))] };
  },
  factor: (node: CstNode): unknown => {
    const span = spanOf(node);
    const number = token(node, 'number');
    if (number) return { kind: 'number', span, value: Number(number.image), unit: wordOf(token(node, 'unit')) };
    if (node.children['factor']) return { kind: 'negative', span, of: lower.factor(child(node, 'factor')) };
    if (node.children['sum']) return { kind: 'group', span, inner: lower.sum(child(node, 'sum')) };
    if (!node.children['anchor']) return { kind: 'name', span, name: wordOf(token(node, 'name')) };
    const measured = child(node, 'anchor');
    return { kind: 'measure', span, of: wordOf(token(measured, 'noun')), side: wordOf(token(measured, 'any word')) };
  },
};

function children(node: CstNode, name: string): CstNode[] {
  return (node.children[name] ?? []) as CstNode[];
}

function child(node: CstNode, name: string): CstNode {
  return node.children[name]![0] as CstNode;
}

function only(node: CstNode): CstNode {
  return (Object.values(node.children)[0] as CstElement[])[0] as CstNode;
}

function token(node: CstNode, name: string): IToken | undefined {
  return node.children[name]?.[0] as IToken | undefined;
}

function signs(node: CstNode): string[] {
  return node.children['sign']!.map((each) => (each as IToken).image);
}

function spanOf(node: CstNode): { from: number; to: number } {
  return { from: node.location!.startOffset, to: node.location!.endOffset! + 1 };
}

function wordOf(each: IToken | undefined): { text: string; from: number; to: number } | null {
  return each ? { text: each.image, from: each.startOffset, to: each.endOffset! + 1 } : null;
}

function quoteOf(each: IToken | undefined): { text: string; from: number; to: number } | null {
  return each ? { text: each.image.slice(1, -1), from: each.startOffset, to: each.endOffset! + 1 } : null;
}
