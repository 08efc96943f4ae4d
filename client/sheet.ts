/** The sheet for the touchline: a panel that shows it, the browser that prints it, a file. */
import * as vscode from 'vscode';
import { type SheetAnswer, type SheetParams, sheetRequest } from '../shared/protocol.ts';
import type { Context } from './commands.ts';
import { besides } from './export.ts';
import { nonce } from './nonce.ts';

/** Beside the text; it follows what is saved. */
export async function previewSheet(context: Context, editor: vscode.TextEditor): Promise<void> {
  const { document } = editor;
  const offset = document.offsetAt(editor.selection.active);
  const own = nonce();
  const fetched = () => sheetOf(context, document, { offset, format: 'html', names: null, nonce: own });
  const answer = await fetched();
  if (!answer) return;
  const panel = vscode.window.createWebviewPanel('halfturn.sheet', `Sheet: ${answer.title}`, { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true }, { enableScripts: true, localResourceRoots: [] });
  panel.webview.html = answer.content;
  const saved = vscode.workspace.onDidSaveTextDocument(async (each) => {
    if (each !== document) return;
    const again = await fetched();
    if (again) panel.webview.html = again.content;
  });
  panel.onDidDispose(() => saved.dispose());
}

/** In the browser of this machine, which knows its printers. */
export async function printSheet(context: Context, editor: vscode.TextEditor): Promise<void> {
  const answer = await sheetAtCursor(context, editor, 'html');
  if (!answer) return;
  if (!context.host.disk) return void vscode.window.showInformationMessage('Export the sheet as HTML, open it in a browser and print it there.');
  const page = vscode.Uri.joinPath(context.storage, 'sheet.html');
  await vscode.workspace.fs.createDirectory(context.storage);
  await vscode.workspace.fs.writeFile(page, new TextEncoder().encode(answer.content));
  await vscode.env.openExternal(page);
}

export async function exportSheet(context: Context, editor: vscode.TextEditor): Promise<void> {
  const formats = [
    { format: 'pdf', label: 'PDF', detail: 'A4 pages to print and to send' },
    { format: 'html', label: 'HTML', detail: 'a page that also plays, for phones and browsers' },
  ] as const;
  const chosen = await vscode.window.showQuickPick(formats.filter(({ format }) => format !== 'pdf' || context.host.pixels), { title: 'Export the Sheet', placeHolder: 'As what?' });
  if (!chosen) return;
  const answer = await sheetAtCursor(context, editor, chosen.format);
  if (!answer) return;
  const target = await vscode.window.showSaveDialog({ defaultUri: besides(editor.document, answer.title, chosen.format), filters: { [chosen.label]: [chosen.format] } });
  if (!target) return;
  await vscode.workspace.fs.writeFile(target, chosen.format === 'html' ? new TextEncoder().encode(answer.content) : Uint8Array.from(atob(answer.content), (char) => char.charCodeAt(0)));
  const open = 'Open';
  if ((await vscode.window.showInformationMessage(`The sheet “${answer.title}” is written.`, open)) === open) await vscode.env.openExternal(target);
}

/** With the names that the reader gives, which go nowhere else. */
async function sheetAtCursor(context: Context, { document, selection }: vscode.TextEditor, format: SheetParams['format']): Promise<SheetAnswer | null> {
  const without = 'By numbers';
  const listed = 'From a list of names…';
  const who = await vscode.window.showQuickPick([without, listed], { title: 'Who is in the groups?' });
  if (who === undefined) return null;
  const [list] = who === listed ? (await vscode.window.showOpenDialog({ title: 'A plain list, one name a line', filters: { Text: ['txt', 'csv'] } })) ?? [] : [];
  if (who === listed && !list) return null;
  const names = list ? new TextDecoder().decode(await vscode.workspace.fs.readFile(list)) : null;
  return sheetOf(context, document, { offset: document.offsetAt(selection.active), format, names });
}

async function sheetOf({ client }: Context, document: vscode.TextDocument, asked: Omit<SheetParams, 'uri'>): Promise<SheetAnswer | null> {
  const params: SheetParams = { ...asked, uri: client.code2ProtocolConverter.asUri(document.uri) };
  const answer = await vscode.window.withProgress({ location: vscode.ProgressLocation.Window, title: 'Laying out the sheet' }, () => client.sendRequest<SheetAnswer | null>(sheetRequest, params));
  if (!answer) void vscode.window.showInformationMessage('There is no session and no drill in this file yet.');
  else if (answer.faults.length > 0) void vscode.window.showWarningMessage(answer.faults.join(' '));
  return answer;
}
