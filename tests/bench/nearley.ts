import { readFileSync } from 'node:fs';
import moo from 'moo';
import nearley from 'nearley';
import compile from 'nearley/lib/compile.js';
import generate from 'nearley/lib/generate.js';
import bootstrapped from 'nearley/lib/nearley-language-bootstrapped.js';

const words = [
  'drill', 'age', 'units', 'tempo', 'players', 'theme', 'question', 'safety', 'area', 'marked', 'every', 'let', 'cone', 'disc', 'pole',
  'mannequin', 'at', 'station', 'holds', 'ball', 'sequence', 'rotate', 'bouts', 'x', 'rest', 'rule', 'touches', 'for', 'progress', 'regress',
  'point', 'while', 'then', 'next', 'passes', 'sets', 'dribbles', 'crosses', 'runs', 'shows', 'drops', 'to', 'into', 'shoots', 'spins', 'around',
  'overlaps', 'underlaps', 'presses', 'marks', 'wins', 'the', 'from', 'turns', 'follows', 'waits', 'first', 'time', 'in', 'stride', 'soft',
  'firm', 'driven', 'lofted', 'via', 'walk', 'jog', 'run', 'sprint', 'after', 'between', 'and', 'mirror', 'of', 'across', 'width', 'length',
  'left', 'right', 'above', 'below',
];

const lexer = moo.compile({
  space: /[ \t]+/u,
  comment: /\/\/[^\r\n]*/u,
  continued: { match: /[\r\n][ \t\r\n]*(?=(?:while|then)\b|,)/u, lineBreaks: true },
  newline: { match: /\r?\n/u, lineBreaks: true },
  string: { match: /"[^"\r\n]*"/u, value: (text: string) => text.slice(1, -1) },
  number: /[0-9]+(?:\.[0-9]+)?/u,
  sign: ['->', '{', '}', '(', ')', ',', '.', '+', '-', '*', '/', '='],
  name: { match: /[\p{L}_][\p{L}\p{N}_-]*/u, type: moo.keywords({ unit: ['m', 'yd', 'ft', 'cm', 's', 'min'], word: words }) },
});
const skipped = new Set(['space', 'comment', 'continued']);
const nextToken = lexer.next.bind(lexer);
lexer.next = () => {
  let token = nextToken();
  while (token && skipped.has(token.type)) token = nextToken();
  return token;
};

const grammar = nearley.Grammar.fromCompiled(compiled(readFileSync(new URL('drill.ne', import.meta.url), 'utf8')));

/** The drill as an Earley parser reads it; throws on a text outside the benchmark's part of the language. */
export function parseWithNearley(text: string): unknown {
  const parser = new nearley.Parser(grammar);
  parser.feed(text);
  if (parser.results.length === 0) throw new Error('nearley: the text ends too early');
  return parser.results[0];
}

function compiled(source: string): unknown {
  const parser = new nearley.Parser(nearley.Grammar.fromCompiled(bootstrapped));
  parser.feed(source);
  const code: string = generate(compile(parser.results[0], {}), 'grammar').replace(/\n@lexer[^\n]*/, '');
  const module = { exports: {} };
  new Function('module', 'lexer', code)(module, lexer);
  return module.exports;
}
