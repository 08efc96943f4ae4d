import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { toHtml } from '../../shared/render/html.ts';
import { stage } from '../../shared/scene/scene.ts';
import { analysed, drills } from '../scene/drills.ts';

function page(text: string, theme: 'light' | 'print' = 'light'): string {
  return toHtml(stage(analysed(text), { theme, convention: 'solid pass' }));
}

const hash = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

describe('the page', () => {
  const html = page(drills['kite'] as string);
  it('fetches nothing', () => {
    const remote = [...html.matchAll(/(?:src|href)=["']([^"']*)/g)].map(([, url]) => url).filter((url) => !url?.startsWith('data:'));
    expect(remote).toEqual([]);
    expect([...html.matchAll(/url\(([^)]{0,5})/g)].map(([, start]) => start)).toEqual(['data:', 'data:']);
    expect(html.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:\/\//);
  });
  it('runs its own script and style and nothing else', () => {
    const policy = /Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1] ?? '';
    const parts = (tag: string) => [...html.matchAll(new RegExp(`<${tag}>([^]*?)</${tag}>`, 'g'))].map(([, text]) => text ?? '');
    expect(policy).toContain("default-src 'none'");
    expect(parts('script').map((text) => policy.includes(`script-src ${hash(text)}`))).toEqual([true]);
    expect(parts('style').map((text) => policy.includes(`style-src ${hash(text)}`))).toEqual([true]);
    expect(html).not.toMatch(/ style="| on\w+="/);
  });
  it('lists the beats in order, each with a button', () => {
    expect([...html.matchAll(/<li[^>]*><button type="button"><b>(\w+)<\/b>([^<]*)/g)].map(([, label, words]) => `${label}${words}`).slice(1, 3))
      .toEqual(['2 Base passes to Screen while Left shows to (4, 12)', '3 Screen sets to Base']);
  });
  it('tells below the picture who goes where and what to coach', () => {
    const told = (id: string) => [...(new RegExp(`<section aria-labelledby="about-${id}">([^]*?)</section>`).exec(html)?.[1] ?? '').matchAll(/<li>(.*)<\/li>/g)].map(([, item]) => item);
    expect(told('rotation')).toEqual(['Base → Left → Screen → Top → Base', 'Right stays.', 'Everyone is home after 6 repetitions.']);
    expect(told('coaching')[1]).toBe('<b>Psychological:</b> Scan before the ball is played, not after');
  });
  it('keeps a hostile name out of its data', () => {
    expect(page('drill "</script><script>x" {\n area 9 x 9\n station A at (1, 1)\n station B at (8, 8)\n ball at A\n sequence {\n A passes to B\n }\n}').match(/<script/g)).toHaveLength(2);
  });
  it('has the phases of a game to choose from, each with its own controls and ids', () => {
    const [first, ...rest] = ['Round the outside', 'Between the two', 'Won'].map((phase) => stage(analysed(drills['rondo'] as string), { theme: 'light', convention: 'solid pass', phase }));
    const several = first ? toHtml([first, ...rest]) : '';
    expect([...(/<select id="scene".*?<\/select>/.exec(several)?.[0] ?? '').matchAll(/<option[^>]*>([^<]*)/g)].map(([, name]) => name)).toEqual(['Four against two, Phase: Round the outside', 'Four against two, Phase: Between the two', 'Four against two, Phase: Won']);
    expect(several.match(/class="time"/g)).toHaveLength(3);
    const ids = [...several.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });
  it('has no player where nothing moves', () => {
    expect(page('drill "D" {\n area 9 x 9\n}')).not.toContain('<script');
  });
  it('keeps the inks of print where they were asked for', () => {
    expect(page(drills['kite'] as string, 'print')).toContain('data-theme="print"');
  });
});

describe('generated files', () => {
  it.each(['client/page/generate.mjs', 'shared/font/generate.mjs'])('%s has nothing to change', (script) => {
    const run = () => execFileSync(process.execPath, [fileURLToPath(new URL(`../../${script}`, import.meta.url)), '--check'], { encoding: 'utf8' });
    expect(run).not.toThrow();
  }, 30_000);
});
