import type { Connection } from 'vscode-languageserver';
import type { Client } from './client.ts';
import type { Document, Documents } from './documents.ts';
import type { Runtime } from './runtime.ts';
import type { Preferences } from './settings.ts';

/** One editor at the other end of a connection. What the client is and wants is known once it has introduced itself. */
export interface Session {
  readonly connection: Connection;
  readonly runtime: Runtime;
  readonly documents: Documents;
  readonly client: () => Client;
  readonly preferences: (document: Document) => Promise<Preferences>;
}
