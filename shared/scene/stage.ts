/** Composes the sheet: plan with dimensions, time line below, order of play, key and title block beside or below. */
import type { DrillAnalysis } from '../analyse.ts';
import type { Problem } from '../problem.ts';
import { dimensionMarks, dimensionRoom } from './dimensions.ts';
import type { Box } from './ground.ts';
import type { Convention } from './lines.ts';
import type { Theme } from './palette.ts';
import { keyPanel, orderPanel, type Panel, pointsPanel, problemPanel, titlePanel } from './panels.ts';
import { drawPlan, grassOf, measuredExtent, usedKinds } from './plan.ts';
import { areaMarks } from './area.ts';
import { layers, type Mark, type Plan, type Scene } from './scene.ts';
import { box, stroked } from './shapes.ts';
import { stripHeight, stripOf } from './strip.ts';
import { figure, measureOf } from './units.ts';
import { beatWords } from './words.ts';

export interface StageOptions {
  readonly theme: Theme;
  readonly convention: Convention;
  /** 200 for 1:200; without it the largest drawing scale at which the plan fits beside its panels on A4. */
  readonly scale?: number;
  /** Flagged on the plan and listed beside it, in this order. */
  readonly problems?: readonly Problem[];
}

/** The scene of one drill. Total: a drill without area, people or play gives a clean, emptier sheet. */
export function stage(analysis: DrillAnalysis, options: StageOptions): Scene {
  const { drill, timeline } = analysis;
  const measure = measureOf(drill);
  const scale = options.scale !== undefined && options.scale > 0 ? options.scale : scaleFor(grassOf(drill, timeline, 1000 / scales[0]));
  const perMetre = 1000 / scale;
  const grass = grassOf(drill, timeline, perMetre);
  const beats = beatWords(drill, timeline);
  const problems = options.problems ?? [];
  const sheet = compose(analysis, options, { scale, grass, beats, problems, strip: stripHeight(drill, timeline) });

  const plan: Plan = { scale, perMetre, left: sheet.plan.x - grass.left * perMetre, bottom: sheet.plan.y + grass.bottom * perMetre };
  const onPaper: Box = {
    left: sheet.plan.x, right: sheet.plan.x + (grass.right - grass.left) * perMetre,
    top: sheet.plan.y, bottom: sheet.plan.y + (grass.bottom - grass.top) * perMetre,
  };
  const drawn = drawPlan(analysis, plan, onPaper, { theme: options.theme, convention: options.convention, problems });
  const strip = stripOf(drill, timeline, margin, sheet.stripTop, sheet.leftWidth);
  const marks: Mark[] = [
    { id: 'sheet', layer: 'sheet', span: drill.span, label: null, shapes: [box(2.5, 2.5, sheet.width - 5, sheet.height - 5, stroked('ink', 0.35))] },
    ...areaMarks(drill, plan, grass, measure),
    ...dimensionMarks(drill, measuredExtent(drill, grass), onPaper, plan, measure),
    ...drawn.marks,
    ...(strip?.marks ?? []),
    ...sheet.panels(),
  ];
  const rank = new Map(layers.map((layer, index) => [layer, index]));
  return {
    width: sheet.width,
    height: sheet.height,
    theme: options.theme,
    convention: options.convention,
    title: drill.name,
    description: describe(analysis, scale, beats.map((beat) => `${beat.number}. ${beat.text}.`)),
    marks: marks.sort((a, b) => (rank.get(a.layer) as number) - (rank.get(b.layer) as number)),
    movers: drawn.movers,
    plan,
    beats,
    end: timeline.end > 0 ? timeline.end : 0,
    strip: strip?.axis ?? null,
  };
}

/** ISO 5455 (1, 2 and 5 by powers of ten), and between them what the scale rule has. */
const scales = [50, 100, 125, 200, 250, 300, 400, 500, 1000] as const;
/** Millimetres that the grass may take on the sheet. */
const room = { width: 165, height: 136 } as const;

function scaleFor(grass: Box): number {
  const [width, height] = [grass.right - grass.left, grass.bottom - grass.top];
  const fits = (scale: number) => (width * 1000) / scale <= room.width && (height * 1000) / scale <= room.height;
  let larger = 2000;
  while (!fits(larger) && larger < 1e9) larger *= 2;
  return scales.find(fits) ?? larger;
}

// ---------------------------------------------------------------- composition

const margin = 8;
const column = 86;
const gutter = 7;

interface Sheet {
  readonly width: number;
  readonly height: number;
  /** Top left corner of the grass. */
  readonly plan: { readonly x: number; readonly y: number };
  readonly leftWidth: number;
  readonly stripTop: number;
  readonly panels: () => Mark[];
}

