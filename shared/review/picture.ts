/** Pictures of what changed: both versions to one scale and on one frame, side by side or one over the other. */
import type { DrillAnalysis } from '../analyse.ts';
import { cut } from '../font/text.ts';
import { areaMarks } from '../scene/area.ts';
import { dimensionMarks, dimensionRoom } from '../scene/dimensions.ts';
import { type Flagged, withoutOtherPhases } from '../scene/flagged.ts';
import { type Box, boxOf } from '../scene/ground.ts';
import { type Convention, waysOf } from '../scene/lines.ts';
import type { Theme } from '../scene/palette.ts';
import { type Note, notesOf } from '../scene/notes.ts';
import { mostProblems, notePanel, type Panel, problemPanel, titlePanel } from '../scene/panels.ts';
import { asDrill, phaseShown } from '../scene/phase.ts';
import { drawPlan, grassOf, measuredExtent } from '../scene/plan.ts';
import { layers, type Mark, type Mover, type Plan, type Scene } from '../scene/scene.ts';
import { box, group, stroked, text } from '../scene/shapes.ts';
import { stripHeight, stripOf } from '../scene/strip.ts';
import { measureOf } from '../scene/units.ts';
import { beatWords, phaseWords } from '../scene/words.ts';
import { type Fact, isNewProblem, type Subject } from './comparison.ts';
import { changeKey, changeMarks, changeRoom, faintMark, faintMover } from './marks.ts';
import { counted } from './say.ts';

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
  /** The newer version in ink over the older one, faint, with what moved, came and went, and the facts beside it; of an evening the same as `beside`. */
  readonly over: Scene;
  /** Both on one sheet. */
  readonly beside: Scene;
  /** What is flagged on what is new, in the order of the numbers of the flags. */
  readonly flagged: readonly Flagged[];
  /** The name of the phase they show; null for a drill. */
  readonly phase: string | null;
}

/** `problems`: what breaks now and did not before. Null when neither version has the drill. Total. */
export function picturesOf(before: DrillAnalysis | null, after: DrillAnalysis | null, subject: Subject, problems: readonly Flagged[], options: PictureOptions): Pictures | null {
  const one = after ?? before;
  if (!one) return null;
  const [was, is] = [before && viewed(before, [], options.phase), after && viewed(after, problems, options.phase)];
  const frame = frameOf([was, is].filter((view) => view !== null));
  const sheets = { before: was && sheetOf(was, frame, 'Before', options), after: is && sheetOf(is, frame, 'Now', options) };
  const over = overlay(was, is, frame, subject, options);
  const flagged = is?.problems ?? [];
  return { ...sheets, over, beside: withWords(sideBySide(sheets.before, sheets.after, over), flagged), flagged, phase: (is ?? was)?.phase?.phase.name ?? null };
}

/** A drill, or one of its phases in place of it. */
interface View {
  readonly phase: ReturnType<typeof phaseShown>;
  readonly shown: DrillAnalysis;
  readonly problems: readonly Flagged[];
}

function viewed(whole: DrillAnalysis, problems: readonly Flagged[], name: string | undefined): View {
  const phase = phaseShown(whole, name) ?? phaseShown(whole, undefined);
  return phase ? { phase, shown: asDrill(whole, phase), problems: withoutOtherPhases(whole, phase.phase.name, problems) } : { phase, shown: whole, problems };
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

export const margin = 8;
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
  const marks = [border(frame.width, frame.height), caption(name, phase, frame), ...drawn.marks, ...(strip?.marks ?? [])];
  return sceneOf(shown, marks, drawn.movers, { ...frame, strip: strip?.axis ?? null, title: `${name}: ${shown.drill.name}`, description: name, notes: notesOf(shown, phase), options });
}

export function border(width: number, height: number): Mark {
  return { id: 'sheet', layer: 'sheet', span: null, label: null, shapes: [box(2.5, 2.5, width - 5, height - 5, stroked('ink', 0.35))] };
}

/** In corners of their own, so that both are read where one sheet is swiped over the other; with the phase of a game. */
export function caption(words: 'Before' | 'Now' | '', phase: View['phase'], { width }: Pick<Frame, 'width'>): Mark {
  const [x, anchor] = words === 'Now' ? [width - margin, 'end'] as const : [margin, 'start'] as const;
  return {
    id: 'caption', layer: 'title', span: null, label: null,
    shapes: [
      ...(words === '' ? [] : [text({ x, y: margin + 2.5 }, words.toUpperCase(), 3.4, 'note', { weight: 'bold', anchor })]),
      ...(phase ? [text({ x, y: margin + 6.5 }, cut(phaseWords(phase.phase), width / 2 - margin, 2.7, 'medium'), 2.7, 'note', { anchor })] : []),
    ],
  };
}

