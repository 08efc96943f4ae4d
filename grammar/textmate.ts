import { words } from './words.ts';
import type { WordGroup } from './words.ts';

/** The TextMate grammar that colours `.drill` files in editors. */
export function textMateGrammar(madeBy: string): string {
  const grammar = {
    comment: madeBy,
    name: 'Halfturn drill',
    scopeName: 'source.drill',
    fileTypes: ['drill'],
    patterns: [
      { name: 'comment.line.double-slash.drill', match: '//.*$' },
      ...quotes.map(({ begin, end }) => ({ name: 'string.quoted.double.drill', begin, end: `${end}|$` })),
      { name: 'variable.other.member.drill', match: `(?<=\\.)${name}` },
      { name: 'keyword.control.drill', match: `^\\s*(?:${choice(['statement'])})${wordEnd}` },
      ...[...scopes].map(([scope, groups]) => ({ name: scope, match: `${wordStart}(?:${choice(groups)})${wordEnd}` })),
      {
        match: `(\\d+(?:\\.\\d+)?|\\.\\d+)(?:\\s*(${choice(['unit'])})${wordEnd})?`,
        captures: { 1: { name: 'constant.numeric.drill' }, 2: { name: 'keyword.other.unit.drill' } },
      },
      { name: 'keyword.operator.drill', match: '->|→|[-+*/=×−–]' },
      { name: 'variable.other.drill', match: name },
    ],
  };
  return `${JSON.stringify(grammar, null, 2)}\n`;
}

const letter = '[\\p{L}\\p{Nd}\\p{M}_]';
const wordStart = `(?<!${letter})`;
const wordEnd = `(?!${letter})`;
const name = `[\\p{L}_]${letter}*`;

const quotes = [
  { begin: '"', end: '"' },
  { begin: '[“„]', end: '[“”"]' },
  { begin: '«', end: '»' },
  { begin: '»', end: '«' },
  { begin: '[‘‚]', end: '[’‘](?!\\p{L})' },
];

/** A word with several uses takes the first scope that fits. */
const scopes: ReadonlyMap<string, readonly WordGroup[]> = new Map<string, readonly WordGroup[]>([
  ['support.function.drill', ['verb']],
  ['storage.modifier.drill', ['modifier']],
  ['keyword.other.drill', ['place', 'joining', 'side', 'statement']],
  ['constant.language.drill', ['value']],
]);

/** Longer words first, so that `passes into` is not taken for `passes`. */
function choice(groups: readonly WordGroup[]): string {
  const all = new Set(words.filter((entry) => groups.includes(entry.group)).map((entry) => entry.word));
  return [...all].sort((a, b) => b.length - a.length || (a < b ? -1 : 1))
    .map((word) => word.replaceAll(' ', '\\s+')).join('|');
}
