/** Composes the sheet: plan with dimensions, time line below, order of play, key and title block beside or below. */
import type { DrillAnalysis } from '../analyse.ts';
import type { ChangedDrill } from '../model/drill.ts';
import type { Problem } from '../problem.ts';
import { dimensionMarks, dimensionRoom } from './dimensions.ts';
import type { Box } from './ground.ts';
import { type Convention, waysOf } from './lines.ts';
import type { Theme } from './palette.ts';
import { type Note, notesOf } from './notes.ts';
import { groundPanel, keyPanel, notePanel, orderPanel, type Panel, pointsPanel, problemPanel, titlePanel } from './panels.ts';
import { drawPlan, grassOf, measuredExtent, usedKinds } from './plan.ts';
import { areaMarks } from './area.ts';
import { controlMarks, type Ground, groundsOf } from './control.ts';
import { layers, type Mark, type Plan, type Scene, type SceneBeat, type Shape } from './scene.ts';
import { asDrill, atMoment, momentOf, phaseShown } from './phase.ts';
import { box, stroked } from './shapes.ts';
import { stripHeight, stripOf } from './strip.ts';
import { figure, measureOf } from './units.ts';
import { aloud, beatWords, phaseWords, variationWords } from './words.ts';

export interface StageOptions {
  readonly theme: Theme;
  readonly convention: Convention;
  /** 200 for 1:200; without it the largest drawing scale at which the plan fits beside its panels on A4. */
  readonly scale?: number;
  /** Flagged on the plan and listed beside it, in this order. */
  readonly problems?: readonly Problem[];
  /** The phase of a game to show, by its name; without it the play of the drill, and of a game without any its first phase. */
  readonly phase?: string;
  /** Also whose the ground is, for a phase. */
  readonly control?: boolean;
  /** Seconds: the sheet of a moment, with the ways, lanes and key of that moment only. */
  readonly at?: number;
  /** Which progression or regression of its drill this is. */
  readonly variation?: Pick<ChangedDrill, 'kind' | 'name'>;
  /** The plan with its dimensions and its key, without panels and time line, at the largest scale at which it fits this room. */
  readonly alone?: Alone;
}

/** Millimetres. Symbols and letters are `enlarged` so many times: the scene is drawn that much smaller and has to be shown that much larger. */
export interface Alone {
  readonly width: number;
  readonly height: number;
  readonly enlarged: number;
  /** Without it {@link keyAlone} draws it elsewhere. */
  readonly key: boolean;
}

/** The scene of one drill. Total: a drill without area, people or play gives a clean, emptier sheet. */
export function stage(whole: DrillAnalysis, options: StageOptions): Scene {
  const phase = phaseShown(whole, options.phase);
  const analysis = phase ? asDrill(whole, phase) : whole;
  const { drill, timeline } = analysis;
  const measure = measureOf(drill);
  const grounds = phase && options.control ? groundsOf(drill, phase) : [];
  const moment = options.at === undefined ? null : momentOf(timeline, options.at);
  const shown = moment && phase ? atMoment(phase, moment) : phase;
  const ways = waysOf(drill, timeline, moment?.beat);
  const keyAt = (at: number, width: number) => {
    const used = usedKinds(analysis, ways, at);
    return keyPanel(analysis, { theme: options.theme, convention: options.convention, ...used, later: used.later && moment === null, phase: shown, grounds }, width);
  };
  const { alone } = options;
  const scale = options.scale !== undefined && options.scale > 0 ? options.scale
    : alone ? scaleAlone((perMetre) => grassOf(drill, timeline, perMetre), (at, width) => (alone.key ? keyAt(at, width)?.height ?? 0 : 0), alone)
    : scaleFor(grassOf(drill, timeline, 1000 / scales[0]), room);
  const perMetre = 1000 / scale / (alone?.enlarged ?? 1);
  const grass = grassOf(drill, timeline, perMetre);
  const beats = beatWords(drill, timeline);
  const problems = options.problems ?? [];
  const notes = notesOf(analysis, phase);
  const under = [
    ...(options.variation ? [variationWords(options.variation)] : []), ...(phase ? [phaseWords(phase.phase)] : []), ...(moment ? [`After ${figure(moment.time)} s`] : []),
  ];
  const sheet = alone ? composeAlone(grass, perMetre, (width) => (alone.key ? keyAt(scale, width) : null)) : compose(analysis, options, {
    scale, grass, beats, problems, notes, under, strip: stripHeight(analysis, phase), grounds, key: keyAt(scale, column),
  });

  const plan: Plan = { scale, perMetre, left: sheet.plan.x - grass.left * perMetre, bottom: sheet.plan.y + grass.bottom * perMetre };
  const onPaper: Box = {
    left: sheet.plan.x, right: sheet.plan.x + (grass.right - grass.left) * perMetre,
    top: sheet.plan.y, bottom: sheet.plan.y + (grass.bottom - grass.top) * perMetre,
  };
  const drawn = drawPlan(analysis, plan, onPaper, { theme: options.theme, convention: options.convention, problems, phase, moment: shown, ways });
  const strip = alone ? null : stripOf(analysis, phase, options.theme, { left: margin, top: sheet.stripTop, width: sheet.leftWidth });
  const marks: Mark[] = [
    ...(alone ? [] : [{ id: 'sheet', layer: 'sheet', span: drill.span, label: null, shapes: [box(2.5, 2.5, sheet.width - 5, sheet.height - 5, stroked('ink', 0.35))] } as const]),
    ...areaMarks(drill, plan, grass, measure),
    ...controlMarks(drill, grounds, plan),
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
    title: [drill.name, ...under].filter((words) => words !== '').join(', '),
    description: describe(analysis, scale, beats, notes),
    marks: marks.sort((a, b) => (rank.get(a.layer) as number) - (rank.get(b.layer) as number)),
    movers: drawn.movers,
    plan,
    beats,
    notes,
    end: timeline.end > 0 ? timeline.end : 0,
    strip: strip?.axis ?? null,
  };
}

