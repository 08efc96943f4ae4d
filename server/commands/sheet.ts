import { existsSync } from 'node:fs';
import { basename, extname, relative, resolve } from 'node:path';
import { nearest } from '../../grammar/spelling.ts';
import { analyse, type Analysis } from '../../shared/analyse.ts';
import type { Problem } from '../../shared/problem.ts';
import { sheetHtml } from '../../shared/render/sheet-html.ts';
import { themes } from '../../shared/scene/palette.ts';
import type { SessionAnalysis } from '../../shared/session/analysis.ts';
import { namesOf } from '../../shared/session/names.ts';
import type { Measure } from '../../shared/sheet/lay.ts';
import { drillSheet, sessionSheet, type Sheet, type SheetOptions } from '../../shared/sheet/sheet.ts';
import { command } from '../command.ts';
import { complain, Refusal, statusOf, type Io } from '../io.ts';
import type { printed } from '../pdf.ts';
import { readFile, readSource } from '../sources.ts';
import { counted } from '../text/report.ts';
import { workspaceOf } from '../workspace.ts';
import { writeWhole } from '../write.ts';

export const sheet = command({
  name: 'sheet',
  operands: 'FILE -o OUT',
  summary: 'the session on A4 for the touchline: .pdf, or .html that also plays',
  more: ['FILE may be - for standard input. Without a session in it, a sheet of each drill.'],
  takes: [1, 1],
  options: {
    out: { kind: 'text', value: 'OUT', short: 'o', help: 'the sheet to write; its ending says which kind' },
    session: { kind: 'text', value: 'NAME', help: 'which session (the first)' },
    names: { kind: 'text', value: 'NAMES', help: 'a list of players, one a line, for the groups; it never enters the drill file' },
    'per-page': { kind: 'choice', choices: ['1', '2'], help: 'parts to a page (1)' },
    font: { kind: 'texts', value: 'FONT', help: 'a font file for other scripts, for .pdf; may be given several times (fonts of this machine)' },
    theme: { kind: 'choice', choices: themes, help: 'colours (print for .pdf, light for .html; paper is always in print)' },
  },
  run: async ({ options, operands }, io) => {
    const out = options.out ?? missingOut();
    const kind = kindOf(out);
    const source = await readSource(operands[0]!, io);
    const imports = new Set<string>();
    const analysis = analyse(source.text, workspaceOf(source.path, (path) => imports.add(path)));
    const elsewhere = faultsElsewhere(imports, io.cwd);
    const session = chosen(analysis, options.session, source.name);
    const list = options.names === null ? null : await readSource(options.names, io);
    if (list && !session) throw new Refusal(`There is no session in ${source.name} whose groups the names could fill.`);
    const named = list && session ? namesOf(list.text, session.register) : { names: [], faults: [] };
    const theme = options.theme ?? (kind === '.pdf' ? 'print' : 'light');
    const make = (measure?: Measure): Sheet => sheetOf(analysis, session, basename(source.name, '.drill'), {
      theme, convention: 'solid pass', perPage: options['per-page'] === '2' ? 2 : 1, names: named.names, problems: analysis.problems, ...(measure ? { measure } : {}),
    });
    const made = kind === '.pdf' ? await pdfOf(make, options.font, io.cwd) : { bytes: sheetHtml(make()), missing: null };
    writeWhole(resolve(io.cwd, out), made.bytes, out);
    report(io, named.faults, made.missing, analysis, out, source.name);
    complain(io, elsewhere.map(({ name, problems }) => `${out} plays from ${name}, which has ${counted(problems.length, 'error')}; halfturn check ${name} shows ${problems.length === 1 ? 'it' : 'them'}.`));
    return statusOf([], [...analysis.problems, ...elsewhere.flatMap(({ problems }) => problems)]);
  },
});

/** The printer is large, and needed for this only. */
async function pdfOf(...words: Parameters<typeof printed>): ReturnType<typeof printed> {
  return (await import('../pdf.ts')).printed(...words);
}

function report(io: Io, faults: readonly string[], missing: string | null, { problems }: Analysis, out: string, file: string): void {
  const errors = problems.filter(({ severity }) => severity === 'error').length;
  complain(io, [
    ...faults, ...(missing === null ? [] : [missing]),
    ...(errors > 0 ? [`${out} is written, with ${counted(errors, 'error')} in it; halfturn check ${file} shows more.`] : []),
  ]);
}

/** Errors in the files whose drills are played: nobody sees them in this one. A file that is not there is told by the line that imports it. */
function faultsElsewhere(paths: ReadonlySet<string>, cwd: string): readonly { readonly name: string; readonly problems: readonly Problem[] }[] {
  return [...paths].filter((path) => existsSync(path)).flatMap((path) => {
    const { text } = readFile(path, cwd);
    const problems = analyse(text, workspaceOf(path)).problems.filter(({ severity }) => severity === 'error');
    return problems.length === 0 ? [] : [{ name: relative(cwd, path), problems }];
  });
}

function sheetOf({ drills }: Analysis, session: SessionAnalysis | null, title: string, options: SheetOptions): Sheet {
  return session ? sessionSheet(session, options) : drillSheet(drills, title, options);
}

function missingOut(): never {
  throw new Refusal('Say where the sheet goes: halfturn sheet FILE -o OUT');
}

function kindOf(out: string): '.pdf' | '.html' {
  const kind = extname(out).toLowerCase();
  if (kind !== '.pdf' && kind !== '.html') throw new Refusal(`${out} must end in .pdf or .html.`);
  return kind;
}

/** Null for a file that has drills only. */
function chosen({ sessions, drills }: Analysis, name: string | null, file: string): SessionAnalysis | null {
  if (name === null) {
    if (sessions.length === 0 && drills.length === 0) throw new Refusal(`There is no session and no drill in ${file}.`);
    return sessions[0] ?? null;
  }
  const found = sessions.find(({ session }) => session.name === name);
  if (found) return found;
  const names = sessions.map(({ session }) => session.name);
  if (names.length === 0) throw new Refusal(`There is no session in ${file}.`);
  const guess = nearest(name, names);
  throw new Refusal(`There is no session “${name}” in ${file}; ${guess === null ? `there is ${names.map((each) => `“${each}”`).join(', ')}.` : `did you mean “${guess}”?`}`);
}
