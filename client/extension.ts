/** The extension, the same in both hosts of the editor: `node.ts` and `browser.ts` bring the client of their language server. */
import * as vscode from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { registerCommands } from './commands.ts';
import { restartingKindly } from './crashes.ts';
import { fileAnswers } from './files.ts';
import { createPreview } from './preview.ts';
import { registerReadings } from './readings.ts';
import { ability } from '../shared/protocol.ts';

export interface Host {
  readonly clientOf: (options: LanguageClientOptions) => BaseLanguageClient;
  /** Whether the server can make pictures of pixels. */
  readonly pixels: boolean;
  /** Whether the server reads files by itself. */
  readonly disk: boolean;
}

export function activateIn(context: vscode.ExtensionContext, host: Host): void {
  const output = vscode.window.createOutputChannel('Halfturn', { log: true });
  const status = statusItem();
  const client = host.clientOf({
    documentSelector: [{ language: 'drill' }],
    outputChannel: output,
    synchronize: { configurationSection: 'halfturn' },
    errorHandler: restartingKindly(() => client.start()),
  });
  client.registerFeature({
    fillClientCapabilities: (capabilities) => {
      capabilities.experimental = { ...(capabilities.experimental as object | undefined), [ability]: true };
    },
    initialize: () => {},
    getState: () => ({ kind: 'static' }),
    clear: () => {},
  });
  client.onDidChangeState(({ newState }) => status.show(newState));
  const preview = createPreview(context, client);
  context.subscriptions.push(output, status, preview, registerReadings(context), registerCommands({ client, preview, host, storage: context.globalStorageUri }));
  if (!host.disk) context.subscriptions.push(fileAnswers(client));
  context.subscriptions.push({ dispose: () => void client.stop().catch(() => {}) });
  // Everything is in place before the server is: activation does not wait for it, and what fails the client says itself.
  void client.start().catch(() => {});
}

function statusItem(): vscode.Disposable & { readonly show: (state: number) => void } {
  const item = vscode.languages.createLanguageStatusItem('halfturn', { language: 'drill' });
  item.name = 'Halfturn';
  item.command = { title: 'Start again', command: 'halfturn.restartServer' };
  // The values of the client's State: stopped, running, starting, failed to start.
  const show = (state: number): void => {
    item.busy = state === 3;
    item.text = state === 2 ? 'Drills are checked' : state === 3 ? 'Starting' : 'Drills are not checked';
    item.severity = state === 2 || state === 3 ? vscode.LanguageStatusSeverity.Information : vscode.LanguageStatusSeverity.Error;
  };
  show(3);
  return { show, dispose: () => item.dispose() };
}
