/**
 * The drawing as data: marks on a sheet of paper, in millimetres of the sheet, and the tracks of all that moves.
 * Readonly, JSON-able; ids are made from names, so a mark keeps its id while the text around it changes.
 */
import type { Span } from '../../grammar/tree.ts';
import type { Weight } from '../font/text.ts';
import type { Convention } from './lines.ts';
import type { Note } from './notes.ts';
import type { Paint, Theme } from './palette.ts';

export { keyAlone, stage, type StageOptions } from './stage.ts';

export interface Scene {
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
  readonly theme: Theme;
  readonly convention: Convention;
  readonly title: string;
  /** The whole drill in sentences, for who cannot see the picture. */
  readonly description: string;
  /** In the order in which they are drawn. */
  readonly marks: readonly Mark[];
  readonly movers: readonly Mover[];
  readonly plan: Plan;
  readonly beats: readonly SceneBeat[];
  /** Who goes where, the rules, what to coach: whole, whether or not the sheet has room for it. */
  readonly notes: readonly Note[];
  /** Seconds until the last movement is over; 0 for a drill in which nothing moves. */
  readonly end: number;
  /** The time line below the plan; null when nothing moves. */
  readonly strip: StripAxis | null;
}

/** Bottom first. */
export const layers = [
  'sheet', 'zones', 'control', 'grid', 'area', 'dimensions', 'lanes', 'paths', 'labels', 'later', 'furniture', 'people', 'ball', 'problems', 'strip', 'legend', 'title',
] as const;
export type Layer = (typeof layers)[number];

export interface Mark {
  readonly id: string;
  readonly layer: Layer;
  /** The text it comes from. */
  readonly span: Span | null;
  /** What a screen reader says; null for what says nothing by itself. */
  readonly label: string | null;
  /** Seconds between which it is shown, the end excluded; without it always. A picture that stands still shows what is there at its time. */
  readonly during?: { readonly start: number; readonly end: number };
  readonly shapes: readonly Shape[];
}

export type Shape =
  | (Pen & { readonly kind: 'path'; readonly d: string })
  | (Pen & { readonly kind: 'circle'; readonly x: number; readonly y: number; readonly r: number })
  | {
      readonly kind: 'text';
      /** Where the line of writing begins, has its middle or ends, as `anchor` says. */
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly size: number;
      readonly weight: Weight;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly fill: Paint;
      /** Written upwards, as on the left of a drawing. */
      readonly upright: boolean;
    }
  /** Shapes about (x, y). */
  | { readonly kind: 'group'; readonly x: number; readonly y: number; readonly shapes: readonly Shape[] };

export interface Pen {
  readonly fill: Paint | null;
  readonly stroke: Paint | null;
  readonly width: number;
  readonly dash: string | null;
}

/** A person or a ball. Its shapes are drawn about (0, 0). */
export interface Mover {
  readonly id: string;
  readonly kind: 'person' | 'ball';
  readonly span: Span | null;
  readonly label: string;
  readonly shapes: readonly Shape[];
  /**
   * Four numbers a sample: seconds, x, y on the sheet, height above the ground in metres. Straight lines between
   * samples stay within 2 cm of the true way; before the first and after the last sample it stands still.
   */
  readonly track: readonly number[];
}

/** How metres lie on the sheet: x = left + perMetre · x, y = bottom - perMetre · y. */
export interface Plan {
  readonly left: number;
  readonly bottom: number;
  /** Millimetres a metre. */
  readonly perMetre: number;
  /** 200 for 1:200. */
  readonly scale: number;
}

export interface SceneBeat {
  readonly number: number;
  /** What it is called on the drawing: its number, or 1a and 1b where sequences side by side keep in step. */
  readonly label: string;
  readonly text: string;
  readonly span: Span;
  readonly start: number;
  readonly end: number;
}

/** The cursor stands at x = left + perSecond · t, from top to bottom. */
export interface StripAxis {
  readonly left: number;
  readonly perSecond: number;
  readonly top: number;
  readonly bottom: number;
}
