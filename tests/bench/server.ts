/**
 * From a keystroke to the published problems, over streams in memory, and the memory of a server through 10,000 edits.
 * Run: node --expose-gc tests/bench/server.ts
 */
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { PassThrough } from 'node:stream';
import { createConnection, createProtocolConnection, StreamMessageReader, StreamMessageWriter, type PublishDiagnosticsParams } from 'vscode-languageserver/node';
import { nodeRuntime } from '../../server/node-runtime.ts';
import { startServer } from '../../server/server.ts';

const ordinary = readFileSync(new URL('ordinary.drill', import.meta.url), 'utf8');
const [up, down] = [new PassThrough(), new PassThrough()];
const server = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
startServer(server, nodeRuntime);
const client = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
let reported: (params: PublishDiagnosticsParams) => void = () => {};
client.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => reported(params));
client.listen();
await client.sendRequest('initialize', { processId: null, rootUri: null, capabilities: {} });
await client.sendNotification('initialized', {});

console.log(`Node ${process.version}, ${cpus()[0]?.model ?? 'unknown processor'}\n`);
const large = ordinary.repeat(Math.ceil(2000 / ordinary.split('\n').length)).replaceAll(/drill "(.*)"/g, numbered());
await typing('an ordinary drill', ordinary, 400);
await typing(`a file of ${large.split('\n').length} lines`, large, 60);
await memory(10_000);
client.dispose();
server.dispose();
process.exit(0);

/** One letter after another into a comment, each waited for. */
async function typing(what: string, text: string, edits: number): Promise<void> {
  const uri = `untitled:${what}`;
  await opened(uri, text);
  const taken: number[] = [];
  const before = process.cpuUsage();
  for (let version = 2; version < edits + 2; version += 1) {
    const start = performance.now();
    await edited(uri, version, version % 20 === 0);
    taken.push(performance.now() - start);
  }
  const warm = taken.slice(Math.floor(edits / 4)).sort((a, b) => a - b);
  const [median, p95] = [0.5, 0.95].map((share) => warm[Math.floor(warm.length * share)]!.toFixed(1));
  const { user, system } = process.cpuUsage(before);
  const busy = ((user + system) / 1000 / edits).toFixed(1);
  console.log(`${what}: keystroke to published problems, median ${median} ms, p95 ${p95} ms; processor time ${busy} ms an edit`);
  await client.sendNotification('textDocument/didClose', { textDocument: { uri } });
}

async function memory(edits: number): Promise<void> {
  const uri = 'untitled:memory';
  await opened(uri, ordinary);
  const held: number[] = [];
  for (let version = 2; version < edits + 2; version += 1) {
    await edited(uri, version, version % 20 === 0);
    if ((version - 2) % (edits / 10) === 0) held.push(heap());
  }
  held.push(heap());
  console.log(`heap through ${edits} edits, MB: ${held.map((bytes) => (bytes / 1e6).toFixed(1)).join(' ')}`);
  console.log(`the process holds ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB in all`);
}

/** Types a letter into the first comment, or takes the last twenty out again. */
async function edited(uri: string, version: number, out: boolean): Promise<void> {
  const range = { start: { line: 0, character: 3 }, end: { line: 0, character: out ? 3 + 19 : 3 } };
  const done = report(uri, version);
  await client.sendNotification('textDocument/didChange', { textDocument: { uri, version }, contentChanges: [{ range, text: out ? '' : 'x' }] });
  await done;
}

async function opened(uri: string, text: string): Promise<void> {
  const done = report(uri, 1);
  await client.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'drill', version: 1, text } });
  await done;
}

function report(uri: string, version: number): Promise<void> {
  return new Promise((resolve) => {
    reported = (params) => {
      if (params.uri === uri && params.version === version) resolve();
    };
  });
}

function heap(): number {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed;
}

function numbered(): (whole: string, name: string) => string {
  let number = 0;
  return (_, name) => `drill "${name} ${++number}"`;
}
