/** Moving pictures as GIF: the still part is drawn once, what moves is laid over it, and a frame holds only what changed. */
import gifenc from 'gifenc';
import { moversSvg, toSvg } from '../shared/render/svg.ts';
import type { Scene } from '../shared/scene/scene.ts';
import { toPixels } from './png.ts';

const framesPerSecond = 10;
/** Pixels; wide enough to read, small enough to send. */
const targetWidth = 900;
/** Seconds the last frame stays before it begins again. */
const rest = 1.2;
/** A drill longer than this allows is played faster. */
const mostFrames = 600;
/** GIF has 256 colours; the last is kept for "as before". */
const colours = 127;
const asBefore = colours;

/** Loops for ever; `progress` is told how many of how many frames are done. */
export function toGif(scene: Scene, options: { readonly width?: number; readonly progress?: (done: number, of: number) => void } = {}): Uint8Array {
  const scale = (options.width ?? targetWidth) / ((scene.width * 96) / 25.4);
  const still = toPixels(toSvg({ ...scene, movers: [], strip: null }), scale);
  const palette = gifenc.quantize(blended(still.data, toPixels(moversSvg(scene, 0), scale).data), colours);
  while (palette.length <= asBefore) palette.push([0, 0, 0]);
  const ground = gifenc.applyPalette(still.data, palette.slice(0, colours));
  const nearest = nearestIn(palette.slice(0, colours));

  const count = Math.min(mostFrames, Math.ceil(scene.end * framesPerSecond) + 1);
  const encoder = gifenc.GIFEncoder();
  let before: Uint8Array | null = null;
  for (let index = 0; index < count; index += 1) {
    const time = count === 1 ? 0 : (scene.end * index) / (count - 1);
    const frame = laidOver(ground, still.data, toPixels(moversSvg(scene, time), scale).data, nearest);
    const delay = (index === count - 1 ? rest : 1 / framesPerSecond) * 1000;
    if (before) encoder.writeFrame(changes(before, frame), still.width, still.height, { delay, transparent: true, transparentIndex: asBefore, dispose: 1 });
    else encoder.writeFrame(frame, still.width, still.height, { palette, delay, repeat: 0, dispose: 1 });
    before = frame;
    options.progress?.(index + 1, count);
  }
  encoder.finish();
  return encoder.bytes();
}

/** Indices of a frame: the ground, and the nearest colour wherever something moving lies over it. */
function laidOver(ground: Uint8Array, below: Uint8Array, above: Uint8Array, nearest: (colour: number) => number): Uint8Array {
  const frame = new Uint8Array(ground);
  for (let pixel = 0; pixel < frame.length; pixel += 1) {
    if (above[pixel * 4 + 3] !== 0) frame[pixel] = nearest(blend(below, above, pixel * 4));
  }
  return frame;
}

function changes(before: Uint8Array, frame: Uint8Array): Uint8Array {
  return frame.map((index, pixel) => (before[pixel] === index ? asBefore : index));
}

function blended(below: Uint8Array, above: Uint8Array): Uint8Array {
  const pixels = new Uint8Array(below);
  for (let at = 0; at < pixels.length; at += 4) {
    const colour = blend(below, above, at);
    pixels.set([colour >> 16, (colour >> 8) & 255, colour & 255], at);
  }
  return pixels;
}

/** 0xrrggbb of one pixel laid over another; the one above is premultiplied, the one below opaque. */
function blend(below: Uint8Array, above: Uint8Array, at: number): number {
  const keep = (255 - (above[at + 3] as number)) / 255;
  const channel = (from: number) => Math.min(255, Math.round((above[at + from] as number) + (below[at + from] as number) * keep));
  return (channel(0) << 16) | (channel(1) << 8) | channel(2);
}

/** The index of the nearest colour of a palette, remembered for every colour asked for. */
function nearestIn(palette: readonly (readonly number[])[]): (colour: number) => number {
  const known = new Map<number, number>();
  return (colour) => {
    const found = known.get(colour);
    if (found !== undefined) return found;
    const away = ([r = 0, g = 0, b = 0]: readonly number[]) => ((colour >> 16) - r) ** 2 + (((colour >> 8) & 255) - g) ** 2 + ((colour & 255) - b) ** 2;
    let best = 0;
    for (const [index, one] of palette.entries()) if (away(one) < away(palette[best] ?? [])) best = index;
    known.set(colour, best);
    return best;
  };
}
