/** The one place where offsets become lines and characters: counted from 0, characters in UTF-16 units, as in LSP. */
import type { Span } from '../grammar/tree.ts';

export interface Position {
  readonly line: number;
  readonly character: number;
}

export interface Range {
  readonly start: Position;
  readonly end: Position;
}

/** A text and the offset at which each of its lines begins. A line ends with LF, CR LF or CR. */
export interface Lines {
  readonly text: string;
  readonly starts: readonly number[];
}

export function linesOf(text: string): Lines {
  const starts = [0];
  for (const ending of text.matchAll(/\r\n|\r|\n/g)) starts.push(ending.index + ending[0].length);
  return { text, starts };
}

/** An offset outside the text gives its nearest end. */
export function positionAt(lines: Lines, offset: number): Position {
  const within = Math.max(0, Math.min(offset, lines.text.length));
  let line = 0;
  let after = lines.starts.length;
  while (after - line > 1) {
    const middle = (line + after) >>> 1;
    if (lines.starts[middle]! <= within) line = middle;
    else after = middle;
  }
  return { line, character: within - lines.starts[line]! };
}

/** A position past the end of its line, or of the text, gives that end. */
export function offsetAt(lines: Lines, { line, character }: Position): number {
  if (line >= lines.starts.length) return lines.text.length;
  const from = lines.starts[Math.max(0, line)]!;
  return Math.min(from + Math.max(0, character), from + lineText(lines, Math.max(0, line)).length);
}

export function rangeOf(lines: Lines, span: Span): Range {
  return { start: positionAt(lines, span.from), end: positionAt(lines, span.to) };
}

/** The text of a line without its ending. */
export function lineText(lines: Lines, line: number): string {
  return lines.text.slice(lines.starts[line], lines.starts[line + 1]).replace(/[\r\n]+$/, '');
}
