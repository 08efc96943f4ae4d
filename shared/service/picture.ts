/** The picture of a drill for the preview. */
import type { Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import type { SceneAnswer, SceneParams, Sheet } from '../protocol.ts';
import type { Problem } from '../problem.ts';
import { withoutOtherPhases } from '../scene/flagged.ts';
import type { Convention } from '../scene/lines.ts';
import { stage } from '../scene/scene.ts';
import { atLevels, type Levels } from './levels.ts';
import { touches, type Open } from './open.ts';

export function picture(
  { analysis }: Open, { drill: wanted, theme, convention, control }: Omit<SceneParams, 'uri' | 'convention'> & { readonly convention: Convention }, levels: Levels,
): Omit<SceneAnswer, 'version'> | null {
  const all = atLevels(analysis.problems, levels);
  const sheets = sheetsOf(analysis.drills);
  const index = 'index' in wanted ? wanted.index : sheetAt(sheets, wanted.offset, wanted.shown);
  const sheet = sheets[index];
  if (!sheet) return null;
  const { shown, phase } = sheet;
  const ofDrill = all.filter(({ span }) => touches(shown.drill.span, span.from));
  const problems = phase === null ? ofDrill : withoutOtherPhases(shown, phase, ofDrill);
  return {
    index,
    drills: sheets.map(({ name, drill, phase, after, plays }) => ({ name, drill, phase, after, faults: all.filter((problem) => isFault(problem) && plays.some((play) => touches(play, problem.span.from))).length })),
    scene: stage(shown, { theme, convention, problems, ...(phase === null ? {} : { phase, ...(control ? { control } : {}) }) }),
    problems,
    broken: problems.find(({ code }) => code === 'syntax') ?? null,
    rotation: phase === null ? shown.rotation : null,
    measures: shown.measures,
  };
}

function isFault({ severity }: Problem): boolean {
  return severity === 'error' || severity === 'warning';
}

interface Shown extends Omit<Sheet, 'faults'> {
  readonly shown: DrillAnalysis;
  /** Where its play is written. */
  readonly plays: readonly Span[];
}

/** Of every drill its play, and each phase of a game for itself. */
function sheetsOf(drills: readonly DrillAnalysis[]): Shown[] {
  const found: Shown[] = [];
  for (const [drill, shown] of drills.entries()) {
    const { name, sequences } = shown.drill;
    if (shown.timeline.beats.length > 0 || shown.phases.length === 0) found.push({ name, drill, shown, phase: null, after: null, plays: sequences.filter(({ kind }) => kind === 'sequence').map(({ span }) => span) });
    const first = found.length;
    const ids = shown.phases.map(({ phase }) => phase.id);
    for (const { phase } of shown.phases) {
      const before = phase.after === null ? -1 : ids.indexOf(phase.after);
      found.push({ name: `${name}: ${phase.name ?? ''}`, drill, shown, phase: phase.name, after: before < 0 ? null : first + before, plays: [phase.span] });
    }
  }
  return found;
}

/** The one whose play an offset lies in; else of the drill there, or of the last one before, the sheet that is shown, or its first. */
function sheetAt(sheets: readonly Shown[], offset: number, kept = -1): number {
  const within = sheets.findLastIndex(({ plays }) => plays.some(({ from, to }) => from <= offset && offset <= to));
  if (within >= 0) return within;
  const drill = sheets.findLast(({ shown }) => shown.drill.span.from <= offset)?.drill ?? 0;
  return sheets[kept]?.drill === drill ? kept : Math.max(0, sheets.findIndex((sheet) => sheet.drill === drill));
}

