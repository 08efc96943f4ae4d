/** A sheet as PDF: real text in embedded fonts, drawings as vectors, tagged for who listens. The same sheet gives the same bytes. */
import Pdf from 'pdfkit';
import type { Weight } from '../shared/font/text.ts';
import { isShown, moverAt } from '../shared/scene/frame.ts';
import { palettes, type Ink, type Paint } from '../shared/scene/palette.ts';
import { layers, type Pen, type Scene, type Shape } from '../shared/scene/scene.ts';
import type { Figure } from '../shared/sheet/blocks.ts';
import type { Placed } from '../shared/sheet/flow.ts';
import { blankLabel, cellWidth, type Measure, type Piece } from '../shared/sheet/lay.ts';
import { fieldWidths, type Page, type Sheet } from '../shared/sheet/sheet.ts';
import { blankLeading, cell, contentWidth, markerWidth, numberBox, paper, sectionRule, styles, type TextStyle } from '../shared/sheet/style.ts';
import { fontsFor, missingWords, type Face, type Fonts } from './fonts.ts';
import { measureWith, runsFromRight, writingOf } from './writing.ts';

/** Points in a millimetre. */
const points = 72 / 25.4;

type Parent = ReturnType<PDFKit.PDFDocument['struct']>;

/** The sheet that `make` lays out in the fonts that will draw it; `given` are font files relative to `cwd`. `missing` is a sentence about what no font has. */
export async function printed(make: (measure: Measure) => Sheet, given: readonly string[], cwd: string): Promise<{ readonly bytes: Uint8Array; readonly missing: string | null }> {
  const fonts = fontsFor(given, cwd);
  const bytes = await toPdf(make(measureWith(fonts)), fonts);
  return { bytes, missing: missingWords(fonts) };
}

export async function toPdf(sheet: Sheet, fonts: Fonts): Promise<Uint8Array> {
  // Without a default font: the standard ones are not embedded. The day of writing would make other bytes of the same sheet.
  const doc = new Pdf({
    autoFirstPage: false, font: '', pdfVersion: '1.7', lang: 'en-GB', tagged: true, displayTitle: true,
    info: { Title: sheet.title, Creator: 'Halfturn', Producer: 'Halfturn', CreationDate: new Date(0) },
  });
  const chunks: Uint8Array[] = [];
  const written = new Promise<Uint8Array>((done, failed) => {
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk)).on('end', () => done(Buffer.concat(chunks))).on('error', failed);
  });
  const pen = penOn(doc, sheet, fonts);
  const root = doc.struct('Document');
  doc.addStructure(root);
  for (const page of sheet.pages) pen.page(page, root);
  root.end();
  doc.end();
  return written;
}

