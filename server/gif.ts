/** Moving pictures as GIF: what stands still is drawn once, what moves is drawn once and stamped, and a frame holds only what changed. */
import gifenc from 'gifenc';
import { liftPerMetre } from '../shared/render/lift.ts';
import { stampSize, stampsSvg, toSvg } from '../shared/render/svg.ts';
import { frameAt, isShown } from '../shared/scene/frame.ts';
import { palettes } from '../shared/scene/palette.ts';
import type { Scene } from '../shared/scene/scene.ts';
import { toPixels } from './png.ts';

const framesPerSecond = 8;
/** Pixels; wide enough to read, small enough to send. */
const targetWidth = 720;
/** Seconds the last frame stays before it begins again. */
const rest = 1.2;
/** A drill longer than this allows is played faster. */
const mostFrames = 600;
/** GIF has 256 colours; one more than these is for "as before". */
const colours = 127;
const asBefore = colours;

/** Loops for ever; `progress` is told how many of how many frames are done. */
export function toGif(scene: Scene, options: { readonly width?: number; readonly progress?: (done: number, of: number) => void } = {}): Uint8Array {
  const scale = (options.width ?? targetWidth) / ((scene.width * 96) / 25.4);
  const stillAt = stillsOf(scene, scale);
  let still = stillAt(0);
  const put = putter(scene, (scale * 96) / 25.4, toPixels(stampsSvg(scene), scale));

  const first = copyOf(still);
  put(first, 0, () => undefined);
  const palette = gifenc.quantize(first.data, colours);
  while (palette.length <= asBefore) palette.push([0, 0, 0]);
  let ground = gifenc.applyPalette(still.data, palette.slice(0, colours));
  const nearest = nearestIn(palette.slice(0, colours));

  const count = Math.min(mostFrames, Math.ceil(scene.end * framesPerSecond) + 1);
  const encoder = gifenc.GIFEncoder();
  const canvas = copyOf(still);
  const shown = new Uint8Array(ground);
  const changed = new Uint8Array(ground.length);
  let touched: number[] = [];
  for (let index = 0; index < count; index += 1) {
    const time = count === 1 ? 0 : (scene.end * index) / (count - 1);
    const next = stillAt(time);
    const anew = next !== still;
    if (anew) {
      still = next;
      ground = gifenc.applyPalette(still.data, palette.slice(0, colours));
      canvas.data.set(still.data);
    }
    const before = touched;
    touched = [];
    for (const pixel of before) copyPixel(still.data, canvas.data, pixel * 4);
    put(canvas, time, (pixel) => touched.push(pixel));

    changed.fill(asBefore);
    const show = (pixel: number, colour: number) => {
      if (shown[pixel] !== colour) shown[pixel] = changed[pixel] = colour;
    };
    const over = new Set(touched);
    if (anew) for (let pixel = 0; pixel < ground.length; pixel += 1) if (!over.has(pixel)) show(pixel, ground[pixel] as number);
    for (const pixel of before) if (!over.has(pixel)) show(pixel, ground[pixel] as number);
    for (const pixel of over) show(pixel, nearest(colourAt(canvas.data, pixel * 4)));

    const delay = (index === count - 1 ? rest : 1 / framesPerSecond) * 1000;
    if (index > 0) encoder.writeFrame(changed, still.width, still.height, { delay, transparent: true, transparentIndex: asBefore, dispose: 1 });
    else encoder.writeFrame(shown, still.width, still.height, { palette, delay, repeat: 0, dispose: 1 });
    options.progress?.(index + 1, count);
  }
  encoder.finish();
  return encoder.bytes();
}

/** What does not move, as it is at a time: drawn once for every set of marks that are there together. */
function stillsOf(scene: Scene, scale: number): (time: number) => Pixels {
  let [shown, pixels]: [string, Pixels | null] = ['', null];
  return (time) => {
    const marks = scene.marks.filter((mark) => isShown(mark, time));
    const key = marks.map(({ id }) => id).join();
    if (pixels === null || key !== shown) [shown, pixels] = [key, toPixels(toSvg({ ...scene, marks: marks.map(({ during: _, ...mark }) => mark), movers: [], strip: null }), scale)];
    return pixels;
  };
}

interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Four bytes a pixel; those of a stamp are multiplied by their opacity. */
  readonly data: Uint8Array;
}

function copyOf({ width, height, data }: Pixels): Pixels {
  return { width, height, data: new Uint8Array(data) };
}

/** Lays everything that moves over a picture, as it is at a time, and tells which pixels that changes. */
function putter(scene: Scene, perMillimetre: number, stamps: Pixels): (on: Pixels, time: number, tell: (pixel: number) => void) => void {
  const side = stampSize * perMillimetre;
  const ink = Number.parseInt(palettes[scene.theme].ink.slice(1), 16);
  const shadow = scene.movers.length;
  return (on, time, tell) => {
    const stamp = (which: number, x: number, y: number) => {
      const from = Math.round(which * side);
      const [left, top] = [Math.round(x * perMillimetre - side / 2 + (from - which * side)), Math.round(y * perMillimetre - side / 2)];
      const width = Math.min(Math.floor(side), stamps.width - from);
      for (let row = Math.max(0, -top); row < stamps.height && top + row < on.height; row += 1) {
        for (let column = Math.max(0, -left); column < width && left + column < on.width; column += 1) {
          const source = (row * stamps.width + from + column) * 4;
          if (stamps.data[source + 3] === 0) continue;
          const pixel = (top + row) * on.width + left + column;
          blend(on.data, pixel * 4, stamps.data, source);
          tell(pixel);
        }
      }
    };
    const { movers, cursor } = frameAt(scene, time);
    for (const kind of ['person', 'ball'] as const) {
      for (const [index, { x, y, height }] of movers.entries()) {
        if (scene.movers[index]?.kind !== kind) continue;
        if (kind === 'ball') stamp(shadow, x, y);
        stamp(index, x, y - height * liftPerMetre);
      }
    }
    if (scene.strip === null || cursor === null) return;
    const x = Math.round(cursor * perMillimetre);
    for (let y = Math.round(scene.strip.top * perMillimetre); y < scene.strip.bottom * perMillimetre; y += 1) {
      on.data.set([ink >> 16, (ink >> 8) & 255, ink & 255], (y * on.width + x) * 4);
      tell(y * on.width + x);
    }
  };
}

function blend(below: Uint8Array, at: number, above: Uint8Array, source: number): void {
  const keep = (255 - (above[source + 3] as number)) / 255;
  for (let channel = 0; channel < 3; channel += 1) {
    below[at + channel] = Math.min(255, Math.round((above[source + channel] as number) + (below[at + channel] as number) * keep));
  }
}

function copyPixel(from: Uint8Array, to: Uint8Array, at: number): void {
  for (let channel = 0; channel < 3; channel += 1) to[at + channel] = from[at + channel] as number;
}

function colourAt(pixels: Uint8Array, at: number): number {
  return ((pixels[at] as number) << 16) | ((pixels[at + 1] as number) << 8) | (pixels[at + 2] as number);
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
