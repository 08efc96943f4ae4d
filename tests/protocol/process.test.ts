/** The server as it is started for real: by `halfturn serve`, as a child of an editor, and as a worker in a browser. */
import { fork, spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createContext, runInContext } from 'node:vm';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  createProtocolConnection, IPCMessageReader, IPCMessageWriter, StreamMessageReader, StreamMessageWriter, type ProtocolConnection, type PublishDiagnosticsParams,
} from 'vscode-languageserver/node';
import { minimal } from './clients.ts';

const root = new URL('../..', import.meta.url).pathname;
const sizes = 'let wide = 4\n';
const text = 'import "sizes.drill"\ndrill "One" {\n  area wide x Nowhere\n}\n';
const folder = mkdtempSync(join(tmpdir(), 'halfturn-'));
const workspace = pathToFileURL(folder).href;
const uri = `${workspace}/one.drill`;
beforeAll(() => writeFileSync(join(folder, 'sizes.drill'), sizes));
afterAll(() => rmSync(folder, { recursive: true }));

/** Introduces itself, opens a text that imports a file, and gives the codes of what is reported. */
async function reportsOver(client: ProtocolConnection): Promise<unknown[]> {
  const report = new Promise<PublishDiagnosticsParams>((resolve) => client.onNotification('textDocument/publishDiagnostics', resolve));
  client.listen();
  await client.sendRequest('initialize', { processId: null, ...minimal, rootUri: workspace });
  await client.sendNotification('initialized', {});
  await client.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'drill', version: 1, text } });
  return (await report).diagnostics.map(({ code }) => code);
}

async function ended(child: ChildProcess, client: ProtocolConnection): Promise<unknown> {
  const exit = once(child, 'exit');
  await client.sendRequest('shutdown');
  await client.sendNotification('exit');
  const [status] = await exit;
  client.dispose();
  return status;
}

test('halfturn serve --stdio', async () => {
  const child = spawn(process.execPath, [`${root}server/cli.ts`, 'serve', '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
  let complaints = '';
  child.stderr.on('data', (data) => (complaints += String(data)));
  const client = createProtocolConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin));
  expect(await reportsOver(client)).toEqual(['unknown-name']);
  expect(await ended(child, client)).toBe(0);
  expect(complaints).toBe('');
});

test('halfturn serve says how it wants to be called', async () => {
  const child = spawn(process.execPath, [`${root}server/cli.ts`, 'serve'], { stdio: ['ignore', 'ignore', 'pipe'] });
  let complaints = '';
  child.stderr.on('data', (data) => (complaints += String(data)));
  const [status] = await once(child, 'close');
  expect([status, complaints]).toEqual([2, 'halfturn: serve talks over standard input and output: halfturn serve --stdio\n']);
});

test('a child of an editor', async () => {
  const child = fork(`${root}server/node.ts`, ['--node-ipc']);
  const client = createProtocolConnection(new IPCMessageReader(child), new IPCMessageWriter(child));
  expect(await reportsOver(client)).toEqual(['unknown-name']);
  expect(await ended(child, client)).toBe(0);
});

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
}

test('a worker in a browser, which knows nothing of Node and asks its editor for files', async () => {
  const { outputFiles: [bundle], metafile } = await build({
    entryPoints: [`${root}server/browser.ts`], bundle: true, platform: 'browser', format: 'iife', target: 'es2022', write: false, metafile: true, logLevel: 'silent',
  });
  expect(Object.keys(metafile.inputs).filter((path) => /resvg|gifenc|node-runtime|lib\/node\//.test(path))).toEqual([]);

  const asked: string[] = [];
  const report = new Promise<PublishDiagnosticsParams>((resolve) => {
    const scope = {
      onmessage: null as ((event: { readonly data: Message }) => void) | null,
      addEventListener: () => {},
      postMessage: (message: Message) => {
        if (message.method === 'textDocument/publishDiagnostics') resolve(message.params as PublishDiagnosticsParams);
        if (message.method === 'halfturn/read') {
          const { uri: wanted } = message.params as { readonly uri: string };
          asked.push(wanted);
          tell({ id: message.id!, result: wanted.endsWith('sizes.drill') ? sizes : null });
        }
      },
    };
    const tell = (message: Message) => setTimeout(() => scope.onmessage!({ data: structuredClone({ jsonrpc: '2.0', ...message }) }), 0);
    runInContext(bundle!.text, createContext({ self: scope, setTimeout, clearTimeout, performance, TextDecoder, TextEncoder, console }));
    tell({ id: 1, method: 'initialize', params: { processId: null, ...minimal, rootUri: 'vscode-vfs://club/drills' } });
    tell({ method: 'initialized', params: {} });
    tell({ method: 'textDocument/didOpen', params: { textDocument: { uri: 'vscode-vfs://club/drills/one.drill', languageId: 'drill', version: 1, text } } });
  });
  expect((await report).diagnostics.map(({ code }) => code)).toEqual(['unknown-name']);
  expect(asked.sort()).toEqual(['vscode-vfs://club/drills/halfturn.json', 'vscode-vfs://club/drills/sizes.drill', 'vscode-vfs://club/halfturn.json']);
});
