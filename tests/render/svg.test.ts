import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { toSvg, type SvgOptions } from '../../shared/render/svg.ts';
import { conventions } from '../../shared/scene/lines.ts';
import { themes } from '../../shared/scene/palette.ts';
import { stage } from '../../shared/scene/scene.ts';
import { analysed, drillNames, drills } from '../scene/drills.ts';

function picture(text: string, options: SvgOptions = {}): string {
  return toSvg(stage(analysed(text), { theme: 'light', convention: 'solid pass', control: true }), options);
}

/** What an XML parser has against it. */
function faults(xml: string): string[] {
  const found: string[] = [];
  const parser = new SaxesParser({ xmlns: true });
  parser.on('error', (error) => found.push(error.message));
  parser.write(xml).close();
  return found;
}

/** What a picture holds when a number or a value went missing, or a text got out; the font itself is left aside. */
function strayWords(svg: string): string[] {
  return svg.replace(/base64,[\w+/=]*/g, '').match(/NaN|Infinity|undefined|null|<script/g) ?? [];
}

const manners: Readonly<Record<string, SvgOptions>> = {
  still: {}, 'at a moment': { at: 3.3 }, moving: { animated: true }, interactive: { interactive: true, variables: true }, 'with its font': { embedFont: true },
};

const hostile: Readonly<Record<string, string>> = {
  'an empty drill': 'drill "" {\n}',
  'no area': 'drill "D" {\n station A at (-3, 0)\n station B at (10, 5)\n ball at A\n sequence {\n A passes to B\n }\n}',
  'no sequence': 'drill "D" {\n area 20 x 30\n station A at (3, 3) holds 40\n}',
  'no time': 'drill "D" {\n area 10 x 10\n station A at (5, 5)\n ball at A\n sequence {\n A holds\n }\n}',
  'an area of nothing': 'drill "D" {\n area 0 x 0\n station A at (0, 0)\n}',
  'everyone on one spot': 'drill "D" {\n area 9 x 9\n station A at (4, 4)\n station B at (4, 4)\n station C at (4, 4)\n ball at A\n sequence {\n A passes to B\n B passes to C\n }\n}',
  'signs of XML': 'drill "<b>&amp; \'x\' ]]>" {\n theme "</svg><script>alert(1)</script>"\n area 9 x 9\n}',
  'other scripts': 'drill "前の選手 مرحبا 😀" {\n area 20 x 20\n station 前 at (4, 4)\n station مرحبا at (16, 4)\n ball at 前\n sequence {\n 前 passes to مرحبا\n }\n}',
  'half a pair and control signs': `drill "a\ud800b\u0007c" {\n theme "\udc00"\n area 9 x 9\n}`,
  'very long names': `drill "${'Long name '.repeat(60)}" {\n theme "${'w'.repeat(900)}"\n area 9 x 9\n station ${'A'.repeat(300)} at (4, 4)\n}`,
  'thirty stations and two hundred beats': `drill "D" {\n area 40 x 34\n${Array.from({ length: 30 }, (_, index) => `station S${index} at (${2 + (index % 6) * 6}, ${2 + Math.floor(index / 6) * 6}) holds 2`).join('\n')}\n ball at S0\n sequence {\n${Array.from({ length: 200 }, (_, index) => `S${index % 30} passes to S${(index + 1) % 30}`).join('\n')}\n }\n}`,
  'a game of nobody': 'drill "D" {\n area 20 x 20\n team A of 0\n team B of 3\n phase "P" {\n }\n}',
  'a game without area': 'drill "D" {\n team A of 2\n team B of 2\n zone Z 0 x 0 at (0, 0)\n player A1 of A at (0, 0)\n player A2 of A at (0, 0)\n player B1 of B at (0, 0)\n player B2 of B at (0, 0)\n ball at A1\n phase "P" {\n A1 passes to A2 while B1 presses A1, B2 marks A2\n B1 wins the ball from A2\n }\n}',
  'a game after itself': 'drill "D" {\n area 9 x 9\n team A of 1\n team B of 1\n player A1 of A at (1, 1)\n player B1 of B at (1, 1)\n ball at A1\n phase "P" after "P" {\n B1 wins the ball from A1\n B1 shoots at A1\n }\n}',
  'broken text': 'drill "D" {\n area 10 x\n station at\n sequence { A passes',
};

