/** What has to be changed in one text to make another of it: whole lines first, then within them. */
import type { Edit } from '../problem.ts';

/** In order, apart from each other. */
export function changes(before: string, after: string): readonly Edit[] {
  const [a, b] = [linesIn(before), linesIn(after)];
  const edits: Edit[] = [];
  let from = 0;
  let [i, j] = [0, 0];
  for (const [nextI, nextJ] of [...common(a.map(bare), b.map(bare)), [a.length, b.length] as const]) {
    const old = a.slice(i, nextI);
    const made = b.slice(j, nextJ);
    edits.push(...(old.length === made.length ? pairs(old, made, from) : [trimmed(old.join(''), made.join(''), from)]));
    from += old.join('').length;
    edits.push(...pairs(a.slice(nextI, nextI + 1), b.slice(nextJ, nextJ + 1), from));
    from += a[nextI]?.length ?? 0;
    [i, j] = [nextI + 1, nextJ + 1];
  }
  return joined(edits);
}

/** Edits that touch are made one: of two at the same place nobody could say which comes first. */
function joined(edits: readonly Edit[]): Edit[] {
  const apart: Edit[] = [];
  for (const edit of edits) {
    const last = apart.at(-1);
    if (last?.span.to === edit.span.from) {
      apart[apart.length - 1] = { span: { from: last.span.from, to: edit.span.to }, text: last.text + edit.text };
    } else if (edit.span.from < edit.span.to || edit.text !== '') apart.push(edit);
  }
  return apart;
}

/** Lines that differ in their spaces only are the same line. */
function bare(line: string): string {
  return line.replaceAll(/\s+/g, '');
}

/** With their ends. */
function linesIn(text: string): string[] {
  return text.match(/[^\n]*\n|[^\n]+$/g) ?? [];
}

/** As many lines on both sides: each becomes its counterpart. */
function pairs(a: readonly string[], b: readonly string[], from: number): Edit[] {
  let at = from;
  return a.flatMap((line, index) => {
    const start = at;
    at += line.length;
    return line === b[index] ? [] : [trimmed(line, b[index]!, start)];
  });
}

/** One edit without what both have at their beginnings and ends. */
function trimmed(old: string, made: string, at: number): Edit {
  const most = Math.min(old.length, made.length);
  let start = 0;
  while (start < most && old[start] === made[start]) start++;
  let end = 0;
  while (end < most - start && old[old.length - 1 - end] === made[made.length - 1 - end]) end++;
  return { span: { from: at + start, to: at + old.length - end }, text: made.slice(start, made.length - end) };
}

/** Comparing every line with every other is given up beyond so many pairs. */
const mostPairs = 4_000_000;

/** The lines that stay, as indices on both sides: a longest common subsequence. */
function common(a: readonly string[], b: readonly string[]): (readonly [number, number])[] {
  let start = 0;
  while (start < Math.min(a.length, b.length) && a[start] === b[start]) start++;
  let end = 0;
  while (end < Math.min(a.length, b.length) - start && a[a.length - 1 - end] === b[b.length - 1 - end]) end++;
  const [rows, columns] = [a.length - start - end, b.length - start - end];
  const head = Array.from({ length: start }, (_, index) => [index, index] as const);
  const tail = Array.from({ length: end }, (_, index) => [a.length - end + index, b.length - end + index] as const);
  if (rows * columns > mostPairs) return [...head, ...tail];

  const width = columns + 1;
  const best = new Uint32Array((rows + 1) * width);
  for (let row = rows - 1; row >= 0; row--) {
    for (let column = columns - 1; column >= 0; column--) {
      const same = a[start + row] === b[start + column];
      const [here, below] = [row * width + column, (row + 1) * width + column];
      best[here] = same ? best[below + 1]! + 1 : Math.max(best[below]!, best[here + 1]!);
    }
  }
  const middle: (readonly [number, number])[] = [];
  for (let row = 0, column = 0; row < rows && column < columns; ) {
    if (a[start + row] === b[start + column]) middle.push([start + row++, start + column++]);
    else if (best[(row + 1) * width + column]! >= best[row * width + column + 1]!) row++;
    else column++;
  }
  return [...head, ...middle, ...tail];
}
