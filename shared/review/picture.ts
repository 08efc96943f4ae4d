/** Pictures of what changed: both versions to one scale and on one frame, side by side or one over the other. */
import type { DrillAnalysis } from '../analyse.ts';
import { areaMarks } from '../scene/area.ts';
import { dimensionMarks, dimensionRoom } from '../scene/dimensions.ts';
import { type Box, boxOf } from '../scene/ground.ts';
import { type Convention, waysOf } from '../scene/lines.ts';
import type { Theme } from '../scene/palette.ts';
import { type Note, notesOf } from '../scene/notes.ts';
import { notePanel, type Panel, titlePanel } from '../scene/panels.ts';
import { asDrill, phaseShown } from '../scene/phase.ts';
import { drawPlan, grassOf, measuredExtent } from '../scene/plan.ts';
import { layers, type Mark, type Mover, type Plan, type Scene } from '../scene/scene.ts';
import { box, group, stroked, text } from '../scene/shapes.ts';
import { stripHeight, stripOf } from '../scene/strip.ts';
import { measureOf } from '../scene/units.ts';
import { beatWords } from '../scene/words.ts';
import type { Subject } from './comparison.ts';
import { changeMarks, changeRoom, faintMark, faintMover, keyPanel } from './marks.ts';

export interface PictureOptions {
  readonly theme: Theme;
  readonly convention: Convention;
  /** Of a game: the phase to show, by its name in either version; without it the play of the drill, or the first phase. */
  readonly phase?: string;
  /** Without the facts and the title block: for a page that has them beside the picture. */
  readonly bare?: boolean;
}

export interface Pictures {
  /** As they were and as they are, on sheets of the same size; null for a version that is not there. */
  readonly before: Scene | null;
  readonly after: Scene | null;
  /** The newer version in ink over the older one, faint, with what moved, came and went, and the facts beside it. */
  readonly over: Scene;
  /** Both on one sheet. */
  readonly beside: Scene;
}

/** Null when neither version has the drill. Total. */
export function picturesOf(before: DrillAnalysis | null, after: DrillAnalysis | null, subject: Subject, options: PictureOptions): Pictures | null {
  const one = after ?? before;
  if (!one) return null;
  const [was, is] = [before && viewed(before, options.phase), after && viewed(after, options.phase)];
  const frame = frameOf([was, is].filter((view) => view !== null));
  const sheets = { before: was && sheetOf(was, frame, 'Before', options), after: is && sheetOf(is, frame, 'Now', options) };
  const over = overlay(was, is, frame, subject, options);
  return { ...sheets, over, beside: sideBySide(sheets.before, sheets.after, over) };
}

/** A drill, or one of its phases in place of it. */
interface View {
  readonly whole: DrillAnalysis;
  readonly phase: ReturnType<typeof phaseShown>;
  readonly shown: DrillAnalysis;
}

function viewed(whole: DrillAnalysis, name: string | undefined): View {
  const phase = phaseShown(whole, name) ?? phaseShown(whole, undefined);
  return { whole, phase, shown: phase ? asDrill(whole, phase) : whole };
}

/** What both sheets have in common. */
interface Frame {
  readonly plan: Plan;
  readonly grass: Box;
  /** The grass on the sheet. */
  readonly onPaper: Box;
  readonly width: number;
  readonly stripTop: number;
  readonly height: number;
}

const margin = 8;
/** For what the sheet is called. */
const head = 7;
const scales = [50, 100, 125, 200, 250, 300, 400, 500, 1000, 2000, 5000] as const;
/** Millimetres that the grass may take. */
const room = { width: 150, height: 136 } as const;

