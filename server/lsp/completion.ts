import { CompletionItemKind, InsertTextFormat, type CompletionItem } from 'vscode-languageserver';
import type { Completion, CompletionKind } from '../../shared/service/complete.ts';
import type { Client } from '../client.ts';
import { rangeOf } from '../convert.ts';
import type { Document } from '../documents.ts';
import { markup } from './markup.ts';

export function completionItems(completions: readonly Completion[], { lines }: Document, client: Client): CompletionItem[] {
  return completions
    .filter(({ kind }) => kind !== 'snippet' || client.snippets)
    .map(({ label, kind, detail, doc, insert, rank, replaces }, index) => ({
      label,
      kind: kinds[kind],
      detail,
      ...(doc === '' ? {} : { documentation: markup(doc, client) }),
      sortText: `${rank}${String(index).padStart(4, '0')}`,
      textEdit: { range: rangeOf(lines, replaces), newText: insert },
      ...(kind === 'snippet' ? { insertTextFormat: InsertTextFormat.Snippet } : {}),
    }));
}

const kinds: Readonly<Record<CompletionKind, CompletionItemKind>> = {
  keyword: CompletionItemKind.Keyword, verb: CompletionItemKind.Method, value: CompletionItemKind.EnumMember, unit: CompletionItemKind.Unit,
  anchor: CompletionItemKind.Property, snippet: CompletionItemKind.Snippet, let: CompletionItemKind.Variable, area: CompletionItemKind.Struct,
  zone: CompletionItemKind.Struct, zones: CompletionItemKind.Struct, cone: CompletionItemKind.Field, disc: CompletionItemKind.Field,
  pole: CompletionItemKind.Field, mannequin: CompletionItemKind.Field, gate: CompletionItemKind.Field, goal: CompletionItemKind.Field,
  minigoal: CompletionItemKind.Field, hurdle: CompletionItemKind.Field, ladder: CompletionItemKind.Field, coach: CompletionItemKind.Class,
  station: CompletionItemKind.Class, team: CompletionItemKind.Interface, floaters: CompletionItemKind.Interface, player: CompletionItemKind.Class,
  keeper: CompletionItemKind.Class, sequence: CompletionItemKind.Event, phase: CompletionItemKind.Event, change: CompletionItemKind.Event,
  drill: CompletionItemKind.Module, session: CompletionItemKind.Module, file: CompletionItemKind.File,
};
