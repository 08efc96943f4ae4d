/** What a sheet says, before anything is laid out: blocks in reading order. */
import type { Scene, Shape } from '../scene/scene.ts';

export type Block = Heading | Prose | Item | Table | Figure | Blank;

export interface Heading {
  readonly kind: 'heading';
  readonly rank: 'title' | 'section' | 'minor';
  /** In a box before a title; null without one. */
  readonly number: string | null;
  readonly text: string;
  /** At the right end of a title. */
  readonly aside: string | null;
}

export interface Prose {
  readonly kind: 'text';
  readonly style: 'lead' | 'body' | 'small';
  readonly text: string;
}

/** Items that follow each other are one list. */
export interface Item {
  readonly kind: 'item';
  readonly list: 'numbers' | 'bullets';
  /** A number, or – in a list without order; null where an item goes on. */
  readonly marker: string | null;
  readonly text: string;
  /** The moving picture that plays this item, and the beat in it. */
  readonly plays: { readonly picture: number; readonly beat: number } | null;
}

export interface Table {
  readonly kind: 'table';
  readonly columns: readonly { readonly title: string; /** Of the width. */ readonly share: number; readonly right: boolean }[];
  readonly rows: readonly (readonly string[])[];
}

/** A picture of its own size, in millimetres. */
export interface Figure {
  readonly kind: 'figure';
  readonly width: number;
  readonly height: number;
  /** For who cannot see it. */
  readonly label: string;
  readonly content:
    | { readonly kind: 'scene'; readonly scene: Scene; readonly enlarged: number; /** Its place among the pictures that move. */ readonly picture: number }
    | { readonly kind: 'shapes'; readonly shapes: readonly Shape[] };
}

/** Lines to write on by hand. */
export interface Blank {
  readonly kind: 'blank';
  readonly label: string;
  readonly lines: number;
}

export function section(text: string): Heading {
  return { kind: 'heading', rank: 'section', number: null, text, aside: null };
}

export function minor(text: string): Heading {
  return { kind: 'heading', rank: 'minor', number: null, text, aside: null };
}

export function prose(text: string, style: Prose['style'] = 'body'): Prose {
  return { kind: 'text', style, text };
}

export function bullets(texts: readonly string[]): Item[] {
  return texts.map((text) => ({ kind: 'item', list: 'bullets', marker: '–', text, plays: null }));
}

/** A section of its own, unless it would be empty. */
export function titled(title: string, blocks: readonly Block[]): Block[] {
  return blocks.length === 0 ? [] : [section(title), ...blocks];
}
