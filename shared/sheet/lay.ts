/** A block at a width: its lines and its height, and where it can be parted. */
import type { Blank, Block, Figure, Heading, Item, Prose, Table } from './blocks.ts';
import { blankLeading, cell, gaps, markerWidth, numberBox, sectionRule, styles, titleRule, type TextStyle } from './style.ts';
import { tidy, wrapped, type Line } from './wrap.ts';

/** Width of a text in millimetres, in the fonts that will draw it. */
export type Measure = (text: string, size: number, weight: TextStyle['weight']) => number;

export type Piece = { readonly width: number; readonly height: number } & (
  | { readonly kind: 'heading'; readonly block: Heading; readonly lines: readonly string[] }
  | { readonly kind: 'text'; readonly block: Prose; readonly lines: readonly string[] }
  | { readonly kind: 'item'; readonly block: Item; readonly lines: readonly string[] }
  | { readonly kind: 'table'; readonly block: Table; readonly rows: readonly TableRow[] }
  | { readonly kind: 'figure'; readonly block: Figure }
  | { readonly kind: 'blank'; readonly block: Blank; readonly lines: readonly string[] }
);

/** The first row of a table has its titles. */
export interface TableRow {
  /** Lines of each cell. */
  readonly cells: readonly (readonly string[])[];
  readonly height: number;
}

export function lay(block: Block, width: number, measure: Measure): Piece {
  switch (block.kind) {
    case 'heading': {
      const { leading } = styles[block.rank];
      const lines = linesOf(block.text, styles[block.rank], titleRoom(block, width, measure), measure).map(({ text }) => text);
      const height = lines.length * leading;
      return { kind: 'heading', block, lines, width, height: block.rank === 'title' ? Math.max(height, numberBox) + titleRule : block.rank === 'section' ? height + sectionRule : height };
    }
    case 'text': {
      const lines = linesOf(block.text, styles[block.style], width, measure).map(({ text }) => text);
      return { kind: 'text', block, lines, width, height: lines.length * styles[block.style].leading };
    }
    case 'item': {
      const lines = linesOf(block.text, styles.body, width - markerWidth[block.list], measure).map(({ text }) => text);
      return { kind: 'item', block, lines, width, height: lines.length * styles.body.leading };
    }
    case 'table': {
      const rows = [block.columns.map(({ title }) => title), ...block.rows].map((cells, index) => rowOf(cells, block, width, index === 0, measure));
      return { kind: 'table', block, rows, width, height: rows.reduce((sum, row) => sum + row.height, 0) };
    }
    case 'figure':
      return { kind: 'figure', block, width: block.width, height: block.height };
    case 'blank': {
      const lines = linesOf(block.label, blankLabel, width, measure).map(({ text }) => text);
      return { kind: 'blank', block, lines, width, height: lines.length * blankLabel.leading + block.lines * blankLeading };
    }
  }
}

/** What the lines are for. */
export const blankLabel: TextStyle = { ...styles.small, weight: 'bold' };

/** Rows of a table that stay together, its titles counted. */
export const leastRows = 4;

/** Above a block that does not begin its column. */
export function gapAbove(block: Block): number {
  return block.kind === 'heading' ? gaps[block.rank] : gaps[block.kind];
}

