/** Walking the syntax tree without knowing its kinds. */
import type { Span } from '../../grammar/tree.ts';

/** Every part of a tree that has a place in the text, outside in. Nesting is bounded by the parser. */
export function* spansIn(tree: unknown): Iterable<Span> {
  if (typeof tree !== 'object' || tree === null) return;
  const span = (tree as { readonly span?: Span }).span ?? tree;
  if (isSpan(span)) yield span;
  for (const [key, value] of Object.entries(tree)) if (key !== 'span') yield* spansIn(value);
}

/** The outermost node around these characters for which the test holds. */
export function nodeAround<T extends object>(tree: unknown, { from, to }: Span, is: (node: object) => node is T): T | null {
  if (typeof tree !== 'object' || tree === null) return null;
  const { span } = tree as { readonly span?: Span };
  if (span && (span.to < to || span.from > from)) return null;
  if (is(tree)) return tree;
  for (const value of Object.values(tree)) {
    const found = nodeAround(value, { from, to }, is);
    if (found !== null) return found;
  }
  return null;
}

function isSpan(value: object): value is Span {
  return 'from' in value && 'to' in value && typeof value.from === 'number' && typeof value.to === 'number';
}
