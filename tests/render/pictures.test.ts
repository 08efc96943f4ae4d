import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { toGif } from '../../server/gif.ts';
import { toPng } from '../../server/png.ts';
import { toSvg } from '../../shared/render/svg.ts';
import { stage } from '../../shared/scene/scene.ts';
import { analysed, drills } from '../scene/drills.ts';

const scene = stage(analysed(drills['two-balls'] as string), { theme: 'light', convention: 'solid pass' });

/** Pixels of a box in millimetres that are not paper. */
function inked(png: ReturnType<typeof PNG.sync.read>, perMillimetre: number, box: { x: number; y: number; width: number; height: number }): number {
  const paper = [0xfb, 0xfa, 0xf5];
  let count = 0;
  for (let y = Math.floor(box.y * perMillimetre); y < (box.y + box.height) * perMillimetre; y += 1) {
    for (let x = Math.floor(box.x * perMillimetre); x < (box.x + box.width) * perMillimetre; x += 1) {
      if (paper.some((channel, at) => Math.abs(channel - (png.data[(y * png.width + x) * 4 + at] ?? 0)) > 40)) count += 1;
    }
  }
  return count;
}

describe('as PNG', () => {
  const png = PNG.sync.read(Buffer.from(toPng(toSvg(scene), { scale: 1 })));
  it('has the size of the sheet at 96 dots an inch', () => {
    expect([png.width, png.height]).toEqual([Math.round((scene.width * 96) / 25.4), Math.round((scene.height * 96) / 25.4)].map((size) => expect.closeTo(size, -0.5)));
  });
  it('has the words of the title block', () => {
    const title = scene.marks.find((mark) => mark.id === 'title')?.shapes.find((shape) => shape.kind === 'text' && shape.text === 'Two balls round the square');
    const { x, y } = title as { x: number; y: number };
    expect(inked(png, 96 / 25.4, { x, y: y - 3, width: 40, height: 3 })).toBeGreaterThan(200);
  });
});

describe('as GIF', () => {
  const gif = Buffer.from(toGif(scene, { width: 240 }));
  it('loops for ever and has eight frames a second', () => {
    expect(gif.subarray(0, 6).toString('latin1')).toBe('GIF89a');
    expect(gif.indexOf('NETSCAPE2.0\x03\x01\x00\x00', 0, 'latin1')).toBeGreaterThan(0);
    expect(gif.toString('latin1').split('\x21\xf9\x04').length - 1).toBe(Math.ceil(scene.end * 8) + 1);
  });
});
