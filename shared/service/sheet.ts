/** The sheet of what an editor shows: the session at the cursor, or in a file without one its drills. */
import type { SheetParams } from '../protocol.ts';
import { namesOf } from '../session/names.ts';
import type { Measure } from '../sheet/lay.ts';
import { drillSheet, sessionSheet, type Sheet } from '../sheet/sheet.ts';
import type { Open } from './open.ts';

/** Null without a session and a drill. `faults` are sentences about the names. */
export function sheetAt({ analysis: { sessions, drills, problems } }: Open, { offset, names, format }: SheetParams, measure?: Measure): { readonly sheet: Sheet; readonly faults: readonly string[] } | null {
  const session = sessions.findLast(({ session: { span } }) => span.from <= offset) ?? sessions[0];
  const named = names !== null && session ? namesOf(names, session.register) : { names: [], faults: [] };
  const options = { theme: format === 'pdf' ? 'print' : 'light', convention: 'solid pass', perPage: 1, names: named.names, problems, ...(measure ? { measure } : {}) } as const;
  if (session) return { sheet: sessionSheet(session, options), faults: named.faults };
  return drills.length === 0 ? null : { sheet: drillSheet(drills, 'Drills', options), faults: [] };
}
