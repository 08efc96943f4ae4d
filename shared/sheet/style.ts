/** Measures of the sheet on paper, in millimetres: everything that lays out, prints or styles it reads them here. */
import type { Weight } from '../font/text.ts';

/** A4 upright. Content stands between `top` and `bottom`; the title block lies below it. */
export const paper = { width: 210, height: 297, margin: 12, top: 12, bottom: 271, footer: 274.5, footerHeight: 10.5 } as const;
export const contentWidth = paper.width - 2 * paper.margin;
export const gutter = 6;
export const columnWidth = (contentWidth - gutter) / 2;

export interface TextStyle {
  readonly size: number;
  readonly leading: number;
  readonly weight: Weight;
}

/** Nothing that is read on the grass is smaller than 9 pt, which is 3.18 mm. */
export const styles = {
  title: { size: 7, leading: 8, weight: 'bold' },
  section: { size: 3.9, leading: 5, weight: 'bold' },
  minor: { size: 3.5, leading: 4.5, weight: 'bold' },
  lead: { size: 3.9, leading: 5.1, weight: 'medium' },
  body: { size: 3.4, leading: 4.4, weight: 'medium' },
  small: { size: 3.18, leading: 4.1, weight: 'medium' },
} as const satisfies Record<string, TextStyle>;

/** Above a block, unless it is the first of its column. */
export const gaps = { title: 6, section: 4, minor: 2.4, text: 1, item: 0.8, table: 2, figure: 2, blank: 3 } as const;

/** From the hairline above a section to its words. */
export const sectionRule = 1.4;
/** The box of a title's number: as wide as high. */
export const numberBox = 9;
export const titleRule = 2;
/** Before the words of an item. */
export const markerWidth = { numbers: 6.5, bullets: 4 } as const;
/** Between the cells of a table, and above and below the words of a row. */
export const cell = { gap: 3, above: 0.5, below: 0.5 } as const;
/** Of a line to write on by hand. */
export const blankLeading = 8;
