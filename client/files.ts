/** Answers a server that has no disk: files and folders of the workspace, wherever they are. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type FilesParams, filesRequest, type ReadParams, readRequest } from '../shared/protocol.ts';

const mostFiles = 5000;

export function fileAnswers(client: BaseLanguageClient): vscode.Disposable {
  return vscode.Disposable.from(
    client.onRequest(readRequest, async ({ uri }: ReadParams): Promise<string | null> => {
      try {
        return new TextDecoder().decode(await vscode.workspace.fs.readFile(vscode.Uri.parse(uri)));
      } catch {
        return null;
      }
    }),
    client.onRequest(filesRequest, async ({ folder }: FilesParams): Promise<string[]> => {
      const found = await vscode.workspace.findFiles(new vscode.RelativePattern(vscode.Uri.parse(folder), '**/*.drill'), undefined, mostFiles);
      return found.map((uri) => uri.toString());
    }),
  );
}
