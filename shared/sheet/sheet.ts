/**
 * The sheet: a session, or drills, on A4 pages for the touchline. Readonly data in millimetres that any printer can draw;
 * nothing of the text is cut. Same input, same pages.
 */
import type { DrillAnalysis } from '../analyse.ts';
import { textWidth } from '../font/text.ts';
import type { Convention } from '../scene/lines.ts';
import type { Theme } from '../scene/palette.ts';
import type { Problem } from '../problem.ts';
import type { Scene } from '../scene/scene.ts';
import type { SessionAnalysis } from '../session/analysis.ts';
import type { Block, Heading } from './blocks.ts';
import { flow, flowHalves, type Band, type Flow, type FlowedPage } from './flow.ts';
import { frontPage } from './front.ts';
import type { Measure } from './lay.ts';
import { partPage, type Laid, type PartPage } from './part.ts';
import { contentWidth } from './style.ts';
import { minutes, partsOf, areaWords, type Names } from './words.ts';

export interface Sheet {
  readonly title: string;
  readonly theme: Theme;
  readonly pages: readonly Page[];
  /** All that move, as the figures number them. */
  readonly pictures: readonly Scene[];
}

export interface Page {
  readonly number: number;
  /** Begins something that a table of contents names; null where a page goes on. */
  readonly opens: string | null;
  readonly bands: readonly Band[];
  /** Its first band says again what the page before was about. */
  readonly goesOn: boolean;
  /** The fields of the title block, from left to right. */
  readonly block: readonly { readonly title: string; readonly value: string }[];
}

export interface SheetOptions {
  readonly theme: Theme;
  readonly convention: Convention;
  readonly perPage: 1 | 2;
  /** Of the register of a session, in its order. */
  readonly names: Names;
  /** Of the file: what cannot be played as it is written is told where it is printed. */
  readonly problems: readonly Problem[];
  /** How wide texts are in the fonts that will draw them; the shipped font's own widths without it. */
  readonly measure?: Measure;
}

/** The sheet of a session: a front page, then its parts that have a drill. */
export function sessionSheet(session: SessionAnalysis, options: SheetOptions): Sheet {
  const leaves = leavesOf(partsOf(session).flatMap(({ number, index, slot }): Subject[] => (slot.drill === null ? [] : [{
    index, analysis: slot.drill, problems: slot.file === null ? options.problems : [], laid: slot, change: slot.part.change?.name ?? null,
    title: { kind: 'heading', rank: 'title', number: `${number}`, text: slot.part.name, aside: `${minutes(slot.start)}–${minutes(slot.end)} min` },
  }])), options);
  const { measure = textWidth } = options;
  const parts = paged(leaves, options);
  const front = (pages: ReadonlyMap<number, number>) => {
    const { title, stretches } = frontPage(session, options.names, pages, options.problems);
    return flow({ stretches, continued: goesOn(title), notes: 'After the session: what to keep, what to change' }, measure);
  };
  // How many pages the front takes does not hang on the page numbers in it: those are a line each.
  const before = front(new Map(parts.flatMap(({ indices }, at) => indices.map((index) => [index, at + 1])))).length;
  const opening = front(new Map(parts.flatMap(({ indices }, at) => indices.map((index) => [index, at + 1 + before]))));
  const fields = sessionFields(session);
  return numbered(session.session.name, options.theme, leaves, [
    ...opening.map((page, at) => ({ page, opens: at === 0 ? session.session.name : null, fields })), ...parts.map(({ page, opens, fields: own }) => ({ page, opens, fields: own })),
  ]);
}

/** A sheet of each drill, under the name of the file or of the only drill. */
export function drillSheet(drills: readonly DrillAnalysis[], title: string, options: SheetOptions): Sheet {
  const leaves = leavesOf(drills.map((analysis, index): Subject => ({
    index, analysis, problems: options.problems, laid: null, change: null,
    title: { kind: 'heading', rank: 'title', number: drills.length > 1 ? `${index + 1}` : null, text: analysis.drill.name || 'Drill', aside: null },
  })), options);
  return numbered((drills.length === 1 && drills[0]?.drill.name) || title, options.theme, leaves, paged(leaves, options));
}

// ---------------------------------------------------------------- parts

/** What a page is about. */
interface Subject {
  /** Its place in the timetable, or among the drills. */
  readonly index: number;
  readonly analysis: DrillAnalysis;
  /** Of the file it is in, if that is this one. */
  readonly problems: readonly Problem[];
  readonly laid: Laid | null;
  /** Which progression or regression of the drill is played. */
  readonly change: string | null;
  readonly title: Heading;
}

interface Leaf {
  readonly index: number;
  readonly page: PartPage;
  readonly analysis: DrillAnalysis;
}

/** Of the pages before they are numbered. */
interface Draft {
  readonly page: FlowedPage;
  readonly opens: string | null;
  readonly fields: Page['block'];
}

/** Millimetres for the drawing, the best first: as large as there is room for, then with text beside it, then smaller. */
const rooms = {
  1: [[contentWidth, 170], [128, 170], [128, 140], [110, 122]],
  2: [[104, 104]],
} as const;

/** No drawing is made more than so many times smaller to save a page. */
const mostSmaller = 1.3;
const mostTried = 4;

