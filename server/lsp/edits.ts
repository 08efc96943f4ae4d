import type { TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { Edit } from '../../shared/problem.ts';
import type { Client } from '../client.ts';
import { rangeOf } from '../convert.ts';
import type { Document } from '../documents.ts';

export function textEdits({ lines }: Document, edits: readonly Edit[]): TextEdit[] {
  return edits.map(({ span, text }) => ({ range: rangeOf(lines, span), newText: text }));
}

export interface Edited {
  readonly document: Document;
  readonly edits: readonly Edit[];
}

/** Bound to the versions they were worked out for, where the client can check that. */
export function workspaceEdit(files: readonly Edited[], client: Client): WorkspaceEdit {
  if (!client.versionedEdits) {
    return { changes: Object.fromEntries(files.map(({ document, edits }) => [document.uri, textEdits(document, edits)])) };
  }
  return {
    documentChanges: files.map(({ document, edits }) => ({
      textDocument: { uri: document.uri, version: document.version },
      edits: textEdits(document, edits),
    })),
  };
}
