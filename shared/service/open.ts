/**
 * A text open in an editor, with everything known about it. It may be half-typed: whoever reads this answers usefully or
 * with nothing.
 */
import type { Span } from '../../grammar/tree.ts';
import { analyse, type Analysis, type DrillAnalysis } from '../analyse.ts';
import type { Workspace } from '../model/imports.ts';
import type { NameEntry } from '../model/names.ts';

export interface Open {
  readonly text: string;
  readonly workspace: Workspace;
  readonly analysis: Analysis;
}

export function opened(text: string, workspace: Workspace): Open {
  return { text, workspace, analysis: analyse(text, workspace) };
}

/** Whether an offset lies in a span or at either end of it. */
export function touches(span: Span, offset: number): boolean {
  return span.from <= offset && offset <= span.to;
}

export function drillAt({ analysis }: Open, offset: number): DrillAnalysis | null {
  return analysis.drills.find(({ drill }) => touches(drill.span, offset)) ?? null;
}

/** The names that can be used at an offset: those of the drill there and those of the file. */
export function namesAt(open: Open, offset: number): readonly NameEntry[] {
  const home = homeAt(open, offset);
  return open.analysis.names.filter((entry) => entry.drill === null || entry.drill === home);
}

/** As {@link NameEntry} names the drill or the session at an offset. */
function homeAt({ analysis }: Open, offset: number): string | null {
  const drill = analysis.drills.find(({ drill: { span } }) => touches(span, offset));
  if (drill) return drill.drill.id;
  const session = analysis.file.items.find((item) => item.kind === 'session' && touches(item.span, offset));
  return session?.kind === 'session' ? `session ${session.name.text}` : null;
}
