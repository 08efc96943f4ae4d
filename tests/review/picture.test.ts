import { differenceEuclidean, filterDeficiencyDeuter, filterDeficiencyProt, filterDeficiencyTrit, parse } from 'culori';
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { SaxesParser } from 'saxes';
import { describe, expect, test } from 'vitest';
import { hex as contrast } from 'wcag-contrast';
import { analyse } from '../../shared/analyse.ts';
import { toSvg } from '../../shared/render/svg.ts';
import { changeInks } from '../../shared/review/marks.ts';
import { toPage } from '../../shared/review/page.ts';
import { changedFiles, comparedFiles, pictured, type PicturedSubject } from '../../shared/review/report.ts';
import { palettes, themes } from '../../shared/scene/palette.ts';
import type { Scene, Shape } from '../../shared/scene/scene.ts';
import { drills } from '../scene/drills.ts';

type Edits = readonly (readonly [from: string, to: string])[];

function changed(text: string, edits: Edits, bare = false): PicturedSubject {
  const after = edits.reduce((made, [from, to]) => made.replaceAll(from, to), text);
  const [first] = pictured(changedFiles(comparedFiles([{ name: 'a.drill', before: analyse(text), after: analyse(after) }])), { theme: 'light', convention: 'solid pass', bare });
  return first!;
}

const hurry: Edits = [['  pole Post at (4.5, 8)\n', ''], ['(15, 13)', '(12, 13)'], ['  ball at Base', '  cone at (7, 8)\n  ball at Base']];
const inAHurry = changed(drills['in-a-hurry']!, hurry);

test('the picture of a comparison is as it was when somebody last looked at it', () => {
  const path = new URL('golden/in-a-hurry.svg', import.meta.url);
  const svg = toSvg(inAHurry.pictures!.over);
  if (process.env['UPDATE_GOLDEN'] === '1') writeFileSync(path, svg);
  expect(svg.split('\n')).toEqual(readFileSync(path, 'utf8').split('\n'));
});

