import type { Span } from '../../grammar/tree.ts';
import { lineText, positionAt, type Lines } from '../convert.ts';
import { cellsOf, type Cell } from './cells.ts';

/** The lines of a span with a mark below it: `^` for the fault, `-` for a place that has to do with it. */
export function excerpt(lines: Lines, span: Span, mark: '^' | '-', note: string | null): readonly ExcerptLine[] {
  const first = positionAt(lines, span.from).line;
  const last = Math.max(first, positionAt(lines, span.to > span.from ? span.to - 1 : span.to).line);
  const shown: ExcerptLine[] = [];
  for (let line = first; line <= Math.min(last, first + mostLines - 1); line += 1) {
    const text = lineText(lines, line);
    const from = line === first ? span.from - lines.starts[line]! : text.length - text.trimStart().length;
    const to = line === last ? span.to - lines.starts[line]! : text.length;
    const { source, marks } = underlined(cellsOf(text), from, to, mark);
    shown.push({ number: line + 1, source, marks: line === first && note ? `${marks} ${note}` : marks });
  }
  if (last >= first + mostLines) shown.push({ number: null, source: `… to line ${last + 1}`, marks: null });
  return shown;
}

export interface ExcerptLine {
  /** Counted from 1; null for the line that says where the rest ends. */
  readonly number: number | null;
  readonly source: string;
  readonly marks: string | null;
}

const mostLines = 3;
/** Cells of a source line that are shown, and how many of them stay free before the fault when the line is longer. */
const room = 100;
const lead = 30;

/** `from` and `to` are UTF-16 offsets in the line; an empty span is marked with one cell. */
function underlined(cells: readonly Cell[], from: number, to: number, mark: string): { source: string; marks: string } {
  const total = widthOf(cells);
  const before = widthOf(cells.filter((cell) => cell.to <= from));
  const marked = Math.max(1, widthOf(cells.filter((cell) => cell.to > from && cell.from < to)));
  const skip = total <= room ? 0 : Math.max(0, Math.min(before - lead, total - room));
  let column = 0;
  let source = '';
  let hidden = 0;
  for (const cell of cells) {
    if (column < skip) hidden += cell.width;
    else if (column + cell.width <= skip + room) source += cell.text;
    column += cell.width;
  }
  const cutLeft = hidden > 0 ? '…' : '';
  const cutRight = total > hidden + room ? '…' : '';
  const indent = before - hidden + cutLeft.length;
  return {
    source: `${cutLeft}${source}${cutRight}`.trimEnd(),
    marks: ' '.repeat(indent) + mark.repeat(Math.min(marked, room + cutLeft.length - indent)),
  };
}

function widthOf(cells: readonly Cell[]): number {
  return cells.reduce((sum, cell) => sum + cell.width, 0);
}
