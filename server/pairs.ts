/** Which files of two versions are to be compared: two files, two folders, or what git has. */
import { statSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { analyse, type Analysis } from '../shared/analyse.ts';
import type { Workspace } from '../shared/model/imports.ts';
import type { FilePair } from '../shared/review/report.ts';
import { Refusal, type Io } from './io.ts';
import { repositoryAt, type Repository, type Revision } from './revisions.ts';
import { readSource, readSources } from './sources.ts';
import { workspaceOf } from './workspace.ts';

export interface Pairs {
  /** What the versions are called. */
  readonly before: string;
  readonly after: string;
  readonly files: readonly FilePair[];
  /** A sentence for everything that could not be read. */
  readonly unread: readonly string[];
}

/** A text that has not been worked out yet. */
interface Unread {
  readonly text: string;
  readonly workspace: () => Workspace;
}
type Texts = ReadonlyMap<string, Unread>;

/** Two files, or two folders whose files are matched by their paths, then by the names of their drills. */
export async function pairsOf(old: string, now: string, io: Io): Promise<Pairs> {
  const [before, after] = [isFolder(old, io), isFolder(now, io)];
  if (before !== after) throw new Refusal(`Compare two files or two folders: ${before ? old : now} is a folder, ${before ? now : old} is not.`);
  if (!before) {
    const [a, b] = [await readSource(old, io), await readSource(now, io)];
    return { before: old, after: now, files: [{ name: now, before: analyse(a.text, workspaceOf(a.path)), after: analyse(b.text, workspaceOf(b.path)) }], unread: [] };
  }
  const unread: string[] = [];
  const [a, b] = [await inFolder(old, io, unread), await inFolder(now, io, unread)];
  return { before: old, after: now, files: matched(a, b), unread };
}

function isFolder(name: string, { cwd }: Io): boolean {
  return name !== '-' && (statSync(resolve(cwd, name), { throwIfNoEntry: false })?.isDirectory() ?? false);
}

async function inFolder(folder: string, io: Io, unread: string[]): Promise<Texts> {
  const { sources, unread: failed } = await readSources([folder], io);
  // A folder without drills is the state before the first one.
  unread.push(...failed.filter((sentence) => !sentence.startsWith('There is no .drill file')));
  const top = resolve(io.cwd, folder);
  return new Map(sources.map(({ text, path }) => [slashed(relative(top, path!)), { text, workspace: () => workspaceOf(path) }]));
}

/** By path; then a file that is gone and one that is new are one that was renamed, when a drill of the same name is in both. */
function matched(before: Texts, after: Texts): FilePair[] {
  // What is the same, and brings nothing in that could be another, is not worked out.
  const same = new Set([...after].filter(([path, { text }]) => before.get(path)?.text === text && !/^\s*import\b/m.test(text)).map(([path]) => path));
  const analysed = (texts: Texts) => new Map([...texts].filter(([path]) => !same.has(path)).map(([path, { text, workspace }]) => [path, analyse(text, workspace())]));
  const [old, now] = [analysed(before), analysed(after)];
  const gone = new Map([...old].filter(([path]) => !now.has(path)));
  const pairs = [...now].map(([path, analysis]): FilePair => {
    const known = old.get(path);
    if (known) return { name: path, before: known, after: analysis };
    const [from, other] = [...gone].find(([, each]) => sharesDrill(each, analysis)) ?? [null, null];
    if (from !== null) gone.delete(from);
    return { name: from === null ? path : `${from} → ${path}`, before: other, after: analysis };
  });
  const lost = [...gone].map(([name, analysis]): FilePair => ({ name, before: analysis, after: null }));
  return [...pairs, ...lost].sort((a, b) => (a.name < b.name ? -1 : 1));
}

function sharesDrill(one: Analysis, other: Analysis): boolean {
  return one.drills.some(({ drill: { name } }) => other.drills.some(({ drill }) => drill.name === name));
}

function slashed(path: string): string {
  return path.split(sep).join('/');
}

// ---------------------------------------------------------------- git

/** `BASE..HEAD`, `BASE...HEAD` (since HEAD left BASE), or `BASE` against the working tree; all drills, or those at the paths. */
export async function gitPairs(range: string, paths: readonly string[], io: Io): Promise<Pairs> {
  const repository = repositoryAt(io.cwd);
  const [, base = '', dots, head = ''] = /^(.*?)(?:(\.{2,3})(.*))?$/.exec(range) ?? [];
  const [from, to] = [base || 'HEAD', head || 'HEAD'];
  const before = repository.revision(dots === '...' ? repository.mergeBase(from, to) : from);
  const after = dots === undefined ? null : repository.revision(to);
  const unread: string[] = [];
  const wanted = paths.map((path) => ({ path, isIn: under(repository, path, io) }));
  const chosen = (all: Iterable<string>) => [...all].filter((path) => path.endsWith('.drill') && (wanted.length === 0 || wanted.some(({ isIn }) => isIn(path))));
  const olds = chosen(before.files.keys());
  const news = chosen(after ? after.files.keys() : repository.working());
  const missing = wanted.find(({ isIn }) => ![...olds, ...news].some(isIn));
  if (missing) throw new Refusal(`There is no .drill file at ${missing.path}, neither in ${from} nor in ${after ? to : 'the working tree'}.`);
  const old = inRevision(before, olds, unread);
  const now = after ? inRevision(after, news, unread) : await onDisk(repository, news, io, unread);
  return { before: from, after: after ? to : 'the working tree', files: matched(old, now), unread };
}

function under({ top }: Repository, path: string, { cwd }: Io): (file: string) => boolean {
  const folder = slashed(relative(top, resolve(cwd, path)));
  return (file) => folder === '' || file === folder || file.startsWith(`${folder}/`);
}

function inRevision(revision: Revision, paths: readonly string[], unread: string[]): Texts {
  return new Map(paths.flatMap((path): [string, Unread][] => {
    const text = revision.read(path);
    if (text === null) unread.push(`${path} in ${revision.name} cannot be read: it is not text in UTF-8.`);
    return text === null ? [] : [[path, { text, workspace: () => revision.workspace(path) }]];
  }));
}

/** Without what git still lists and is not there any more. */
async function onDisk({ top }: Repository, paths: readonly string[], io: Io, unread: string[]): Promise<Texts> {
  const there = paths.map((path) => join(top, path)).filter((path) => statSync(path, { throwIfNoEntry: false })?.isFile());
  const { sources, unread: failed } = await readSources(there, io);
  unread.push(...failed);
  return new Map(sources.map(({ text, path }) => [slashed(relative(top, path!)), { text, workspace: () => workspaceOf(path) }]));
}
