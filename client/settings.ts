/** The settings that the extension itself reads; the server reads its own. */
import * as vscode from 'vscode';
import type { Convention } from '../shared/scene/lines.ts';
import type { PageSettings } from './webview/messages.ts';

export function pageSettings(): PageSettings {
  const section = vscode.workspace.getConfiguration('halfturn.preview');
  return { sync: section.get('sync', 'both'), speed: section.get('speed', 1), loop: section.get('loop', true) };
}

export function conventionSetting(): Convention {
  return vscode.workspace.getConfiguration('halfturn.drawing').get('convention', 'solid pass');
}
