/** What is read and not edited: the numbers of a drill, and why something is a problem. */
import * as vscode from 'vscode';
import type { Measures } from '../shared/measure/measure.ts';
import { numbersText } from './numbers.ts';

const scheme = 'halfturn';

let texts = new Map<string, string>();

export function registerReadings(context: vscode.ExtensionContext): vscode.Disposable {
  guide = vscode.Uri.joinPath(context.extensionUri, 'shared/generated/problems.md');
  return vscode.workspace.registerTextDocumentContentProvider(scheme, { onDidChange: changed.event, provideTextDocumentContent: ({ path }) => texts.get(path) ?? '' });
}

export function showNumbers(measures: Measures): Promise<void> {
  return read(`${measures.name.replace(/[\\/:*?"<>|#]/g, ' ')} numbers`, numbersText(measures));
}

/** Without a code the whole guide. */
export async function explain(code: string | null): Promise<void> {
  const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(guide));
  const entry = code === null ? text : entryOf(text, code);
  await read(code ?? 'Problems', entry ?? `There is no problem called \`${code}\`.\n`);
}

let guide: vscode.Uri;
const changed = new vscode.EventEmitter<vscode.Uri>();

function entryOf(text: string, code: string): string | null {
  const entry = text.split(/^(?=###? )/m).find((part) => part.startsWith(`### ${code}\n`));
  return entry ? entry.slice(2) : null;
}

/** Set as a page where the editor can, as text where not. */
async function read(name: string, text: string): Promise<void> {
  const uri = vscode.Uri.from({ scheme, path: `/${name}.md` });
  texts = new Map(texts).set(uri.path, text);
  changed.fire(uri);
  const document = await vscode.workspace.openTextDocument(uri);
  const commands = await vscode.commands.getCommands(true);
  if (commands.includes('markdown.showPreviewToSide')) await vscode.commands.executeCommand('markdown.showPreviewToSide', uri);
  else await vscode.window.showTextDocument(document, { viewColumn: vscode.ViewColumn.Beside, preview: true });
}
