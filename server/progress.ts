import type { Io } from './io.ts';

/** Says how far a long piece of work has come, on one passing line, when someone is there to read it. */
export interface Progress {
  readonly step: (done: number, of: number, what: string) => void;
  /** Wipes the line, so that something else can be written. */
  readonly clear: () => void;
}

/** `clock` gives milliseconds. */
export function progressOn(io: Io, clock: () => number = Date.now): Progress {
  const began = clock();
  let last = 0;
  let shown = false;
  return {
    step: (done, of, what) => {
      const now = clock();
      if (!io.watched || now - began < patience || now - last < pause) return;
      last = now;
      shown = true;
      io.err(`\r\u001b[2K${done} of ${of} ${what}`);
    },
    clear: () => {
      if (shown) io.err('\r\u001b[2K');
      shown = false;
    },
  };
}

/** Milliseconds before work counts as long, and between two lines. */
const patience = 500;
const pause = 100;