/** As much of a block as goes into so many millimetres, and the rest of it; null where it cannot be parted there. `must`: even where it reads badly. */
export function parted(block: Block, width: number, room: number, measure: Measure, must: boolean): readonly [Block, Block] | null {
  switch (block.kind) {
    case 'figure':
      return null;
    case 'heading': {
      const style = styles[block.rank];
      const lines = linesOf(block.text, style, titleRoom(block, width, measure), measure);
      const fits = Math.floor((room - sectionRule - titleRule) / style.leading);
      if (!must || fits < 1 || fits >= lines.length) return null;
      const at = (lines[fits - 1] as Line).end;
      return [{ ...block, text: tidy(block.text).slice(0, at) }, { ...block, number: null, aside: null, text: tidy(block.text).slice(at) }];
    }
    case 'text':
    case 'item': {
      const style = block.kind === 'text' ? styles[block.style] : styles.body;
      const lines = linesOf(block.text, style, block.kind === 'text' ? width : width - markerWidth[block.list], measure);
      const fits = Math.floor(room / style.leading + 1e-6);
      if (fits < 1 || fits >= lines.length) return null;
      const text = tidy(block.text);
      const at = (lines[fits - 1] as Line).end;
      const rest = { ...block, text: text.slice(at) };
      return [{ ...block, text: text.slice(0, at) }, rest.kind === 'item' ? { ...rest, marker: null } : rest];
    }
    case 'table': {
      const rows = [block.columns.map(({ title }) => title), ...block.rows].map((cells, index) => rowOf(cells, block, width, index === 0, measure));
      let height = 0;
      let fits = 0;
      for (const row of rows) {
        if (height + row.height > room + 1e-6) break;
        height += row.height;
        fits += 1;
      }
      if (fits >= (must ? 2 : leastRows)) return [{ ...block, rows: block.rows.slice(0, fits - 1) }, { ...block, rows: block.rows.slice(fits - 1) }];
      return must ? partedRow(block, width, room - (rows[0]?.height ?? 0), measure) : null;
    }
    case 'blank': {
      const fits = Math.floor((room - lay({ ...block, lines: 0 }, width, measure).height) / blankLeading);
      return fits < 1 || fits >= block.lines ? null : [{ ...block, lines: fits }, { ...block, lines: block.lines - fits }];
    }
  }
}

/** The number and the words at the end leave less to the title. */
function titleRoom({ rank, number, aside }: Heading, width: number, measure: Measure): number {
  if (rank !== 'title') return width;
  return width - (number === null ? 0 : numberBox + 3) - (aside === null ? 0 : measure(aside, styles.lead.size, 'bold') + 4);
}

function linesOf(text: string, { size, weight }: TextStyle, width: number, measure: Measure): Line[] {
  return wrapped(tidy(text), width, (words) => measure(words, size, weight));
}

export function cellWidth({ columns }: Table, index: number, width: number): number {
  return (width - cell.gap * (columns.length - 1)) * (columns[index]?.share ?? 0);
}

/** Rows are laid out again and again while a long table finds its pages; the same row at the same width stays the same. */
const laidRows = new WeakMap<Measure, WeakMap<readonly string[], { readonly width: number; readonly row: TableRow }>>();

function rowOf(cells: readonly string[], table: Table, width: number, head: boolean, measure: Measure): TableRow {
  let known = laidRows.get(measure);
  if (!known) laidRows.set(measure, (known = new WeakMap()));
  const before = known.get(cells);
  if (before?.width === width) return before.row;
  const style: TextStyle = head ? { ...styles.small, weight: 'bold' } : styles.small;
  const lines = cells.map((text, index) => linesOf(text, style, cellWidth(table, index, width), measure).map((line) => line.text));
  const row = { cells: lines, height: Math.max(...lines.map((each) => each.length)) * style.leading + cell.above + cell.below };
  known.set(cells, { width, row });
  return row;
}

/** A first row that no page holds goes on in a row below it. */
function partedRow(block: Table, width: number, room: number, measure: Measure): readonly [Block, Block] | null {
  const [first, ...others] = block.rows;
  const fits = Math.floor((room - cell.above - cell.below) / styles.small.leading + 1e-6);
  if (!first || fits < 1 || rowOf(first, block, width, false, measure).height <= room) return null;
  const cuts = first.map((text, index) => {
    const lines = linesOf(text, styles.small, cellWidth(block, index, width), measure);
    const at = lines[fits - 1]?.end ?? Infinity;
    return [tidy(text).slice(0, at), tidy(text).slice(at)] as const;
  });
  return [{ ...block, rows: [cuts.map(([head]) => head)] }, { ...block, rows: [cuts.map(([, tail]) => tail), ...others] }];
}
