/** What the tests use of packages that bring no types. */
declare module 'wcag-contrast' {
  export function hex(a: string, b: string): number;
}
declare module 'culori' {
  type Colour = unknown;
  export function parse(colour: string): Colour;
  export function differenceEuclidean(mode: 'lab65'): (a: Colour, b: Colour) => number;
  export function filterDeficiencyProt(severity: number): (colour: Colour) => Colour;
  export function filterDeficiencyDeuter(severity: number): (colour: Colour) => Colour;
  export function filterDeficiencyTrit(severity: number): (colour: Colour) => Colour;
}
declare module 'pngjs' {
  interface PNG {
    readonly width: number;
    readonly height: number;
    readonly data: Uint8Array;
  }
  export const PNG: { sync: { read(file: Uint8Array): PNG } };
}
