/** When to report: as soon as no more edits come in, and under continuous typing at least every 100 ms. Newest wins. */
import type { Runtime } from './runtime.ts';

/** Milliseconds without an edit after which a text counts as settled: longer than it takes to read edits that arrive together. */
const quiet = 2;
/** Milliseconds that an edit waits at most. */
const longest = 100;

export interface Publisher {
  /** Something about this text has changed. */
  readonly soon: (uri: string) => void;
  /** Reports nothing more. */
  readonly stop: () => void;
}

export function publisherOf(runtime: Pick<Runtime, 'now' | 'after'>, publish: (uri: string) => void): Publisher {
  const waiting = new Map<string, { readonly since: number; cancel: () => void }>();
  return {
    soon(uri) {
      const before = waiting.get(uri);
      before?.cancel();
      const since = before?.since ?? runtime.now();
      const wait = Math.max(0, Math.min(quiet, since + longest - runtime.now()));
      const cancel = runtime.after(wait, () => {
        waiting.delete(uri);
        publish(uri);
      });
      waiting.set(uri, { since, cancel });
    },
    stop() {
      for (const { cancel } of waiting.values()) cancel();
      waiting.clear();
    },
  };
}
