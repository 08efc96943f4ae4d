/** The picture of a drill for the preview. */
import type { SceneAnswer, SceneParams } from '../protocol.ts';
import { stage } from '../scene/scene.ts';
import { atLevels, type Levels } from './levels.ts';
import { touches, type Open } from './open.ts';

export function picture(
  { analysis }: Open, { drill: wanted, theme, convention }: Omit<SceneParams, 'uri'>, levels: Levels,
): Omit<SceneAnswer, 'version'> | null {
  const { drills } = analysis;
  const index = 'index' in wanted ? wanted.index : Math.max(0, drills.findLastIndex(({ drill }) => drill.span.from <= wanted.offset));
  const shown = drills[index];
  if (!shown) return null;
  const problems = atLevels(analysis.problems, levels).filter(({ span }) => touches(shown.drill.span, span.from));
  return {
    index,
    drills: drills.map(({ drill: { name, span } }) => ({ name, span })),
    scene: stage(shown, { theme, convention, problems }),
    problems,
    broken: problems.find(({ code }) => code === 'syntax') ?? null,
    rotation: shown.rotation,
    measures: shown.measures,
  };
}
