/** What can be folded away: blocks, beats over several lines, runs of comment lines. */
import { tokenize, Remark } from '../../grammar/tokens.ts';
import type { Span, Statement, TopLevel } from '../../grammar/tree.ts';
import { lineStart } from '../checks/lines.ts';
import type { Open } from './open.ts';

export interface Fold {
  /** From the first line, which stays, to the last. */
  readonly span: Span;
  readonly kind: 'block' | 'comment';
}

export function folds({ text, analysis }: Open): readonly Fold[] {
  const blocks = analysis.file.items.flatMap(blocksOf).filter(({ from, to }) => text.slice(from, to).includes('\n'));
  return [...blocks.map((span): Fold => ({ span, kind: 'block' })), ...commentRuns(text)].sort((a, b) => a.span.from - b.span.from);
}

function blocksOf(line: TopLevel | Statement): Span[] {
  switch (line.kind) {
    case 'drill':
    case 'progress':
    case 'regress':
      return [line.span, ...line.body.lines.flatMap(blocksOf)];
    case 'session':
      return [line.span];
    case 'sequence':
    case 'phase':
      return [line.span, ...line.body.lines.map(({ span }) => span)];
    default:
      return [];
  }
}

function commentRuns(text: string): Fold[] {
  const alone = tokenize(text)
    .filter(({ tokenType, startOffset }) => tokenType === Remark && text.slice(lineStart(text, startOffset), startOffset).trim() === '')
    .map((token) => ({ from: token.startOffset, to: token.startOffset + token.image.length }));
  const runs: Span[] = [];
  for (const span of alone) {
    const run = runs.at(-1);
    if (run && /^(\r\n?|\n)[^\S\r\n]*$/.test(text.slice(run.to, span.from))) runs[runs.length - 1] = { from: run.from, to: span.to };
    else runs.push(span);
  }
  return runs.filter(({ from, to }) => /[\r\n]/.test(text.slice(from, to))).map((span) => ({ span, kind: 'comment' }));
}
