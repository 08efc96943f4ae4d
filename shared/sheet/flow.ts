/** Blocks onto pages: bands one below the other, each of one column or two, and on to the next page where one is full. */
import { section, type Block, type Figure } from './blocks.ts';
import { gapAbove, lay, leastRows, parted, type Measure, type Piece } from './lay.ts';
import { blankLeading, columnWidth, contentWidth, gutter, paper, styles } from './style.ts';

/** Millimetres from the top left corner of the page. */
export interface Placed {
  readonly piece: Piece;
  readonly x: number;
  readonly y: number;
}

export interface Band {
  /** `beside`: a picture and a column that takes what it leaves. */
  readonly kind: 'full' | 'two' | 'beside';
  readonly columns: readonly (readonly Placed[])[];
}

export interface FlowedPage {
  readonly bands: readonly Band[];
  /** Its first band says again what the page before was about. */
  readonly goesOn: boolean;
}

export type Stretch =
  | { readonly kind: 'full' | 'two'; readonly blocks: readonly Block[] }
  /** A picture with what fits beside it; the rest in two columns below. */
  | { readonly kind: 'drawn'; readonly figure: Figure; readonly blocks: readonly Block[] };

export interface Flow {
  readonly stretches: readonly Stretch[];
  /** Heads every page but the first. */
  readonly continued: readonly Block[];
  /** The room that is left on the last page becomes lines to write on. */
  readonly notes: string | null;
}

/** Total: what is larger than a page goes on, or is let stand alone on one. */
export function flow({ stretches, continued, notes }: Flow, measure: Measure): FlowedPage[] {
  const sheet = sheetOfPages(continued, measure, paper.top, paper.bottom);
  for (const stretch of stretches) sheet.add(stretch);
  if (notes !== null) sheet.fill(notes);
  return sheet.pages();
}

/** Between two parts on one page. */
const betweenHalves = 6;

/** Flows on a page together, each with its picture in its half of it; what is left over follows on pages behind. */
export function flowHalves(flows: readonly Flow[], measure: Measure): FlowedPage[] {
  const half = (paper.bottom - paper.top - betweenHalves) / 2;
  const halves = flows.map(({ stretches }, index) => {
    const top = paper.top + index * (half + betweenHalves);
    const sheet = sheetOfPages([], measure, top, top + half);
    return { rest: stretches.map((stretch) => sheet.start(stretch)), bands: sheet.pages()[0]?.bands ?? [] };
  });
  // A title that takes half a page leaves no room for the picture.
  if (halves.some(({ rest }) => rest.includes(null))) return flows.flatMap((each) => flow(each, measure));
  const left = halves.flatMap(({ rest }, index): Stretch[] => {
    const blocks = rest.flatMap((each) => each ?? []);
    return blocks.length === 0 ? [] : [{ kind: 'full', blocks: flows[index]?.continued ?? [] }, { kind: 'two', blocks }];
  });
  const first: FlowedPage = { bands: halves.flatMap(({ bands }) => bands), goesOn: false };
  const names = flows.flatMap(({ continued }) => continued.flatMap((block) => (block.kind === 'heading' ? [block.text] : [])));
  return left.length === 0 ? [first] : [first, ...flow({ stretches: left, continued: [section(names.join(' / '))], notes: null }, measure)];
}

