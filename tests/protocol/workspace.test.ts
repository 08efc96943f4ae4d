/** Several files, several folders, and settings that change. */
import { afterEach, expect, test } from 'vitest';
import type { CodeAction, CompletionItem, Diagnostic, DocumentLink, InitializeParams, Location, WorkspaceEdit } from 'vscode-languageserver/node';
import { analysedNotification, type Analysed, type SceneAnswer, type SceneParams, sceneRequest } from '../../shared/protocol.ts';
import { square } from '../service/texts.ts';
import { full, minimal } from './clients.ts';
import { editor, type Editor } from './harness.ts';

const sizes = 'file:///club/shared%20parts/sizes.drill';
const one = 'file:///club/one.drill';
const two = 'file:///club/two.drill';
const disk = {
  [sizes]: 'let wide = 4\n',
  [one]: 'import "shared parts/sizes.drill"\ndrill "One" {\n  area wide x 20\n}\n',
  [two]: 'import "shared parts/sizes.drill"\ndrill "Two" {\n  area wide x wide\n}\n',
  'file:///other%20club/three.drill': 'drill "Three" {\n}\n',
};
let e: Editor;
afterEach(() => e.close());

async function started(init: Partial<InitializeParams>, settings?: () => unknown): Promise<void> {
  e = await editor(init, { disk, ...(settings ? { settings } : {}) });
  await e.open(one, disk[one]!);
  await e.settle();
}

const codes = (uri: string) => e.reports.findLast((report) => report.uri === uri)?.diagnostics.map(({ code }) => code);
const pulled = async (uri: string) => (await e.ask<{ items: Diagnostic[] }>('textDocument/diagnostic', { textDocument: { uri } })).items.map(({ code }) => code);

test('an imported file is read from the disk', async () => {
  await started(minimal);
  expect(codes(one)).toEqual([]);
});

test('a change to an imported file in the editor is seen where it is imported', async () => {
  await started(minimal);
  await e.open(sizes, 'let broad = 4\n');
  await e.settle();
  expect(codes(one)).toEqual(['unknown-name']);
  await e.change(sizes, 2, [{ text: 'let wide = 5\n' }]);
  await e.settle();
  expect(codes(one)).toEqual([]);
  await e.change(sizes, 3, [{ text: '' }]);
  await e.client.sendNotification('textDocument/didClose', { textDocument: { uri: sizes } });
  await e.settle();
  expect(codes(one)).toEqual([]);
});

test('a change on the disk is seen: told by the client', async () => {
  await started(full);
  expect(e.heard.filter(({ method }) => method === 'client/registerCapability').length).toBe(2);
  expect(await pulled(one)).toEqual([]);
  const refreshed = e.heard.filter(({ method }) => method === 'workspace/diagnostic/refresh').length;
  e.disk.set(sizes, 'let broad = 4\n');
  await e.client.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: sizes, type: 2 }] });
  await e.settle();
  expect(e.heard.filter(({ method }) => method === 'workspace/diagnostic/refresh').length).toBe(refreshed + 1);
  expect(await pulled(one)).toEqual(['unknown-name']);
  expect(e.watched.size).toBe(0);
});

test('a change on the disk is seen: watched by the server', async () => {
  await started(minimal);
  e.disk.delete(sizes);
  e.watched.get(sizes)!();
  await e.settle();
  expect(codes(one)).toEqual(['missing-import']);
  e.disk.set(sizes, 'let wide = 4\n');
  e.watched.get(sizes)!();
  await e.settle();
  expect(codes(one)).toEqual([]);
});

test('a name is renamed in every file that uses it, open or not', async () => {
  await started(full);
  const edit = await e.ask<WorkspaceEdit>('textDocument/rename', { textDocument: { uri: one }, position: { line: 2, character: 8 }, newName: 'broad' });
  const files = edit.documentChanges as { textDocument: { uri: string; version: number | null }; edits: unknown[] }[];
  expect(files.map(({ textDocument, edits }) => [textDocument.uri, textDocument.version, edits.length])).toEqual([[one, 1, 1], [sizes, null, 1], [two, null, 2]]);
});

test('a name is found in the file that declares it, and where it is used', async () => {
  await started(minimal);
  const at = { textDocument: { uri: one }, position: { line: 2, character: 8 } };
  expect(await e.ask<Location[]>('textDocument/definition', at)).toEqual([
    { uri: sizes, range: { start: { line: 0, character: 4 }, end: { line: 0, character: 8 } } },
  ]);
  const references = await e.ask<Location[]>('textDocument/references', { ...at, context: { includeDeclaration: true } });
  expect(references.map(({ uri }) => uri)).toEqual([one, sizes, two, two]);
});

