/** The language server as a worker of an editor in the browser, which reads files for it. The bundle's entry. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { filesRequest, readRequest, type FilesParams, type ReadParams } from '../shared/protocol.ts';
import { startServer } from './server.ts';

/** What is used of a worker's own scope. */
declare const self: ConstructorParameters<typeof BrowserMessageReader>[0];

const connection = createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self));

startServer(connection, {
  read: async (_, uri) => {
    const text = await connection.sendRequest<string | null>(readRequest, { uri } satisfies ReadParams).catch(() => null);
    return text === null ? null : { text };
  },
  list: (folder) => connection.sendRequest<readonly string[]>(filesRequest, { folder } satisfies FilesParams).catch(() => []),
  // The client tells of changes.
  watch: () => () => {},
  picture: () => null,
  pdf: async () => null,
  now: () => performance.now(),
  after: (milliseconds, then) => {
    const timer = setTimeout(then, milliseconds);
    return () => clearTimeout(timer);
  },
  turn: () => new Promise((resume) => setTimeout(resume, 0)),
});
