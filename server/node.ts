/** The language server in Node, over what the command line says: `--stdio` or `--node-ipc`. Ends with the connection. */
import { createConnection } from 'vscode-languageserver/node';
import { nodeRuntime } from './node-runtime.ts';
import { startServer } from './server.ts';

startServer(createConnection(), nodeRuntime);