function penOn(doc: PDFKit.PDFDocument, sheet: Sheet, fonts: Fonts) {
  const { theme } = sheet;
  const palette = palettes[theme];
  const colour = (paint: Paint) => (paint.startsWith('#') ? paint : palette[paint as Ink]);
  const measure = measureWith(fonts);
  const named = new Set<string>();

  /** `at` is where the line of writing begins, has its middle or ends; y its base line. */
  const write = (text: string, at: { readonly x: number; readonly y: number }, size: number, weight: Weight, paint: Paint, anchor: 'start' | 'middle' | 'end' = 'start', fromRight = runsFromRight(text)) => {
    const writing = writingOf(text, weight, fonts, fromRight);
    let x = at.x - (anchor === 'start' ? 0 : measure(text, size, weight) * (anchor === 'middle' ? 0.5 : 1));
    doc.fillColor(colour(paint));
    for (const { face, text: words, simple } of writing.pieces) {
      if (!named.has(face.key)) doc.registerFont(face.key, face.font as unknown as PDFKit.Mixins.PDFFontSource);
      named.add(face.key);
      doc.font(face.key).fontSize(size);
      if (simple) doc.text(words, x, at.y, { lineBreak: false, baseline: 'alphabetic' });
      else glyphs(doc as unknown as FontUser, face, words, x, at.y, size);
      x += (face.font.layout(words).advanceWidth / face.font.unitsPerEm) * size;
    }
  };
  const line = (text: string, x: number, y: number, width: number, { size, leading, weight }: TextStyle, paint: Paint = 'ink', right = false, fromRight = runsFromRight(text)) => {
    const end = right || fromRight;
    write(text, { x: end ? x + width : x, y: y + (leading + size * 0.7) / 2 }, size, weight, paint, end ? 'end' : 'start', fromRight);
  };
  const lines = (texts: readonly string[], x: number, y: number, width: number, style: TextStyle, paint: Paint = 'ink', right = false) => {
    const fromRight = runsFromRight(texts.join(' '));
    for (const [index, text] of texts.entries()) line(text, x, y + index * style.leading, width, style, paint, right, fromRight);
  };
  const rule = (x1: number, y1: number, x2: number, y2: number, width: number, paint: Paint = 'ink') => {
    doc.moveTo(x1, y1).lineTo(x2, y2).lineWidth(width).strokeColor(colour(paint)).stroke();
  };
  /** What is no part of the text. */
  const aside = (draw: () => void) => {
    doc.markContent('Artifact', { type: 'Layout' });
    draw();
    doc.endMarkedContent();
  };
  const tag = (parent: Parent, type: string, draw: () => void, more: { readonly alt?: string; readonly actual?: string } = {}) => {
    parent.add(doc.struct(type, more, [draw]));
  };
  /** What is read aloud, where the signs do not stand in the order of reading. */
  const spoken = (texts: readonly string[], weight: Weight) =>
    (texts.some((text) => writingOf(text, weight, fonts).differs) ? { actual: texts.join(' ').replaceAll(/[\u2066-\u2069]/g, '') } : {});

  const shape = (one: Shape): void => {
    switch (one.kind) {
      case 'path':
        return ink(one, () => doc.path(one.d));
      case 'circle':
        return ink(one, () => doc.circle(one.x, one.y, one.r));
      case 'text':
        if (!one.upright) return write(one.text, one, one.size, one.weight, one.fill, one.anchor);
        doc.save().rotate(-90, { origin: [one.x, one.y] });
        write(one.text, one, one.size, one.weight, one.fill, one.anchor);
        doc.restore();
        return;
      case 'group':
        doc.save().translate(one.x, one.y);
        one.shapes.forEach(shape);
        doc.restore();
    }
  };
  const ink = ({ fill, stroke, width, dash }: Pen, outline: () => void) => {
    if (fill === null && stroke === null) return;
    outline();
    if (stroke !== null) doc.lineWidth(width).strokeColor(colour(stroke));
    if (fill !== null) doc.fillColor(colour(fill));
    if (dash !== null) doc.dash(dash.split(/[ ,]+/).map((part) => Math.max(Number(part), 0.01)) as unknown as number, {});
    if (fill !== null && stroke !== null) doc.fillAndStroke();
    else if (fill !== null) doc.fill();
    else doc.stroke();
    if (dash !== null) doc.undash();
  };
  const scene = ({ marks, movers }: Scene) => {
    for (const layer of layers) {
      for (const mark of marks) if (mark.layer === layer && isShown(mark, 0)) mark.shapes.forEach(shape);
      for (const mover of movers) {
        if (layer !== (mover.kind === 'person' ? 'people' : 'ball')) continue;
        const { x, y } = moverAt(mover.track, 0);
        shape({ kind: 'group', x, y, shapes: mover.shapes });
      }
    }
  };
  const figure = ({ content }: Figure, x: number, y: number) => {
    doc.save().translate(x, y);
    if (content.kind === 'scene') {
      doc.scale(content.enlarged, content.enlarged);
      scene(content.scene);
    } else content.shapes.forEach(shape);
    doc.restore();
  };

  const heading = (piece: Extract<Piece, { kind: 'heading' }>, x: number, y: number, parent: Parent) => {
    const { block: { rank, number, aside: end }, lines: texts, width, height } = piece;
    const style = styles[rank];
    if (rank !== 'title') {
      if (rank === 'section') aside(() => rule(x, y, x + width, y, 0.25));
      tag(parent, rank === 'section' ? 'H2' : 'H3', () => lines(texts, x, y + (rank === 'section' ? sectionRule : 0), width, style), spoken(texts, style.weight));
      return;
    }
    const left = x + (number === null ? 0 : numberBox + 3);
    const top = y + Math.max(0, (numberBox - texts.length * style.leading) / 2);
    aside(() => {
      if (number !== null) doc.rect(x + 0.25, y + 0.25, numberBox - 0.5, numberBox - 0.5).lineWidth(0.5).strokeColor(colour('ink')).stroke();
      rule(x, y + height, x + width, y + height, 0.5);
    });
    tag(parent, 'H1', () => {
      if (number !== null) write(number, { x: x + numberBox / 2, y: y + numberBox / 2 + 2.1 }, 6, 'bold', 'ink', 'middle');
      lines(texts, left, top, width - (left - x), style);
      if (end !== null) line(end, x, top + 1.2, width, { ...styles.lead, weight: 'bold' }, 'ink', true);
    }, spoken([...(number === null ? [] : [number]), ...texts, ...(end === null ? [] : [end])], style.weight));
  };

  const table = (piece: Extract<Piece, { kind: 'table' }>, x: number, top: number, parent: Parent) => {
    const { block, rows, width } = piece;
    let y = top;
    const whole = doc.struct('Table');
    parent.add(whole);
    for (const [index, { cells, height }] of rows.entries()) {
      const row = doc.struct('TR');
      whole.add(row);
      let left = x;
      for (const [column, texts] of cells.entries()) {
        const wide = cellWidth(block, column, width);
        const [from, at] = [left, y + cell.above];
        const right = block.columns[column]?.right ?? false;
        tag(row, index === 0 ? 'TH' : 'TD', () => lines(texts, from, at, wide, index === 0 ? { ...styles.small, weight: 'bold' } : styles.small, index === 0 ? 'note' : 'ink', right), spoken(texts, 'medium'));
        left += wide + cell.gap;
      }
      row.end();
      y += height;
      const under = y;
      aside(() => rule(x, under, x + width, under, index === 0 ? 0.3 : 0.12, index === 0 ? 'ink' : 'note'));
    }
    whole.end();
  };

  const placed = ({ piece, x, y }: Placed, parent: Parent) => {
    switch (piece.kind) {
      case 'heading':
        return heading(piece, x, y, parent);
      case 'text':
        return tag(parent, 'P', () => lines(piece.lines, x, y, piece.width, styles[piece.block.style]), spoken(piece.lines, 'medium'));
      case 'item': {
        const item = doc.struct('LI');
        parent.add(item);
        const { marker, list } = piece.block;
        const indent = markerWidth[list];
        if (marker !== null) tag(item, 'Lbl', () => line(marker, x, y, indent, { ...styles.body, weight: 'bold' }));
        tag(item, 'LBody', () => lines(piece.lines, x + indent, y, piece.width - indent, styles.body), spoken(piece.lines, 'medium'));
        return item.end();
      }
      case 'table':
        return table(piece, x, y, parent);
      case 'figure':
        return tag(parent, 'Figure', () => figure(piece.block, x, y), { alt: piece.block.label });
      case 'blank': {
        tag(parent, 'P', () => lines(piece.lines, x, y, piece.width, blankLabel, 'note'));
        const top = y + piece.lines.length * blankLabel.leading;
        return aside(() => {
          for (let row = 1; row <= piece.block.lines; row += 1) rule(x, top + row * blankLeading - 0.5, x + piece.width, top + row * blankLeading - 0.5, 0.15, 'note');
        });
      }
    }
  };

  const titleBlock = ({ block }: Page) => {
    const { margin, footer, footerHeight } = paper;
    doc.rect(margin, footer, contentWidth, footerHeight).lineWidth(0.4).strokeColor(colour('ink')).stroke();
    let x: number = margin;
    for (const [index, { title, value }] of block.entries()) {
      const wide = fieldWidths(block)[index] as number;
      if (index > 0) rule(x, footer, x, footer + footerHeight, 0.2);
      write(title, { x: x + 2, y: footer + 3.4 }, 2.1, 'bold', 'note');
      write(fitting(value, wide - 4, (text) => measure(text, 3.4, 'bold')), { x: x + 2, y: footer + 8.2 }, 3.4, 'bold', 'ink');
      x += wide;
    }
  };

  return {
    page: (page: Page, root: Parent) => {
      doc.addPage({ size: [paper.width * points, paper.height * points], margin: 0 });
      doc.scale(points, points);
      doc.lineJoin('round');
      if (page.opens !== null) doc.outline.addItem(page.opens);
      if (theme !== 'print') aside(() => doc.rect(0, 0, paper.width, paper.height).fill(palette.paper));
      let list: Parent | null = null;
      for (const each of page.bands.flatMap(({ columns }) => columns.flat())) {
        if (each.piece.kind === 'item') {
          if (list === null) root.add((list = doc.struct('L')));
          placed(each, list);
          continue;
        }
        list?.end();
        list = null;
        placed(each, root);
      }
      list?.end();
      doc.markContent('Artifact', { type: 'Pagination' });
      titleBlock(page);
      doc.endMarkedContent();
    },
  };
}

