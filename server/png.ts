/** Pictures as PNG, drawn with the shipped font; fonts of the machine are asked only for scripts that it does not have. */
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { Resvg } from '@resvg/resvg-js';
import { fontFamily, isCovered } from '../shared/font/text.ts';

/** `scale` 1 gives 96 dots an inch: one pixel a CSS pixel. */
export function toPng(svg: string, options: { readonly scale?: number } = {}): Uint8Array {
  return rendered(svg, options.scale ?? 2).asPng();
}

/** Four bytes a pixel, colours already multiplied by the opacity. */
export function toPixels(svg: string, scale: number): { readonly width: number; readonly height: number; readonly data: Uint8Array } {
  const image = rendered(svg, scale);
  return { width: image.width, height: image.height, data: image.pixels };
}

/** Beside the room of the source, or of a bundle; beside a bundle that stands alone. */
const fontFiles = ['medium', 'bold'].flatMap((weight) => ['../', './'].map((room) => fileURLToPath(new URL(`${room}shared/font/barlow-semi-condensed-${weight}.ttf`, import.meta.url))).filter((file) => existsSync(file)).slice(0, 1));

function rendered(svg: string, scale: number) {
  // Native, and needed for pictures only: loaded when the first one is drawn.
  const { Resvg: Renderer } = createRequire(import.meta.url)('@resvg/resvg-js') as { Resvg: typeof Resvg };
  return new Renderer(svg, {
    font: { fontFiles, loadSystemFonts: fontFiles.length === 0 || !isCovered(svg), defaultFontFamily: fontFamily },
    fitTo: { mode: 'zoom', value: scale },
    logLevel: 'off',
  }).render();
}