function planOf({ shown, phase, problems }: View, { plan, grass, onPaper }: Frame, { theme, convention }: PictureOptions, clear: readonly Box[] = []) {
  const { drill, timeline } = shown;
  const measure = measureOf(drill);
  const drawn = drawPlan(shown, plan, onPaper, { theme, convention, problems, phase, moment: phase, ways: waysOf(drill, timeline), clear });
  return {
    marks: [...areaMarks(drill, plan, grass, measure), ...dimensionMarks(drill, measuredExtent(drill, grass), onPaper, plan, measure), ...drawn.marks],
    movers: drawn.movers, solids: drawn.solids,
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
  const { shown, phase, problems: flagged } = (is ?? was)!;
  const both = was !== null && is !== null;
  const old = was && planOf(was, frame, options);
  const now = is && planOf(is, frame, options, old ? [...changeRoom(subject.marks, frame.plan), ...old.solids] : []);
  const same = new Set([...(now?.marks ?? []).map(looksOf), ...(now?.movers ?? []).map(looksOf)]);
  const differs = (old?.marks ?? []).filter((mark) => !inTheWay.has(mark.layer) && !same.has(looksOf(mark)));
  const ghosts = (old?.movers ?? []).filter((mover) => !same.has(looksOf(mover)));
  const ink = (now?.marks ?? []).filter(({ layer }) => layer !== 'later' && layer !== 'lanes');
  const signs = both ? subject.marks : [];
  const hidden = new Set(options.bare === true ? [] : (now?.movers ?? []).map(looksAtStart));
  const faint = both ? [...differs, ...ghosts.filter((ghost) => !hidden.has(looksAtStart(ghost)))] : [];
  const key = (width: number) => changeKey(width, { marks: signs, plan: frame.plan, convention: options.convention, faint, flagged: options.bare === true && flagged.length > 0 });

  const own = subject.facts.filter(({ shared }) => !shared);
  const matter = own.filter(({ grade }) => grade === 'matters');
  const told = matter.filter((fact) => (flagOf(fact, flagged) ?? Infinity) > mostProblems);
  const entries = told.slice(0, mostFacts).map(({ sentence, spans }) => ({ about: null, text: sentence, span: spans.after }));
  const more = told.length - entries.length + own.length - matter.length;
  const rest = more === 0 ? [] : [entries.length === 0 ? `${counted(more, 'details')} changed.` : `and ${more} more ${more === 1 ? 'detail' : 'details'}`];
  const words = [...entries, ...(own.length === 0 ? ['Nothing.'] : rest).map((each) => ({ about: null, text: each, span: null }))];
  const facts = words.length === 0 ? null : notePanel({ id: 'changes', title: 'What changed', entries: words }, column, Infinity);
  const title = titlePanel(shown, frame.plan.scale, options.convention, ['What changed', ...(phase ? [phaseWords(phase.phase)] : [])], column);
  const changes = [...differs.map(faintMark), ...ink, ...changeMarks(signs, frame.plan)];
  const description = matter.map(({ sentence }) => sentence).join(' ') || 'Nothing changed that matters on the grass.';
  const finished = (marks: readonly Mark[], width: number, height: number): Scene => ({
    ...sceneOf(shown, [border(width, height), ...changes, ...marks], [...ghosts.map(faintMover), ...(now?.movers ?? [])], { width, height, plan: frame.plan, strip: null, title: `${shown.drill.name}: what changed`, description, notes: [], options }),
    end: Math.max(0, was?.shown.timeline.end ?? 0, is?.shown.timeline.end ?? 0),
  });
  if (options.bare === true) {
    const below = key(frame.width - 2 * margin);
    return finished([...(phase ? [caption('', phase, frame)] : []), ...(below?.draw(margin, frame.stripTop) ?? [])], frame.width, frame.stripTop + (below?.height ?? 0) + margin);
  }
  const panels = [problemPanel(flagged, column, newProblems), facts, key(column)].filter((panel): panel is Panel => panel !== null);
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

/** The number of the flag of a problem that is new; null for what has none. */
export function flagOf(fact: Fact, flagged: readonly Flagged[]): number | null {
  if (!isNewProblem(fact)) return null;
  const { about, spans } = fact;
  const at = flagged.findIndex(({ message, span }) => message.startsWith(about.after ?? '') && span.from === spans.after?.from && span.to === spans.after.to);
  return at < 0 ? null : at + 1;
}

/** Over the words of the flags. */
const newProblems = 'NEW PROBLEMS';
/** Facts on the picture; all of them are in the words beside it. */
const mostFacts = 14;

function looksOf(mark: Mark | Mover): string {
  return JSON.stringify('track' in mark ? [mark.shapes, mark.track] : [mark.layer, mark.shapes]);
}

/** Who stands where somebody like them stood is not seen apart from them until they move. */
function looksAtStart({ shapes, track: [, x, y] }: Mover): string {
  return JSON.stringify([shapes, x, y]);
}

// ---------------------------------------------------------------- side by side

/** At least one of the two is there. */
export function sideBySide(before: Scene | null, after: Scene | null, over: Pick<Scene, 'title' | 'description' | 'end'>): Scene {
  const [left, right] = [(before ?? after)!, before && after];
  if (!right) return { ...left, title: over.title, description: over.description };
  const shifted = right.marks.map((mark): Mark => ({ ...mark, id: `now-${mark.id}`, shapes: [group({ x: left.width - 5, y: 0 }, mark.shapes)] }));
  const width = left.width - 5;
  return {
    ...right, width: width + right.width, title: over.title, description: over.description, strip: null, end: over.end,
    marks: layers.flatMap((layer) => [...left.marks, ...shifted].filter((mark) => mark.layer === layer)),
    movers: [...left.movers, ...right.movers.map((mover): Mover => ({ ...mover, id: `now-${mover.id}`, track: mover.track.map((value, index) => (index % 4 === 1 ? value + width : value)) }))],
  };
}

/** With the words of its flags below it. */
function withWords(scene: Scene, flagged: readonly Flagged[]): Scene {
  const panel = problemPanel(flagged, scene.width - 2 * margin, newProblems);
  if (!panel) return scene;
  return { ...scene, height: scene.height + panel.height + margin, marks: [...scene.marks, ...panel.draw(margin, scene.height)] };
}