/** The drawing is as large as takes no more pages than a smaller one. */
function leavesOf(subjects: readonly Subject[], options: SheetOptions): Leaf[] {
  const { theme, convention, perPage, measure = textWidth } = options;
  let firstPicture = 0;
  return subjects.map(({ index, analysis, problems, laid, change, title }) => {
    const tryIn = ([width, height]: readonly [number, number]) => {
      const room = { width, height, small: perPage === 2 };
      const page = named(partPage(analysis, laid, title, { theme, convention, room, firstPicture, problems }), analysis, title.text, change);
      return { page, count: perPage === 1 ? flow(flowOf(page, 1), measure).length : 1 };
    };
    const [first, ...smaller] = rooms[perPage];
    const largest = tryIn(first);
    // One page cannot be fewer, and of many a smaller drawing saves none.
    const tried = largest.count === 1 || largest.count > mostTried ? [largest] : [largest, ...smaller.map(tryIn)];
    const legible = tried.filter(({ page: { scale } }) => scale <= largest.page.scale * mostSmaller);
    const fewest = Math.min(...legible.map(({ count }) => count));
    const { page } = legible.find(({ count }) => count === fewest) ?? largest;
    firstPicture += page.pictures.length;
    return { index, page, analysis };
  });
}

/** The name of the drill, where the part is called otherwise, and of what is changed in it. */
function named(page: PartPage, { drill }: DrillAnalysis, name: string, change: string | null): PartPage {
  const words = [...(drill.name === name || drill.name === '' ? [] : [drill.name]), ...(change === null ? [] : [change])];
  return words.length === 0 ? page : { ...page, facts: `${words.join(': ')} · ${page.facts}` };
}

function flowOf(page: PartPage, perPage: SheetOptions['perPage']): Flow {
  return {
    stretches: [
      { kind: 'full', blocks: [page.title, { kind: 'text', style: perPage === 1 ? 'body' : 'small', text: page.facts }] },
      { kind: 'drawn', figure: page.figure, blocks: page.blocks },
    ],
    continued: goesOn(page.title),
    notes: perPage === 1 ? 'Notes' : null,
  };
}

function paged(leaves: readonly Leaf[], options: SheetOptions): (Draft & { readonly indices: readonly number[] })[] {
  const { measure = textWidth, perPage } = options;
  const flows = leaves.map(({ page }) => flowOf(page, perPage));
  const groups = perPage === 1 ? leaves.map((leaf) => [leaf]) : pairs(leaves);
  let at = 0;
  return groups.flatMap((group) => {
    const own = flows.slice(at, (at += group.length));
    const pages = perPage === 1 && own[0] ? flow(own[0], measure) : flowHalves(own, measure);
    const fields = group.length === 1 && group[0] ? leafFields(group[0]) : [{ title: 'PARTS', value: group.map(({ page }) => page.title.text).join(' / ') }];
    return pages.map((page, index) => ({
      page, fields: index === 0 ? fields : fields.filter(({ title }) => title !== scaleField),
      opens: index === 0 ? group.map(({ page: { title } }) => `${title.number === null ? '' : `${title.number} `}${title.text}`).join(' / ') : null,
      indices: index === 0 ? group.map((leaf) => leaf.index) : [],
    }));
  });
}

function pairs<T>(all: readonly T[]): T[][] {
  return Array.from({ length: Math.ceil(all.length / 2) }, (_, index) => all.slice(index * 2, index * 2 + 2));
}

/** Longer names are told in full where they begin. */
const mostRepeated = 120;

function goesOn({ number, text }: Heading): Block[] {
  const name = text.length > mostRepeated ? `${text.slice(0, mostRepeated).trimEnd()}…` : text;
  return [{ kind: 'heading', rank: 'section', number: null, text: `${number === null ? '' : `${number} `}${name}, continued`, aside: null }];
}

// ---------------------------------------------------------------- title block

/** Of the first drawing, and so on its page only. */
const scaleField = 'SCALE';

function leafFields({ page, analysis: { drill, measures } }: Leaf): Page['block'] {
  return [
    { title: 'PART', value: `${page.title.number === null ? '' : `${page.title.number} `}${page.title.text}` },
    { title: 'AGE', value: drill.ageLabel ?? 'adult' }, { title: 'PLAYERS', value: `${measures.players}` },
    { title: 'AREA', value: areaWords(drill) ?? '–' }, { title: scaleField, value: `1:${page.scale}` },
  ];
}

function sessionFields({ session, register }: SessionAnalysis): Page['block'] {
  const count = register.length > 0 ? register.length : session.players?.value;
  return [
    { title: 'SESSION', value: session.name }, { title: 'AGE', value: session.ageLabel ?? '–' }, { title: 'PLAYERS', value: count === undefined ? '–' : `${count}` },
  ];
}

function numbered(title: string, theme: Theme, leaves: readonly Leaf[], drafts: readonly Draft[]): Sheet {
  return {
    title, theme, pictures: leaves.flatMap(({ page }) => page.pictures),
    pages: drafts.map(({ page, opens, fields }, index) => ({
      number: index + 1, opens, ...page, block: [...fields, { title: 'PAGE', value: `${index + 1} of ${drafts.length}` }],
    })),
  };
}

/** Widths of the fields of a title block, in millimetres: the first takes what the others leave. */
export function fieldWidths(block: Page['block']): number[] {
  const others = block.slice(1).map(({ value }) => Math.min(Math.max(18, textWidth(value, 3.4, 'bold') + 5), 45));
  return [contentWidth - others.reduce((sum, width) => sum + width, 0), ...others];
}
