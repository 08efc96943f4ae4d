/** In the desktop's and the remote's host: the server is a process of its own. */
import * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { activateIn } from './extension.ts';

export function activate(context: vscode.ExtensionContext): void {
  const module = vscode.Uri.joinPath(context.extensionUri, 'dist/server/node.js').fsPath;
  activateIn(context, {
    clientOf: (options) => new LanguageClient('halfturn', 'Halfturn', { module, transport: TransportKind.ipc }, options),
    pixels: true,
    disk: true,
  });
}
