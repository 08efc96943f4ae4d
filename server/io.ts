import type { Problem } from '../shared/problem.ts';

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
}

/** Exit statuses. */
export const fine = 0;
export const problemsFound = 1;
export const refused = 2;

/** `undone` are sentences about what could not be read or written. */
export function statusOf(undone: readonly string[], problems: readonly Problem[]): number {
  if (undone.length > 0) return refused;
  return problems.some((problem) => problem.severity === 'error') ? problemsFound : fine;
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