function frameOf(views: readonly View[]): Frame {
  const grassAt = (perMetre: number): Box => {
    const all = views.map(({ shown }) => grassOf(shown.drill, shown.timeline, perMetre));
    return boxOf(all.flatMap(({ left, right, top, bottom }) => [{ x: left, y: top }, { x: right, y: bottom }]));
  };
  const rough = grassAt(1000 / scales[0]);
  const scale = scales.find((each) => ((rough.right - rough.left) * 1000) / each <= room.width && ((rough.bottom - rough.top) * 1000) / each <= room.height) ?? 20_000;
  const perMetre = 1000 / scale;
  const grass = grassAt(perMetre);
  const [wide, high] = [(grass.right - grass.left) * perMetre, (grass.bottom - grass.top) * perMetre];
  const width = Math.max(110, wide + dimensionRoom.left + dimensionRoom.right) + 2 * margin;
  const left = margin + dimensionRoom.left + (width - 2 * margin - wide - dimensionRoom.left - dimensionRoom.right) / 2;
  const top = margin + head + dimensionRoom.top;
  const stripTop = top + high + dimensionRoom.bottom + 4;
  const strip = Math.max(0, ...views.map(({ shown, phase }) => stripHeight(shown, phase)));
  return {
    plan: { scale, perMetre, left: left - grass.left * perMetre, bottom: top + grass.bottom * perMetre }, grass, width, stripTop,
    onPaper: { left, right: left + wide, top, bottom: top + high }, height: stripTop + strip + margin,
  };
}

function sheetOf(view: View, frame: Frame, name: 'Before' | 'Now', options: PictureOptions): Scene {
  const { shown, phase } = view;
  const drawn = planOf(view, frame, options);
  const strip = stripOf(shown, phase, options.theme, { left: margin, top: frame.stripTop, width: frame.width - 2 * margin });
  const marks = [border(frame.width, frame.height), caption(name, frame), ...drawn.marks, ...(strip?.marks ?? [])];
  return sceneOf(shown, marks, drawn.movers, { ...frame, strip: strip?.axis ?? null, title: `${name}: ${shown.drill.name}`, description: name, notes: notesOf(shown, phase), options });
}

function border(width: number, height: number): Mark {
  return { id: 'sheet', layer: 'sheet', span: null, label: null, shapes: [box(2.5, 2.5, width - 5, height - 5, stroked('ink', 0.35))] };
}

/** In corners of their own, so that both are read where one sheet is swiped over the other. */
function caption(words: 'Before' | 'Now', { width }: Frame): Mark {
  const [x, anchor] = words === 'Before' ? [margin, 'start'] as const : [width - margin, 'end'] as const;
  return { id: 'caption', layer: 'title', span: null, label: null, shapes: [text({ x, y: margin + 4 }, words.toUpperCase(), 3.4, 'note', { weight: 'bold', anchor })] };
}

function planOf({ shown, phase }: View, { plan, grass, onPaper }: Frame, { theme, convention }: PictureOptions, clear: readonly Box[] = []) {
  const { drill, timeline } = shown;
  const measure = measureOf(drill);
  const drawn = drawPlan(shown, plan, onPaper, { theme, convention, problems: [], phase, moment: phase, ways: waysOf(drill, timeline), clear });
  return {
    marks: [...areaMarks(drill, plan, grass, measure), ...dimensionMarks(drill, measuredExtent(drill, grass), onPaper, plan, measure), ...drawn.marks],
    movers: drawn.movers,
  };
}

interface SheetWords extends Pick<Frame, 'width' | 'height' | 'plan'> {
  readonly strip: Scene['strip'];
  readonly title: string;
  readonly description: string;
  readonly notes: readonly Note[];
  readonly options: PictureOptions;
}

function sceneOf({ drill, timeline }: DrillAnalysis, marks: readonly Mark[], movers: readonly Mover[], { width, height, plan, strip, title, description, notes, options }: SheetWords): Scene {
  const rank = new Map(layers.map((layer, index) => [layer, index]));
  return {
    width, height, plan, strip, title, description, notes, theme: options.theme, convention: options.convention, movers,
    marks: [...marks].sort((a, b) => (rank.get(a.layer) ?? 0) - (rank.get(b.layer) ?? 0)), beats: beatWords(drill, timeline), end: Math.max(0, timeline.end),
  };
}

// ---------------------------------------------------------------- one over the other

/** What the facts beside the picture may take, millimetres. */
const column = 92;
const between = 5;
/** What stands still at the place of something else would only be in the way. */
const inTheWay: ReadonlySet<Mark['layer']> = new Set(['grid', 'later', 'lanes', 'problems', 'dimensions', 'labels']);

