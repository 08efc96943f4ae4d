import { basename, dirname, join, relative, sep } from 'node:path';
import { analyse, type Analysis } from '../../shared/analyse.ts';
import { legalFileName } from '../../shared/file-names.ts';
import type { Problem } from '../../shared/problem.ts';
import type { FolderSettings } from '../../shared/settings/settings.ts';
import { drawn, type Kind, type Wishes } from '../commands/draw.ts';
import { settingsReader } from '../folder-settings.ts';
import { countsOf } from '../io.ts';
import type { Source } from '../sources.ts';
import { counted } from '../text/report.ts';
import { workspaceOf } from '../workspace.ts';
import { answer, type Picture, type Work } from './answer.ts';

export interface DrawOptions {
  readonly kind: Kind;
  readonly wishes: Wishes;
  /** The folder for the pictures, as the user wrote it, and the folder of the drills whose arrangement it repeats. */
  readonly out: string;
  readonly root: string;
  readonly cwd: string;
}

export function drawing(options: DrawOptions): Work {
  const settingsFor = settingsReader(options.cwd);
  return (source) => {
    const { name, path, text } = source;
    const { settings, complaints } = settingsFor(path);
    const drawings = drawingsOf(analyse(text, workspaceOf(path)), source, options, settings);
    const counts = countsOf(drawings.flatMap(({ problems }) => problems));
    return answer({
      pictures: drawings.map(({ path: to, content }) => ({ path: to, content })),
      counts,
      undone: complaints,
      remarks: counts.error === 0 ? [] : [`${name} is drawn, with ${counted(counts.error, 'error')} in it; halfturn check ${name} shows more.`],
    });
  };
}

/** Every drill of a file: `a.svg`, or `a-1.svg`, `a-2.svg` … when it has several. */
export function drawingsOf(
  analysis: Analysis, { name, path }: Source, { kind, wishes, out, root }: DrawOptions, settings: FolderSettings,
): readonly (Picture & { readonly problems: readonly Problem[] })[] {
  const steps = path === null ? ['standard-input'] : relative(root, join(dirname(path), basename(path, '.drill'))).split(sep);
  const base = join(out, ...steps.map(legalFileName));
  return analysis.drills.map((drill, index, { length }) => {
    const { picture, problems } = drawn(analysis, drill, name, kind, wishes, settings);
    return { path: `${base}${length > 1 ? `-${index + 1}` : ''}${kind}`, content: picture, problems };
  });
}
