import type { Span } from '../../grammar/tree.ts';
import { spansIn } from './nodes.ts';
import { touches, type Open } from './open.ts';

/** The places around an offset, from the smallest to the whole file, each within the next. */
export function selectionsAt({ text, analysis }: Open, offset: number): readonly Span[] {
  const around = [...spansIn(analysis.file)].filter((span) => touches(span, offset) && span.to > span.from);
  const sorted = [...around, { from: 0, to: text.length }].sort((a, b) => a.to - a.from - (b.to - b.from));
  return sorted.filter((span, index) => {
    const inner = sorted.slice(0, index).at(-1);
    return !inner || (span.from <= inner.from && inner.to <= span.to && span.to - span.from > inner.to - inner.from);
  });
}
