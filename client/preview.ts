/** The pitch beside the text: one panel that follows the drill being edited, or stays with the one it is pinned to. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { Span } from '../grammar/tree.ts';
import type { Problem } from '../shared/problem.ts';
import { analysedNotification, type Analysed, type EditAnswer, type EditParams, editRequest, type SceneAnswer, type SceneParams, sceneRequest } from '../shared/protocol.ts';
import { curesOf } from './cures.ts';
import { nonce } from './nonce.ts';
import { conventionSetting, pageSettings } from './settings.ts';
import { pageHtml } from './webview/html.ts';
import { isOnPage } from './webview/layers.ts';
import type { PageProblem, Picture, PlayerAction, ToHost, ToPage } from './webview/messages.ts';

export const viewType = 'halfturn.pitch';

export interface Preview extends vscode.Disposable {
  /** Shows the drill at the cursor of this document, beside it. */
  readonly open: (document: vscode.TextDocument, offset: number) => void;
  readonly pin: () => void;
  readonly player: (action: PlayerAction) => void;
  /** The document and the place in it that the panel shows. */
  readonly shown: () => { readonly document: vscode.TextDocument; readonly drill: SceneParams['drill'] } | null;
}

export function createPreview(context: vscode.ExtensionContext, client: BaseLanguageClient): Preview {
  let panel: vscode.WebviewPanel | null = null;
  let send: vscode.Webview['postMessage'] | null = null;
  let ready = false;
  let pinned = false;
  let document: vscode.TextDocument | null = null;
  /** The cursor decides, until the reader chooses a drill on the page. */
  let drill: SceneParams['drill'] = { offset: 0 };
  let answer: SceneAnswer | null = null;
  /** A scene is being fetched, and whether another is wanted after it: the newest is enough. */
  let fetching: 'no' | 'yes' | 'again' = 'no';
  /** The picture that the page has, as JSON: drawing it again would only keep the editor from its keys. */
  let told = '';
  /** When a picture was sent that the page has not drawn yet, null without one; and the newest that waits. */
  let sent: number | null = null;
  let waiting: Picture | null = null;
  let sendSoon: ReturnType<typeof setTimeout> | undefined;
  let control = false;
  /** What the page has put into the editor, which is not told back to it. */
  let revealed: string | null = null;
  let playWhenShown = false;
  /** The window has been loaded again, and its editors are still taking up their places: no reader has moved the cursor. */
  let restoring = false;
  let curesSoon: ReturnType<typeof setTimeout> | undefined;

  const tell = (message: ToPage): void => {
    if (ready) void send?.(message);
  };

  const refresh = async (): Promise<void> => {
    if (!panel || !document) return;
    if (fetching !== 'no') {
      fetching = 'again';
      return;
    }
    fetching = 'yes';
    const wanted = document;
    try {
      const params: SceneParams = { uri: client.code2ProtocolConverter.asUri(wanted.uri), drill, theme: 'light', convention: conventionSetting(), control };
      const found = await client.sendRequest<SceneAnswer | null>(sceneRequest, params);
      if (wanted === document && found === null && 'index' in drill) {
        // The file has fewer drills than when one was chosen.
        drill = { offset: 0 };
        fetching = 'again';
      } else if (wanted === document) show(wanted, found);
    } catch {
      // The server is starting or has stopped: it says when there is something to show.
    }
    const again = (fetching as string) === 'again';
    fetching = 'no';
    if (again) void refresh();
  };

  const show = (of: vscode.TextDocument, found: SceneAnswer | null): void => {
    answer = found;
    const uri = of.uri.toString();
    if (!panel) return;
    if (!found) {
      told = '';
      waiting = null;
      clearTimeout(sendSoon);
      return tell({ kind: 'nothing', uri, message: 'There is no drill in this file yet.' });
    }
    panel.title = `Pitch: ${found.scene.title}${pinned ? ' (pinned)' : ''}`;
    const { rotation, measures } = found;
    const picture: Picture = {
      uri, version: found.version, scene: { ...found.scene, marks: found.scene.marks.filter(isOnPage) }, drill: found.index, drills: found.drills,
      problems: found.problems.map(onPage), cursor: of.version === found.version ? cursorIn(of) : null, broken: found.broken && onPage(found.broken),
      turn: rotation && { places: rotation.places, image: rotation.image, order: rotation.order, interval: measures.interval?.seconds ?? null },
    };
    draw(picture);
    clearTimeout(curesSoon);
    if (found.problems.length > 0) curesSoon = setTimeout(() => void offerCures(of, found), 300);
    if (playWhenShown) {
      playWhenShown = false;
      tell({ kind: 'player', action: 'play' });
    }
  };

  /** The next when the one before is drawn, or after a while: the way to the page may be longer than that. Those between are left out. */
  const draw = (picture: Picture): void => {
    clearTimeout(sendSoon);
    const wait = sent === null ? 0 : sent + patience - performance.now();
    waiting = wait > 0 ? picture : null;
    if (wait > 0) {
      sendSoon = setTimeout(() => draw(picture), wait);
      return;
    }
    const words = JSON.stringify(picture);
    if (words === told) return;
    told = words;
    sent = ready ? performance.now() : null;
    tell({ kind: 'picture', picture });
  };

  /** Once nothing has been typed for a moment: finding cures takes many analyses. */
  const offerCures = async (of: vscode.TextDocument, { version, problems }: SceneAnswer): Promise<void> => {
    const cures: (readonly string[])[] = [];
    for (const problem of problems) {
      if (of.version !== version) return;
      cures.push((await curesOf(client, of, problem)).map(({ title }) => title));
    }
    tell({ kind: 'cures', version, cures });
  };

  const follow = (editor: vscode.TextEditor | undefined): void => {
    if (!panel || pinned || !editor || editor.document.languageId !== 'drill') return;
    const offset = editor.document.offsetAt(editor.selection.active);
    if (editor.document === document) return;
    document = editor.document;
    drill = { offset };
    void refresh();
  };

  const cursorMoved = ({ textEditor, selections, kind }: vscode.TextEditorSelectionChangeEvent): void => {
    const [selection] = selections;
    if (!panel || textEditor.document !== document || !selection) return;
    const taken = restoring && kind === undefined;
    restoring = false;
    if (taken) return;
    const offset = document.offsetAt(selection.active);
    const own = revealed === `${document.uri} ${offset}`;
    revealed = null;
    if (own) return;
    drill = { offset, ...(answer ? { shown: answer.index } : {}) };
    if (answer?.drills.length !== 1) void refresh();
    tell({ kind: 'cursor', version: document.version, offset });
  };

  const reveal = async ({ from, to }: Span): Promise<void> => {
    if (!document) return;
    const start = document.positionAt(from);
    revealed = `${document.uri} ${from}`;
    const column = vscode.window.visibleTextEditors.find((editor) => editor.document === document)?.viewColumn ?? vscode.ViewColumn.One;
    const editor = await vscode.window.showTextDocument(document, { viewColumn: column, selection: new vscode.Range(start, start) });
    editor.revealRange(new vscode.Range(start, document.positionAt(to)), vscode.TextEditorRevealType.InCenterIfOutsideViewport);
  };

  /** One undo step. */
  const write = async (version: number, edits: EditAnswer['edits']): Promise<void> => {
    if (!document || document.version !== version) return say(changedMeanwhile);
    const change = new vscode.WorkspaceEdit();
    for (const { span, text } of edits) change.replace(document.uri, new vscode.Range(document.positionAt(span.from), document.positionAt(span.to)), text);
    await vscode.workspace.applyEdit(change);
  };

  const heard = async (message: ToHost): Promise<void> => {
    switch (message.kind) {
      case 'ready':
        ready = true;
        told = '';
        sent = null;
        waiting = null;
        tell({ kind: 'settings', settings: pageSettings() });
        return refresh();
      case 'drawn':
        sent = null;
        if (waiting) draw(waiting);
        return;
      case 'control':
        control = message.shown;
        return refresh();
      case 'reveal':
        return reveal(message.span);
      case 'drill':
        drill = { index: message.index };
        return refresh();
      case 'drag': {
        if (!document) return;
        const params: EditParams = { uri: client.code2ProtocolConverter.asUri(document.uri), version: message.version, handle: message.handle, to: message.to };
        const found = await client.sendRequest<EditAnswer | null>(editRequest, params);
        if (!found) return say('The text does not say where this is by itself: change what it hangs on.');
        return write(found.version, found.edits);
      }
      case 'fix': {
        const problem = answer?.problems[message.problem];
        if (!document || !problem || document.version !== message.version) return say(changedMeanwhile);
        const cure = (await curesOf(client, document, problem)).find(({ title }) => title === message.title);
        if (cure) await vscode.workspace.applyEdit(await cure.edit());
        return;
      }
    }
  };

  const adopt = (next: vscode.WebviewPanel): void => {
    panel = next;
    send = next.webview.postMessage.bind(next.webview);
    ready = false;
    const files = vscode.Uri.joinPath(context.extensionUri, 'dist/webview');
    next.webview.options = { enableScripts: true, localResourceRoots: [files] };
    next.iconPath = vscode.Uri.joinPath(context.extensionUri, 'client/icon/pitch.svg');
    next.webview.onDidReceiveMessage((message: ToHost) => void heard(message).catch((error: unknown) => client.error('The pitch could not do that.', error, false)));
    next.onDidDispose(() => {
      panel = null;
      send = null;
      ready = false;
      answer = null;
      void vscode.commands.executeCommand('setContext', 'halfturn.pitchOpen', false);
    });
    const address = (name: string): string => next.webview.asWebviewUri(vscode.Uri.joinPath(files, name)).toString();
    next.webview.html = pageHtml({ script: address('page.js'), style: address('page.css'), source: next.webview.cspSource, nonce: nonce() });
    void vscode.commands.executeCommand('setContext', 'halfturn.pitchOpen', true);
  };

  const subscriptions = vscode.Disposable.from(
    client.onNotification(analysedNotification, ({ uri }: Analysed) => {
      if (document && uri === client.code2ProtocolConverter.asUri(document.uri)) void refresh();
    }),
    vscode.window.onDidChangeActiveTextEditor(follow),
    vscode.window.onDidChangeTextEditorSelection(cursorMoved),
    vscode.workspace.onDidChangeConfiguration((event) => {
      if (!event.affectsConfiguration('halfturn')) return;
      tell({ kind: 'settings', settings: pageSettings() });
      void refresh();
    }),
    vscode.window.registerWebviewPanelSerializer(viewType, {
      deserializeWebviewPanel: async (next, state: { readonly uri?: string; readonly drill?: number } | undefined) => {
        adopt(next);
        const uri = state?.uri;
        document = vscode.window.activeTextEditor?.document.languageId === 'drill' ? vscode.window.activeTextEditor.document
          : uri ? await vscode.workspace.openTextDocument(vscode.Uri.parse(uri)) : null;
        drill = document?.uri.toString() === uri ? { index: state?.drill ?? 0 } : { offset: 0 };
        restoring = true;
        await refresh();
      },
    }),
  );

  return {
    open: (next, offset) => {
      document = next;
      drill = { offset };
      if (panel) panel.reveal(undefined, true);
      else adopt(vscode.window.createWebviewPanel(viewType, 'Pitch', { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true }, { enableScripts: true }));
      void refresh();
    },
    pin: () => {
      pinned = !pinned;
      say(pinned ? 'The pitch stays with this drill.' : 'The pitch follows the drill you are writing.');
      follow(vscode.window.activeTextEditor);
      void refresh();
    },
    player: (action) => {
      if (ready && answer) tell({ kind: 'player', action });
      else if (action === 'play') playWhenShown = true;
    },
    shown: () => (document ? { document, drill } : null),
    dispose: () => {
      clearTimeout(curesSoon);
      clearTimeout(sendSoon);
      subscriptions.dispose();
      panel?.dispose();
    },
  };
}

/** Milliseconds after which a picture is sent though the one before may not be drawn yet. */
const patience = 100;

function cursorIn(document: vscode.TextDocument): number | null {
  const editor = vscode.window.visibleTextEditors.find((each) => each.document === document);
  return editor ? document.offsetAt(editor.selection.active) : null;
}

function onPage({ code, severity, message, span }: Problem): PageProblem {
  return { code, severity, message, span };
}

const changedMeanwhile = 'The text has changed meanwhile: try again.';

function say(words: string): void {
  vscode.window.setStatusBarMessage(words, 6000);
}
