import { CodeActionKind, type CodeAction } from 'vscode-languageserver';
import { explainCommand, type ExplainArguments } from '../../shared/protocol.ts';
import { analyse } from '../../shared/analyse.ts';
import type { Problem } from '../../shared/problem.ts';
import { changes } from '../../shared/service/difference.ts';
import { rearranged } from '../../shared/service/evening.ts';
import { allowance, fixesOf } from '../../shared/service/fixes.ts';
import { atLevels } from '../../shared/service/levels.ts';
import type { Open } from '../../shared/service/open.ts';
import type { Client } from '../client.ts';
import type { Document } from '../documents.ts';
import { fixAll } from '../fix.ts';
import type { Pause } from '../run.ts';
import type { Preferences } from '../settings.ts';
import { workspaceEdit } from './edits.ts';
import { diagnosticOf } from './problems.ts';

/** `source.fixAll` narrowed to this language, as editors ask for it when a file is saved. */
export const fixAllKind = `${CodeActionKind.SourceFixAll}.halfturn`;

/** What the edits of an action are worked out from, when they are asked for later. */
export interface Later {
  readonly uri: string;
  /** Null: every problem that can be fixed. */
  readonly code: string | null;
}

export interface Asked {
  readonly document: Document;
  readonly open: Open;
  readonly from: number;
  readonly to: number;
  /** The kinds wanted, each with all below it; undefined: all. */
  readonly only: readonly string[] | undefined;
}

export async function actionsAt(asked: Asked, client: Client, preferences: Preferences, pause: Pause): Promise<CodeAction[]> {
  const { document, open, from, to } = asked;
  const asks = (kind: string): boolean => asked.only?.some((each) => kind === each || kind.startsWith(`${each}.`)) ?? false;
  const actions: CodeAction[] = [];
  if (asked.only === undefined || asks(CodeActionKind.QuickFix)) {
    const here = atLevels(open.analysis.problems, preferences.levels).filter(({ span }) => span.from <= to && from <= span.to);
    for (const problem of here) {
      await pause();
      actions.push(...quickFixes(problem, asked, client, preferences));
    }
    for (const code of new Set(here.map((problem) => problem.code))) {
      const many = open.analysis.problems.filter((problem) => problem.code === code).length > 1;
      const fixable = actions.some((action) => action.diagnostics?.some((each) => each.code === code) && action.isPreferred);
      const title = `Fix all of this kind (${code})`;
      if (many && fixable) actions.push({ title, kind: CodeActionKind.QuickFix, ...edited({ uri: document.uri, code }, asked, client) });
    }
  }
  const rearrange = asked.only === undefined || asks(CodeActionKind.RefactorRewrite) ? rearranged(open, from) : null;
  if (rearrange) {
    const edit = workspaceEdit([{ document, edits: rearrange.edits }], client);
    actions.push({ title: rearrange.title, kind: CodeActionKind.RefactorRewrite, edit });
  }
  // A whole file is mended only for whoever asks for just that: it takes many analyses.
  if (asks(fixAllKind)) {
    const title = 'Fix all problems that can be fixed';
    actions.push({ title, kind: fixAllKind, ...edited({ uri: document.uri, code: null }, asked, client) });
  }
  return actions;
}

/** The edits of one kind of problem, or of all. */
export function fixAllEdits({ code }: Later, { text, workspace }: Open): ReturnType<typeof changes> {
  const fixed = fixAll(text, (current) => {
    const now = { text: current, workspace, analysis: analyse(current, workspace) };
    const wanted = now.analysis.problems.filter((problem) => code === null || problem.code === code);
    return wanted.map((problem) => ({ ...problem, fixes: fixesOf(problem, now) }));
  });
  return changes(text, fixed.text);
}

function edited(later: Later, { document, open }: Asked, client: Client): Pick<CodeAction, 'data' | 'edit'> {
  if (client.lateEdits) return { data: later };
  return { edit: workspaceEdit([{ document, edits: fixAllEdits(later, open) }], client) };
}

function quickFixes(problem: Problem, { document, open }: Asked, client: Client, preferences: Preferences): CodeAction[] {
  const diagnostics = [diagnosticOf(problem, document, client, preferences)];
  const kind = CodeActionKind.QuickFix;
  const fixes = fixesOf(problem, open).map((fix, index): CodeAction => ({
    title: fix.title, kind, diagnostics, isPreferred: index === 0, edit: workspaceEdit([{ document, edits: fix.edits }], client),
  }));
  const allow = allowance(problem, open);
  return [
    ...fixes,
    ...(allow ? [{ title: allow.title, kind, diagnostics, edit: workspaceEdit([{ document, edits: allow.edits }], client) }] : []),
    ...(client.own ? [{ title: `Explain ${problem.code}`, kind, diagnostics, command: explaining(problem.code) }] : []),
  ];
}

function explaining(code: string): NonNullable<CodeAction['command']> {
  const args: ExplainArguments = [code];
  return { title: `Explain ${code}`, command: explainCommand, arguments: [...args] };
}
