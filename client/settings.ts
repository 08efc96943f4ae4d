/** The settings that the extension itself reads; the server reads its own. */
import * as vscode from 'vscode';
import type { Convention } from '../shared/scene/lines.ts';
import type { PageSettings } from './webview/messages.ts';

export function pageSettings(): PageSettings {
  const section = vscode.workspace.getConfiguration('halfturn.preview');
  return { sync: section.get('sync', 'both'), speed: section.get('speed', 1), loop: section.get('loop', true) };
}

/** Null where the reader has not chosen: then the folder's own settings count. */
export function conventionSetting(): Convention | null {
  const found = vscode.workspace.getConfiguration('halfturn.drawing').inspect<Convention>('convention');
  return found?.workspaceFolderValue ?? found?.workspaceValue ?? found?.globalValue ?? null;
}