/** What the document uses to write with the font that is set. */
interface FontUser extends PDFKit.PDFDocument {
  readonly _font: {
    readonly id: string;
    ref(): unknown;
    /** Glyphs as numbers of the subset, in hexadecimal. */
    encode(text: string, features: readonly string[]): readonly [readonly string[], unknown];
  };
  readonly page: PDFKit.PDFPage & { readonly fonts: Record<string, unknown> };
}

/** Glyphs one by one, each with the letters it stands for: fonts of other scripts draw a letter with several, several with one, and different letters with the same. */
function glyphs(doc: FontUser, { font }: Face, text: string, left: number, y: number, size: number): void {
  const { _font: used, page } = doc;
  const [numbers] = used.encode(text, []);
  page.fonts[used.id] ??= used.ref();
  const run = font.layout(text, []);
  const share = size / font.unitsPerEm;
  let x = left;
  doc.save().transform(1, 0, 0, -1, 0, page.height);
  doc.addContent(`BT /${used.id} ${size.toFixed(4)} Tf 0 Tr`);
  for (const [index, { xAdvance, xOffset, yOffset }] of run.positions.entries()) {
    const place = [x + xOffset * share, page.height - y + yOffset * share].map((value) => value.toFixed(4)).join(' ');
    doc.addContent(`/Span <</ActualText <${utf16(String.fromCodePoint(...run.glyphs[index]?.codePoints ?? []))}>>> BDC 1 0 0 1 ${place} Tm <${numbers[index]}> Tj EMC`);
    x += xAdvance * share;
  }
  doc.addContent('ET');
  doc.restore();
}

/** With its byte order mark, in hexadecimal. */
function utf16(text: string): string {
  return Array.from({ length: text.length }, (_, at) => text.charCodeAt(at).toString(16).padStart(4, '0')).reduce((all, unit) => all + unit, 'feff');
}

/** A field of the title block repeats what the page says in full. */
function fitting(text: string, width: number, widthOf: (text: string) => number): string {
  const signs = [...text];
  let [fits, over] = [0, signs.length + 1];
  if (signs.length < 500 && widthOf(text) <= width) return text;
  while (over - fits > 1) {
    const middle = Math.floor((fits + over) / 2);
    if (widthOf(`${signs.slice(0, middle).join('')}…`) <= width) fits = middle;
    else over = middle;
  }
  return `${signs.slice(0, fits).join('').trimEnd()}…`;
}
