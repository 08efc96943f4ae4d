import { parse } from '../grammar/parse.ts';
import type { File } from '../grammar/tree.ts';
import { allowed } from './checks/allow.ts';
import { judge, judgeSessions } from './checks/judge.ts';
import { breaks } from './checks/playable.ts';
import { syntax, tooLong, withoutConsequences } from './checks/syntax.ts';
import { phasesOf, type PhaseAnalysis } from './games/phases.ts';
import { measure } from './measure/measures.ts';
import type { Measures } from './measure/measure.ts';
import type { Drill } from './model/drill.ts';
import type { NameTable } from './model/names.ts';
import { resolve, type Resolved, type Workspace } from './model/resolve.ts';
import type { Part } from './model/session.ts';
import type { Problem } from './problem.ts';
import { rotationOf } from './rotation/rotate.ts';
import type { Rotation } from './rotation/rotation.ts';
import { withWalks } from './rotation/walk.ts';
import type { SessionAnalysis } from './session/analysis.ts';
import { analyseSession, type Played } from './session/session.ts';
import { simulate } from './timeline/simulate.ts';
import type { Timeline } from './timeline/timeline.ts';

/** Everything known about one drill: what the checks judge, the drawing draws and the commands print. */
export interface DrillAnalysis {
  readonly drill: Drill;
  readonly timeline: Timeline;
  /** Null without stations and sequences. */
  readonly rotation: Rotation | null;
  readonly measures: Measures;
  /** Of a game; each phase on its own clock. */
  readonly phases: readonly PhaseAnalysis[];
}

export interface Analysis {
  readonly text: string;
  readonly file: File;
  readonly drills: readonly DrillAnalysis[];
  readonly sessions: readonly SessionAnalysis[];
  /** In order of place. */
  readonly problems: readonly Problem[];
  /** Every name, for whoever finds, renames or explains names. */
  readonly names: NameTable;
}

/** A text that belongs to no folder: its imports find nothing. */
export const alone: Workspace = { path: null, read: () => null };

/** Longer files are not read, so that an answer comes within a second: UTF-16 units. */
export const longestText = 1_000_000;

/** The whole way from text to judgement. Total: any text gives an analysis, nothing throws. */
export function analyse(text: string, workspace: Workspace = alone): Analysis {
  if (text.length > longestText) return { text, file: parse('').file, drills: [], sessions: [], problems: [tooLong(text.length, longestText)], names: [] };
  const { file, faults } = parse(text);
  const resolved = resolve(file, workspace);
  const writing = [...faults.map(syntax), ...withoutConsequences(resolved.problems, faults, text)];
  const drills = resolved.drills.map(analyseDrill);
  const sessions = sessionsOf(resolved, drills);
  const sound = !writing.some(({ severity }) => severity === 'error');
  const found = [...writing, ...judge(drills, breaks(file, writing), analyseDrill), ...(sound ? judgeSessions(sessions) : [])];
  const problems = found.filter((problem) => !allowed(text, problem));
  return { text, file, drills, sessions, problems: problems.sort((a, b) => a.span.from - b.span.from || a.span.to - b.span.to), names: resolved.names };
}

/** What a session plays is analysed once, however many parts play it. */
function sessionsOf({ sessions, imported }: Resolved, drills: readonly DrillAnalysis[]): readonly SessionAnalysis[] {
  if (sessions.length === 0) return [];
  const known = new Map<string, Played | null>([
    ...imported.map(({ path, drill }) => [drill.name, { analysis: analyseDrill(drill), file: path }] as const),
    ...drills.toReversed().map((analysis) => [analysis.drill.name, { analysis, file: null }] as const),
  ]);
  const played = ({ drill, change }: Part): Played | null => {
    const base = (drill !== null && known.get(drill)) || null;
    if (!base || !change) return base;
    const key = `${drill}\n${change.name}`;
    if (!known.has(key)) {
      const changed = base.analysis.drill.changes.find(({ name }) => name === change.name);
      known.set(key, changed ? { analysis: analyseDrill(changed.drill), file: base.file } : null);
    }
    return known.get(key) ?? null;
  };
  return sessions.map((session) => analyseSession(session, played));
}

/** One drill played through once, with its rotation and its numbers. */
export function analyseDrill(drill: Drill): DrillAnalysis {
  const played = simulate(drill);
  const rotation = rotationOf(drill, played);
  const timeline = withWalks(drill, played, rotation);
  return { drill, timeline, rotation, measures: measure(drill, timeline, rotation), phases: phasesOf(drill) };
}
