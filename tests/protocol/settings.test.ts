/** The settings of a folder, from its `halfturn.json`. */
import { afterEach, expect, test } from 'vitest';
import type { Diagnostic, InitializeParams } from 'vscode-languageserver/node';
import { sceneRequest, type SceneAnswer } from '../../shared/protocol.ts';
import { square } from '../service/texts.ts';
import { full, minimal } from './clients.ts';
import { editor, type Editor } from './harness.ts';

const uri = 'file:///club/under%2012/one.drill';
const near = 'file:///club/under%2012/halfturn.json';
const far = 'file:///club/halfturn.json';
const outside = 'file:///halfturn.json';
const off = '{ "severity": { "unused-name": "off" } }';
const error = '{ "severity": { "unused-name": "error" }, "guide": "https://example.org/#{code}", "convention": "dashed pass" }';
let e: Editor;
afterEach(() => e.close());

async function started(init: Partial<InitializeParams>, disk: Readonly<Record<string, string>>, settings?: unknown): Promise<void> {
  e = await editor(init, { disk, settings: () => settings });
  await e.open(uri, square());
  await e.settle();
}

/** The one thing wrong with the text is a name that is not used. */
const pushed = () => e.reports.findLast((report) => report.uri === uri)!.diagnostics.map(({ severity }) => severity);
const pulled = async () => (await e.ask<{ items: Diagnostic[] }>('textDocument/diagnostic', { textDocument: { uri } })).items;
const levels = async () => (await pulled()).map(({ severity }) => severity);
const scene = () => e.ask<SceneAnswer>(sceneRequest, { uri, drill: { index: 0 }, theme: 'light', convention: null });

test.each<[what: string, disk: Record<string, string>, own: unknown, expected: number[]]>([
  ['none', {}, null, [4]],
  ['of the folder', { [near]: error }, null, [1]],
  ['of the folder above', { [far]: error }, null, [1]],
  ['above what is open', { [outside]: error }, null, [1]],
  ['the nearest alone', { [near]: off, [far]: error }, null, []],
  ['the reader’s own before the folder’s', { [near]: error }, { severity: { 'unused-name': 'warning' } }, [2]],
  ['the reader’s own for other problems beside the folder’s', { [near]: error }, { severity: { 'long-wait': 'off' } }, [1]],
])('%s', async (_, disk, own, expected) => {
  await started(full, disk, own);
  expect(await levels()).toEqual(expected);
});

test('links and lines are those of the folder', async () => {
  await started(full, { [near]: error });
  expect((await pulled())[0]).toMatchObject({ codeDescription: { href: 'https://example.org/#unused-name' } });
  const dashed = (await scene()).scene;
  e.disk.delete(near);
  await e.client.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: near, type: 3 }] });
  await e.settle();
  expect((await scene()).scene).not.toEqual(dashed);
});

test('changes are seen at once: told by the client', async () => {
  await started(full, {});
  for (const [text, expected] of [[error, [1]], [off, []], ['', [4]]] as const) {
    const refreshed = e.heard.filter(({ method }) => method === 'workspace/diagnostic/refresh').length;
    e.disk.set(near, text);
    await e.client.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: near, type: 2 }] });
    await e.settle();
    expect(e.heard.filter(({ method }) => method === 'workspace/diagnostic/refresh').length).toBe(refreshed + 1);
    expect(await levels()).toEqual(expected);
  }
});

test('changes are seen at once: watched by the server, also of a file that comes into being', async () => {
  await started(minimal, {});
  expect(pushed()).toEqual([4]);
  for (const [text, expected] of [[error, [1]], [off, []]] as const) {
    e.disk.set(far, text);
    e.watched.get(far)!();
    await e.settle();
    expect(pushed()).toEqual(expected);
  }
});

test('what cannot be understood is told in the settings file, until it is mended', async () => {
  await started(full, { [near]: '{\n  "severty": {}\n}' });
  const report = () => e.reports.findLast((each) => each.uri === near)?.diagnostics;
  expect(report()).toEqual([{
    range: { start: { line: 1, character: 2 }, end: { line: 1, character: 11 } }, severity: 2, source: 'halfturn',
    message: 'There is no setting `severty`; did you mean `severity`?',
  }]);
  e.disk.set(near, off);
  await e.client.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: near, type: 2 }] });
  await e.settle();
  expect([report(), await levels()]).toEqual([[], []]);
});
