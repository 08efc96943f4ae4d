import { styleText } from 'node:util';
import { severities, type Problem, type Severity } from '../../shared/problem.ts';
import { linesOf, positionAt, type Lines } from '../convert.ts';
import type { Counts } from '../io.ts';
import { harmless } from './cells.ts';
import { excerpt, type ExcerptLine } from './excerpt.ts';

export interface Report {
  /** As the user named the file. */
  readonly file: string;
  readonly text: string;
  readonly problems: readonly Problem[];
}

/** The problems of a file as a person reads them: each with the source lines it points at. */
export function reportText(report: Report, colour: boolean): string {
  const lines = linesOf(report.text);
  return report.problems.map((problem) => problemText(report.file, lines, problem, colour)).join('');
}

/** `2 errors and 1 warning in 3 files.`, `No problems in 3 files, but 1 other thing went wrong.` */
export function summaryText(counts: Counts, files: number, undone: number): string {
  const but = severities.some((severity) => counts[severity] > 0) ? 'and' : 'but';
  return `${foundText(counts)} in ${counted(files, 'file')}${undone === 0 ? '' : `, ${but} ${counted(undone, 'other thing')} went wrong`}.`;
}

/** `2 errors and 1 warning`. */
export function foundText(counts: Counts): string {
  const found = severities.filter((severity) => counts[severity] > 0).map((severity) => counted(counts[severity], words[severity]));
  return found.length === 0 ? 'No problems' : found.join(', ').replace(/, ([^,]*)$/, ' and $1');
}

export function counted(count: number, noun: string, nouns = `${noun}s`): string {
  return `${count} ${count === 1 ? noun : nouns}`;
}

const words: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', info: 'remark', hint: 'hint' };
const colours = { error: 'red', warning: 'yellow', info: 'blue', hint: 'cyan' } as const;

function problemText(file: string, lines: Lines, problem: Problem, colour: boolean): string {
  const paint = (style: Parameters<typeof styleText>[0], text: string): string =>
    colour ? styleText(style, text, { validateStream: false }) : text;
  const { line, character } = positionAt(lines, problem.span.from);
  const tone = colours[problem.severity];
  const blocks = [
    { shown: excerpt(lines, problem.span, '^', null), tone },
    ...problem.related.map((related) => ({ shown: excerpt(lines, related.span, '-', harmless(related.message)), tone: 'blue' as const })),
  ];
  const gutter = Math.max(...blocks.flatMap(({ shown }) => shown.map((each) => String(each.number ?? '').length)));
  const gutterOf = (each: ExcerptLine): string => paint('dim', `${String(each.number ?? '').padStart(gutter + 1)} |`);
  const rows = blocks.flatMap(({ shown, tone: marks }) => shown.flatMap((each) => [
    `${gutterOf(each)} ${each.source}`,
    ...(each.marks === null ? [] : [`${paint('dim', `${' '.repeat(gutter + 1)} |`)} ${paint(marks, each.marks)}`]),
  ]));
  return [
    `${paint('bold', `${harmless(file)}:${line + 1}:${character + 1}`)}: ${paint([tone, 'bold'], problem.severity)} ${problem.code}: ${harmless(problem.message)}`,
    ...rows,
    ...(problem.help === null ? [] : [`${' '.repeat(gutter + 1)} = ${harmless(problem.help)}`]),
    ...problem.fixes.map((fix) => `${' '.repeat(gutter + 1)} = ${paint('green', 'fix')}: ${harmless(fix.title)}`),
    '',
    '',
  ].join('\n');
}
