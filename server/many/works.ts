import { reasonOf, Refusal } from '../io.ts';
import { readFile, type Source } from '../sources.ts';
import type { CheckOptions } from './check.ts';
import type { DrawOptions } from './draw.ts';
import type { MeasureOptions } from './measure.ts';
import { answer, type Answer, type Work } from './answer.ts';

/** What is to be done with every file: plain data, so that a worker can be told. */
export type Job =
  | { readonly name: 'check'; readonly options: CheckOptions }
  | { readonly name: 'draw'; readonly options: DrawOptions }
  | { readonly name: 'measure'; readonly options: MeasureOptions };

/** A file to work on: the text only of what is not a file, as standard input. */
export type Item = string | Source;

export function nameOf(item: Item): string {
  return typeof item === 'string' ? item : item.name;
}

/** Loads what the work needs. The answer does the work with one file and never throws: one bad file stops nothing. */
export async function startWork(job: Job, cwd: string): Promise<(item: Item) => Answer> {
  const work = await workOf(job);
  return (item) => {
    try {
      return work(typeof item === 'string' ? readFile(item, cwd) : item);
    } catch (error) {
      const why = error instanceof Refusal ? error.message : `${nameOf(item)} is left out; this should not happen: ${reasonOf(error)}.`;
      return answer({ done: false, undone: [why] });
    }
  };
}

async function workOf(job: Job): Promise<Work> {
  switch (job.name) {
    case 'check':
      return (await import('./check.ts')).checking(job.options);
    case 'draw':
      return (await import('./draw.ts')).drawing(job.options);
    case 'measure':
      return (await import('./measure.ts')).measuring(job.options);
  }
}
