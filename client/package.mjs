// Makes the .vsix for this platform and says how to install it. Run: npm run package
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { createVSIX } from '@vscode/vsce';
import { buildExtension, shipped } from './build.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const manifest = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));
const target = `${process.platform === 'linux' && isMusl() ? 'alpine' : process.platform}-${process.arch === 'arm' ? 'armhf' : process.arch}`;
const file = `out/halfturn-${target}-${manifest.version}.vsix`;
const staged = `${root}out/extension`;

for (const folder of ['client', 'server', 'webview', 'node_modules']) rmSync(`${root}dist/${folder}`, { recursive: true, force: true });
await buildExtension();
ship('@resvg/resvg-js');
for (const name of readdirSync(`${root}node_modules/@resvg`).filter((each) => each.startsWith('resvg-js-'))) ship(`@resvg/${name}`);
stage();
await createVSIX({ cwd: staged, packagePath: `${root}${file}`, target, dependencies: false, allowMissingRepository: true, rewriteRelativeLinks: false });

console.log(`\n${file} is made. Install it with:\n\n  code --install-extension ${file}\n\nor in the editor: Extensions, “…”, “Install from VSIX…”.`);

/** The list of files in the manifest is that of the npm package, so the extension is packed from a folder of its own. */
function stage() {
  rmSync(staged, { recursive: true, force: true });
  mkdirSync(staged, { recursive: true });
  for (const path of shipped) cpSync(`${root}${path}`, `${staged}/${path}`, { recursive: true });
  writeFileSync(`${staged}/package.json`, JSON.stringify({ ...manifest, files: undefined, exports: undefined, bin: undefined, types: undefined }, null, 2));
}

/** Pictures of pixels need a native package: the one for this platform goes along, beside the server that loads it. */
function ship(name) {
  cpSync(`${root}node_modules/${name}`, `${root}dist/node_modules/${name}`, { recursive: true });
}

function isMusl() {
  return existsSync('/etc/alpine-release');
}
