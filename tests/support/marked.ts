import type { Span } from '../../grammar/tree.ts';

/** A text with the marks ⟦ and ⟧ taken out, and where they stood. */
export function marked(text: string): { readonly plain: string; readonly spans: readonly Span[] } {
  const spans: Span[] = [];
  let plain = '';
  let open = 0;
  for (const part of text.split(/([⟦⟧])/)) {
    if (part === '⟦') open = plain.length;
    else if (part === '⟧') spans.push({ from: open, to: plain.length });
    else plain += part;
  }
  return { plain, spans };
}
