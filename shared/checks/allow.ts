import type { Problem } from '../problem.ts';
import { lineAt, lineStart } from './lines.ts';

/** `// allow late-receiver: walk-through first`, at the end of the problem's line or alone on the line above; the reason must be there. */
export function allowed(text: string, problem: Problem): boolean {
  const start = lineStart(text, problem.span.from);
  const above = start === 0 ? '' : lineAt(text, start - 1);
  return allows(lineAt(text, problem.span.from), problem.code) || (/^\s*\/\//.test(above) && allows(above, problem.code));
}

function allows(line: string, code: string): boolean {
  return /\/\/\s*allow\s+([a-z-]+)\s*:\s*\S/.exec(line)?.[1] === code;
}
