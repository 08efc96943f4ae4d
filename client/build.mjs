// Bundles the extension, the language server and the page of the pitch into dist/, for Node and for browsers.
// Run: node client/build.mjs
import { copyFileSync, mkdirSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));
const common = { absWorkingDir: root, bundle: true, minify: true, sourcemap: false, legalComments: 'none', logLevel: 'warning', metafile: true };

/** What the .vsix holds besides the manifest. */
export const shipped = [
  'LICENSE', 'README.md', 'shared/font/OFL.txt', 'dist/client', 'dist/server', 'dist/webview', 'dist/shared/font', 'dist/node_modules',
  ...['icon.png', 'icon.svg', 'file.svg', 'file-dark.svg', 'pitch.svg'].map((name) => `client/icon/${name}`),
  'client/language-configuration.json', 'client/snippets.json', 'client/walkthrough', 'grammar/generated/halfturn.tmLanguage.json', 'shared/generated/halfturn.schema.json', 'shared/generated/problems.md',
];

/** Files of the page; also for its tests. */
export async function buildPage(target = 'dist/webview') {
  await build({ ...common, entryPoints: ['client/webview/page.ts', 'client/webview/page.css'], outdir: target, platform: 'browser', format: 'iife', target: 'es2022', loader: { '.ttf': 'file' }, assetNames: '[name]' });
}

export async function buildExtension() {
  // The package's modules are ESM, but the hosts of the editor want CommonJS.
  await Promise.all([
    build({ ...common, entryPoints: ['client/node.ts'], outfile: 'dist/client/node.cjs', platform: 'node', format: 'cjs', target: 'node22', external: ['vscode'] }),
    build({ ...common, entryPoints: ['client/browser.ts'], outfile: 'dist/client/browser.cjs', platform: 'browser', format: 'cjs', target: 'es2022', external: ['vscode'] }),
    build({ ...common, entryPoints: ['server/node.ts'], outfile: 'dist/server/node.js', platform: 'node', format: 'esm', target: 'node22', external: ['@resvg/resvg-js'], banner: { js: requireInEsm } }),
    build({ ...common, entryPoints: ['server/browser.ts'], outfile: 'dist/server/browser.js', platform: 'browser', format: 'iife', target: 'es2022' }),
    buildPage(),
  ]);
  // Where the server's pictures look for their font.
  for (const weight of ['medium', 'bold']) copy(`shared/font/barlow-semi-condensed-${weight}.ttf`, `dist/shared/font/barlow-semi-condensed-${weight}.ttf`);
}

/** Bundled CommonJS packages ask for Node's own modules by `require`. */
const requireInEsm = `import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);`;

function copy(from, to) {
  mkdirSync(dirname(`${root}${to}`), { recursive: true });
  copyFileSync(`${root}${from}`, `${root}${to}`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const folder of ['client', 'server', 'webview']) rmSync(`${root}dist/${folder}`, { recursive: true, force: true });
  await buildExtension();
}
