import { MarkupKind, type MarkupContent } from 'vscode-languageserver';
import type { Client } from '../client.ts';

/** Markdown, or for a client that shows none the same without its marks. */
export function markup(markdown: string, { markdown: shown }: Pick<Client, 'markdown'>): MarkupContent {
  if (shown) return { kind: MarkupKind.Markdown, value: markdown };
  return { kind: MarkupKind.PlainText, value: markdown.replaceAll(/^```.*\n?|\*\*/gm, '').replaceAll('`', '').trimEnd() };
}
