/**
 * SARIF 2.1.0 (OASIS, with Errata 01): what code hosts and viewers of findings read. Numbers in brackets are its sections; their words
 * were read in the committee's sources of the next version, which repeats them.
 */
import { createHash } from 'node:crypto';
import { isAbsolute, relative, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { ArtifactLocation, Fix, Location, Log, Region, ReportingDescriptor, Result } from 'sarif';
import manifest from '../../package.json' with { type: 'json' };
import { checks } from '../../shared/checks/index.ts';
import type { Check } from '../../shared/checks/check.ts';
import type { Problem, Severity } from '../../shared/problem.ts';
import { lineText, linesOf, positionAt, type Lines } from '../convert.ts';
import type { Report } from './report.ts';

/** `results` are those of all files; `cwd` is the folder that their addresses are relative to. */
export function sarifLog(results: readonly unknown[], cwd: string): Log {
  return {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [{
      tool: { driver: { name: 'Halfturn', version: manifest.version, rules: checks.map(ruleOf) } },
      columnKind: 'utf16CodeUnits',
      newlineSequences: ['\r\n', '\n', '\r'],
      originalUriBaseIds: { [base]: { uri: `${pathToFileURL(cwd).href.replace(/\/$/, '')}/` } },
      results: results as Result[],
    }],
  };
}

/** The problems of a file that is called by a path relative to `cwd`. */
export function sarifResults({ file, text, problems }: Report, cwd: string): Result[] {
  // A byte order mark is no part of the first line (3.30.2).
  const skipped = text.startsWith('\ufeff') ? 1 : 0;
  const lines = linesOf(text.slice(skipped));
  const at = locationOf(file, cwd);
  const region = ({ from, to }: Problem['span']): Region => regionOf(lines, { from: Math.max(0, from - skipped), to: Math.max(0, to - skipped) });
  const place = (span: Problem['span']): Location['physicalLocation'] => ({ artifactLocation: at, region: region(span) });
  const known = new Map<string, number>();
  return problems.map((problem) => ({
    ruleId: problem.code,
    ruleIndex: checks.findIndex(({ code }) => code === problem.code),
    level: levels[problem.severity],
    message: { text: problem.help === null ? problem.message : `${problem.message} ${problem.help}` },
    locations: [{ physicalLocation: place(problem.span) }],
    ...(problem.related.length === 0 ? {} : {
      relatedLocations: problem.related.map(({ span, message }, id) => ({ id, message: { text: message }, physicalLocation: place(span) })),
    }),
    ...(problem.fixes.length === 0 ? {} : {
      fixes: problem.fixes.map(({ title, edits }): Fix => ({
        description: { text: title },
        artifactChanges: [{
          artifactLocation: at,
          replacements: edits.map((edit) => ({ deletedRegion: region(edit.span), ...(edit.text === '' ? {} : { insertedContent: { text: edit.text } }) })),
        }],
      })),
    }),
    partialFingerprints: { 'halfturnLine/v1': fingerprint(problem.code, lineText(lines, region(problem.span).startLine! - 1), known) },
  }));
}

const base = 'SRCROOT';

const levels: Readonly<Record<Severity, Result.level>> = { error: 'error', warning: 'warning', info: 'note', hint: 'note' };

function ruleOf(check: Check): ReportingDescriptor {
  const source = check.source === null ? '' : `\n\nSource: ${check.source}`;
  const example = (title: string, text: string | undefined): string => (text === undefined ? '' : `\n\n${title}\n\n\`\`\`drill\n${text.trim()}\n\`\`\``);
  return {
    id: check.code,
    shortDescription: { text: `${check.title}.` },
    fullDescription: { text: check.why },
    help: {
      text: `${check.why}${source}`,
      markdown: `${check.why}${source}${example('The fault is between ⟦ and ⟧:', check.bad[0])}${example('Like this it is sound:', check.good[0])}`,
    },
    defaultConfiguration: { level: levels[check.severity] },
    properties: { tags: [check.group] },
  };
}

/** Relative to the base where it lies below it; what lies elsewhere has its whole address, and then no base (3.4.4). */
function locationOf(file: string, cwd: string): ArtifactLocation {
  if (file === '-') return { uri: 'standard-input', description: { text: 'Standard input' } };
  const path = relative(cwd, resolve(cwd, file));
  if (isAbsolute(path) || path.split(sep)[0] === '..') return { uri: pathToFileURL(resolve(cwd, file)).href };
  return { uri: path.split(sep).map(encodeURIComponent).join('/'), uriBaseId: base };
}

/** Lines and columns from 1, the end behind the last character (3.30.2). */
function regionOf(lines: Lines, span: Problem['span']): Region {
  const [start, end] = [placeAt(lines, span.from), placeAt(lines, span.to)];
  return {
    startLine: start.line, startColumn: start.column, endLine: end.line, endColumn: end.column,
    charOffset: span.from, charLength: span.to - span.from,
  };
}

/** The end of a text that ends a line is the place behind that ending: there is no line after it (3.30.2). */
function placeAt(lines: Lines, offset: number): { readonly line: number; readonly column: number } {
  const { line, character } = positionAt(lines, offset);
  const ended = line > 0 && character === 0 && offset >= lines.text.length;
  return ended ? { line, column: lines.text.length - lines.starts[line - 1]! + 1 } : { line: line + 1, column: character + 1 };
}

/** Stays the same while the line stays, wherever it moves; equal lines are told apart by their order. */
function fingerprint(code: string, line: string, known: Map<string, number>): string {
  const key = `${code} ${line.trim().replaceAll(/\s+/g, ' ')}`;
  const before = known.get(key) ?? 0;
  known.set(key, before + 1);
  return `${createHash('sha256').update(key).digest('hex').slice(0, 16)}:${before + 1}`;
}
