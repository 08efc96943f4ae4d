import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import { sheetHtml } from '../../shared/render/sheet-html.ts';
import type { SessionAnalysis } from '../../shared/session/analysis.ts';
import { drillSheet, sessionSheet, type Sheet } from '../../shared/sheet/sheet.ts';
import { workspaceOf } from '../../server/workspace.ts';

const path = new URL('../../shared/examples/tuesday-evening.drill', import.meta.url).pathname;
const session = analyse(readFileSync(path, 'utf8'), workspaceOf(path)).sessions[0] as SessionAnalysis;
const options = { theme: 'light', convention: 'solid pass', perPage: 1, names: ['Ann', '<b>Bo</b>'], problems: [] } as const;
const sheet = sessionSheet(session, options);
const html = sheetHtml(sheet);

const hash = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
const policyOf = (page: string) => /Content-Security-Policy" content="([^"]*)"/.exec(page)?.[1] ?? '';
const parts = (page: string, tag: string) => [...page.matchAll(new RegExp(`<${tag}(?: nonce="[^"]*")?>([^]*?)</${tag}>`, 'g'))].map(([, text]) => text ?? '');
/** As a reader sees it: without tags. */
const words = (page: string) => page.replaceAll(/<(?:style|script)[^]*?<\/(?:style|script)>/g, '').replaceAll(/<[^>]*>/g, '').replaceAll(/\s+/g, ' ');

describe('the page of a sheet', () => {
  it('fetches nothing', () => {
    expect([...html.matchAll(/(?:src|href)=["']([^"']*)/g)]).toEqual([]);
    expect([...html.matchAll(/url\(([^)]{0,5})/g)].map(([, start]) => start)).toEqual(['data:', 'data:']);
    expect(html.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:\/\//);
  });
  it('runs its own script and style and nothing else', () => {
    expect(parts(html, 'script').map((text) => policyOf(html).includes(hash(text)))).toEqual([true]);
    expect(parts(html, 'style').map((text) => policyOf(html).includes(hash(text)))).toEqual([true]);
    expect(html).not.toMatch(/ style="| on\w+="/);
  });
  it('in a panel runs what carries the nonce', () => {
    const inside = sheetHtml(sheet, { nonce: 'abc' });
    expect(policyOf(inside)).toBe("default-src 'none'; style-src 'nonce-abc'; script-src 'nonce-abc'; font-src data:; base-uri 'none'; form-action 'none'");
    expect(inside.match(/<(?:script|style)\b(?![^>]*nonce="abc")/g)).toBeNull();
  });
  it('has every id once', () => {
    const ids = [...html.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });
  it('says everything that is laid out', () => {
    const said = sheet.pages.flatMap(({ bands }) => bands.flatMap(({ columns }) => columns.flat().flatMap(({ piece }) => ('lines' in piece ? piece.lines : []))));
    const told = words(html);
    expect(said.filter((line) => !told.includes(line.replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll("'", '&#39;')))).toEqual([]);
  });
  it('plays every beat it tells', () => {
    const plays = [...html.matchAll(/<li data-scene="(\d+)" data-beat="(\d+)">/g)].map(([, scene, beat]) => [Number(scene), Number(beat)]);
    expect(plays).toEqual(sheet.pictures.flatMap(({ beats }, scene) => beats.map((_, beat) => [scene, beat])));
    expect(html.match(/<figure class="scene">/g)).toHaveLength(sheet.pictures.length);
  });
  it('keeps hostile names out of its markup', () => {
    expect(html).not.toContain('<b>Bo');
    const hostile: Sheet = drillSheet(analyse('drill "</script><script>x" {\n area 9 x 9\n station A at (1, 1)\n station B at (8, 8)\n ball at A\n sequence {\n A passes to B\n }\n}').drills, 'x', options);
    expect(sheetHtml(hostile).match(/<script/g)).toHaveLength(2);
  });
});
