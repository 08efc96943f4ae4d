// The package as npm packs it, installed in a folder of its own and used as a program would. Run: npm run test:package
import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { chromium } from 'playwright-core';

const root = fileURLToPath(new URL('../../', import.meta.url));
const chromiumPath = process.env['CHROMIUM'] ?? '/usr/bin/chromium';
const away = mkdtempSync(join(tmpdir(), 'halfturn-package-'));
let failed = 0;
let passed = 0;

await step('it is packed and installed', install);
await step('the example of the README runs in Node', inNode);
await step('the example of the README runs in Chromium', inChromium);
await step('the command line runs', commandLine);
await step('a program is compiled with moduleResolution nodenext', () => compiled('nodenext', 'nodenext'));
await step('a program is compiled with moduleResolution bundler', () => compiled('bundler', 'esnext'));
await step('a bundle holds what is used', shaken);
rmSync(away, { recursive: true, force: true });
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;

async function step(name: string, act: () => void | Promise<void>): Promise<void> {
  try {
    await act();
    passed += 1;
    console.log(`ok      ${name}`);
  } catch (error) {
    failed += 1;
    console.log(`FAILED  ${name}: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** Gives what was printed; a program that fails throws with its last words. */
function run(command: string, words: readonly string[], cwd = away): string {
  const { status, stdout, stderr, error } = spawnSync(command, words, { cwd, encoding: 'utf8' });
  if (status !== 0) throw new Error(`${command} ${words.join(' ')}: ${error?.message ?? ''}${stdout.slice(-2000)}${stderr.slice(-2000)}`);
  return stdout;
}

function install(): void {
  const packed = JSON.parse(run('npm', ['pack', '--json', '--silent', '--pack-destination', away], root).replace(/^[^[]*/, '')) as readonly { filename: string; size: number; unpackedSize: number; files: readonly { path: string }[] }[];
  const { filename, size, unpackedSize, files } = packed[0]!;
  console.log(`        ${filename}: ${files.length} files, ${kilobytes(size)} packed, ${kilobytes(unpackedSize)} unpacked`);
  writeFileSync(join(away, 'package.json'), JSON.stringify({ name: 'a-program', private: true, type: 'module' }));
  try {
    run('npm', ['install', '--no-audit', '--no-fund', '--silent', join(away, filename)]);
  } catch (error) {
    console.log(`        The registry cannot be reached, so the packages of this folder are used. ${error instanceof Error ? error.message.slice(-200) : ''}`);
    mkdirSync(join(away, 'node_modules/halfturn'), { recursive: true });
    run('tar', ['-xzf', join(away, filename), '--strip-components=1', '-C', 'node_modules/halfturn']);
    symlinkSync(join(root, 'node_modules'), join(away, 'node_modules/halfturn/node_modules'));
  }
}

function readmeExample(): string {
  const example = /## From a program[^]*?```js\n([^]*?)```/.exec(readFileSync(join(root, 'README.md'), 'utf8'))![1]!;
  const lines = example.trimEnd().split('\n').length;
  if (lines > 25) throw new Error(`the example has ${lines} lines, more than 25`);
  return example;
}

function inNode(): void {
  writeFileSync(join(away, 'example.mjs'), readmeExample());
  expectEqual(run('node', ['example.mjs']), '');
  const text = readFileSync(join(away, 'triangle-10.drill'), 'utf8');
  expectEqual(text.includes('  station Left at 10 above Base\n'), true);
  expectEqual(readFileSync(join(away, 'triangle-12.svg'), 'utf8').startsWith('<svg '), true);
}

/** The same example, its files kept in memory, gives the same bytes as in Node. */
async function inChromium(): Promise<void> {
  writeFileSync(join(away, 'browser.mjs'), readmeExample().replace("import { writeFileSync } from 'node:fs';", 'globalThis.written = {}; const writeFileSync = (name, text) => { globalThis.written[name] = text; };'));
  const { text: script } = (await build({ absWorkingDir: away, entryPoints: ['browser.mjs'], bundle: true, write: false, platform: 'browser', format: 'iife', logLevel: 'error' })).outputFiles[0]!;
  const browser = await chromium.launch({ executablePath: chromiumPath, args: ['--no-sandbox', '--disable-gpu'] });
  try {
    const page = await browser.newPage();
    const errors: string[] = [];
    page.on('pageerror', (error) => errors.push(error.message));
    await page.addScriptTag({ content: script });
    const written = await page.evaluate('globalThis.written') as Readonly<Record<string, string>>;
    expectEqual(errors, []);
    expectEqual(Object.keys(written).length, 6);
    for (const [name, text] of Object.entries(written)) expectEqual(text === readFileSync(join(away, name), 'utf8'), true);
  } finally {
    await browser.close();
  }
}

function commandLine(): void {
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
  const halfturn = (...words: string[]): string => (existsSync(join(away, 'node_modules/.bin/halfturn')) ? run('npx', ['halfturn', ...words]) : run('node', ['node_modules/halfturn/dist/halfturn.js', ...words]));
  expectEqual(halfturn('--version'), `${version}\n`);
  expectEqual(halfturn('check', 'triangle-8.drill'), 'No problems in 1 file.\n');
  halfturn('convert', 'triangle-8.drill', '-o', 'triangle.json');
  halfturn('convert', 'triangle.json', '-o', 'triangle.drill');
  expectEqual(readFileSync(join(away, 'triangle.drill'), 'utf8'), readFileSync(join(away, 'triangle-8.drill'), 'utf8'));
  halfturn('draw', 'triangle.drill', '-o', 'triangle.png');
  expectEqual(readFileSync(join(away, 'triangle.png')).subarray(1, 4).toString(), 'PNG');
}

function compiled(moduleResolution: string, module: string): void {
  copyFileSync(join(root, 'tests/package/sample.ts'), join(away, 'sample.ts'));
  writeFileSync(join(away, 'tsconfig.json'), JSON.stringify({
    compilerOptions: { module, moduleResolution, target: 'es2022', lib: ['es2023'], types: [], strict: true, exactOptionalPropertyTypes: true, noEmit: true, skipLibCheck: false },
    files: ['sample.ts'],
  }));
  run(join(root, 'node_modules/.bin/tsc'), ['-p', '.']);
}

/** Prints what single functions weigh, minified; whoever only reads drills carries no drawing. */
async function shaken(): Promise<void> {
  for (const [names, without] of [['parse', /shared\//], ['parse, print, toJson, fromJson', /shared\//], ['drill, print', /shared\/(?!build\/)/], ['check', /shared\/(scene\/(?!palette)|render|font\/embedded)/], ['check, drawSvg', null]] as const) {
    const contents = `export { ${names} } from 'halfturn';`;
    const { outputFiles, metafile } = await build({ absWorkingDir: away, stdin: { contents, resolveDir: away }, bundle: true, minify: true, write: false, metafile: true, platform: 'browser', format: 'esm', logLevel: 'error' });
    console.log(`        ${kilobytes(outputFiles[0]!.contents.length)} for ${names}`);
    const [output] = Object.values(metafile.outputs);
    const held = Object.entries(output!.inputs).filter(([path, { bytesInOutput }]) => bytesInOutput > 0 && path.includes('halfturn/dist/library')).map(([path]) => path);
    expectEqual(held.length > 0, true);
    if (without !== null) expectEqual(held.filter((path) => without.test(path)), []);
  }
}

function kilobytes(bytes: number): string {
  return `${(bytes / 1000).toFixed(0)} kB`;
}

function expectEqual(found: unknown, expected: unknown): void {
  if (JSON.stringify(found) !== JSON.stringify(expected)) throw new Error(`found ${JSON.stringify(found)}, expected ${JSON.stringify(expected)}`);
}