test('an import is a link to its file', async () => {
  await started(minimal);
  const [link] = await e.ask<DocumentLink[]>('textDocument/documentLink', { textDocument: { uri: one } });
  expect(link).toMatchObject({ target: sizes, range: { start: { line: 0, character: 8 } } });
});

test('the files of the folder are offered for an import, open or not', async () => {
  await started(full);
  const unsaved = 'file:///club/unsaved.drill';
  await e.open(unsaved, 'let wide = 3\n');
  await e.change(one, 2, [{ text: 'import "' }]);
  const asked = { textDocument: { uri: one }, position: { line: 0, character: 8 }, context: { triggerKind: 2, triggerCharacter: '"' } };
  const items = await e.ask<CompletionItem[]>('textDocument/completion', asked);
  expect(items.map(({ label }) => label)).toEqual(['shared parts/sizes.drill', 'two.drill', 'unsaved.drill']);
});

test('what is typed into an imported file and not saved is seen on the pitch of those that import it', async () => {
  await started(full);
  const told = () => e.heard.filter(({ method, params }) => method === analysedNotification && (params as Analysed).uri === one).length;
  const width = async () => {
    const params: SceneParams = { uri: one, drill: { index: 0 }, theme: 'light', convention: 'solid pass' };
    return (await e.ask<SceneAnswer>(sceneRequest, params)).scene.description.match(/Area (\d+) by/)?.[1];
  };
  expect(await width()).toBe('4');
  await e.open(sizes, disk[sizes]!);
  await e.settle();
  const before = told();
  await e.change(sizes, 2, [{ text: 'let wide = 9\n' }]);
  await e.settle();
  expect(told()).toBe(before + 1);
  expect(await width()).toBe('9');
});

test('symbols come from every folder, and folders come and go', async () => {
  await started(full);
  const drills = async () => (await e.ask<{ name: string }[]>('workspace/symbol', { query: 't' })).map(({ name }) => name);
  expect(await drills()).toEqual(['Two', 'Three']);
  await e.client.sendNotification('workspace/didChangeWorkspaceFolders', { event: { added: [], removed: [{ uri: 'file:///other%20club/', name: '' }] } });
  expect(await drills()).toEqual(['Two']);
});

test.each([
  ['outside every folder', 'file:///elsewhere/four.drill', 'file:///elsewhere/sizes.drill', []],
  ['never saved', 'untitled:Untitled-1', 'file:///elsewhere/sizes.drill', ['outside-workspace']],
])('a file %s', async (_, uri, imported, expected) => {
  await started(minimal);
  e.disk.set(imported, 'let wide = 4\n');
  await e.open(uri, 'import "sizes.drill"\ndrill "Four" {\n  area wide x 20\n}\n');
  await e.settle();
  expect(codes(uri)).toEqual(expected);
});

test('a file is the same however its address is written', async () => {
  await started(minimal);
  await e.open('file:///club/shared parts/sizes.drill', 'let broad = 4\n');
  await e.settle();
  expect(codes(one)).toEqual(['unknown-name']);
});

test('settings are asked for, and take effect at once', async () => {
  let settings: unknown = { severity: { 'unused-name': 'error' }, guide: 'https://example.org/#{code}' };
  await started(full, () => settings);
  await e.open(two, square());
  await e.settle();
  const uri = two;
  const unused = async () => {
    const { items } = await e.ask<{ items: Diagnostic[] }>('textDocument/diagnostic', { textDocument: { uri } });
    return items.find(({ code }) => code === 'unused-name');
  };
  expect(await unused()).toMatchObject({ severity: 1, codeDescription: { href: 'https://example.org/#unused-name' } });
  settings = { severity: { 'unused-name': 'off' }, inlayHints: false };
  await e.client.sendNotification('workspace/didChangeConfiguration', { settings: null });
  await e.settle();
  expect(await unused()).toBeUndefined();
  const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
  expect(await e.ask('textDocument/inlayHint', { textDocument: { uri }, range })).toEqual([]);
  expect(await e.ask<CodeAction[]>('textDocument/codeAction', { textDocument: { uri }, range, context: { diagnostics: [] } })).toEqual([]);
});

test('settings that are sent take effect at once', async () => {
  await started(minimal);
  await e.open(two, square());
  await e.settle();
  expect(codes(two)).toEqual(['unused-name']);
  await e.client.sendNotification('workspace/didChangeConfiguration', { settings: { halfturn: { severity: { 'unused-name': 'off' } } } });
  await e.settle();
  expect(codes(two)).toEqual([]);
});
