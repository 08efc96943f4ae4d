/** The real editor: its server from the package `code-server`, its workbench in Chromium, and in it the packaged extension. */
import { spawn, spawnSync } from 'node:child_process';
import { cpSync, createWriteStream, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Browser, FrameLocator, Page } from 'playwright-core';
import { launch, root } from './pitch-page.ts';

export interface WorkbenchOptions {
  readonly name: string;
  /** `web`: the extension runs in a worker of the page, as in an editor without a machine behind it. */
  readonly host: 'node' | 'web';
  /** The unpacked extension. */
  readonly extension: string;
  readonly folder: string;
  /** Opens the folder in restricted mode. */
  readonly restricted?: boolean;
  readonly settings?: Readonly<Record<string, unknown>>;
}

export interface Workbench {
  readonly page: Page;
  /** The page of the pitch. */
  readonly pitch: FrameLocator;
  readonly open: (file: string) => Promise<void>;
  readonly command: (title: string) => Promise<void>;
  /** Text of the editor in front, as far as it is seen. */
  readonly text: () => Promise<string>;
  readonly goTo: (line: number, column?: number) => Promise<void>;
  readonly close: () => Promise<void>;
}

const here = import.meta.dirname;
const editor = join(here, 'node_modules/code-server/lib/vscode');
export const pictures = join(root, 'out/workbench');

/** What is missing for a run; empty when all is there. */
export function missing(): string[] {
  return [
    ...(existsSync(join(editor, 'out/server-main.js')) ? [] : ['the editor (npm ci --prefix tests/workbench --ignore-scripts)']),
    ...(chromiumIsThere() ? [] : ['Chromium (apt-get install -y chromium, or CHROMIUM=path)']),
  ];
}

export async function openWorkbench({ name, host, extension, folder, restricted = false, settings = {} }: WorkbenchOptions): Promise<Workbench> {
  const port = await freePort();
  const data = mkdtempSync(join(tmpdir(), 'halfturn-workbench-'));
  mkdirSync(join(data, 'data/User'), { recursive: true });
  writeFileSync(join(data, 'data/User/settings.json'), JSON.stringify({ ...quiet, ...settings }));
  mkdirSync(pictures, { recursive: true });
  const log = createWriteStream(join(pictures, `${name}.log`));
  // The workbench asks for its packages below the server's own folder; they lie beside it.
  if (!existsSync(join(editor, 'node_modules'))) symlinkSync(join(here, 'node_modules'), join(editor, 'node_modules'));
  const server = spawn(process.execPath, [
    join(editor, 'out/server-main.js'), '--host', '127.0.0.1', '--port', `${port}`, '--without-connection-token', '--accept-server-license-terms',
    '--server-data-dir', data, '--builtin-extensions-dir', builtIn(data),
    // Else the address of the page cannot name an extension to load.
    '--enable-smoke-test-driver',
    '--disable-telemetry', '--disable-experiments', '--disable-getting-started-override', '--disable-update-check', ...(restricted ? [] : ['--disable-workspace-trust']),
  ], { stdio: ['ignore', 'pipe', 'pipe'] });
  server.stdout.pipe(log, { end: false });
  server.stderr.pipe(log, { end: false });
  const gone = new Promise<void>((done) => server.once('exit', () => done()));
  await Promise.race([
    new Promise<void>((done) => server.stdout.on('data', (text: Buffer) => `${text}`.includes('Extension host agent listening') && done())),
    gone.then(() => Promise.reject(new Error(`The editor's server did not start; see ${join(pictures, `${name}.log`)}`))),
  ]);

  const browser = await launch();
  const page = await workbenchPage(browser, log);
  if (host === 'web') await loadFromPage(page, extension, port);
  const payload = [['skipWelcome', 'true'], ['skipReleaseNotes', 'true'], ...(host === 'node' ? [['extensionDevelopmentPath', `vscode-remote://127.0.0.1:${port}${extension}`]] : [])];
  await page.goto(`http://127.0.0.1:${port}/?folder=${encodeURIComponent(folder)}&payload=${encodeURIComponent(JSON.stringify(payload))}`);
  await page.locator('.monaco-workbench').waitFor({ timeout: 60_000 });

  return {
    page,
    pitch: page.frameLocator('iframe.webview').frameLocator('iframe#active-frame'),
    open: async (file) => {
      await page.locator('.explorer-viewlet [role="treeitem"]', { hasText: file }).dblclick();
      await page.locator('.tab.active', { hasText: file }).waitFor();
    },
    command: (title) => runCommand(page, title),
    text: async () => (await page.locator('.editor-group-container.active .view-lines, .editor-instance .view-lines').first().innerText()).replaceAll('\u00a0', ' '),
    goTo: async (line, column = 1) => {
      await page.locator('.view-lines').first().click();
      // The focus of a page beside the text is told late.
      await page.locator('.editor-group-container.active .monaco-editor.focused').waitFor();
      await page.keyboard.press('Control+G');
      await page.locator('.quick-input-widget input').fill(`:${line}:${column}`);
      await page.keyboard.press('Enter');
      await page.locator('.statusbar-item', { hasText: `Ln ${line}, Col ${column}` }).waitFor();
    },
    close: async () => {
      await browser.close();
      server.kill();
      await gone;
      log.end();
      rmSync(data, { recursive: true, force: true });
    },
  };
}

