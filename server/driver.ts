/** What git hands to the programs that help it to show differences. */
import { globSync } from 'node:fs';
import { basename, relative, resolve } from 'node:path';
import { analyse, type Analysis } from '../shared/analyse.ts';
import { Refusal, type Io } from './io.ts';
import type { Pairs } from './pairs.ts';
import { readSource } from './sources.ts';
import { workspaceOf } from './workspace.ts';

/** `diff.<driver>.textconv`: one file, often a copy outside the working tree, whose imports are then those of its namesake in it. */
export async function textconvAnalysis(file: string, io: Io): Promise<Analysis> {
  const { text, path } = await readSource(file, io);
  return analyse(text, workspaceOf(path === null ? null : homeOf(path, io)));
}

function homeOf(path: string, { cwd }: Io): string {
  if (!relative(cwd, path).startsWith('..')) return path;
  const [home, ...others] = globSync(`**/${basename(path).replace(/[*?[\]{}()!\\]/g, '?')}`, { cwd, exclude: (name) => basename(name) === 'node_modules' || basename(name).startsWith('.') })
    .filter((name) => basename(name) === basename(path));
  return home !== undefined && others.length === 0 ? resolve(cwd, home) : path;
}

/** `diff.<driver>.command`: path, old file, hex and mode, new file, hex and mode; of a renamed file its new path and how alike they are. */
export async function driverAnalyses(words: readonly string[], io: Io): Promise<Pairs> {
  const [path = '', old, , , now, , , renamed] = words;
  // An unmerged file comes as a path alone: there are no two versions to compare.
  if (words.length === 1) return { before: path, after: path, files: [], unread: [] };
  if (old === undefined || now === undefined || words.length < 7 || words.length > 9) throw new Refusal('--driver takes what git gives an external diff: PATH OLD-FILE OLD-HEX OLD-MODE NEW-FILE NEW-HEX NEW-MODE');
  const version = async (file: string, home: string): Promise<Analysis | null> => {
    if (file === '/dev/null' || file === 'nul') return null;
    const { text, path: own } = await readSource(file, io);
    return analyse(text, homeless(resolve(io.cwd, home)) ?? workspaceOf(own));
  };
  const name = renamed ?? path;
  return { before: path, after: name, files: [{ name: renamed === undefined ? path : `${path} → ${renamed}`, before: await version(old, path), after: await version(now, name) }], unread: [] };
}

/** What the file may import at the place it has in the working tree; null when it is not there. */
function homeless(path: string): ReturnType<typeof workspaceOf> | null {
  try {
    return workspaceOf(path);
  } catch {
    return null;
  }
}
