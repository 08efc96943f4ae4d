/** The page of the pitch by itself in Chromium, as the extension serves it, with the editor's side of the talk in the test's hands. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { buildPage } from '../../client/build.mjs';
import { pageHtml } from '../../client/webview/html.ts';
import { isOnPage } from '../../client/webview/layers.ts';
import type { Picture, ToHost, ToPage } from '../../client/webview/messages.ts';
import { alone } from '../../shared/analyse.ts';
import { opened } from '../../shared/service/open.ts';
import { picture } from '../../shared/service/picture.ts';

export const root = fileURLToPath(new URL('../../', import.meta.url));
export const chromiumPath = process.env['CHROMIUM'] ?? '/usr/bin/chromium';

export type Theme = 'light' | 'dark' | 'high-contrast' | 'high-contrast-light';

export interface PitchPage {
  readonly page: Page;
  readonly tell: (message: ToPage) => Promise<void>;
  /** What the page has sent so far. */
  readonly heard: () => Promise<readonly ToHost[]>;
}

export async function launch(): Promise<Browser> {
  return chromium.launch({ executablePath: chromiumPath, args: ['--no-sandbox', '--disable-gpu'] });
}

export async function openPitchPage(browser: Browser, options: { readonly theme?: Theme; readonly width?: number; readonly height?: number; readonly calm?: boolean } = {}): Promise<PitchPage> {
  const { theme = 'light', width = 720, height = 900, calm = false } = options;
  await (built ??= buildPage('out/pitch-page'));
  const page = await browser.newPage({ viewport: { width, height }, reducedMotion: calm ? 'reduce' : 'no-preference' });
  const html = pageHtml({ script: `${origin}page.js`, style: `${origin}page.css`, source: origin, nonce: 'n0nce' }).replace('<body>', `<body class="vscode-body vscode-${theme}">`);
  await page.route(`${origin}**`, async (route) => {
    const name = new URL(route.request().url()).pathname.slice(1);
    if (name === '') return route.fulfill({ contentType: 'text/html', body: html });
    return route.fulfill({ path: join(root, 'out/pitch-page', name) });
  });
  await page.addInitScript(() => {
    const sent: unknown[] = [];
    let state: unknown;
    Object.assign(globalThis, { sent, acquireVsCodeApi: () => ({ postMessage: (message: unknown) => sent.push(message), getState: () => state, setState: (next: unknown) => { state = next; } }) });
  });
  await page.goto(origin);
  const tell = async (message: ToPage): Promise<void> => {
    await page.evaluate((data) => new Promise<void>((done) => {
      globalThis.postMessage(data, '*');
      requestAnimationFrame(() => requestAnimationFrame(() => done()));
    }), message);
  };
  await tell({ kind: 'settings', settings: { sync: 'both', speed: 1, loop: true } });
  return { page, tell, heard: () => page.evaluate(() => (globalThis as unknown as { sent: ToHost[] }).sent) };
}

/** `sheet`: which of the drills and phases of the text. */
export function pictureOf(text: string, version = 1, { sheet = 0, control = false } = {}): Picture {
  const answer = picture(opened(text, alone), { drill: { index: sheet }, theme: 'light', convention: 'solid pass', control }, {});
  if (!answer) throw new Error('no drill');
  const { scene, drills, index, rotation, measures } = answer;
  return {
    uri: 'file:///one.drill', version, scene: { ...scene, marks: scene.marks.filter(isOnPage) }, drills, drill: index, cursor: null, broken: null,
    problems: answer.problems.map(({ code, severity, message, span }) => ({ code, severity, message, span })),
    turn: rotation && { places: rotation.places, image: rotation.image, order: rotation.order, interval: measures.interval?.seconds ?? null },
  };
}

export function example(name: string): string {
  return readFileSync(join(root, 'shared/examples', `${name}.drill`), 'utf8');
}

const origin = 'http://pitch.test/';
let built: Promise<void> | undefined;
