/** The language server: the features of `shared/service` over one connection. Knows neither Node nor the browser. */
import {
  CodeActionKind, CodeLensRefreshRequest, DiagnosticRefreshRequest, DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification, InlayHintRefreshRequest, ResponseError, TextDocumentSyncKind,
  type Connection, type DocumentDiagnosticReport, type ServerCapabilities,
} from 'vscode-languageserver';
import { analysedNotification, type Analysed } from '../shared/protocol.ts';
import manifest from '../package.json' with { type: 'json' };
import { clientOf, type Client } from './client.ts';
import { documentsOf } from './documents.ts';
import { answerQuestions } from './features.ts';
import { fixAllKind } from './lsp/actions.ts';
import { diagnosticsOf } from './lsp/problems.ts';
import { legend } from './lsp/tokens.ts';
import { folderUri, keyOf } from './places.ts';
import { publisherOf } from './publisher.ts';
import { runner } from './run.ts';
import type { Runtime } from './runtime.ts';
import { preferencesFrom, usual } from './settings.ts';

/** Serves one client until it shuts the connection down. */
export function startServer(connection: Connection, runtime: Runtime): void {
  const documents = documentsOf(runtime);
  let client = clientOf({ capabilities: {}, rootUri: null });
  let preferences = usual;
  /** Counts the settings, so that an answer of the settings before is no longer taken for current. */
  let settings = 0;
  const watched = new Map<string, () => void>();
  const log = (error: unknown): void => connection.console.error(String(error));
  const publisher = publisherOf(runtime, (uri) => void report(uri).catch(log));
  /** Of one thing: all that the client asked for. */
  const refresher = publisherOf(runtime, refresh);
  const run = runner(runtime, log);

  connection.onInitialize((params) => {
    client = clientOf(params);
    documents.setFolders(client.folders);
    return { capabilities: capabilitiesFor(client), serverInfo: { name: manifest.name, version: manifest.version } };
  });

  connection.onInitialized(async () => {
    const { client: registry, workspace } = connection;
    const watchers = [{ globPattern: '**/*.drill' }];
    if (client.watches) await registry.register(DidChangeWatchedFilesNotification.type, { watchers });
    if (client.registersSettings) await registry.register(DidChangeConfigurationNotification.type, { section: 'halfturn' });
    if (client.tellsFolders) workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
      const gone = new Set(removed.map(({ uri }) => folderUri(uri)));
      const kept = documents.folders().filter((folder) => !gone.has(folder));
      documents.setFolders([...kept, ...added.map(({ uri }) => folderUri(uri))]);
      refreshAll();
    });
    if (client.asksSettings) await askSettings();
  });

  connection.onShutdown(() => {
    publisher.stop();
    refresher.stop();
    for (const stop of watched.values()) stop();
    watched.clear();
  });

  connection.onDidOpenTextDocument(({ textDocument: { uri, version, text } }) => {
    documents.open(uri, version, text);
    changed(uri);
  });
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
    if (documents.change(uri, version, contentChanges)) changed(uri);
  });
  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    documents.close(uri);
    if (!client.pulls) void connection.sendDiagnostics({ uri, diagnostics: [] });
    changed(uri);
  });
  connection.onDidChangeWatchedFiles(({ changes }) => changes.forEach(({ uri }) => changed(uri)));
  connection.onDidChangeConfiguration(async ({ settings: given }) => {
    if (client.asksSettings) return askSettings();
    setPreferences((given as { readonly halfturn?: unknown } | null)?.halfturn);
  });

  connection.languages.diagnostics.on(async ({ textDocument, previousResultId }, token) => {
    const document = documents.get(textDocument.uri);
    const nothing: DocumentDiagnosticReport = { kind: 'full', items: [] };
    if (!document) return nothing;
    const found = await run<DocumentDiagnosticReport>(token, nothing, async () => {
      const { id, open } = await documents.analysed(document);
      const resultId = `${id}.${settings}`;
      if (resultId === previousResultId) return { kind: 'unchanged', resultId };
      return { kind: 'full', resultId, items: diagnosticsOf(document, open, client, preferences) };
    });
    if (found instanceof ResponseError) throw found;
    return found;
  });

  answerQuestions({ connection, runtime, documents, client: () => client, preferences: () => preferences });
  connection.listen();

  /** A text, or a file on the disk, is no longer what it was: it and all that import it are looked at again. */
  function changed(uri: string): void {
    const dependants = documents.changed(uri).filter((document) => keyOf(document.uri) !== keyOf(uri));
    const own = documents.get(uri);
    for (const document of own ? [own, ...dependants] : dependants) publisher.soon(document.uri);
    if (dependants.length > 0) refresher.soon('');
  }

  async function report(uri: string): Promise<void> {
    const document = documents.get(uri);
    if (!document) return;
    const { open } = await documents.analysed(document);
    // While files were read something newer may have come, and will be reported.
    if (documents.get(uri) !== document) return;
    if (!client.watches) watchImported();
    const seen: Analysed = { uri: document.uri, version: document.version! };
    if (!client.pulls) await connection.sendDiagnostics({ ...seen, diagnostics: diagnosticsOf(document, open, client, preferences) });
    if (client.own) await connection.sendNotification(analysedNotification, seen);
  }

  /** For a client that does not tell of changes on the disk. */
  function watchImported(): void {
    const wanted = new Map(documents.imported().map((uri) => [keyOf(uri), uri]));
    for (const [key, stop] of watched) {
      if (wanted.has(key)) continue;
      stop();
      watched.delete(key);
    }
    for (const [key, uri] of wanted) if (!watched.has(key)) watched.set(key, runtime.watch(uri, () => changed(uri)));
  }

  async function askSettings(): Promise<void> {
    setPreferences(await connection.workspace.getConfiguration('halfturn'));
  }

  function setPreferences(section: unknown): void {
    preferences = preferencesFrom(section);
    settings += 1;
    refreshAll();
  }

  function refreshAll(): void {
    for (const { uri } of documents.all()) publisher.soon(uri);
    refresher.soon('');
  }

  /** What the client asked for itself it should ask for again. */
  function refresh(): void {
    const { problems, hints, lenses } = client.refreshes;
    const ask = (method: string): void => void connection.sendRequest(method).catch(() => {});
    if (problems && client.pulls) ask(DiagnosticRefreshRequest.method);
    if (hints) ask(InlayHintRefreshRequest.method);
    if (lenses) ask(CodeLensRefreshRequest.method);
  }
}

const codeActionKinds = [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite, fixAllKind];

function capabilitiesFor(client: Client): ServerCapabilities {
  return {
    positionEncoding: 'utf-16',
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    ...(client.pulls ? { diagnosticProvider: { identifier: 'halfturn', interFileDependencies: true, workspaceDiagnostics: false } } : {}),
    hoverProvider: true,
    completionProvider: { triggerCharacters: [' ', '.', '"'] },
    definitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    renameProvider: { prepareProvider: true },
    documentSymbolProvider: true,
    workspaceSymbolProvider: true,
    foldingRangeProvider: true,
    selectionRangeProvider: true,
    semanticTokensProvider: { legend, full: true, range: true },
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n', moreTriggerCharacter: ['}'] },
    inlayHintProvider: true,
    codeLensProvider: {},
    colorProvider: true,
    documentLinkProvider: {},
    ...(client.actions ? { codeActionProvider: { codeActionKinds, resolveProvider: client.lateEdits } } : {}),
    ...(client.tellsFolders ? { workspace: { workspaceFolders: { supported: true, changeNotifications: true } } } : {}),
  };
}
