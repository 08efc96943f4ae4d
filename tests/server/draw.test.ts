import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folder, halfturn, misspelt, sound } from './halfturn.ts';

const two = `${sound}${sound.replace('"Two"', '"Other"').replace('  sequence', '  progress space "Wider" {\n    area 20 x 12\n  }\n  sequence')}`;

/** The picture's bytes as characters. */
async function drawn(words: readonly string[], out: string, text = two): Promise<string> {
  const cwd = folder({ 'a.drill': text });
  expect(await halfturn(cwd, ['draw', 'a.drill', '-o', out, ...words])).toEqual({ status: 0, out: '', err: '' });
  expect(readdirSync(cwd).sort()).toEqual(['a.drill', out].sort());
  return readFileSync(join(cwd, out)).toString('latin1');
}

test.each([
  ['svg', /^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"[^]*<\/svg>\n$/],
  ['SVG', /^<svg /],
  ['png', /^\x89PNG\r\n/],
  ['html', /^<!doctype html>[^]*<\/html>\n$/],
  ['gif', /^GIF89a[^]*;$/],
])('draws .%s', async (kind, content) => {
  expect(content.test(await drawn([], `a.${kind}`))).toBe(true);
});

describe('options', () => {
  test.each([
    ['the first drill', [], /<title[^>]*>Two</],
    ['a drill by name', ['--drill', 'Other'], /<title[^>]*>Other</],
    ['a progression by name', ['--drill', 'Wider'], /Area 20 by 12 m/],
    ['a drawing scale', ['--scale', '1:500'], /Scale 1:500\./],
    ['a drawing scale as a number', ['--scale', '250'], /Scale 1:250\./],
    ['a picture that moves', ['--animated'], /@keyframes/],
  ])('%s', async (_, words, content) => {
    expect(content.test(await drawn(words, 'a.svg'))).toBe(true);
  });

  test.each([
    ['themes', ['--theme', 'light'], ['--theme', 'dark']],
    ['conventions', ['--convention', 'solid-pass'], ['--convention', 'dashed-pass']],
    ['times', ['--at', '0'], ['--at', '1']],
  ])('%s differ', async (_, one, other) => {
    expect(await drawn(one, 'a.svg') === await drawn(other, 'a.svg')).toBe(false);
  });

  test('settings of the folder count where nothing is asked for', async () => {
    const picture = async (words: readonly string[], settings: string): Promise<string> => {
      const cwd = folder({ 'a.drill': two, 'halfturn.json': settings });
      await halfturn(cwd, ['draw', 'a.drill', '-o', 'a.svg', ...words]);
      return readFileSync(join(cwd, 'a.svg'), 'utf8');
    };
    const [dark, light] = [['--theme', 'dark', '--convention', 'dashed-pass'], ['--theme', 'light', '--convention', 'dashed-pass']];
    const settings = '{ "theme": "dark", "convention": "dashed pass" }';
    expect(await picture([], settings) === await picture(dark, '{}')).toBe(true);
    expect(await picture(['--theme', 'light'], settings) === await picture(light, '{}')).toBe(true);
  });

  test('the defaults are light and solid-pass', async () => {
    expect(await drawn([], 'a.svg') === await drawn(['--theme', 'light', '--convention', 'solid-pass'], 'a.svg')).toBe(true);
  });
});

test('a drill with errors is drawn, with a warning', async () => {
  const cwd = folder({ 'a.drill': misspelt });
  expect(await halfturn(cwd, ['draw', 'a.drill', '-o', 'a.svg'])).toEqual({
    status: 1, out: '', err: 'halfturn: a.svg is drawn, with 1 error in it; halfturn check a.drill shows more.\n',
  });
  expect(existsSync(join(cwd, 'a.svg'))).toBe(true);
});

test('a sheet too large for pixels is refused', async () => {
  const cwd = folder({ 'a.drill': sound.replace('12 x 12', '90 x 90') });
  const told = await halfturn(cwd, ['draw', 'a.drill', '-o', 'a.png', '--scale', '1:20']);
  expect(told).toMatchObject({ status: 2, err: expect.stringMatching(/^halfturn: At 1:20 the sheet would be \d m long; draw an \.svg, or choose a smaller scale such as 1:500\.\n$/) });
});

test('a time past the end of play is drawn as the end, and said so', async () => {
  const cwd = folder({ 'a.drill': sound });
  const told = await halfturn(cwd, ['draw', 'a.drill', '-o', 'a.svg', '--at', '99']);
  expect(told).toEqual({ status: 0, out: '', err: expect.stringMatching(/^halfturn: Play is over after \d+\.\d s: a\.svg shows how it ends\.\n$/) });
});

test('the sheet of a phase has no problems of another phase', async () => {
  const game = `drill "Game" {
  age U15
  area 20 x 20
  team Red bib orange
  team Blue bib blue
  player Ann of Red at (4, 4)
  player Bea of Red at (4, 14)
  player Cid of Blue at (16, 4)
  ball at Ann
  phase "Fine" {
    Ann passes to Bea
  }
  phase "Given away" {
    Ann passes to Cid
  }
}
`;
  const lost = async (words: readonly string[]) => (await drawn(words, 'a.svg', game)).includes('passes to Cid, an opponent');
  expect(await Promise.all([[], ['--phase', 'Fine'], ['--phase', 'Given away']].map(lost))).toEqual([false, false, true]);
});