function overlay(was: View | null, is: View | null, frame: Frame, subject: Subject, options: PictureOptions): Scene {
  const now = is && planOf(is, frame, options, was ? changeRoom(subject.marks, frame.plan) : []);
  const old = was && planOf(was, frame, options);
  const shown = (is ?? was)!.shown;
  const same = new Set([...(now?.marks ?? []).map(looksOf), ...(now?.movers ?? []).map(looksOf)]);
  const faint = (old?.marks ?? []).filter((mark) => !inTheWay.has(mark.layer) && !same.has(looksOf(mark))).map(faintMark);
  const ghosts = (old?.movers ?? []).filter((mover) => !same.has(looksOf(mover))).map(faintMover);
  const ink = (now?.marks ?? []).filter(({ layer }) => layer !== 'later' && layer !== 'lanes');

  const told = subject.facts.filter(({ grade, shared }) => grade === 'matters' && !shared);
  const rest = subject.facts.filter(({ grade, shared }) => grade === 'detail' && !shared).length;
  const entries = told.slice(0, mostFacts).map(({ sentence, spans }) => ({ about: null, text: sentence, span: spans.after }));
  const more = told.length - entries.length + rest;
  const words = [...entries, ...(more > 0 ? [{ about: null, text: entries.length === 0 ? `${more} details changed.` : `and ${more} more ${more === 1 ? 'detail' : 'details'}`, span: null }] : [])];
  const facts = notePanel({ id: 'changes', title: 'What changed', entries: words.length === 0 ? [{ about: null, text: 'Nothing.', span: null }] : words }, column, Infinity);
  const title = titlePanel(shown, frame.plan.scale, options.convention, ['What changed'], column);
  const both = old !== null && now !== null;
  const changes = [...faint, ...ink, ...changeMarks(both ? subject.marks : [], frame.plan)];
  const description = told.map(({ sentence }) => sentence).join(' ') || 'Nothing changed that matters on the grass.';
  const finished = (marks: readonly Mark[], width: number, height: number): Scene => ({
    ...sceneOf(shown, [border(width, height), ...changes, ...marks], [...ghosts, ...(now?.movers ?? [])], { width, height, plan: frame.plan, strip: null, title: `${shown.drill.name}: what changed`, description, notes: [], options }),
    end: Math.max(0, was?.shown.timeline.end ?? 0, is?.shown.timeline.end ?? 0),
  });
  if (options.bare === true) {
    const key = keyPanel(frame.width - 2 * margin, both);
    return finished(key?.draw(margin, frame.stripTop) ?? [], frame.width, frame.stripTop + (key?.height ?? 0) + margin);
  }
  const panels = [facts, keyPanel(column, both)].filter((panel): panel is Panel => panel !== null);
  const x = frame.width - margin + between;
  const height = Math.max(frame.stripTop + margin - 4, margin * 2 + panels.reduce((sum, panel) => sum + panel.height + between, 0) + title.height);
  let y = margin;
  const beside = panels.flatMap((panel) => {
    const top = y;
    y += panel.height + between;
    return panel.draw(x, top);
  });
  return finished([...beside, ...title.draw(x, height - margin - title.height)], x + column + margin, height);
}

/** Facts on the picture; all of them are in the words beside it. */
const mostFacts = 14;

function looksOf(mark: Mark | Mover): string {
  return JSON.stringify('track' in mark ? [mark.shapes, mark.track] : [mark.layer, mark.shapes]);
}

// ---------------------------------------------------------------- side by side

function sideBySide(before: Scene | null, after: Scene | null, over: Scene): Scene {
  const [left, right] = [before ?? after, before && after];
  if (!left || !right) return { ...(left ?? over), title: over.title, description: over.description };
  const shifted = right.marks.map((mark): Mark => ({ ...mark, id: `now-${mark.id}`, shapes: [group({ x: left.width - 5, y: 0 }, mark.shapes)] }));
  const width = left.width - 5;
  return {
    ...right, width: width + right.width, title: over.title, description: over.description, strip: null, end: over.end,
    marks: layers.flatMap((layer) => [...left.marks, ...shifted].filter((mark) => mark.layer === layer)),
    movers: [...left.movers, ...right.movers.map((mover): Mover => ({ ...mover, id: `now-${mover.id}`, track: mover.track.map((value, index) => (index % 4 === 1 ? value + width : value)) }))],
  };
}
