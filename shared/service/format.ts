/** The printed form of a text as small changes to it. */
import { print } from '../../grammar/printer.ts';
import type { Span } from '../../grammar/tree.ts';
import { lineStart } from '../checks/lines.ts';
import type { Edit } from '../problem.ts';
import { changes } from './difference.ts';
import type { Open } from './open.ts';

/** None for a text that cannot be read: what is not in the tree would be lost. `within`: only the lines of these characters. */
export function format({ text, analysis }: Open, within: Span = { from: 0, to: text.length }): readonly Edit[] {
  if (analysis.problems.some(({ code }) => code === 'syntax')) return [];
  const printed = print(analysis.file);
  const end = text.indexOf('\n', within.to);
  const [from, to] = [lineStart(text, within.from), end === -1 ? text.length : end];
  const edits = changes(text, text.includes('\r\n') ? printed.replaceAll('\n', '\r\n') : printed);
  return edits.filter(({ span }) => from <= span.from && span.to <= to);
}

/** After a line end the statement above is finished, after a brace its block; the line being written stays as it is. */
export function formatTyped(open: Open, offset: number, typed: '\n' | '}'): readonly Edit[] {
  const { text, analysis } = open;
  if (typed === '\n') {
    const above = text.slice(0, offset).trimEnd().length;
    const statement = innermost(analysis.file.items, above);
    return statement ? format(open, statement).filter(({ span }) => span.to <= above) : [];
  }
  const block = innermost(analysis.file.items, offset);
  return block ? format(open, { from: block.from, to: offset }) : [];
}

interface Nested {
  readonly span: Span;
  readonly body?: { readonly lines: readonly Nested[] };
}

/** The smallest statement that ends at an offset or goes on beyond it. */
function innermost(lines: readonly Nested[], offset: number): Span | null {
  const line = lines.find(({ span }) => span.from < offset && offset <= span.to);
  return line ? (innermost(line.body?.lines ?? [], offset) ?? line.span) : null;
}
