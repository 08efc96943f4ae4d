import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textWidth } from '../../shared/font/text.ts';
import { bullets, minor, prose, section, type Block, type Figure } from '../../shared/sheet/blocks.ts';
import { flow, flowHalves, type FlowedPage, type Stretch } from '../../shared/sheet/flow.ts';
import type { Piece } from '../../shared/sheet/lay.ts';
import { contentWidth, paper } from '../../shared/sheet/style.ts';
import { tidy } from '../../shared/sheet/wrap.ts';

const words = fc.lorem({ maxCount: 60 });
const figure = fc.record({ width: fc.double({ min: 30, max: contentWidth, noNaN: true }), height: fc.double({ min: 20, max: 170, noNaN: true }) })
  .map((size): Figure => ({ ...size, kind: 'figure', label: 'picture', content: { kind: 'shapes', shapes: [] } }));
const columnFigure = figure.map((each): Figure => ({ ...each, width: Math.min(each.width, 90) }));
const block: fc.Arbitrary<Block> = fc.oneof(
  words.map((text) => prose(text)), words.map((text) => bullets([text])[0] as Block), words.map(section), words.map(minor), columnFigure,
  fc.array(fc.tuple(words, words), { minLength: 1, maxLength: 12 }).map((rows): Block => ({
    kind: 'table', rows, columns: [{ title: 'What', share: 0.4, right: false }, { title: 'How', share: 0.6, right: true }],
  })),
  fc.integer({ min: 1, max: 20 }).map((lines): Block => ({ kind: 'blank', label: 'Notes', lines })),
);
const blocks = fc.array(block, { maxLength: 30 });
const stretch: fc.Arbitrary<Stretch> = fc.oneof(
  blocks.map((each): Stretch => ({ kind: 'full', blocks: each })), blocks.map((each): Stretch => ({ kind: 'two', blocks: each })),
  fc.tuple(figure, blocks).map(([picture, each]): Stretch => ({ kind: 'drawn', figure: picture, blocks: each })),
);
const stretches = fc.array(stretch, { maxLength: 4 });

const piecesOf = (pages: readonly FlowedPage[]) => pages.flatMap(({ bands }) => bands.flatMap(({ columns }) => columns.flat()));

/** All that is said, without the spaces at which it may be parted, sorted: tables part their cells. */
function said(all: readonly Block[]): string {
  const texts = all.flatMap((each) => (each.kind === 'table' ? each.rows.flat() : each.kind === 'figure' ? ['picture'] : each.kind === 'blank' ? [] : [each.text]));
  return [...texts.map(tidy).join('').replaceAll(' ', '')].sort().join('');
}
const asBlock = ({ block: each }: Piece): Block => each;

describe('pages', () => {
  it('say everything once', () => {
    fc.assert(fc.property(stretches, (given) => {
      const pages = flow({ stretches: given, continued: [], notes: null }, textWidth);
      const asked = given.flatMap((each) => (each.kind === 'drawn' ? [each.figure, ...each.blocks] : each.blocks));
      expect(said(piecesOf(pages).map(({ piece }) => asBlock(piece)))).toBe(said(asked));
    }), { numRuns: 60 });
  });
  it.each([['one to a page', flow], ['two to a page', (each: Parameters<typeof flow>[0], measure: typeof textWidth) => flowHalves([each, each], measure)]] as const)('keep within their margins, %s', (_, laid) => {
    const small = fc.tuple(figure, blocks).map(([picture, each]): Stretch => ({ kind: 'drawn', figure: { ...picture, height: Math.min(picture.height, 100) }, blocks: each }));
    fc.assert(fc.property(fc.tuple(blocks.map((each) => each.slice(0, 1)), small), ([opening, drawn]) => {
      const short = opening.filter(({ kind }) => kind === 'heading');
      for (const { piece, x, y } of piecesOf(laid({ stretches: [{ kind: 'full', blocks: short }, drawn], continued: [section('continued')], notes: 'Notes' }, textWidth))) {
        expect(x).toBeGreaterThanOrEqual(paper.margin - 1e-6);
        expect(x + piece.width).toBeLessThanOrEqual(paper.width - paper.margin + 1e-6);
        expect(y).toBeGreaterThanOrEqual(paper.top - 1e-6);
        expect(y + piece.height).toBeLessThanOrEqual(paper.bottom + 1e-6);
      }
    }), { numRuns: 60 });
  });
  it('never set two things over each other in a column', () => {
    fc.assert(fc.property(stretches, (given) => {
      for (const { bands } of flow({ stretches: given, continued: [section('continued')], notes: 'Notes' }, textWidth)) {
        for (const column of bands.flatMap(({ columns }) => columns)) {
          for (const [index, { piece, y }] of column.entries()) expect(y + piece.height).toBeLessThanOrEqual((column[index + 1]?.y ?? Infinity) + 1e-6);
        }
      }
    }), { numRuns: 60 });
  });
  it('do not leave a heading at the foot of a column', () => {
    const many = Array.from({ length: 40 }, (_, index) => [section(`Section ${index}`), prose('Words. '.repeat(12 + (index % 5) * 9))]).flat();
    const feet = flow({ stretches: [{ kind: 'two', blocks: many }], continued: [], notes: null }, textWidth)
      .flatMap(({ bands }) => bands.flatMap(({ columns }) => columns.map((column) => column.at(-1)?.piece.kind)));
    expect(feet.filter((kind) => kind === 'heading')).toEqual([]);
  });
});