describe('every kind of picture is sound and free of holes', () => {
  test.each([
    ['diamond', [['let wide = 6', 'let wide = 8']]],
    ['rondo', [['(4, 4)', '(3, 3)']]],
    ['three-zones', [['Back 15', 'Back 12']]],
    ['two-lanes', [['sequence "left" mirrors "right" across length', '']]],
    ['crowded-game', [['area 20 x 24', 'area 30 x 24']]],
  ] as const)('%s', (name, edits) => {
    const { before, after, over, beside } = changed(drills[name]!, edits).pictures!;
    for (const scene of [before!, after!, over, beside]) {
      const svg = toSvg(scene, { embedFont: false, interactive: true });
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      const parser = new SaxesParser({ xmlns: true });
      parser.on('error', (error) => {
        throw error;
      });
      parser.write(svg).close();
      const ids = [...svg.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
      expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    }
    expect([before!.width, before!.height, before!.plan]).toEqual([after!.width, after!.height, after!.plan]);
  });
});

describe('signs', () => {
  const { over } = inAHurry.pictures!;
  const of = (label: string): readonly Shape[] => over.marks.find((mark) => mark.label === label)!.shapes;
  /** How a sign is drawn, without its colours and its place. */
  const form = (shapes: readonly Shape[]): unknown => JSON.parse(JSON.stringify(shapes, (key, value: unknown) => (['fill', 'stroke', 'x', 'y'].includes(key) ? undefined : value)));

  test('moved, new and gone are told by shape as well as by colour', () => {
    const signs = ['Right: moved', 'the cone at (7, 8): new', 'the pole Post: gone'].map((label) => form(of(label)));
    expect(new Set(signs.map((sign) => JSON.stringify(sign))).size).toBe(3);
  });
  // WCAG 2.2, 1.4.11, and for the letters of who was there before 1.4.3.
  test.each(themes)('are seen on paper, like what was before, in %s', (theme) => {
    const palette = palettes[theme];
    for (const ink of [...Object.values(changeInks), 'wait'] as const) expect(contrast(palette[ink], palette.paper)).toBeGreaterThanOrEqual(3);
    expect(contrast(palette.note, palette.paper)).toBeGreaterThanOrEqual(4.5);
  });
  const eyes = { 'any eye': (colour: unknown) => colour, protanopia: filterDeficiencyProt(1), deuteranopia: filterDeficiencyDeuter(1), tritanopia: filterDeficiencyTrit(1) };
  // Distance in CIELAB (CIE76), as for the other inks.
  test.each(Object.keys(eyes) as (keyof typeof eyes)[])('new and gone are told apart with %s', (eye) => {
    for (const theme of ['light', 'dark'] as const) {
      const [a, b] = [changeInks.added, changeInks.removed].map((ink) => eyes[eye](parse(palettes[theme][ink])));
      expect(differenceEuclidean('lab65')(a, b)).toBeGreaterThanOrEqual(10);
    }
  });
  test('who does the same in both is drawn once', () => {
    const names = (scene: Scene) => scene.movers.map(({ label }) => label);
    expect(names(over).filter((label) => label.startsWith('Before'))).toEqual(['Before: Left', 'Before: Right', 'Before: Ball']);
  });
});

describe('the page', () => {
  const hostile = '</script><script>alert(1)</script><img src=x onerror=alert(2)>" autofocus onfocus="alert(3)';
  const text = drills['in-a-hurry']!.replace('"Pass and move"', `"${hostile.replaceAll('"', "'")}"`);
  const compared = changed(text, [...hurry, ['Triangle, in a hurry', hostile.replaceAll('"', "'")]], true);
  const page = (nonce?: string) => toPage([compared, compared], { title: hostile, before: hostile, after: 'HEAD', ...(nonce === undefined ? {} : { nonce, theme: 'dark' as const }) });
  const hash = (part: string) => `'sha256-${createHash('sha256').update(part).digest('base64')}'`;

  test('runs its own script and nothing that a drill says', () => {
    const html = page();
    const policy = /Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1] ?? '';
    const parts = (tag: string) => [...html.matchAll(new RegExp(`<${tag}>([^]*?)</${tag}>`, 'g'))].map(([, part]) => part ?? '');
    expect(parts('script').map((part) => policy.includes(`script-src ${hash(part)}`))).toEqual([true]);
    expect(parts('style').map((part) => policy.includes(`style-src ${hash(part)}`))).toEqual([true]);
    expect(html.match(/<script/g)).toHaveLength(2);
    expect(html).not.toMatch(/<img| style="|<[^>]* on\w+="/);
  });
  test('in an editor is known by its nonce', () => {
    const html = page('abc123');
    expect(html).toContain("default-src 'none'; style-src 'nonce-abc123'; script-src 'nonce-abc123'; font-src data:");
    expect(html.match(/ nonce="abc123"/g)).toHaveLength(3);
    expect(html).toContain('<html lang="en" data-theme="dark">');
  });
  test('fetches nothing, and has no id twice', () => {
    const html = page();
    expect([...html.matchAll(/url\(([^)]{0,5})/g)].map(([, start]) => start)).toEqual(['data:', 'data:']);
    expect(html.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:\/\//);
    expect(html).not.toMatch(/ (?:src|href)="/);
    const ids = [...html.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });
  test('has every phase of a game in which something changed', () => {
    const rondo = drills['rondo']!;
    const after = analyse(rondo.replace('Navy1  of Navy at (4, 4)', 'Navy1  of Navy at (3, 3)').replace('(6.5, 6)', '(7, 7)'));
    const files = changedFiles(comparedFiles([{ name: 'a.drill', before: analyse(rondo), after }]));
    const [, second, ...rest] = pictured(files, { theme: 'light', convention: 'solid pass', bare: true });
    expect([second?.title, rest]).toEqual(['Four against two: Between the two', []]);
    const { span } = after.drills[0]!.phases[1]!.phase;
    const places = second!.subject.facts.map(({ spans }) => spans.after!);
    expect(places.length).toBeGreaterThan(0);
    expect(places.filter(({ from, to }) => from < span.from || to > span.to)).toEqual([]);
  });
  test('of nothing says so', () => {
    expect(toPage([], { title: 'What changed', before: 'a', after: 'b' })).toContain('<p>Nothing changed.</p>');
  });
});
