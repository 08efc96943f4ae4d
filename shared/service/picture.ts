/** The picture of a drill for the preview. */
import type { Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import type { SceneAnswer, SceneParams } from '../protocol.ts';
import type { Convention } from '../scene/lines.ts';
import { stage } from '../scene/scene.ts';
import { atLevels, type Levels } from './levels.ts';
import { touches, type Open } from './open.ts';

export function picture(
  { analysis }: Open, { drill: wanted, theme, convention }: Omit<SceneParams, 'uri' | 'convention'> & { readonly convention: Convention }, levels: Levels,
): Omit<SceneAnswer, 'version'> | null {
  const sheets = analysis.drills.flatMap(sheetsOf);
  const index = 'index' in wanted ? wanted.index : sheetAt(sheets, wanted.offset);
  const sheet = sheets[index];
  if (!sheet) return null;
  const { shown, phase } = sheet;
  const problems = atLevels(analysis.problems, levels).filter(({ span }) => touches(shown.drill.span, span.from));
  return {
    index,
    drills: sheets.map(({ name, span }) => ({ name, span })),
    scene: stage(shown, { theme, convention, problems, ...(phase === null ? {} : { phase }) }),
    problems,
    broken: problems.find(({ code }) => code === 'syntax') ?? null,
    rotation: shown.rotation,
    measures: shown.measures,
  };
}

/** What can be shown of a drill: its play, and each phase of a game for itself. */
interface Sheet {
  readonly name: string;
  readonly span: Span;
  readonly shown: DrillAnalysis;
  readonly phase: string | null;
}

function sheetsOf(shown: DrillAnalysis): Sheet[] {
  const { name, span } = shown.drill;
  const phases = shown.phases.map(({ phase }) => ({ name: `${name}: ${phase.name ?? ''}`, span: phase.span, shown, phase: phase.name }));
  return shown.timeline.beats.length > 0 || phases.length === 0 ? [{ name, span, shown, phase: null }, ...phases] : phases;
}

/** The phase that an offset lies in, else the first sheet of the drill there, or of the last one before. */
function sheetAt(sheets: readonly Sheet[], offset: number): number {
  const within = sheets.findLastIndex(({ span }) => span.from <= offset && offset <= span.to);
  if (within >= 0) return within;
  const before = sheets.findLast(({ shown }) => shown.drill.span.from <= offset);
  return Math.max(0, before ? sheets.findIndex(({ shown }) => shown === before.shown) : 0);
}
