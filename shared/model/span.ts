import type { Span } from '../../grammar/tree.ts';

/** Where a word or a string stands, without what it says. */
export function spanOf({ from, to }: Span): Span {
  return { from, to };
}
