import { analyse, type Analysis } from '../../shared/analyse.ts';
import { withFixes, withSureFixes } from '../../shared/checks/cure.ts';
import type { Workspace } from '../../shared/model/imports.ts';
import { severities, type Problem, type Severity } from '../../shared/problem.ts';
import { command } from '../command.ts';
import { linesOf, positionAt, rangeOf } from '../convert.ts';
import { fixAll, type Fixed, type Made } from '../fix.ts';
import { complain, Refusal, statusOf } from '../io.ts';
import { progressOn } from '../progress.ts';
import { readSources, type Source } from '../sources.ts';
import { counted, reportText, summaryText, type Report } from '../text/report.ts';
import { workspaceOf } from '../workspace.ts';
import { writeWhole } from '../write.ts';

export const check = command({
  name: 'check',
  operands: 'PATH…',
  summary: 'problems with the source lines they point at',
  more: ['PATH is a file, a folder (every .drill file in it), a glob in quotes, or - for standard input.'],
  takes: [1, Infinity],
  options: {
    format: { kind: 'choice', choices: ['text', 'json'], help: 'how the problems are written (text)' },
    level: { kind: 'choice', choices: severities, help: 'leave out whatever is milder (hint)' },
    fix: { kind: 'flag', help: 'make in the files what has one sure fix, and say which; how the play is mended stays your choice' },
  },
  run: async ({ options, operands }, io) => {
    if (options.fix && operands.includes('-')) throw new Refusal('--fix changes files, and standard input is none.');
    const { sources, unread } = await readSources(operands, io);
    const undone = [...unread];
    const json = options.format === 'json';
    const level = options.level ?? 'hint';
    const reports: Report[] = [];
    const progress = progressOn(io);
    for (const [index, source] of sources.entries()) {
      progress.step(index, sources.length, 'files checked');
      const workspace = workspaceOf(source.path);
      const find = finder(workspace, level, json ? withFixes : onlyProblems);
      const fixed = options.fix ? fix(source, finder(workspace, level, withSureFixes), undone) : { text: source.text, made: [] };
      const report = { file: source.name, text: fixed.text, problems: find(fixed.text) };
      reports.push(report);
      progress.clear();
      if (fixed.made.length > 0) (json ? io.err : io.out)(madeText(source.name, fixed.made));
      if (!json) io.out(reportText(report, io.colour));
    }
    if (json) io.out(jsonOf(reports));
    else if (reports.length > 0) io.out(`${summaryText(reports)}\n`);
    complain(io, undone);
    return statusOf(undone, reports.flatMap((report) => report.problems));
  },
});

/** The problems of a text down to a level. Fixes are looked for only where they are asked for: that takes a hundred times as long. */
function finder(workspace: Workspace, level: Severity, problemsOf: typeof withFixes): (text: string) => readonly Problem[] {
  return (text) => problemsOf(analyse(text, workspace), workspace).filter((problem) => severities.indexOf(problem.severity) <= severities.indexOf(level));
}

function onlyProblems(analysis: Analysis): Problem[] {
  return [...analysis.problems];
}

/** Fixes a file and writes it. What cannot be written goes to `undone`, and the file counts as it is. */
function fix(source: Source, find: (text: string) => readonly Problem[], undone: string[]): Pick<Fixed, 'text' | 'made'> {
  const fixed = fixAll(source.text, find);
  if (fixed.made.length === 0 || source.path === null) return fixed;
  try {
    writeWhole(source.path, fixed.text, source.name);
    return fixed;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    undone.push(error.message);
    return { text: source.text, made: [] };
  }
}

/** The lines are those of the text that the fix was made in. */
function madeText(file: string, made: readonly Made[]): string {
  const rows = made.map(({ problem, fix: { title }, text }) => `  line ${positionAt(linesOf(text), problem.span.from).line + 1}: ${title} (${problem.code})`);
  return `${file}: made ${counted(made.length, 'fix', 'fixes')}.\n${rows.join('\n')}\n\n`;
}

function jsonOf(reports: readonly Report[]): string {
  const files = reports.map(({ file, text, problems }) => {
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
  });
  return `${JSON.stringify({ files }, null, 2)}\n`;
}
