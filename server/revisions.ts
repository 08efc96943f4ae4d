/** Files as git has them: listed and read through git itself, without a shell. */
import { execFileSync } from 'node:child_process';
import { posix } from 'node:path';
import { parse } from '../grammar/parse.ts';
import type { Workspace } from '../shared/model/imports.ts';
import { Refusal } from './io.ts';

export interface Revision {
  /** As the user wrote it. */
  readonly name: string;
  /** The contents of every file by its path from the top of the repository, as object names. */
  readonly files: ReadonlyMap<string, string>;
  /** Null for what is no text in UTF-8. */
  readonly read: (path: string) => string | null;
  readonly workspace: (path: string) => Workspace;
}

export interface Repository {
  /** Absolute path of its top folder. */
  readonly top: string;
  readonly revision: (name: string) => Revision;
  /** Where the work that led to `head` left that of `base`. */
  readonly mergeBase: (base: string, head: string) => string;
  /** Paths in the working tree, those that git does not know yet among them. */
  readonly working: () => readonly string[];
}

export function repositoryAt(cwd: string): Repository {
  const top = git(cwd, ['rev-parse', '--show-toplevel'], () => `This is not inside a git repository: ${cwd}`).replace(/\r?\n$/, '');
  const commit = (name: string): string => {
    const unknown = (): string => `git knows no revision ${name}.`;
    if (name.startsWith('-') || name.trim() === '') throw new Refusal(unknown());
    return git(top, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${name}^{commit}`], unknown).trim();
  };
  return {
    top,
    revision: (name) => revisionOf(top, name, commit(name)),
    mergeBase: (base, head) => git(top, ['merge-base', commit(base), commit(head)], () => `${base} and ${head} have no commit in common.`).trim(),
    working: () => parted(git(top, ['ls-files', '-z', '--cached', '--others', '--exclude-standard', '--', '*.drill'])),
  };
}

function revisionOf(top: string, name: string, commit: string): Revision {
  const files = new Map<string, string>();
  for (const entry of parted(git(top, ['ls-tree', '-r', '-z', '--full-tree', commit]))) {
    const found = /^100\d{3} blob ([0-9a-f]+)\t([^]*)$/.exec(entry);
    // Links and other repositories are not followed.
    if (found) files.set(found[2]!, found[1]!);
  }
  const texts = new Map<string, string | null>();
  const read = (path: string): string | null => {
    const object = files.get(path);
    if (object === undefined) return null;
    if (!texts.has(object)) texts.set(object, decoded(run(top, ['cat-file', 'blob', object])));
    return texts.get(object)!;
  };
  return { name, files, read, workspace: (path) => workspaceIn(files, read, path) };
}

/** As the working tree would have it: imports reach up to the nearest folder that is the top of a project. */
function workspaceIn(files: ReadonlyMap<string, string>, read: Revision['read'], path: string): Workspace {
  let root = posix.dirname(path);
  while (root !== '.' && !['package.json', '.halfturn.json'].some((top) => files.has(`${root}/${top}`))) root = posix.dirname(root);
  const under = root === '.' ? '' : `${root}/`;
  return {
    path: path.slice(under.length),
    read: (wanted) => {
      const text = read(`${under}${wanted}`);
      return text === null ? null : { path: wanted, file: parse(text).file };
    },
  };
}

function parted(list: string): string[] {
  return list.split('\0').filter((each) => each !== '');
}

function decoded(bytes: Buffer): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}

function git(cwd: string, words: readonly string[], failed?: () => string): string {
  return run(cwd, words, failed).toString('utf8');
}

/** Bytes of a list of files or of a file. */
const most = 256 * 1024 * 1024;

function run(cwd: string, words: readonly string[], failed?: () => string): Buffer {
  try {
    return execFileSync('git', ['-c', 'core.quotePath=false', '-c', 'core.fsmonitor=false', ...words], {
      cwd, maxBuffer: most, stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, GIT_OPTIONAL_LOCKS: '0' },
    });
  } catch (error) {
    const { code, stderr } = error as { readonly code?: string; readonly stderr?: Buffer };
    if (code === 'ENOENT') throw new Refusal('git is not installed, or not on the path.');
    throw new Refusal(failed?.() ?? `git cannot do that: ${(stderr?.toString('utf8').trim().split('\n')[0] ?? '') || String(error)}`);
  }
}
