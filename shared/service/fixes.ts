/** What can be done about a problem. */
import type { Span } from '../../grammar/tree.ts';
import { curesOf } from '../checks/cure.ts';
import { lineAt, lineStart } from '../checks/lines.ts';
import type { Edit, Fix, Problem } from '../problem.ts';
import { opened, type Open } from './open.ts';

/** The quick fixes, best first. Cures are tried out on the drill in question, some hundred times. */
export function fixesOf(problem: Problem, open: Open): readonly Fix[] {
  return [...problem.fixes, ...curesOf(problem, withoutOtherDrills(open, problem.span).analysis, open.workspace)];
}

/** Drills do not touch each other, but a session plays them. With the others blanked out every offset stays, and a cure is tried as fast as in a short file. */
function withoutOtherDrills(open: Open, { from }: Span): Open {
  if (open.analysis.sessions.some(({ session: { span } }) => span.from <= from && from < span.to)) return open;
  const others = open.analysis.file.items
    .filter(({ kind }) => kind === 'drill' || kind === 'session')
    .filter(({ span }) => from < span.from || span.to <= from);
  if (others.length === 0) return open;
  let text = '';
  for (const { span } of others) {
    text += open.text.slice(text.length, span.from) + open.text.slice(span.from, span.to).replaceAll(/[^\r\n]/g, ' ');
  }
  return opened(text + open.text.slice(text.length), open.workspace);
}

/** The reason that stands in a new comment until somebody writes a better one. */
const placeholder = 'say why';

/** A comment that silences the problem on its line; null for what cannot be read, which has no line to speak of. */
export function allowance({ code, span }: Problem, { text }: Open): Fix | null {
  if (code === 'syntax') return null;
  const start = lineStart(text, span.from);
  const line = lineAt(text, span.from).replace(/\r$/, '');
  const comment = `// allow ${code}: ${placeholder}`;
  const end = start + line.trimEnd().length;
  const edit: Edit = line.includes('//')
    ? { span: { from: start, to: start }, text: `${/^\s*/.exec(line)![0]}${comment}${text.includes('\r\n') ? '\r\n' : '\n'}` }
    : { span: { from: end, to: end }, text: `  ${comment}` };
  return { title: `Allow ${code} on this line`, edits: [edit] };
}
