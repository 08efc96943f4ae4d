/** The part of the encoder that is used; the package brings no types. */
declare module 'gifenc' {
  type Palette = number[][];
  interface FrameOptions {
    palette?: Palette;
    /** Milliseconds. */
    delay: number;
    /** 0: for ever. */
    repeat?: number;
    transparent?: boolean;
    transparentIndex?: number;
    /** 1: what was drawn stays. */
    dispose?: number;
  }
  interface Encoder {
    writeFrame(index: Uint8Array, width: number, height: number, options: FrameOptions): void;
    finish(): void;
    bytes(): Uint8Array;
  }
  const gifenc: {
    GIFEncoder(): Encoder;
    quantize(pixels: Uint8Array, most: number): Palette;
    applyPalette(pixels: Uint8Array, palette: Palette): Uint8Array;
  };
  export default gifenc;
}
