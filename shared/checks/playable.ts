/** Which lines the play hangs on. */
import type { File, Statement, StatementKind } from '../../grammar/tree.ts';
import type { Problem } from '../problem.ts';

/** Without one of these, everyone still has the ball and stands where they should. */
const harmless: ReadonlySet<StatementKind> = new Set<StatementKind>([
  'players', 'theme', 'time', 'level', 'tags', 'note', 'zone', 'split', 'zones', 'cone', 'disc', 'pole', 'mannequin', 'gate', 'goal', 'minigoal',
  'hurdle', 'ladder', 'rule', 'expect', 'score', 'bouts', 'point', 'question', 'safety',
]);

/** The places, in order, of the errors that leave open who has the ball or who is where. */
export function breaks(file: File, writing: readonly Problem[]): number[] {
  const errors = writing.filter((problem) => problem.severity === 'error').map((problem) => problem.span.from);
  if (errors.length === 0) return [];
  const safe = file.items.flatMap((item) => (item.kind === 'drill' ? harmlessIn(item.body.lines) : [])).map((line) => line.span);
  return errors.filter((at) => !safe.some((span) => span.from <= at && at < span.to)).sort((a, b) => a - b);
}

function harmlessIn(lines: readonly Statement[]): Statement[] {
  return lines.flatMap((line) => {
    if (line.kind === 'progress' || line.kind === 'regress') return harmlessIn(line.body.lines);
    return harmless.has(line.kind) ? [line] : [];
  });
}