const quiet = {
  'workbench.startupEditor': 'none', 'workbench.tips.enabled': false, 'workbench.secondarySideBar.defaultVisibility': 'hidden', 'chat.disableAIFeatures': true,
  'extensions.autoUpdate': false, 'extensions.autoCheckUpdates': false, 'extensions.ignoreRecommendations': true, 'telemetry.telemetryLevel': 'off',
  'editor.minimap.enabled': false, 'window.autoDetectColorScheme': false, 'workbench.colorTheme': 'Default Light Modern',
};

async function freePort(): Promise<number> {
  return new Promise((done) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => done(typeof address === 'object' && address ? address.port : 0));
    });
  });
}

/** Themes, icons and git, and those with a side for the browser: the workbench has that side built in and complains without the other. */
function builtIn(data: string): string {
  const target = join(data, 'builtin');
  mkdirSync(target);
  for (const name of readdirSync(join(editor, 'extensions'))) {
    const manifest = join(editor, 'extensions', name, 'package.json');
    if (!existsSync(manifest)) continue;
    const { browser } = JSON.parse(readFileSync(manifest, 'utf8')) as { browser?: string };
    if (name === 'theme-defaults' || name === 'theme-seti' || name === 'git-base' || browser) symlinkSync(dirname(manifest), join(target, name));
  }
  // Git copies files by a native package, which is not built here; Node's own copying does as well.
  cpSync(join(editor, 'extensions/git'), join(target, 'git'), { recursive: true });
  const copying = join(target, 'git/node_modules/@vscode/fs-copyfile');
  mkdirSync(copying, { recursive: true });
  writeFileSync(join(copying, 'index.js'), "exports.copyFile = require('node:fs').promises.copyFile;\n");
  return target;
}

/** Nothing leaves the machine: the webviews' own origin is served by their service worker. */
async function workbenchPage(browser: Browser, log: NodeJS.WritableStream): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1500, height: 950 } });
  page.setDefaultTimeout(30_000);
  page.on('pageerror', (error) => log.write(`[page] ${error}\n`));
  page.on('console', (message) => log.write(`[console ${message.type()}] ${message.text()}\n`));
  await page.context().route((url) => url.hostname !== '127.0.0.1' && !url.hostname.endsWith('.vscode-cdn.net'), (route) => route.abort());
  return page;
}

/** Offers the folder through the server's static files and names it in the workbench's configuration before that is read. */
async function loadFromPage(page: Page, extension: string, port: number): Promise<void> {
  const { commit } = JSON.parse(readFileSync(join(editor, 'product.json'), 'utf8')) as { commit: string };
  rmSync(join(editor, 'halfturn'), { force: true });
  symlinkSync(extension, join(editor, 'halfturn'));
  await page.addInitScript((uri) => {
    const find = Document.prototype.getElementById;
    Document.prototype.getElementById = function (id) {
      const found = find.call(this, id);
      if (id === 'vscode-workbench-web-configuration' && found && !found.dataset['amended']) {
        const configuration = JSON.parse(found.dataset['settings'] ?? '{}') as { developmentOptions?: object };
        found.dataset['settings'] = JSON.stringify({ ...configuration, developmentOptions: { ...configuration.developmentOptions, extensions: [uri] } });
        found.dataset['amended'] = 'yes';
      }
      return found;
    };
  }, { scheme: 'http', authority: `127.0.0.1:${port}`, path: `/stable-${commit}/static/halfturn` });
}

/** The palette does not learn of commands that come while it is open: it is opened anew. */
async function runCommand(page: Page, title: string): Promise<void> {
  for (let left = 15; left > 0; left -= 1) {
    await page.keyboard.press('F1');
    await page.locator('.quick-input-widget input').fill(`>${title}`);
    const row = page.locator('.quick-input-list [role="option"]', { hasText: title }).first();
    if (await row.waitFor({ timeout: 1500 }).then(() => true, () => false)) return row.click();
    await page.keyboard.press('Escape');
  }
  throw new Error(`There is no command “${title}”.`);
}

function chromiumIsThere(): boolean {
  return spawnSync(process.env['CHROMIUM'] ?? '/usr/bin/chromium', ['--version']).status === 0;
}
