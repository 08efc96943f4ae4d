/** What a client can do, read once from its `initialize` message. */
import type { InitializeParams } from 'vscode-languageserver';
import { ability } from '../shared/protocol.ts';
import { folderUri } from './places.ts';

export interface Client {
  readonly folders: readonly string[];
  /** Asks for problems itself; otherwise they are sent. */
  readonly pulls: boolean;
  /** Our own extension: knows the messages and commands of `shared/protocol.ts`. */
  readonly own: boolean;
  readonly markdown: boolean;
  readonly snippets: boolean;
  readonly related: boolean;
  readonly links: boolean;
  readonly tags: boolean;
  /** Code actions are objects, and their edits may be asked for later. */
  readonly actions: boolean;
  readonly lateEdits: boolean;
  readonly versionedEdits: boolean;
  readonly outlines: boolean;
  readonly lineFolding: boolean;
  readonly asksSettings: boolean;
  readonly registersSettings: boolean;
  readonly watches: boolean;
  readonly tellsFolders: boolean;
  readonly refreshes: { readonly problems: boolean; readonly hints: boolean; readonly lenses: boolean };
}

type Introduction = Pick<InitializeParams, 'capabilities' | 'workspaceFolders' | 'rootUri'>;

export function clientOf({ capabilities, workspaceFolders, rootUri }: Introduction): Client {
  const { textDocument = {}, workspace = {}, experimental } = capabilities;
  const shown = textDocument.publishDiagnostics ?? textDocument.diagnostic;
  const single = rootUri ? [{ uri: rootUri }] : [];
  return {
    folders: (workspaceFolders ?? single).map(({ uri }) => folderUri(uri)),
    pulls: textDocument.diagnostic !== undefined,
    own: (experimental as Readonly<Record<string, unknown>> | undefined)?.[ability] === true,
    markdown: textDocument.hover?.contentFormat?.includes('markdown') ?? false,
    snippets: textDocument.completion?.completionItem?.snippetSupport ?? false,
    related: shown?.relatedInformation ?? false,
    links: shown?.codeDescriptionSupport ?? false,
    tags: shown?.tagSupport !== undefined,
    actions: textDocument.codeAction?.codeActionLiteralSupport !== undefined,
    lateEdits: textDocument.codeAction?.resolveSupport?.properties.includes('edit') ?? false,
    versionedEdits: workspace.workspaceEdit?.documentChanges ?? false,
    outlines: textDocument.documentSymbol?.hierarchicalDocumentSymbolSupport ?? false,
    lineFolding: textDocument.foldingRange?.lineFoldingOnly ?? false,
    asksSettings: workspace.configuration ?? false,
    registersSettings: workspace.didChangeConfiguration?.dynamicRegistration ?? false,
    watches: workspace.didChangeWatchedFiles?.dynamicRegistration ?? false,
    tellsFolders: workspace.workspaceFolders ?? false,
    refreshes: {
      problems: workspace.diagnostics?.refreshSupport ?? false,
      hints: workspace.inlayHint?.refreshSupport ?? false,
      lenses: workspace.codeLens?.refreshSupport ?? false,
    },
  };
}
