/** The `initialize` messages of two kinds of client, as they come over the wire. */
import type { InitializeParams } from 'vscode-languageserver/node';

/** An editor that can do nearly everything. */
export const full: Partial<InitializeParams> = {
  clientInfo: { name: 'full' },
  locale: 'en',
  workspaceFolders: [{ uri: 'file:///club', name: 'club' }, { uri: 'file:///other%20club', name: 'other club' }],
  capabilities: {
    workspace: {
      applyEdit: true,
      workspaceEdit: {
        documentChanges: true, resourceOperations: ['create', 'rename', 'delete'], failureHandling: 'textOnlyTransactional', normalizesLineEndings: true,
      },
      configuration: true,
      didChangeConfiguration: { dynamicRegistration: true },
      didChangeWatchedFiles: { dynamicRegistration: true, relativePatternSupport: true },
      symbol: { dynamicRegistration: true },
      workspaceFolders: true,
      semanticTokens: { refreshSupport: true },
      codeLens: { refreshSupport: true },
      inlayHint: { refreshSupport: true },
      diagnostics: { refreshSupport: true },
    },
    textDocument: {
      synchronization: { dynamicRegistration: true, willSave: true, willSaveWaitUntil: true, didSave: true },
      publishDiagnostics: { relatedInformation: true, versionSupport: true, tagSupport: { valueSet: [1, 2] }, codeDescriptionSupport: true, dataSupport: true },
      diagnostic: {
        dynamicRegistration: true, relatedDocumentSupport: false, relatedInformation: true, tagSupport: { valueSet: [1, 2] }, codeDescriptionSupport: true,
      },
      completion: { dynamicRegistration: true, contextSupport: true, completionItem: { snippetSupport: true, documentationFormat: ['markdown', 'plaintext'] } },
      hover: { dynamicRegistration: true, contentFormat: ['markdown', 'plaintext'] },
      documentSymbol: { dynamicRegistration: true, hierarchicalDocumentSymbolSupport: true },
      codeAction: {
        dynamicRegistration: true, isPreferredSupport: true, dataSupport: true, resolveSupport: { properties: ['edit'] },
        codeActionLiteralSupport: { codeActionKind: { valueSet: ['', 'quickfix', 'source', 'source.fixAll'] } },
      },
      codeLens: { dynamicRegistration: true },
      rename: { dynamicRegistration: true, prepareSupport: true },
      foldingRange: { dynamicRegistration: true, lineFoldingOnly: true },
      selectionRange: { dynamicRegistration: true },
      semanticTokens: { dynamicRegistration: true, requests: { range: true, full: { delta: true } }, tokenTypes: [], tokenModifiers: [], formats: ['relative'] },
      inlayHint: { dynamicRegistration: true, resolveSupport: { properties: ['tooltip'] } },
    },
    window: { workDoneProgress: true },
    general: { positionEncodings: ['utf-16'] },
    experimental: { halfturn: true },
  },
};

/** An editor that sends texts and shows problems. */
export const minimal: Partial<InitializeParams> = {
  clientInfo: { name: 'minimal' },
  rootUri: 'file:///club',
  capabilities: { textDocument: { hover: { contentFormat: ['plaintext'] } } },
};
