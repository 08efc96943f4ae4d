import type { Edit } from '../problem.ts';

/** Makes edits that do not overlap, whatever their order. */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  return [...edits]
    .sort((a, b) => b.span.from - a.span.from || b.span.to - a.span.to)
    .reduce((result, edit) => result.slice(0, edit.span.from) + edit.text + result.slice(edit.span.to), text);
}
