/** What every word of a text is, for colouring. */
import { NumberToken, OpenText, Remark, Speed, Text, tokenize, keywords } from '../../grammar/tokens.ts';
import type { Span } from '../../grammar/tree.ts';
import { unitSpellings } from '../../grammar/units.ts';
import { verbForms } from '../../grammar/verbs.ts';
import { words } from '../../grammar/words.ts';
import type { NameKind } from '../model/names.ts';
import { isQuoted } from './occurrences.ts';
import type { Open } from './open.ts';
import { endOf, type Token } from './sentence.ts';

/** Standard types of the protocol, so that every colour theme knows them. The order is part of the answer. */
export const semanticTypes = [
  'keyword', 'method', 'modifier', 'enumMember', 'property', 'number', 'type', 'string', 'comment', 'variable', 'class', 'interface',
  'struct', 'operator',
] as const;
export type SemanticType = (typeof semanticTypes)[number];

export interface SemanticToken extends Span {
  readonly type: SemanticType;
  /** The word that gives a thing its name. */
  readonly declares: boolean;
}

/** In order, without overlap; none crosses a line end. */
export function semanticTokens({ text, analysis }: Open): readonly SemanticToken[] {
  const names = new Map<number, { readonly type: SemanticType; readonly declares: boolean }>();
  for (const { kind, path, span, again, uses } of analysis.names) {
    if (isQuoted(kind)) continue;
    const type = typeOfName(kind);
    for (const use of uses) names.set(use.from, { type, declares: false });
    const declared = path !== null || kind === 'area' || kind === 'coach' ? [] : [span, ...again];
    for (const each of declared) if (!names.has(each.from)) names.set(each.from, { type, declares: true });
  }
  const verbs = verbPlaces(analysis.file);
  return tokenize(text).flatMap((token, index, all): SemanticToken[] => {
    const known = names.get(token.startOffset) ?? { type: typeOfWord(token, all[index - 1], verbs), declares: false };
    return known.type === null ? [] : [{ from: token.startOffset, to: endOf(token), type: known.type, declares: known.declares }];
  });
}

function typeOfName(kind: NameKind): SemanticType {
  switch (kind) {
    case 'let': return 'variable';
    case 'station': case 'player': case 'keeper': case 'coach': return 'class';
    case 'team': case 'floaters': return 'interface';
    case 'area': case 'zone': case 'zones': return 'struct';
    case 'cone': case 'disc': case 'pole': case 'mannequin': case 'gate': case 'goal': case 'minigoal': case 'hurdle':
    case 'ladder': return 'property';
    case 'sequence': case 'phase': case 'change': case 'drill': case 'session': return 'string';
  }
}

/** The words that are modifiers and nothing else. */
const modifiers: ReadonlySet<string> = new Set(words.filter(({ group }) => group === 'modifier').flatMap(({ word }) => word.split(' '))
  .filter((word) => words.every((entry) => entry.group === 'modifier' || !entry.word.split(' ').includes(word))));
const values: ReadonlySet<string> = new Set(words.filter(({ group }) => group === 'value').map(({ word }) => word));

function typeOfWord(token: Token, before: Token | undefined, verbs: readonly Span[]): SemanticType | null {
  const { tokenType, image, startOffset } = token;
  if (tokenType === Remark) return 'comment';
  if (tokenType === Text || tokenType === OpenText) return 'string';
  if (tokenType === NumberToken) return 'number';
  if (tokenType === Speed || (before?.tokenType === NumberToken && unitSpellings.has(image))) return 'type';
  if (image === '->') return 'operator';
  if (before?.image === '.' && /^\p{L}/u.test(image)) return 'property';
  if (isIn(verbs, startOffset)) return 'method';
  if (!keywords.has(image)) return values.has(image) ? 'enumMember' : null;
  return modifiers.has(image) ? 'modifier' : 'keyword';
}

/** Where the verbs stand, in order. */
function verbPlaces(tree: unknown): readonly Span[] {
  if (typeof tree !== 'object' || tree === null) return [];
  const { verb, verbSpan } = tree as { readonly verb?: string; readonly verbSpan?: Span };
  const own = verbSpan && verbForms.some((form) => form.verb === verb) ? [verbSpan] : [];
  return [...own, ...Object.values(tree).flatMap(verbPlaces)];
}

function isIn(spans: readonly Span[], offset: number): boolean {
  let [low, high] = [0, spans.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (spans[middle]!.to <= offset) low = middle + 1;
    else high = middle;
  }
  const span = spans[low];
  return span !== undefined && span.from <= offset;
}
