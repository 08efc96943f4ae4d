import { existsSync, readFileSync, realpathSync } from 'node:fs';
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { parse } from '../grammar/parse.ts';
import { settingsFile } from '../shared/settings/settings.ts';
import type { Workspace } from '../shared/model/imports.ts';

/**
 * What the imports of a file may reach: the nearest folder above it that is the top of a project, or its own folder.
 * A link that leads out of it counts as outside. Every file is read once in the life of the workspace; `seen` hears of each that is looked for.
 */
export function workspaceOf(path: string | null, seen: (path: string) => void = () => {}): Workspace {
  if (path === null) return { path: null, read: () => null };
  const own = realpathSync(path);
  const root = rootAbove(dirname(own));
  const known = new Map<string, ReturnType<Workspace['read']>>();
  return {
    path: named(root, own),
    read: (wanted) => {
      seen(resolve(root, wanted));
      if (!known.has(wanted)) known.set(wanted, readIn(root, wanted));
      return known.get(wanted)!;
    },
  };
}

const tops = ['.git', 'package.json', settingsFile];

function rootAbove(folder: string): string {
  for (let each = folder; ; each = dirname(each)) {
    if (tops.some((top) => existsSync(join(each, top)))) return each;
    if (each === dirname(each)) return folder;
  }
}

function readIn(root: string, wanted: string): ReturnType<Workspace['read']> {
  try {
    const real = realpathSync(resolve(root, wanted));
    const path = named(root, real);
    if (isAbsolute(path) || path.split('/')[0] === '..') return 'outside';
    return { path, file: parse(readFileSync(real, 'utf8')).file };
  } catch {
    return null;
  }
}

function named(root: string, path: string): string {
  return relative(root, path).split(sep).join('/');
}
