/** What changed in a drill since a commit, or from another file, in a panel beside it. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type CompareAnswer, type CompareParams, compareRequest } from '../shared/protocol.ts';
import { nonce } from './nonce.ts';
import { conventionSetting } from './settings.ts';

/** What this needs of the editor's own git extension, version 1 of its interface. */
interface GitExports {
  readonly enabled: boolean;
  readonly getAPI: (version: 1) => { readonly getRepository: (uri: vscode.Uri) => Repository | null };
}
interface Repository {
  readonly show: (revision: string, path: string) => Promise<string>;
  readonly log: (options: { readonly maxEntries: number; readonly path: string }) => Promise<readonly { readonly hash: string; readonly message: string; readonly authorDate?: Date }[]>;
}

interface Older {
  readonly name: string;
  readonly text: string;
}

type Choice = vscode.QuickPickItem & { readonly older: () => Promise<Older | null> };

let panel: vscode.WebviewPanel | null = null;

export async function compareWithBefore(client: BaseLanguageClient, document: vscode.TextDocument): Promise<void> {
  const repository = await repositoryOf(document.uri);
  const older = repository ? await chosen(repository, document.uri) : await withoutGit();
  if (!older) return;
  const params: CompareParams = {
    uri: client.code2ProtocolConverter.asUri(document.uri), before: older.text, beforeName: older.name, convention: conventionSetting(), nonce: nonce(),
    theme: [vscode.ColorThemeKind.Dark, vscode.ColorThemeKind.HighContrast].includes(vscode.window.activeColorTheme.kind) ? 'dark' : 'light',
  };
  const answer = await client.sendRequest<CompareAnswer | null>(compareRequest, params);
  if (!answer) return void vscode.window.showInformationMessage('The checker does not know this text yet; try again in a moment.');
  if (!panel) {
    panel = vscode.window.createWebviewPanel('halfturn.compare', '', vscode.ViewColumn.Beside, { enableScripts: true, localResourceRoots: [], retainContextWhenHidden: true });
    panel.onDidDispose(() => (panel = null));
  }
  panel.title = `What changed: ${document.uri.path.split('/').at(-1)}`;
  panel.webview.html = answer.html;
  panel.reveal(undefined, true);
}

/** Null where the file is in no repository, or the editor has no git, as in a browser. */
async function repositoryOf(uri: vscode.Uri): Promise<Repository | null> {
  const extension = vscode.extensions.getExtension<GitExports>('vscode.git');
  if (!extension || uri.scheme !== 'file') return null;
  const git = await Promise.resolve(extension.activate()).catch(() => null);
  return git?.enabled ? git.getAPI(1).getRepository(uri) : null;
}

async function chosen(repository: Repository, uri: vscode.Uri): Promise<Older | null> {
  const at = async (revision: string, name: string): Promise<Older | null> => {
    try {
      return { name, text: await repository.show(revision, uri.fsPath) };
    } catch {
      void vscode.window.showInformationMessage(`This file is not in ${name}.`);
      return null;
    }
  };
  const commits = await repository.log({ maxEntries: 30, path: uri.fsPath }).catch(() => []);
  const choices: Choice[] = [
    { label: 'The last commit', description: 'HEAD', older: () => at('HEAD', 'the last commit') },
    ...commits.map(({ hash, message, authorDate }): Choice => ({
      label: message.split('\n')[0] ?? hash, description: `${hash.slice(0, 8)}${authorDate ? ` · ${authorDate.toLocaleDateString()}` : ''}`,
      older: () => at(hash, hash.slice(0, 8)),
    })),
    {
      label: 'Another revision…', older: async () => {
        const name = await vscode.window.showInputBox({ title: 'Compare with', prompt: 'A branch, a tag or a commit', placeHolder: 'main' });
        return name ? at(name, name) : null;
      },
    },
    { label: 'Another file…', older: fromFile },
  ];
  const choice = await vscode.window.showQuickPick(choices, { title: 'Compare the drill with', matchOnDescription: true });
  return choice ? choice.older() : null;
}

async function withoutGit(): Promise<Older | null> {
  const other = 'Compare with a File…';
  const answer = await vscode.window.showInformationMessage('This file has no history here: it is in no git repository that the editor knows.', other);
  return answer === other ? fromFile() : null;
}

async function fromFile(): Promise<Older | null> {
  const [uri] = (await vscode.window.showOpenDialog({ title: 'The older version', canSelectMany: false, filters: { Drill: ['drill'] } })) ?? [];
  return uri ? { name: uri.path.split('/').at(-1) ?? '', text: new TextDecoder().decode(await vscode.workspace.fs.readFile(uri)) } : null;
}
