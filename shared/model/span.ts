import type { Span } from '../../grammar/tree.ts';

/** Where a word or a string stands, without what it says. */
export function spanOf({ from, to }: Span): Span {
  return { from, to };
}

export function within(outer: Span, inner: Span): boolean {
  return outer.from <= inner.from && inner.to <= outer.to;
}