interface Parts {
  readonly scale: number;
  readonly grass: Box;
  readonly beats: ReturnType<typeof beatWords>;
  readonly problems: readonly Problem[];
  /** Height of the time line. */
  readonly strip: number;
}

/** Panels in a column beside the plan, or in a row below it: whichever leaves less of the sheet empty. */
function compose(analysis: DrillAnalysis, options: StageOptions, parts: Parts): Sheet {
  const beside = sheetBeside(analysis, options, parts);
  const below = sheetBelow(analysis, options, parts);
  // Nobody likes a ribbon: beyond 3 : 2 upright or 2 : 1 lying, a sheet counts as larger than it is.
  const size = ({ width, height }: Sheet) => width * height * Math.max(1, height / width / 1.5, width / height / 2);
  return size(beside) <= size(below) * 1.05 ? beside : below;
}

function sizes({ scale, grass, strip }: Parts, least: number) {
  const width = ((grass.right - grass.left) * 1000) / scale;
  const height = ((grass.bottom - grass.top) * 1000) / scale;
  const planWidth = width + dimensionRoom.left + dimensionRoom.right;
  const planHeight = height + dimensionRoom.top + dimensionRoom.bottom;
  const leftWidth = Math.max(planWidth, least);
  const x = margin + dimensionRoom.left + (leftWidth - planWidth) / 2;
  return { planHeight, strip, leftWidth, plan: { x, y: margin + dimensionRoom.top }, stripTop: margin + planHeight + 4 };
}

function sheetBeside(analysis: DrillAnalysis, options: StageOptions, parts: Parts): Sheet {
  const { planHeight, strip, leftWidth, plan, stripTop } = sizes(parts, 118);
  const title = titlePanel(analysis, parts.scale, options.convention, column);
  const rest = [keyOf(analysis, options, parts.scale, column), problemPanel(parts.problems, column)].filter((panel) => panel !== null);
  const fixed = title.height + rest.reduce((sum, panel) => sum + panel.height + gutter, 0);
  const left = planHeight + (strip > 0 ? strip + 4 : 0);
  const order = orderPanel(parts.beats, column, Math.max(60, left - fixed - gutter));
  const needed = fixed + (order ? order.height + gutter : 0);
  const points = pointsPanel(analysis.drill, column, left - needed - gutter);
  const height = Math.max(left, needed);
  const x = margin + leftWidth + gutter;
  const placed: [Panel, number][] = [];
  let y = margin;
  for (const panel of [order, ...rest, points]) {
    if (!panel) continue;
    placed.push([panel, y]);
    y += panel.height + gutter;
  }
  placed.push([title, margin + height - title.height]);
  return {
    width: x + column + margin, height: height + 2 * margin, plan, leftWidth, stripTop,
    panels: () => placed.flatMap(([panel, top]) => panel.draw(x, top)),
  };
}

function sheetBelow(analysis: DrillAnalysis, options: StageOptions, parts: Parts): Sheet {
  const { strip, leftWidth, plan, stripTop } = sizes(parts, 2 * column + gutter);
  const title = titlePanel(analysis, parts.scale, options.convention, column);
  const wide = leftWidth - column - gutter;
  const key = keyOf(analysis, options, parts.scale, column);
  const flags = problemPanel(parts.problems, wide);
  const order = orderPanel(parts.beats, wide, 90);
  const top = stripTop + (strip > 0 ? strip + 4 : 0);
  const leftHeight = [order, flags].reduce((sum, panel) => sum + (panel ? panel.height + gutter : 0), 0);
  const rightHeight = title.height + (key ? key.height + gutter : 0);
  const bottom = top + Math.max(leftHeight, rightHeight);
  const right = margin + wide + gutter;
  return {
    width: leftWidth + 2 * margin, height: bottom + margin, plan, leftWidth, stripTop,
    panels: () => [
      ...(order?.draw(margin, top) ?? []),
      ...(flags?.draw(margin, top + (order ? order.height + gutter : 0)) ?? []),
      ...(key?.draw(right, top) ?? []),
      ...title.draw(right, bottom - title.height),
    ],
  };
}

function keyOf(analysis: DrillAnalysis, { theme, convention }: StageOptions, scale: number, width: number): Panel | null {
  return keyPanel(analysis, { theme, convention, ...usedKinds(analysis, scale) }, width);
}

// ---------------------------------------------------------------- words

function describe({ drill, measures }: DrillAnalysis, scale: number, beats: readonly string[]): string {
  const measure = measureOf(drill);
  const area = drill.area ? [`Area ${figure(drill.area.width / measure.metres)} by ${figure(drill.area.length / measure.metres)} ${measure.name}.`] : [];
  const theme = drill.theme === null ? [] : [`${drill.theme}.`];
  return [...theme, ...area, `${measures.players} players.`, `Scale 1:${scale}.`, ...beats].join(' ');
}
