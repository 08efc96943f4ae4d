import { fromJson } from '../../grammar/json/from-json.ts';
import type { File } from '../../grammar/tree.ts';
import { FileLines, type DrillLines } from './generated/statements.ts';
import { block } from './lines.ts';
import { CannotBeWritten } from './values.ts';

/**
 * A file with one drill. `print` gives its text, the one that a person would write; every call of the builder refuses what cannot
 * be written by throwing {@link CannotBeWritten}.
 */
export function drill(name: string, build: (drill: DrillLines) => void): File {
  return file((lines) => lines.drill(name, build));
}

/** A file of drills, sessions, imports and values. */
export function file(build: (file: FileLines) => void): File {
  const { lines: items, ...rest } = block(new FileLines('file'), build);
  const { file: made, faults } = fromJson({ kind: 'file', items, ...rest });
  // Each line was read when it was said, but not what they make together.
  if (made === null) throw new CannotBeWritten(`${faults[0].path} ${faults[0].message}`);
  return made;
}
