import type { Span } from '../../grammar/tree.ts';
import { pathFrom } from '../model/imports.ts';
import type { Open } from './open.ts';

/** The files that a text brings in, at the words that name them; those outside the workspace are left out. */
export function links({ analysis, workspace }: Open): readonly { readonly span: Span; readonly path: string }[] {
  const own = workspace.path;
  if (own === null) return [];
  return analysis.file.items.filter((item) => item.kind === 'import').flatMap(({ path: { from, text } }) => {
    const path = pathFrom(own, text);
    return path === null ? [] : [{ span: { from: from + 1, to: from + 1 + text.length }, path }];
  });
}
