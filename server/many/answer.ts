import type { Source } from '../sources.ts';
import { countsOf, type Counts } from '../io.ts';

/** What became of one file. Plain data: it may come from another thread. */
export interface Answer {
  /** For standard output and standard error at once. */
  readonly out: string;
  readonly err: string;
  /** For a document that is written when all files are through. */
  readonly data: readonly unknown[];
  /** Files to be written. Threads write none: so nothing is half written when they are stopped. */
  readonly pictures: readonly Picture[];
  readonly counts: Counts;
  /** Whether the work could be done. */
  readonly done: boolean;
  /** Sentences for the end, and those about what could not be done as it was asked. */
  readonly remarks: readonly string[];
  readonly undone: readonly string[];
}

export interface Picture {
  /** Relative to the working folder. */
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** What is done with a file. */
export type Work = (source: Source) => Answer;

export function answer(parts: Partial<Answer>): Answer {
  return { out: '', err: '', data: [], pictures: [], counts: countsOf([]), done: true, remarks: [], undone: [], ...parts };
}