describe.each(Object.keys(manners))('%s', (manner) => {
  const options = manners[manner] as SvgOptions;
  it.each(drillNames)('%s is well-formed and has no number that is none', (name) => {
    const svg = picture(drills[name] as string, options);
    expect(faults(svg)).toEqual([]);
    expect(strayWords(svg)).toEqual([]);
  });
  it.each(Object.keys(hostile))('%s gives a clean picture', (name) => {
    const svg = picture(hostile[name] as string, options);
    expect(faults(svg)).toEqual([]);
    expect(strayWords(svg)).toEqual([]);
  });
});

describe('the same drill', () => {
  it.each(Object.keys(manners))('%s gives the same bytes ten times', (manner) => {
    const pictures = Array.from({ length: 10 }, () => picture(drills['kite'] as string, manners[manner] as SvgOptions));
    expect(new Set(pictures).size).toBe(1);
  });
  it.each(themes.flatMap((theme) => conventions.map((convention) => [theme, convention] as const)))('in %s with %s has the lines and the key of its convention', (theme, convention) => {
    const svg = toSvg(stage(analysed(drills['kite'] as string), { theme, convention }));
    const dashed = (id: string) => new RegExp(`id="${id}"><path [^>]*stroke-dasharray`).test(svg);
    expect([dashed('pass-1'), dashed('run-Left-1')]).toEqual(convention === 'solid pass' ? [false, true] : [true, false]);
    expect(svg).toContain(convention === 'solid pass' ? 'pass solid, run dashed' : 'pass dashed, run solid');
  });
});

describe('for who cannot see it', () => {
  const svg = picture(drills['kite'] as string, { interactive: true });
  it('the title and the beats are there as text', () => {
    expect(svg).toMatch(/<title id="drawing-title">Kite, bounce and spin<\/title>/);
    expect(svg).toMatch(/<desc id="drawing-description">[^<]*3\. Screen sets to Base\.[^<]*7\. Top passes to next Base, lofted while Top follows\./);
  });
  it('marks can be reached, say what they are, and know their text', () => {
    const text = drills['kite'] as string;
    const [, from, to] = /id="pass-2" data-from="(\d+)" data-to="(\d+)" tabindex="0" role="img" aria-label="Pass, Screen"/.exec(svg) ?? [];
    expect(text.slice(Number(from), Number(to))).toContain('sets to Base');
  });
});

describe('moving by itself', () => {
  const svg = picture(drills['kite'] as string, { animated: true });
  it('loops, rests under the pointer and where less motion is asked for', () => {
    expect(svg).toMatch(/animation:[\d.]+s linear infinite/);
    expect(svg).toMatch(/prefers-reduced-motion:reduce\)\{[^}]*animation:none/);
    expect(svg).toMatch(/svg:hover[^{]*\{animation-play-state:paused/);
  });
  it('has frames in order, from 0 to 100 %', () => {
    const tracks = [...svg.matchAll(/@keyframes [\w-]+\{((?:[^{}]*\{[^}]*\})*)\}/g)].map(([, frames]) => [...(frames ?? '').matchAll(/([\d.]+)%\{/g)].map(([, share]) => Number(share)));
    expect(tracks.length).toBeGreaterThan(5);
    for (const shares of tracks) expect(shares).toEqual([...new Set(shares)].sort((a, b) => a - b));
    for (const shares of tracks) expect([shares[0], shares.at(-1)]).toEqual([0, 100]);
  });
});