/** What the drawing of a scene uses, so wide in millimetres; null where there is nothing to explain. */
export function keyAlone(whole: DrillAnalysis, { theme, convention }: Pick<StageOptions, 'theme' | 'convention'>, scale: number, width: number): { readonly height: number; readonly shapes: readonly Shape[] } | null {
  const phase = phaseShown(whole, undefined);
  const analysis = phase ? asDrill(whole, phase) : whole;
  const panel = keyPanel(analysis, { theme, convention, ...usedKinds(analysis, waysOf(analysis.drill, analysis.timeline), scale), phase, grounds: [] }, width);
  return panel && { height: panel.height, shapes: panel.draw(0, 0).flatMap(({ shapes }) => shapes) };
}

/** ISO 5455 (1, 2 and 5 by powers of ten), and between them what the scale rule has. */
const scales = [50, 100, 125, 200, 250, 300, 400, 500, 600, 750, 1000] as const;
/** Millimetres that the grass may take on the sheet. */
const room = { width: 165, height: 136 } as const;

type Room = Pick<Alone, 'width' | 'height'>;

function scaleFor(grass: Box, within: Room): number {
  return largest((scale) => fitsIn(grass, within, scale));
}

/** A queue takes more metres at smaller scales, so the grass is measured at each. */
function scaleAlone(grassAt: (perMetre: number) => Box, keyHeight: (scale: number, width: number) => number, { width, height, enlarged }: Alone): number {
  return largest((scale) => {
    const sheet = composeAlone(grassAt(1000 / scale / enlarged), 1000 / scale / enlarged, (wide) => ({ height: keyHeight(scale, wide), draw: () => [] }));
    return sheet.width * enlarged <= width && sheet.height * enlarged <= height;
  });
}

function fitsIn(grass: Box, within: Room, scale: number): boolean {
  return ((grass.right - grass.left) * 1000) / scale <= within.width && ((grass.bottom - grass.top) * 1000) / scale <= within.height;
}

function largest(fits: (scale: number) => boolean): number {
  let larger = 2000;
  while (!fits(larger) && larger < 1e9) larger *= 2;
  return scales.find(fits) ?? larger;
}

// ---------------------------------------------------------------- composition

const margin = 8;
const column = 86;
const gutter = 7;
/** Between panels one below the other. */
const between = 5;

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
  readonly beats: readonly SceneBeat[];
  readonly problems: readonly Problem[];
  readonly notes: readonly Note[];
  /** Below the name: which variation, which phase. */
  readonly under: readonly string[];
  readonly key: Panel | null;
  readonly grounds: readonly Ground[];
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

function composeAlone(grass: Box, perMetre: number, keyOf: (width: number) => Panel | null): Sheet {
  const wide = (grass.right - grass.left) * perMetre + dimensionRoom.left + dimensionRoom.right;
  const height = (grass.bottom - grass.top) * perMetre + dimensionRoom.top + dimensionRoom.bottom;
  const key = keyOf(Math.max(wide, leastKey));
  const width = key ? Math.max(wide, leastKey) : wide;
  return {
    width, height: height + (key?.height ?? 0), plan: { x: dimensionRoom.left, y: dimensionRoom.top }, leftWidth: width, stripTop: height,
    panels: () => key?.draw(0, height) ?? [],
  };
}

/** Two columns of the key. */
const leastKey = 76;

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
  const title = titlePanel(analysis, parts.scale, options.convention, parts.under, column);
  const rest = [rotationOf(parts, column), parts.key, groundPanel(analysis.drill, parts.grounds, column), problemPanel(parts.problems, column)].filter((panel) => panel !== null);
  const fixed = title.height + heightOf(rest);
  const left = planHeight + (strip > 0 ? strip + 4 : 0);
  const order = orderPanel(parts.beats, column, Math.max(60, left - fixed - between));
  const needed = fixed + (order ? order.height + between : 0);
  const more = fitting(analysis, parts, column, left - needed);
  const height = Math.max(left, needed);
  const x = margin + leftWidth + gutter;
  const under = underneath(more.left, leftWidth + gutter + column);
  const placed: [Panel, number][] = [];
  let y = margin;
  for (const panel of [...(order ? [order] : []), ...rest, ...more.panels]) {
    placed.push([panel, y]);
    y += panel.height + between;
  }
  placed.push([title, margin + height - title.height]);
  return {
    width: x + column + margin, height: height + under.height + 2 * margin, plan, leftWidth, stripTop,
    panels: () => [...placed.flatMap(([panel, top]) => panel.draw(x, top)), ...under.draw(margin, margin + height)],
  };
}

