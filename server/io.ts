import { severities, type Problem, type Severity } from '../shared/problem.ts';

/** What a command sees of the world around it, besides files. */
export interface Io {
  /** The folder that paths are relative to. */
  readonly cwd: string;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Everything on standard input. */
  readonly input: () => Promise<Uint8Array>;
  readonly colour: boolean;
  /** Standard error is a terminal, where a passing line of progress disturbs no file. */
  readonly watched: boolean;
  /** The file that this program starts from: its workers start from it too, as a bundle or from the sources. */
  readonly program: URL;
  /** Calls back instead of ending the program when the user presses Ctrl-C; the answer ends that. */
  readonly onInterrupt: (stop: () => void) => () => void;
}

/** Exit statuses. */
export const fine = 0;
export const problemsFound = 1;
export const refused = 2;
/** As shells count a program that was stopped by Ctrl-C. */
export const interrupted = 130;

/** How many problems there are of each level. */
export type Counts = Readonly<Record<Severity, number>>;

export function countsOf(problems: readonly Problem[]): Counts {
  const counts = { error: 0, warning: 0, info: 0, hint: 0 };
  for (const { severity } of problems) counts[severity] += 1;
  return counts;
}

export function sumOf(all: readonly Counts[]): Counts {
  const sum = countsOf([]);
  return Object.fromEntries(severities.map((each) => [each, all.reduce((count, counts) => count + counts[each], sum[each])])) as unknown as Counts;
}

/** `undone` are sentences about what could not be read or written. */
export function statusOf(undone: readonly string[], problems: readonly Problem[]): number {
  return statusFor(undone, countsOf(problems));
}

export function statusFor(undone: readonly string[], counts: Counts): number {
  if (undone.length > 0) return refused;
  return counts.error > 0 ? problemsFound : fine;
}

export function complain(io: Io, sentences: readonly string[]): void {
  for (const sentence of sentences) io.err(`halfturn: ${sentence}\n`);
}

/** The command cannot do what it was asked; the message is the one sentence that the user reads. */
export class Refusal extends Error {}

/** Why the system refused to read or write a file, in words. */
export function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const known: Readonly<Record<string, string>> = {
    ENOENT: 'there is no such file or folder',
    EACCES: 'permission is denied',
    EPERM: 'permission is denied',
    EROFS: 'it lies on a read-only disk',
    EISDIR: 'it is a folder',
    ENOTDIR: 'part of the path is a file, not a folder',
    EEXIST: 'it is there already',
    ENOSPC: 'the disk is full',
    ENAMETOOLONG: 'the name is too long',
    ELOOP: 'its links lead round in a circle',
  };
  return known[code] ?? (error instanceof Error ? error.message : String(error));
}
