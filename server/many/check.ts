import { analyse, type Analysis } from '../../shared/analyse.ts';
import { withFixes, withSureFixes } from '../../shared/checks/cure.ts';
import type { Workspace } from '../../shared/model/imports.ts';
import { severities, type Problem, type Severity } from '../../shared/problem.ts';
import { atLevels, type Levels } from '../../shared/service/levels.ts';
import { linesOf, positionAt } from '../convert.ts';
import { fixAll, type Fixed, type Made } from '../fix.ts';
import { countsOf, Refusal } from '../io.ts';
import { settingsReader } from '../folder-settings.ts';
import type { Source } from '../sources.ts';
import { harmless } from '../text/cells.ts';
import { counted, foundText, reportText, type Report } from '../text/report.ts';
import { jsonOf } from '../text/json.ts';
import { sarifResults } from '../text/sarif.ts';
import { workspaceOf } from '../workspace.ts';
import { writeWhole } from '../write.ts';
import { answer, type Work } from './answer.ts';

export interface CheckOptions {
  readonly format: 'text' | 'json' | 'sarif';
  readonly level: Severity;
  readonly fix: boolean;
  readonly colour: boolean;
  readonly cwd: string;
}

/** Tells the problems of a file, at the levels of its folder. */
export function checking({ format, level, fix: fixes, colour, cwd }: CheckOptions): Work {
  const settingsFor = settingsReader(cwd);
  return (source) => {
    const { settings, complaints } = settingsFor(source.path);
    const workspace = workspaceOf(source.path);
    const find = finder(workspace, level, settings.levels, format === 'text' ? onlyProblems : withFixes);
    const undone = [...complaints];
    const fixed = fixes ? fix(source, finder(workspace, level, settings.levels, withSureFixes), undone) : { text: source.text, made: [] };
    const report: Report = { file: source.name, text: fixed.text, problems: find(fixed.text) };
    const made = fixes ? madeText(source.name, fixed.made, report.problems) : '';
    const counts = countsOf(report.problems);
    switch (format) {
      case 'text':
        return answer({ out: made + reportText(report, colour), counts, undone });
      case 'json':
        return answer({ err: made, data: [jsonOf(report)], counts, undone });
      case 'sarif':
        return answer({ err: made, data: sarifResults(report, cwd), counts, undone });
    }
  };
}

/** The problems of a text down to a level. Fixes are looked for only where they are asked for: that takes a hundred times as long. */
function finder(workspace: Workspace, level: Severity, levels: Levels, problemsOf: typeof withFixes): (text: string) => readonly Problem[] {
  return (text) => atLevels(problemsOf(analyse(text, workspace), workspace), levels)
    .filter((problem) => severities.indexOf(problem.severity) <= severities.indexOf(level));
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

/** What was mended, a line a fix, and what is left; empty for a file without problems. The lines are those of the text that the fix was made in. */
function madeText(file: string, made: readonly Made[], problems: readonly Problem[]): string {
  if (made.length + problems.length === 0) return '';
  const rows = made.map(({ problem, fix: { title, edits }, text }) => {
    const [edit, another] = edits;
    const old = edit && !another && edit.text !== '' && !title.includes('instead of') ? text.slice(edit.span.from, edit.span.to) : '';
    const was = old === '' || old.length > longest || old.includes('\n') ? '' : `, was ${old}`;
    return `  line ${positionAt(linesOf(text), (edit ?? problem).span.from).line + 1}: ${harmless(title)}${harmless(was)} (${problem.code})\n`;
  });
  const left = problems.length === 0 ? '' : `${leftText(problems)}\n`;
  return `${file}: made ${made.length === 0 ? 'no fix' : counted(made.length, 'fix', 'fixes')}.\n${rows.join('')}${left}\n`;
}

/** Letters of the text before, as far as it is told. */
const longest = 40;

function leftText(problems: readonly Problem[]): string {
  return `  Left to you: ${foundText(countsOf(problems))}. How ${problems.length === 1 ? 'it is' : 'they are'} mended is your choice.`;
}
