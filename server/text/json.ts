import type { Problem } from '../../shared/problem.ts';
import { linesOf, rangeOf } from '../convert.ts';
import type { Report } from './report.ts';

/** The problems of a file as `check --format json` lists them; `check.schema.json` says what it is. */
export function jsonOf({ file, text, problems }: Report): object {
  const lines = linesOf(text);
  const place = (span: Problem['span']): object => {
    const { start, end } = rangeOf(lines, span);
    return { start: { ...start, offset: span.from }, end: { ...end, offset: span.to } };
  };
  return {
    file,
    problems: problems.map(({ code, severity, message, help, span, related, fixes }) => ({
      code,
      severity,
      message,
      help,
      range: place(span),
      related: related.map((each) => ({ message: each.message, range: place(each.span) })),
      fixes: fixes.map(({ title }) => ({ title })),
    })),
  };
}
