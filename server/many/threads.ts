import { Worker } from 'node:worker_threads';
import { answer, type Answer } from './answer.ts';
import { nameOf, type Item } from './works.ts';
import type { Orders } from './worker.ts';

interface Asked {
  readonly items: readonly Item[];
  readonly threads: number;
  readonly program: URL;
  readonly orders: Orders;
  /** In any order. */
  readonly done: (index: number, answer: Answer) => void;
  readonly stopped: AbortSignal;
}

/** Has the items worked on in threads. Comes back when all are done, or at once when it is stopped. */
export function inThreads({ items, threads, program, orders, done, stopped }: Asked): Promise<void> {
  return new Promise((resolve) => {
    const workers = new Set<Worker>();
    let next = 0;
    let open = items.length;
    const finish = (): void => {
      for (const worker of workers) void worker.terminate();
      resolve();
    };
    const start = (): void => {
      const worker = new Worker(program, { workerData: orders });
      workers.add(worker);
      /** What it has in hand, by index; past the end when it has nothing. */
      let current = next;
      const give = (): void => {
        current = next;
        if (next < items.length) worker.postMessage(items[next++]);
      };
      const take = (result: Answer): void => {
        if (stopped.aborted || current >= items.length) return;
        done(current, result);
        open -= 1;
        if (open === 0) finish();
      };
      worker.on('message', (result: Answer) => {
        take(result);
        give();
      });
      // Out of memory, or broken in another way: what it had in hand is lost, and another takes its place.
      worker.on('error', (error) => {
        workers.delete(worker);
        take(answer({ done: false, undone: [`${nameOf(items[current] ?? '')} is left out; this should not happen: ${error.message}.`] }));
        if (next < items.length && !stopped.aborted) start();
      });
      give();
    };
    stopped.addEventListener('abort', finish, { once: true });
    for (let index = 0; index < threads; index += 1) start();
  });
}
