/** The commands of the extension, one a line. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { starter } from '../shared/examples/starter.ts';
import { explainCommand, type ExplainArguments, playCommand, type PlayArguments, type SceneAnswer, type SceneParams, sceneRequest } from '../shared/protocol.ts';
import { compareWithBefore } from './compare.ts';
import { exportPicture } from './export.ts';
import type { Host } from './extension.ts';
import type { Preview } from './preview.ts';
import { explain, showNumbers } from './readings.ts';
import { conventionSetting } from './settings.ts';
import { exportSheet, previewSheet, printSheet } from './sheet.ts';

export interface Context {
  readonly client: BaseLanguageClient;
  readonly preview: Preview;
  readonly host: Host;
  /** A folder of the extension's own. */
  readonly storage: vscode.Uri;
}

type Command = (context: Context, ...values: readonly unknown[]) => unknown;

const commands: Readonly<Record<string, Command>> = {
  'halfturn.openPitch': ({ preview }) => {
    const editor = drillEditor();
    if (editor) preview.open(editor.document, editor.document.offsetAt(editor.selection.active));
    else void vscode.window.showInformationMessage('Open a .drill file first, or start a new drill.', 'New drill').then((chosen) => chosen && vscode.commands.executeCommand('halfturn.newDrill'));
  },
  'halfturn.pinPitch': ({ preview }) => preview.pin(),
  'halfturn.playPause': ({ preview }) => preview.player('play'),
  'halfturn.nextBeat': ({ preview }) => preview.player('next'),
  'halfturn.previousBeat': ({ preview }) => preview.player('back'),
  'halfturn.fitPitch': ({ preview }) => preview.player('fit'),
  'halfturn.newDrill': newDrill,
  'halfturn.export': (context) => withScene(context, (answer, params, document) => exportPicture(context, answer, params, document)),
  'halfturn.previewSheet': (context) => withEditor((editor) => previewSheet(context, editor)),
  'halfturn.printSheet': (context) => withEditor((editor) => printSheet(context, editor)),
  'halfturn.exportSheet': (context) => withEditor((editor) => exportSheet(context, editor)),
  'halfturn.showNumbers': (context) => withScene(context, ({ measures }) => showNumbers(measures)),
  'halfturn.compare': ({ client, preview }) => {
    const document = drillEditor()?.document ?? preview.shown()?.document;
    return document ? compareWithBefore(client, document) : vscode.window.showInformationMessage('Open a .drill file first.');
  },
  'halfturn.restartServer': async ({ client }) => {
    await client.stop().catch(() => {});
    await client.start();
  },
  [playCommand]: async ({ preview }, ...values) => {
    const [uri, offset] = values as unknown as PlayArguments;
    preview.open(await vscode.workspace.openTextDocument(vscode.Uri.parse(uri)), offset);
    preview.player('play');
  },
  [explainCommand]: (_, ...values) => {
    const [code] = values as unknown as ExplainArguments | readonly [];
    return explain(code ?? codeAtCursor());
  },
};

export function registerCommands(context: Context): vscode.Disposable {
  return vscode.Disposable.from(...Object.entries(commands).map(([name, run]) => vscode.commands.registerCommand(name, (...values: unknown[]) => run(context, ...values))));
}

async function newDrill({ preview }: Context): Promise<void> {
  const document = await vscode.workspace.openTextDocument({ language: 'drill', content: starter('New drill') });
  await vscode.window.showTextDocument(document, vscode.ViewColumn.One);
  preview.open(document, 0);
}

/** The drill at the cursor; without a text in front, the one on the pitch. */
async function withScene({ client, preview }: Context, act: (answer: SceneAnswer, params: SceneParams, document: vscode.TextDocument) => unknown): Promise<void> {
  const editor = drillEditor();
  const at = editor ? { document: editor.document, drill: { offset: editor.document.offsetAt(editor.selection.active) } } : preview.shown();
  if (!at) return void vscode.window.showInformationMessage('Open a .drill file first.');
  const params: SceneParams = { uri: client.code2ProtocolConverter.asUri(at.document.uri), drill: at.drill, theme: 'light', convention: conventionSetting() };
  const answer = await client.sendRequest<SceneAnswer | null>(sceneRequest, params);
  if (!answer) return void vscode.window.showInformationMessage('There is no drill in this file yet.');
  await act(answer, params, at.document);
}

function withEditor(act: (editor: vscode.TextEditor) => unknown): unknown {
  const editor = drillEditor();
  return editor ? act(editor) : vscode.window.showInformationMessage('Open a .drill file first.');
}

function drillEditor(): vscode.TextEditor | null {
  const editor = vscode.window.activeTextEditor;
  return editor?.document.languageId === 'drill' ? editor : null;
}

function codeAtCursor(): string | null {
  const editor = drillEditor();
  if (!editor) return null;
  const found = vscode.languages.getDiagnostics(editor.document.uri).find(({ range }) => range.contains(editor.selection.active));
  return found?.code === undefined ? null : `${typeof found.code === 'object' ? found.code.value : found.code}`;
}