/** The first page stands between `top` and `bottom`, all others fill their paper. */
function sheetOfPages(continued: readonly Block[], measure: Measure, firstTop: number, firstBottom: number) {
  const done: Band[][] = [];
  let bands: Band[] = [];
  let [y, bottom] = [firstTop, firstBottom];

  const turn = () => {
    done.push(bands);
    bands = [];
    [y, bottom] = [paper.top, paper.bottom];
    const head = filled(continued, contentWidth, bottom - y, measure);
    place('full', [{ x: paper.margin, pieces: head.pieces }]);
  };
  const place = (kind: Band['kind'], columns: readonly { readonly x: number; readonly pieces: readonly Offset[] }[]) => {
    bands.push({ kind, columns: columns.map(({ x, pieces }) => pieces.map(({ piece, from }) => ({ piece, x, y: y + from }))) });
    y += Math.max(0, ...columns.flatMap(({ pieces }) => pieces.map(({ piece, from }) => from + piece.height)));
  };
  /** Room below what is there, with the space above the next block. */
  const roomBelow = (next: Block | undefined) => {
    const gap = bands.length > 0 && next ? Math.max(gapAbove(next), betweenBands) : 0;
    return { gap, room: bottom - y - gap };
  };
  const full = (blocks: readonly Block[]) => {
    let rest = blocks;
    while (rest.length > 0) {
      const { gap, room } = roomBelow(rest[0]);
      const column = filled(rest, contentWidth, room, measure, bands.length === 0 || isBare());
      if (column.pieces.length > 0) {
        y += gap;
        place('full', [{ x: paper.margin, pieces: column.pieces }]);
      }
      rest = column.rest;
      if (rest.length > 0) turn();
    }
  };
  /** Nothing on the page but what heads it. */
  const isBare = () => done.length > 0 && bands.length <= 1;
  const two = (blocks: readonly Block[]) => {
    let rest = blocks;
    while (rest.length > 0) {
      const { gap, room } = roomBelow(rest[0]);
      const columns = balanced(rest, room, measure, bands.length === 0 || isBare());
      if (columns.left.pieces.length > 0) {
        y += gap;
        place('two', [{ x: paper.margin, pieces: columns.left.pieces }, { x: paper.margin + columnWidth + gutter, pieces: columns.right.pieces }]);
      }
      rest = columns.right.rest;
      if (rest.length > 0) turn();
    }
  };
  const holds = (figure: Figure) => figure.height <= roomBelow(figure).room + 1e-6;
  /** The picture with what fits beside it, down to its foot or to that of the page; gives what does not. */
  const drawn = (figure: Figure, blocks: readonly Block[], foot: 'picture' | 'page'): readonly Block[] => {
    const beside = contentWidth - figure.width - gutter;
    if (!holds(figure) && !isBare() && bands.length > 0) turn();
    y += roomBelow(figure).gap;
    const picture: Offset = { piece: lay(figure, figure.width, measure), from: 0 };
    if (beside < leastBeside) {
      place('full', [{ x: paper.margin + (contentWidth - figure.width) / 2, pieces: [picture] }]);
      return blocks;
    }
    const column = filled(blocks, beside, foot === 'page' ? bottom - y : Math.min(figure.height, bottom - y), measure);
    place('beside', [{ x: paper.margin, pieces: [picture] }, { x: paper.margin + figure.width + gutter, pieces: column.pieces }]);
    return column.rest;
  };

  return {
    add: (stretch: Stretch) => {
      if (stretch.kind === 'drawn') two(drawn(stretch.figure, stretch.blocks, 'picture'));
      else if (stretch.kind === 'two') two(stretch.blocks);
      else full(stretch.blocks);
    },
    /** Only as much as goes onto this page; gives the rest, or null where the picture does not. */
    start: (stretch: Stretch): readonly Block[] | null => {
      if (stretch.kind === 'drawn') return holds(stretch.figure) ? drawn(stretch.figure, stretch.blocks, 'page') : null;
      const column = filled(stretch.blocks, contentWidth, roomBelow(stretch.blocks[0]).room, measure);
      place('full', [{ x: paper.margin, pieces: column.pieces }]);
      return column.rest.length === 0 ? [] : null;
    },
    fill: (label: string) => {
      const lines = Math.floor((bottom - y - betweenBands - styles.small.leading) / blankLeading);
      if (lines >= 2) full([{ kind: 'blank', label, lines: Math.min(lines, mostNotes) }]);
    },
    pages: (): FlowedPage[] => [...done, bands].map((each, index) => ({ bands: each, goesOn: index > 0 && continued.length > 0 })),
  };
}

const betweenBands = 4;
const mostNotes = 8;
/** Narrower columns of text than this stay empty: millimetres. */
const leastBeside = 52;

interface Offset {
  readonly piece: Piece;
  /** From the top of its column. */
  readonly from: number;
}

interface Column {
  readonly pieces: readonly Offset[];
  readonly rest: readonly Block[];
}

/** As much as goes into a column. `must`: what no column holds is let in all the same, so that the flow never stands still. */
function filled(blocks: readonly Block[], width: number, room: number, measure: Measure, must = false): Column {
  const pieces: Offset[] = [];
  let used = 0;
  for (const [index, block] of blocks.entries()) {
    const from = pieces.length === 0 ? 0 : used + gapAbove(block);
    const piece = lay(block, width, measure);
    const tail = tailOf(blocks, index, width, measure);
    if (piece.width <= width + 1e-6 && from + piece.height + tail <= room + 1e-6) {
      pieces.push({ piece, from });
      used = from + piece.height;
      continue;
    }
    const parts = parted(block, width, room - from, measure, must && pieces.length === 0);
    if (parts) return { pieces: [...pieces, { piece: lay(parts[0], width, measure), from }], rest: [parts[1], ...blocks.slice(index + 1)] };
    if (must && pieces.length === 0) return { pieces: [{ piece, from }], rest: blocks.slice(index + 1) };
    return { pieces, rest: blocks.slice(index) };
  }
  return { pieces, rest: [] };
}

/** What has to stand in the same column below a heading, and below a picture that is told. */
function tailOf(blocks: readonly Block[], index: number, width: number, measure: Measure): number {
  const next = blocks[index + 1];
  const holds = blocks[index]?.kind === 'heading' || (blocks[index]?.kind === 'figure' && next?.kind === 'item');
  return next && holds ? gapAbove(next) + leastOf(next, width, measure) + tailOf(blocks, index + 1, width, measure) : 0;
}

/** The least of a block that can stand by itself. */
function leastOf(block: Block, width: number, measure: Measure): number {
  const piece = lay(block, width, measure);
  if (piece.kind === 'table') return piece.rows.slice(0, leastRows).reduce((sum, row) => sum + row.height, 0);
  return piece.kind === 'text' || piece.kind === 'item' ? Math.min(piece.height, 2 * styles.body.leading) : piece.height;
}

/** Two columns of like height where everything fits, both full where not. */
function balanced(blocks: readonly Block[], room: number, measure: Measure, must: boolean): { readonly left: Column; readonly right: Column } {
  const at = (height: number) => {
    const left = filled(blocks, columnWidth, height, measure, must && height === room);
    return { left, right: filled(left.rest, columnWidth, height, measure) };
  };
  const whole = at(room);
  if (whole.right.rest.length > 0) return whole;
  let [low, high] = [0, room];
  let best = whole;
  for (let step = 0; step < 10; step += 1) {
    const middle = (low + high) / 2;
    const tried = at(middle);
    if (tried.right.rest.length === 0 && tried.left.pieces.length > 0) [high, best] = [middle, tried];
    else low = middle;
  }
  return best;
}
