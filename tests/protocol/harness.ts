/** A language server and a client in one process, over streams in memory, with a clock that stands still until it is told. */
import { PassThrough } from 'node:stream';
import {
  createConnection, createProtocolConnection, StreamMessageReader, StreamMessageWriter,
  type InitializeParams, type InitializeResult, type ProtocolConnection, type PublishDiagnosticsParams,
} from 'vscode-languageserver/node';
import { analysedNotification } from '../../shared/protocol.ts';
import { startServer } from '../../server/server.ts';
import type { Runtime } from '../../server/runtime.ts';

export interface Editor {
  readonly client: ProtocolConnection;
  readonly capabilities: InitializeResult['capabilities'];
  /** Files of the disk by URI: to be changed by the test. */
  readonly disk: Map<string, string>;
  /** Every report so far, oldest first. */
  readonly reports: readonly PublishDiagnosticsParams[];
  /** Notifications and requests of the server other than reports, by method. */
  readonly heard: readonly { readonly method: string; readonly params: unknown }[];
  readonly open: (uri: string, text: string, version?: number) => Promise<void>;
  readonly change: (uri: string, version: number, changes: readonly unknown[]) => Promise<void>;
  readonly ask: <T>(method: string, params: unknown) => Promise<T>;
  /** Lets time pass until nothing more waits for it; comes back when the server has said all that it has to say. */
  readonly settle: () => Promise<void>;
  readonly clock: Clock;
  /** Files that are watched, with what is called when they change. */
  readonly watched: ReadonlyMap<string, () => void>;
  readonly close: () => Promise<void>;
}

export interface Clock {
  readonly waiting: () => number;
  /** Milliseconds go by. */
  readonly pass: (milliseconds: number) => void;
}

/** What a server may ask of its client. */
const serverRequests = [
  'client/registerCapability', 'workspace/configuration', 'workspace/diagnostic/refresh', 'workspace/inlayHint/refresh', 'workspace/codeLens/refresh',
];

interface World {
  readonly disk?: Readonly<Record<string, string>>;
  /** What the client answers when it is asked for its settings. */
  readonly settings?: () => unknown;
}

export async function editor(init: Partial<InitializeParams>, options: World = {}): Promise<Editor> {
  const [up, down] = [new PassThrough(), new PassThrough()];
  const disk = new Map(Object.entries(options.disk ?? {}));
  const { clock, runtime } = clockwork();
  const watched = new Map<string, () => void>();
  const server = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
  startServer(server, {
    ...runtime,
    read: async (_, uri) => (disk.has(uri) ? { text: disk.get(uri)! } : null),
    list: async (folder) => [...disk.keys()].filter((uri) => uri.startsWith(`${folder}/`)),
    watch: (uri, changed) => {
      watched.set(uri, changed);
      return () => void watched.delete(uri);
    },
    picture: () => 'cGljdHVyZQ==',
    pdf: async (make) => ({ bytes: new TextEncoder().encode(make((text) => text.length).title), missing: null }),
  });

  const client = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  const reports: PublishDiagnosticsParams[] = [];
  const heard: { method: string; params: unknown }[] = [];
  client.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => void reports.push(params));
  const hear = (method: string, params: unknown) => void heard.push({ method, params });
  client.onNotification(analysedNotification, (params) => hear(analysedNotification, params));
  client.onNotification('window/logMessage', (params) => hear('window/logMessage', params));
  for (const method of serverRequests) {
    client.onRequest(method, (params) => {
      hear(method, params);
      return method === 'workspace/configuration' ? [options.settings?.() ?? null] : null;
    });
  }
  client.listen();
  const { capabilities } = await client.sendRequest<InitializeResult>('initialize', { processId: null, rootUri: null, capabilities: {}, ...init });
  await client.sendNotification('initialized', {});

  const ask = <T>(method: string, params: unknown): Promise<T> => client.sendRequest(method, params) as Promise<T>;
  /** Messages are answered in order: whoever has this answer has everything sent before it. */
  const caughtUp = () => ask('textDocument/foldingRange', { textDocument: { uri: 'none:' } });
  const settle = async () => {
    await caughtUp();
    while (clock.waiting() > 0) {
      clock.pass(1000);
      await caughtUp();
      await caughtUp();
    }
    await caughtUp();
  };
  while (init.capabilities?.workspace?.configuration && !heard.some(({ method }) => method === 'workspace/configuration')) await caughtUp();
  await settle();
  return {
    client, capabilities, disk, reports, heard, ask, settle, clock, watched,
    open: (uri, text, version = 1) => client.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'drill', version, text } }),
    change: (uri, version, contentChanges) => client.sendNotification('textDocument/didChange', { textDocument: { uri, version }, contentChanges }),
    close: async () => {
      await ask('shutdown', undefined);
      client.dispose();
      server.dispose();
      up.destroy();
      down.destroy();
    },
  };
}

function clockwork(): { readonly clock: Clock; readonly runtime: Pick<Runtime, 'now' | 'after' | 'turn'> } {
  let now = 0;
  const timers = new Set<{ readonly at: number; readonly ring: () => void }>();
  return {
    clock: {
      waiting: () => timers.size,
      pass(milliseconds) {
        now += milliseconds;
        for (const timer of [...timers].sort((a, b) => a.at - b.at)) {
          if (timer.at > now || !timers.delete(timer)) continue;
          timer.ring();
        }
      },
    },
    runtime: {
      now: () => now,
      after: (milliseconds, ring) => {
        const timer = { at: now + milliseconds, ring };
        timers.add(timer);
        return () => void timers.delete(timer);
      },
      turn: () => new Promise((resume) => setImmediate(resume)),
    },
  };
}
