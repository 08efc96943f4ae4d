/** One work with many files: on all cores, told in the order of the files, a part of them only when other machines have the rest. */
import { availableParallelism } from 'node:os';
import { setImmediate as turn } from 'node:timers/promises';
import type { Options } from '../command.ts';
import { complain, interrupted, Refusal, statusFor, sumOf, type Counts, type Io } from '../io.ts';
import { progressOn } from '../progress.ts';
import { listSources, readSource } from '../sources.ts';
import type { Answer, Picture } from './answer.ts';
import { partOf } from './shard.ts';
import { inThreads } from './threads.ts';
import { startWork, type Item, type Job } from './works.ts';

/** The options of every command that takes many files. */
export const manyOptions = {
  jobs: { kind: 'number', value: 'N', least: 1, most: 256, help: 'files that are worked on at the same time (as many as the machine can)' },
  shard: { kind: 'text', value: 'K/N', help: 'only the K-th of N parts of the files, the same on every machine: for a run on N machines' },
} as const satisfies Options;

interface Asked {
  readonly operands: readonly string[];
  readonly jobs: number | null;
  readonly shard: string | null;
  /** Of the names of all files, before they are shared out. */
  readonly job: (names: readonly string[]) => Job;
  /** What the passing line says of the files: `files checked`. */
  readonly doing: string;
  /** So many files that a thread for them helps more than its start costs. */
  readonly worthAThread: number;
  /** Written before all others, and between what is told of two files. */
  readonly head?: string;
  readonly between?: string;
  /** Writes a picture; called in the order of the files. A {@link Refusal} is told and stops nothing. */
  readonly save?: (picture: Picture) => void;
}

export interface Total {
  /** Files that could be worked on. */
  readonly files: number;
  readonly counts: Counts;
  readonly data: readonly unknown[];
  /** How many things could not be read, written or understood, besides the problems of the files. */
  readonly undone: number;
}

/** Gives the exit status. `last` writes what stands at the end, and is left out when the user stops the work. */
export async function throughAll(asked: Asked, io: Io, last: (total: Total) => void): Promise<number> {
  const { operands, jobs, shard, job, doing, worthAThread, head = '', between = '', save } = asked;
  const { names: all, unread } = listSources(operands, io.cwd);
  const undone = [...unread];
  const items = await itemsOf(shard === null ? all : partOf(all, shard), io, undone);
  const progress = progressOn(io);
  const counts: Counts[] = [];
  const data: unknown[] = [];
  const remarks: string[] = [];
  let told = 0;
  let files = 0;
  let written = false;

  const tell = (result: Answer): void => {
    told += 1;
    if (result.out + result.err !== '') progress.clear();
    if (result.err !== '') io.err(result.err);
    if (result.out !== '') io.out(written ? between + result.out : result.out);
    written ||= result.out !== '';
    counts.push(result.counts);
    data.push(...result.data);
    remarks.push(...result.remarks);
    undone.push(...result.undone);
    files += result.done ? 1 : 0;
    for (const picture of result.pictures) {
      try {
        save?.(picture);
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        undone.push(error.message);
      }
    }
    progress.step(told, items.length, doing);
  };

  if (head !== '') io.out(head);
  const stop = new AbortController();
  const release = items.length > 1 ? io.onInterrupt(() => stop.abort()) : () => {};
  try {
    await work(items, job(all), threadsFor(items.length, jobs, worthAThread), io, inOrder(tell), stop.signal);
  } finally {
    release();
    progress.clear();
  }
  if (!stop.signal.aborted) last({ files, counts: sumOf(counts), data, undone: new Set(undone).size });
  complain(io, [...new Set([...undone, ...remarks])]);
  if (!stop.signal.aborted) return statusFor(undone, sumOf(counts));
  complain(io, [`stopped after ${told} of ${items.length} files.`]);
  return interrupted;
}

/** Takes what comes in any order, and tells it by index from 0 on. */
function inOrder(tell: (answer: Answer) => void): (index: number, answer: Answer) => void {
  const waiting = new Map<number, Answer>();
  let next = 0;
  return (index, result) => {
    waiting.set(index, result);
    for (let each = waiting.get(next); each; each = waiting.get(next)) {
      waiting.delete(next);
      next += 1;
      tell(each);
    }
  };
}

/** Files stay names, and are read where they are worked on; standard input is read here. */
async function itemsOf(names: readonly string[], io: Io, undone: string[]): Promise<readonly Item[]> {
  const items: Item[] = [];
  for (const name of names) {
    try {
      items.push(name === '-' ? await readSource(name, io) : name);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      undone.push(error.message);
    }
  }
  return items;
}

function threadsFor(files: number, jobs: number | null, worthAThread: number): number {
  return Math.min(files, jobs === null ? Math.min(availableParallelism(), Math.floor(files / worthAThread)) : Math.floor(jobs));
}

async function work(
  items: readonly Item[], job: Job, threads: number, io: Io, done: (index: number, answer: Answer) => void, stopped: AbortSignal,
): Promise<void> {
  const orders = { job, cwd: io.cwd };
  if (threads > 1) return inThreads({ items, threads, program: io.program, orders, done, stopped });
  const work = await startWork(job, io.cwd);
  for (const [index, item] of items.entries()) {
    if (stopped.aborted) return;
    done(index, work(item));
    // Lets Ctrl-C be heard.
    if (items.length > 1) await turn();
  }
}
