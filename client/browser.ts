/** In the browser's host: the server is a worker. */
import * as vscode from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from 'vscode-languageclient/browser';
import { activateIn } from './extension.ts';

export function activate(context: vscode.ExtensionContext): void {
  const script = vscode.Uri.joinPath(context.extensionUri, 'dist/server/browser.js').toString(true);
  let worker: Worker | null = null;
  // The host's workers are its own, and no `Worker` to the client: it is given what it would have made of one.
  const started = async () => {
    worker?.terminate();
    worker = new Worker(script);
    return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
  };
  context.subscriptions.push({ dispose: () => worker?.terminate() });
  activateIn(context, {
    clientOf: (options) => new LanguageClient('halfturn', 'Halfturn', started, options),
    pixels: false,
    disk: false,
  });
}
