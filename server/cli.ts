#!/usr/bin/env node
import { buffer } from 'node:stream/consumers';
import { isMainThread } from 'node:worker_threads';
import { refused, type Io } from './io.ts';
import { runHalfturn } from './command-line.ts';

if (isMainThread) await start();
else await import('./many/worker.ts');

async function start(): Promise<void> {
  const io: Io = {
    cwd: process.cwd(),
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    input: () => buffer(process.stdin),
    colour: process.stdout.isTTY === true && !process.env['NO_COLOR'] && process.env['TERM'] !== 'dumb',
    watched: process.stderr.isTTY === true,
    program: new URL(import.meta.url),
    onInterrupt: (stop) => {
      process.once('SIGINT', stop);
      return () => void process.off('SIGINT', stop);
    },
  };
  // A reader that has seen enough (`| head`) closes the pipe; that is no fault.
  process.stdout.on('error', (error: Error & { code?: string }) => process.exit(error.code === 'EPIPE' ? process.exitCode : refused));
  process.exitCode = await runHalfturn(process.argv.slice(2), io);
}
