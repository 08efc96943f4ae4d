import { watch } from 'node:fs';
import { glob, readFile, realpath } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, relative, sep } from 'node:path';
import { setImmediate as turn } from 'node:timers/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { toSvg } from '../shared/render/svg.ts';
import { toGif } from './gif.ts';
import { toPng } from './png.ts';
import type { Runtime } from './runtime.ts';

/** The disk and the clock. Only `file:` URIs are read. */
export const nodeRuntime: Runtime = {
  read: async (folder, uri) => {
    try {
      const [root, path] = await Promise.all([realpath(fileURLToPath(folder)), realpath(fileURLToPath(uri))]);
      const inside = relative(root, path);
      if (isAbsolute(inside) || inside.split(sep)[0] === '..') return 'outside';
      return { text: await readFile(path, 'utf8') };
    } catch {
      return null;
    }
  },
  list: async (folder) => {
    const found: string[] = [];
    try {
      const root = fileURLToPath(folder);
      for await (const path of glob('**/*.drill', { cwd: root, exclude: isHidden })) found.push(pathToFileURL(join(root, path)).href);
    } catch {
      return [];
    }
    return found.sort();
  },
  watch: (uri, changed) => {
    try {
      // The folder is watched: a file that is written anew is another one to the system.
      const path = fileURLToPath(uri);
      const watcher = watch(dirname(path), { persistent: false }, (_, name) => {
        if (name === null || name === basename(path)) changed();
      });
      watcher.on('error', () => watcher.close());
      return () => watcher.close();
    } catch {
      return () => {};
    }
  },
  picture: (scene, format) => {
    try {
      return Buffer.from(format === 'png' ? toPng(toSvg(scene)) : toGif(scene)).toString('base64');
    } catch {
      // The drawing library is native, and may be missing for this platform.
      return null;
    }
  },
  // The printer is large, and needed for this only.
  pdf: async (make) => (await import('./pdf.ts')).printed(make, [], '.'),
  now: () => performance.now(),
  after: (milliseconds, then) => {
    const timer = setTimeout(then, milliseconds);
    return () => clearTimeout(timer);
  },
  turn,
};

function isHidden(path: string): boolean {
  return path.split(/[\\/]/).some((part) => part === 'node_modules' || (part.startsWith('.') && part !== '.' && part !== '..'));
}
