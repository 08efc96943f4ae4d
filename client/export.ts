/** Writes the drawing of a drill to a file, beside the drill unless the reader says otherwise. */
import * as vscode from 'vscode';
import { legalFileName } from '../shared/file-names.ts';
import { type PictureParams, pictureRequest, type SceneAnswer, type SceneParams } from '../shared/protocol.ts';
import { toHtml } from '../shared/render/html.ts';
import { toSvg } from '../shared/render/svg.ts';
import type { Context } from './commands.ts';

type Format = 'svg' | 'html' | PictureParams['format'];

const formats: readonly { readonly format: Format; readonly label: string; readonly detail: string; readonly pixels: boolean }[] = [
  { format: 'svg', label: 'SVG', detail: 'the drawing, sharp at every size', pixels: false },
  { format: 'html', label: 'HTML', detail: 'a page that plays the drill, without a network', pixels: false },
  { format: 'png', label: 'PNG', detail: 'a picture for documents and messages', pixels: true },
  { format: 'gif', label: 'GIF', detail: 'a picture that moves', pixels: true },
];

export async function exportPicture({ client, host }: Context, { scene }: SceneAnswer, params: SceneParams, document: vscode.TextDocument): Promise<void> {
  const chosen = await vscode.window.showQuickPick(formats.filter(({ pixels }) => host.pixels || !pixels), { title: `Export “${scene.title}”`, placeHolder: 'As what?' });
  if (!chosen) return;
  const { format } = chosen;
  const target = await vscode.window.showSaveDialog({ defaultUri: besides(document, scene.title, format), filters: { [chosen.label]: [format] } });
  if (!target) return;
  const bytes = await vscode.window.withProgress({ location: vscode.ProgressLocation.Notification, title: `Drawing “${scene.title}”` }, async () => {
    if (format === 'svg') return new TextEncoder().encode(toSvg(scene, { embedFont: true }));
    if (format === 'html') return new TextEncoder().encode(toHtml(scene));
    const asked: PictureParams = { ...params, format };
    const picture = await client.sendRequest<string | null>(pictureRequest, asked);
    return picture === null ? null : Uint8Array.from(atob(picture), (char) => char.charCodeAt(0));
  });
  if (!bytes) return void vscode.window.showWarningMessage('This picture cannot be made here. SVG and HTML always can.');
  await vscode.workspace.fs.writeFile(target, bytes);
  const open = 'Open';
  if ((await vscode.window.showInformationMessage(`“${scene.title}” is drawn.`, open)) === open) await vscode.commands.executeCommand('vscode.open', target);
}

/** A file of this kind beside the text. */
export function besides({ uri }: vscode.TextDocument, title: string, format: string): vscode.Uri {
  const name = uri.path.endsWith('.drill') ? uri.path.slice(uri.path.lastIndexOf('/') + 1, -'.drill'.length) : legalFileName(title);
  const folder = uri.scheme === 'untitled' ? vscode.workspace.workspaceFolders?.[0]?.uri : vscode.Uri.joinPath(uri, '..');
  return vscode.Uri.joinPath(folder ?? uri, `${name}.${format}`);
}