/** Lines of the rotation on the sheet. */
const mostRotation = 8;

/** Always there: nobody finds their next place without it. */
function rotationOf({ notes }: Parts, width: number): Panel | null {
  const rotation = notes.find(({ id }) => id === 'rotation');
  if (!rotation) return null;
  const { entries } = rotation;
  const more = entries.length - mostRotation;
  // The last entry says when everyone is home, or why they never are.
  const shown = more > 0 ? [...entries.slice(0, mostRotation - 2), { about: null, text: `and ${more + 1} more`, span: null }, ...entries.slice(-1)] : entries;
  return notePanel({ ...rotation, entries: shown }, width, Infinity);
}

interface Fitting {
  readonly panels: readonly Panel[];
  /** Rules, coaching points and the like for which there is no room there. */
  readonly left: readonly Note[];
}

/** The panels of a column, as many as there is room for: those that matter most first. */
function fitting({ drill }: DrillAnalysis, { notes }: Parts, width: number, most: number): Fitting {
  const panels: Panel[] = [];
  let space = most - between;
  const offer = (panel: Panel | null): boolean => {
    if (!panel) return false;
    panels.push(panel);
    space -= panel.height + between;
    return true;
  };
  offer(pointsPanel(drill, width, space));
  const left = notes.filter((note) => note.id !== 'rotation' && !offer(notePanel(note, width, space)));
  return { panels, left };
}

/** Notes in columns under everything else, each where the sheet ends first. */
function underneath(notes: readonly Note[], width: number): Panel {
  const panels = notes.map((note) => notePanel(note, column, Infinity)).filter((panel) => panel !== null);
  const ends = Array.from({ length: Math.max(1, Math.floor((width + gutter) / (column + gutter))) }, () => between);
  const placed = panels.map((panel) => {
    const index = ends.indexOf(Math.min(...ends));
    const top = ends[index]!;
    ends[index] = top + panel.height + between;
    return { panel, left: index * (column + gutter), top };
  });
  return {
    height: panels.length === 0 ? 0 : Math.max(...ends) - between,
    draw: (x, y) => placed.flatMap(({ panel, left, top }) => panel.draw(x + left, y + top)),
  };
}

function sheetBelow(analysis: DrillAnalysis, options: StageOptions, parts: Parts): Sheet {
  const { strip, leftWidth, plan, stripTop } = sizes(parts, 2 * column + gutter);
  const title = titlePanel(analysis, parts.scale, options.convention, parts.under, column);
  const wide = leftWidth - column - gutter;
  const { key } = parts;
  const flags = problemPanel(parts.problems, wide);
  const order = orderPanel(parts.beats, wide, 90);
  const top = stripTop + (strip > 0 ? strip + 4 : 0);
  const fixed = [order, rotationOf(parts, wide), groundPanel(analysis.drill, parts.grounds, wide), flags].filter((panel) => panel !== null);
  const leftHeight = heightOf(fixed);
  const rightHeight = title.height + (key ? key.height + between : 0);
  const bottom = top + Math.max(leftHeight, rightHeight);
  const right = margin + wide + gutter;
  const more = fitting(analysis, parts, wide, bottom - top - leftHeight + between);
  const stacked = [...fixed, ...more.panels];
  const under = underneath(more.left, leftWidth);
  return {
    width: leftWidth + 2 * margin, height: bottom + under.height + margin, plan, leftWidth, stripTop,
    panels: () => [
      ...under.draw(margin, bottom),
      ...stacked.flatMap((panel, index) => panel.draw(margin, top + heightOf(stacked.slice(0, index)))),
      ...(key?.draw(right, top) ?? []),
      ...title.draw(right, bottom - title.height),
    ],
  };
}

/** Of panels one below the other, with the space behind each. */
function heightOf(panels: readonly Panel[]): number {
  return panels.reduce((sum, panel) => sum + panel.height + between, 0);
}

// ---------------------------------------------------------------- words

function describe({ drill, measures }: DrillAnalysis, scale: number, beats: readonly SceneBeat[], notes: readonly Note[]): string {
  const measure = measureOf(drill);
  const area = drill.area ? [`Area ${figure(drill.area.width / measure.metres)} by ${figure(drill.area.length / measure.metres)} ${measure.name}.`] : [];
  const theme = drill.theme === null ? [] : [`${drill.theme}.`];
  const story = beats.map(({ label, text }) => `${label}. ${text}.`);
  const rotation = (notes.find(({ id }) => id === 'rotation')?.entries ?? []).map(({ text }) => `${aloud(text).replace(/\.$/, '')}.`);
  return [...theme, ...area, `${measures.players} players.`, `Scale 1:${scale}.`, ...story, ...rotation].join(' ');
}
