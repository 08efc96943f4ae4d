import { basename, join, relative, resolve } from 'node:path';
import { analyse } from '../../shared/analyse.ts';
import { drawn, type Kind, type Wishes } from '../commands/draw.ts';
import { settingsReader } from '../folder-settings.ts';
import { sumOf } from '../io.ts';
import { counted } from '../text/summary.ts';
import { workspaceOf } from '../workspace.ts';
import { answer, type Work } from './answer.ts';

export interface DrawOptions {
  readonly kind: Kind;
  readonly wishes: Wishes;
  /** The folder for the pictures, as the user wrote it, and the folder of the drills whose arrangement it repeats. */
  readonly out: string;
  readonly root: string;
  readonly cwd: string;
}

/** Draws every drill of a file: `a.svg`, or `a-1.svg`, `a-2.svg` … when it has several. */
export function drawing({ kind, wishes, out, root, cwd }: DrawOptions): Work {
  const settingsFor = settingsReader(cwd);
  return ({ name, path, text }) => {
    const { settings, complaints } = settingsFor(path);
    const analysis = analyse(text, workspaceOf(path));
    const base = join(out, path === null ? 'standard-input' : relative(root, join(resolve(path, '..'), basename(path, '.drill'))));
    const pictures = analysis.drills.map((drill, index, { length }) => ({
      path: `${base}${length > 1 ? `-${index + 1}` : ''}${kind}`,
      ...drawn(analysis, drill, name, kind, wishes, settings),
    }));
    const counts = sumOf(pictures.map((each) => each.counts));
    return answer({
      pictures: pictures.map((each) => ({ path: each.path, content: each.picture })),
      counts,
      undone: complaints,
      remarks: counts.error === 0 ? [] : [`${name} is drawn, with ${counted(counts.error, 'error')} in it; halfturn check ${name} shows more.`],
    });
  };
}
