/**
 * The sheet: a session, or drills, on A4 pages for the touchline. Readonly data in millimetres that any printer can draw;
 * nothing of the text is cut. Same input, same pages.
 */
import type { DrillAnalysis } from '../analyse.ts';
import { textWidth } from '../font/text.ts';
import type { Convention } from '../scene/lines.ts';
import type { Theme } from '../scene/palette.ts';
import type { Scene } from '../scene/scene.ts';
import type { SessionAnalysis } from '../session/analysis.ts';
import type { Block, Heading } from './blocks.ts';
import { flow, flowHalves, type Band, type Flow, type FlowedPage } from './flow.ts';
import { frontPage } from './front.ts';
import type { Measure } from './lay.ts';
import { partPage, type PartPage } from './part.ts';
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
  /** The fields of the title block, from left to right. */
  readonly block: readonly { readonly title: string; readonly value: string }[];
}

export interface SheetOptions {
  readonly theme: Theme;
  readonly convention: Convention;
  readonly perPage: 1 | 2;
  /** Of the register of a session, in its order. */
  readonly names: Names;
  /** How wide texts are in the fonts that will draw them; the shipped font's own widths without it. */
  readonly measure?: Measure;
}

/** The sheet of a session: a front page, then its parts that have a drill. */
export function sessionSheet(session: SessionAnalysis, options: SheetOptions): Sheet {
  const pictures: Scene[] = [];
  const leaves = partsOf(session).flatMap(({ number, index, slot }): Leaf[] => {
    if (slot.drill === null) return [];
    const aside = `${minutes(slot.start)}–${minutes(slot.end)} min`;
    const page = partPage(slot.drill, slot.setUp, { kind: 'heading', rank: 'title', number: `${number}`, text: slot.part.name, aside }, parting(options, pictures));
    return [{ index, page: named(page, slot.drill, slot.part.name), analysis: slot.drill }];
  });
  const { measure = textWidth } = options;
  const parts = paged(leaves, options);
  const front = (pages: ReadonlyMap<number, number>) => {
    const { title, stretches } = frontPage(session, options.names, pages);
    return flow({ stretches, continued: goesOn(title), notes: null }, measure);
  };
  // How many pages the front takes does not hang on the page numbers in it: those are a line each.
  const before = front(new Map(parts.flatMap(({ indices }, at) => indices.map((index) => [index, at + 1])))).length;
  const opening = front(new Map(parts.flatMap(({ indices }, at) => indices.map((index) => [index, at + 1 + before]))));
  const fields = sessionFields(session);
  return numbered(session.session.name, options.theme, pictures, [
    ...opening.map((page, at) => ({ page, opens: at === 0 ? session.session.name : null, fields })), ...parts.map(({ page, opens, fields: own }) => ({ page, opens, fields: own })),
  ]);
}

/** A sheet of each drill, under the name of the file or of the only drill. */
export function drillSheet(drills: readonly DrillAnalysis[], title: string, options: SheetOptions): Sheet {
  const pictures: Scene[] = [];
  const leaves = drills.map((analysis, index): Leaf => {
    const { name } = analysis.drill;
    const heading: Heading = { kind: 'heading', rank: 'title', number: drills.length > 1 ? `${index + 1}` : null, text: name === '' ? 'Drill' : name, aside: null };
    return { index, page: partPage(analysis, null, heading, parting(options, pictures)), analysis };
  });
  return numbered(drills.length === 1 ? (drills[0]?.drill.name ?? title) : title, options.theme, pictures, paged(leaves, options));
}

// ---------------------------------------------------------------- parts

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

function parting({ theme, convention, perPage }: SheetOptions, pictures: Scene[]): Parameters<typeof partPage>[3] {
  return { theme, convention, room: perPage === 1 ? { width: contentWidth, height: 132 } : { width: 108, height: 104 }, place: (scene) => pictures.push(scene) - 1 };
}

/** The name of the drill, where the part is called otherwise. */
function named(page: PartPage, { drill }: DrillAnalysis, name: string): PartPage {
  return drill.name === name || drill.name === '' ? page : { ...page, facts: `${drill.name} · ${page.facts}` };
}

function paged(leaves: readonly Leaf[], options: SheetOptions): (Draft & { readonly indices: readonly number[] })[] {
  const { measure = textWidth, perPage } = options;
  const flows = leaves.map(({ page }): Flow => ({
    stretches: [
      { kind: 'full', blocks: [page.title, { kind: 'text', style: perPage === 1 ? 'lead' : 'small', text: page.facts }] },
      { kind: 'drawn', figure: page.figure, blocks: page.blocks },
    ],
    continued: goesOn(page.title),
    notes: perPage === 1 ? 'Notes' : null,
  }));
  const groups = perPage === 1 ? leaves.map((leaf) => [leaf]) : pairs(leaves);
  let at = 0;
  return groups.flatMap((group) => {
    const own = flows.slice(at, (at += group.length));
    const pages = perPage === 1 && own[0] ? flow(own[0], measure) : flowHalves(own, measure);
    const fields = group.length === 1 && group[0] ? leafFields(group[0]) : [{ title: 'PARTS', value: group.map(({ page }) => page.title.text).join(' / ') }];
    return pages.map((page, index) => ({
      page, fields,
      opens: index === 0 ? group.map(({ page: { title } }) => `${title.number === null ? '' : `${title.number} `}${title.text}`).join(' / ') : null,
      indices: index === 0 ? group.map((leaf) => leaf.index) : [],
    }));
  });
}

function pairs<T>(all: readonly T[]): T[][] {
  return Array.from({ length: Math.ceil(all.length / 2) }, (_, index) => all.slice(index * 2, index * 2 + 2));
}

function goesOn({ number, text }: Heading): Block[] {
  return [{ kind: 'heading', rank: 'section', number: null, text: `${number === null ? '' : `${number} `}${text}, continued`, aside: null }];
}

// ---------------------------------------------------------------- title block

function leafFields({ page, analysis: { drill, measures } }: Leaf): Page['block'] {
  return [
    { title: 'PART', value: `${page.title.number === null ? '' : `${page.title.number} `}${page.title.text}` },
    { title: 'AGE', value: drill.ageLabel ?? 'adult' }, { title: 'PLAYERS', value: `${measures.players}` },
    { title: 'AREA', value: areaWords(drill) ?? '–' }, { title: 'SCALE', value: page.scale },
  ];
}

function sessionFields({ session, register }: SessionAnalysis): Page['block'] {
  const count = register.length > 0 ? register.length : session.players?.value;
  return [
    { title: 'SESSION', value: session.name }, { title: 'AGE', value: session.ageLabel ?? '–' }, { title: 'PLAYERS', value: count === undefined ? '–' : `${count}` },
  ];
}

function numbered(title: string, theme: Theme, pictures: readonly Scene[], drafts: readonly Draft[]): Sheet {
  return {
    title, theme, pictures,
    pages: drafts.map(({ page, opens, fields }, index) => ({
      number: index + 1, opens, bands: page.bands, block: [...fields, { title: 'PAGE', value: `${index + 1} of ${drafts.length}` }],
    })),
  };
}

/** Widths of the fields of a title block, in millimetres: the first takes what the others leave. */
export function fieldWidths(block: Page['block']): number[] {
  const others = block.slice(1).map(({ value }) => Math.min(Math.max(18, textWidth(value, 3.4, 'bold') + 5), 45));
  return [contentWidth - others.reduce((sum, width) => sum + width, 0), ...others];
}
