/** The part of the font library that is used; the package brings no types. */
declare module 'fontkit' {
  interface Font {
    readonly postscriptName: string | null;
    readonly unitsPerEm: number;
    hasGlyphForCodePoint(code: number): boolean;
    layout(text: string, features?: readonly string[]): { readonly advanceWidth: number };
  }
  interface Collection {
    readonly fonts: readonly Font[];
  }
  /** Of TrueType, OpenType, WOFF, WOFF2 or a collection of them; throws for anything else. */
  export function create(bytes: Uint8Array): Font | Collection;
}
