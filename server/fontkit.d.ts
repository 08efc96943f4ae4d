/** The part of the font library that is used; the package brings no types. */
declare module 'fontkit' {
  interface Glyph {
    /** What it stands for in the text: none for a mark that another glyph speaks for. */
    readonly codePoints: readonly number[];
  }
  interface Run {
    readonly advanceWidth: number;
    readonly glyphs: readonly Glyph[];
    readonly positions: readonly { readonly xAdvance: number; readonly xOffset: number; readonly yOffset: number }[];
  }
  interface Font {
    readonly postscriptName: string | null;
    readonly unitsPerEm: number;
    hasGlyphForCodePoint(code: number): boolean;
    /** In units of the font; glyphs from left to right, whatever the direction of the text. */
    layout(text: string, features?: readonly string[]): Run;
    getGlyph(id: number, codePoints?: readonly number[]): Glyph;
  }
  interface Collection {
    readonly fonts: readonly Font[];
  }
  /** Of TrueType, OpenType, WOFF, WOFF2 or a collection of them; throws for anything else. */
  export function create(bytes: Uint8Array): Font | Collection;
}
