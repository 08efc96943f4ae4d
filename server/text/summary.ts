import { severities, type Severity } from '../../shared/problem.ts';
import type { Counts } from '../io.ts';

/** `2 errors and 1 warning in 3 files.` */
export function summaryText(counts: Counts, files: number): string {
  return `${foundText(counts)} in ${counted(files, 'file')}.`;
}

/** `2 errors and 1 warning`. */
export function foundText(counts: Counts): string {
  const found = severities.filter((severity) => counts[severity] > 0).map((severity) => counted(counts[severity], words[severity]));
  return found.length === 0 ? 'No problems' : found.join(', ').replace(/, ([^,]*)$/, ' and $1');
}

export function counted(count: number, noun: string, nouns = `${noun}s`): string {
  return `${count} ${count === 1 ? noun : nouns}`;
}

const words: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', info: 'remark', hint: 'hint' };
