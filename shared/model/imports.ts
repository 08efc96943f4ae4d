/** The files that a text brings in, and theirs in turn. */
import type { File, Import } from '../../grammar/tree.ts';
import { circularImport } from '../checks/circular-import.ts';
import { missingImport } from '../checks/missing-import.ts';
import { noWorkspace, outsideWorkspace } from '../checks/outside-workspace.ts';
import type { Problem } from '../problem.ts';

/** What an import brings: other files of the workspace, already read. Pure: reading is the caller's. */
export interface Workspace {
  /** The text's own path, '/'-separated, relative to the workspace root; null for a file outside any. */
  readonly path: string | null;
  /** `outside`: the path leaves the workspace; null: no such file. Never asked for a path with `..`, or for an absolute one. */
  readonly read: (path: string) => { readonly path: string; readonly file: File } | 'outside' | null;
}

export interface Source {
  readonly path: string;
  readonly file: File;
  /** Those that could be read, in order. */
  readonly imports: readonly { readonly statement: Import; readonly path: string }[];
}

/** The text itself comes first. */
export interface Sources {
  readonly root: string;
  readonly byPath: ReadonlyMap<string, Source>;
}

/** The text with everything it imports, however far; problems are reported for its own imports only. */
export function sourcesOf(file: File, workspace: Workspace, report: (problem: Problem) => void): Sources {
  const root = workspace.path ?? '';
  const byPath = new Map<string, Source>();
  const queue = [{ path: root, file }];
  const asked = new Set([root]);
  for (const { path, file } of queue) {
    const imports: { statement: Import; path: string }[] = [];
    for (const statement of file.items) {
      if (statement.kind !== 'import') continue;
      const found = workspace.path === null ? noWorkspace(statement.path) : imported(statement, path, asked, workspace);
      if ('code' in found) {
        if (path === root) report(found);
        continue;
      }
      imports.push({ statement, path: found.path });
      if (found.file === null || asked.has(found.path)) continue;
      asked.add(found.path);
      queue.push({ path: found.path, file: found.file });
    }
    byPath.set(path, { path, file, imports });
  }
  reportCircles(root, byPath, report);
  return { root, byPath };
}

/** The file is null when it has been read before. */
function imported(
  { path: quote }: Import,
  from: string,
  asked: ReadonlySet<string>,
  workspace: Workspace,
): { readonly path: string; readonly file: File | null } | Problem {
  const path = pathFrom(from, quote.text);
  if (path === null) return outsideWorkspace(quote, quote.text);
  if (asked.has(path)) return { path, file: null };
  const found = workspace.read(path);
  if (found === 'outside') return outsideWorkspace(quote, quote.text);
  return found ?? missingImport(quote, path);
}

/** A path as written in a file, relative to the workspace; null when it is absolute or climbs out. */
export function pathFrom(from: string, written: string): string | null {
  if (/^\/|^[a-z][a-z+.-]*:|[\\\0]/i.test(written)) return null;
  const steps = from.split('/').slice(0, -1);
  for (const step of written.split('/')) {
    if (step === '..' && steps.length === 0) return null;
    if (step === '..') steps.pop();
    else if (step !== '.' && step !== '') steps.push(step);
  }
  return steps.join('/');
}

/** How a file of the workspace is written in another one: the inverse of {@link pathFrom}. */
export function pathTo(from: string, path: string): string {
  const [folder, steps] = [from.split('/').slice(0, -1), path.split('/')];
  let common = 0;
  while (common < folder.length && common < steps.length - 1 && folder[common] === steps[common]) common += 1;
  return [...folder.slice(common).map(() => '..'), ...steps.slice(common)].join('/');
}

/** Walks back from the text to every file that needs it, so that each import that leads there can say by which way. */
function reportCircles(root: string, byPath: ReadonlyMap<string, Source>, report: (problem: Problem) => void): void {
  const importers = new Map<string, string[]>();
  for (const source of byPath.values()) {
    for (const { path } of source.imports) importers.set(path, [...(importers.get(path) ?? []), source.path]);
  }
  const next = new Map<string, string>();
  const queue = [root];
  for (const path of queue) {
    for (const importer of importers.get(path) ?? []) {
      if (importer === root || next.has(importer)) continue;
      next.set(importer, path);
      queue.push(importer);
    }
  }
  for (const { statement, path } of byPath.get(root)?.imports ?? []) {
    if (path !== root && !next.has(path)) continue;
    const chain = [path];
    for (let step = path; step !== root; ) chain.push((step = next.get(step)!));
    report(circularImport(statement.path, chain));
  }
}
