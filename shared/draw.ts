import { analyseDrill, type Analysis, type DrillAnalysis } from './analyse.ts';
import { problemsOn } from './checks/on-sheet.ts';
import type { ChangedDrill } from './model/drill.ts';
import { toHtml } from './render/html.ts';
import { toSvg } from './render/svg.ts';
import { withoutOtherPhases } from './scene/flagged.ts';
import { stage, type Scene, type StageOptions } from './scene/scene.ts';

export interface DrawOptions extends Partial<Pick<StageOptions, 'theme' | 'convention' | 'scale' | 'phase' | 'control'>> {
  /** By name: a drill, or one of its progressions and regressions. Without it the first drill. */
  readonly drill?: string;
}

export interface SvgOptions extends DrawOptions {
  /** Seconds: everyone as they are then. */
  readonly at?: number;
  /** Moves by itself. */
  readonly animated?: boolean;
}

/** The drawing to scale as an SVG with its font in it, errors and warnings flagged; null when there is no such drill or phase. */
export function svgOf(analysis: Analysis, options: SvgOptions = {}): string | null {
  const { animated, ...staging } = options;
  const { at } = staging;
  const scenes = scenesOf(analysis, staging, () => [null]);
  return scenes && toSvg(scenes[0], { embedFont: true, ...(at === undefined ? {} : { at }), ...(animated === undefined ? {} : { animated }) });
}

/** A page that plays by itself in any browser and fetches nothing, with every phase of a game; null when there is no such drill or phase. */
export function htmlOf(analysis: Analysis, options: DrawOptions = {}): string | null {
  const scenes = scenesOf(analysis, options, phasesOfPage);
  return scenes && toHtml(scenes);
}

/** What a page shows without being asked: the play of the drill (null), then its phases by name. */
export function phasesOfPage({ drill, phases }: DrillAnalysis): readonly (string | null)[] {
  const names = phases.map(({ phase }) => phase.name ?? phase.id);
  const plays = drill.sequences.some((sequence) => sequence.kind === 'sequence');
  return names.length === 0 || plays ? [null, ...names] : names;
}

type Scenes = readonly [Scene, ...Scene[]];

function scenesOf(analysis: Analysis, options: DrawOptions & Pick<SvgOptions, 'at'>, unasked: (drill: DrillAnalysis) => readonly (string | null)[]): Scenes | null {
  const { drill: name, phase: asked, ...staging } = options;
  const chosen = drillCalled(analysis, name);
  if (chosen === null) return null;
  const { drill, variation } = chosen;
  if (asked !== undefined && !phasesOfPage(drill).includes(asked)) return null;
  const problems = problemsOn(analysis, drill).filter(({ severity }) => severity === 'error' || severity === 'warning');
  const [first, ...rest] = (asked === undefined ? unasked(drill) : [asked]).map((phase) => stage(drill, {
    theme: 'light', convention: 'solid pass', ...staging, ...(variation === null ? {} : { variation }),
    ...(phase === null ? { problems } : { phase, problems: withoutOtherPhases(drill, phase, problems) }),
  }));
  return [first!, ...rest];
}

function drillCalled({ drills }: Analysis, name: string | undefined): { readonly drill: DrillAnalysis; readonly variation: ChangedDrill | null } | null {
  const drill = name === undefined ? drills[0] : drills.find((each) => each.drill.name === name);
  if (drill !== undefined) return { drill, variation: null };
  const variation = drills.flatMap((each) => each.drill.changes).find((change) => change.name === name);
  return variation === undefined ? null : { drill: analyseDrill(variation.drill), variation };
}
