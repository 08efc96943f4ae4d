/** What git hands to the programs that help it to show differences. */
import { existsSync, globSync } from 'node:fs';
import { basename, relative, resolve } from 'node:path';
import { analyse, type Analysis } from '../shared/analyse.ts';
import { readable } from '../shared/review/readable.ts';
import { Refusal, type Io } from './io.ts';
import type { Pairs } from './pairs.ts';
import { readSource } from './sources.ts';
import { workspaceOf } from './workspace.ts';

/**
 * `diff.<driver>.textconv`: one file, often a copy outside the working tree, whose imports are then those of its namesake in it.
 * A file that cannot be read as text says so in place of its lines, for git would give up the whole difference.
 */
export async function readableFile(file: string, io: Io): Promise<string> {
  try {
    const { text, path } = await readSource(file, io);
    return readable(analyse(text, workspaceOf(path === null ? null : homeOf(path, io))));
  } catch (error) {
    if (!(error instanceof Refusal) || !existsSync(resolve(io.cwd, file))) throw error;
    return `${error.message}\n`;
  }
}

function homeOf(path: string, { cwd }: Io): string {
  if (!relative(cwd, path).startsWith('..')) return path;
  const pattern = `**/${basename(path).replace(/[*?[\]{}()!\\]/g, '?')}`;
  const namesakes = globSync(pattern, { cwd, exclude: (name) => basename(name) === 'node_modules' || basename(name).startsWith('.') });
  const [home, ...others] = namesakes.filter((name) => basename(name) === basename(path));
  return home !== undefined && others.length === 0 ? resolve(cwd, home) : path;
}

/** `diff.<driver>.command`: path, old file, hex and mode, new file, hex and mode; of a renamed file its new path and how alike they are. */
export async function driverPairs(words: readonly string[], io: Io): Promise<Pairs> {
  const [path = '', old, , , now, , , renamed] = words;
  // An unmerged file comes as a path alone: there are no two versions to compare.
  if (words.length === 1) return { before: path, after: path, files: [], unread: [] };
  if (old === undefined || now === undefined || words.length < 7 || words.length > 9) {
    throw new Refusal('--driver takes what git gives an external diff: PATH OLD-FILE OLD-HEX OLD-MODE NEW-FILE NEW-HEX NEW-MODE');
  }
  const after = renamed ?? path;
  const name = renamed === undefined ? path : `${path} → ${renamed}`;
  return { before: path, after, files: [{ name, before: await versionOf(old, path, io), after: await versionOf(now, after, io) }], unread: [] };
}

/** With the imports that it has at its place in the working tree, when it is there. Git writes `/dev/null` for no file. */
async function versionOf(file: string, home: string, io: Io): Promise<Analysis | null> {
  if (file === '/dev/null' || file === 'nul') return null;
  const { text, path } = await readSource(file, io);
  const place = resolve(io.cwd, home);
  return analyse(text, workspaceOf(existsSync(place) ? place : path));
}
