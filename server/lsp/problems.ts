import { DiagnosticSeverity, DiagnosticTag, type Diagnostic } from 'vscode-languageserver';
import type { Problem, Severity } from '../../shared/problem.ts';
import { atLevels } from '../../shared/service/levels.ts';
import type { Open } from '../../shared/service/open.ts';
import type { Client } from '../client.ts';
import type { Misfit } from '../../shared/settings/json.ts';
import { rangeOf, type Lines } from '../convert.ts';
import type { Document } from '../documents.ts';
import type { Preferences } from '../settings.ts';

/** The problems of a text as the client can show them, at the workspace's own levels. */
export function diagnosticsOf(document: Document, open: Open, client: Client, preferences: Preferences): Diagnostic[] {
  return atLevels(open.analysis.problems, preferences.levels).map((problem) => diagnosticOf(problem, document, client, preferences));
}

export function diagnosticOf(problem: Problem, { uri, lines }: Document, client: Client, { guide }: Preferences): Diagnostic {
  const { code, severity, message, help, span, related } = problem;
  return {
    range: rangeOf(lines, span),
    severity: levels[severity],
    code,
    source: 'halfturn',
    message: help === null ? message : `${message}\n${help}`,
    ...(guide !== null && client.links ? { codeDescription: { href: guide.replaceAll('{code}', code) } } : {}),
    ...(client.tags && code === 'unused-name' ? { tags: [DiagnosticTag.Unnecessary] } : {}),
    ...(client.related && related.length > 0
      ? { relatedInformation: related.map((each) => ({ location: { uri, range: rangeOf(lines, each.span) }, message: each.message })) }
      : {}),
  };
}

/** What in a settings file cannot be understood. */
export function misfitDiagnostics(lines: Lines, misfits: readonly Misfit[]): Diagnostic[] {
  return misfits.map(({ span, message }) => ({ range: rangeOf(lines, span), severity: DiagnosticSeverity.Warning, source: 'halfturn', message }));
}

const levels: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};
