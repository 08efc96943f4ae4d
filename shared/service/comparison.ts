/** The page that shows what changed in a text since an older one; imports are those of today. */
import { analyse } from '../analyse.ts';
import type { CompareAnswer, CompareParams } from '../protocol.ts';
import type { Convention } from '../scene/lines.ts';
import { toPage } from '../review/page.ts';
import { changedFiles, comparedFiles, pictured } from '../review/report.ts';
import type { Open } from './open.ts';

export function comparison({ analysis, workspace }: Open, { before, beforeName, theme, convention, nonce }: Omit<CompareParams, 'uri' | 'convention'> & { readonly convention: Convention }): CompareAnswer {
  const files = changedFiles(comparedFiles([{ name: workspace.path ?? '', before: analyse(before, workspace), after: analysis }]));
  const changed = pictured(files, { theme: 'light', convention, bare: true });
  return { html: toPage(changed, { title: 'What changed', before: beforeName, after: 'the text in the editor', nonce, theme }) };
}
