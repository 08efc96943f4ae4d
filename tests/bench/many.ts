/**
 * `halfturn check` over the thousand drills of `server/examples/thousand.ts`, and over one, each timed cold as a whole process, from the bundle
 * and from the sources, with the most memory it held. Run after npm run build: node tests/bench/many.ts
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const files = 1000;
const folder = mkdtempSync(join(tmpdir(), 'halfturn-'));
const root = fileURLToPath(new URL('../..', import.meta.url));
const programs = { bundle: join(root, 'dist/halfturn.js'), sources: join(root, 'server/cli.ts') };
try {
  execFileSync(process.execPath, [join(root, 'server/examples/thousand.ts'), folder]);
  const [first] = readdirSync(folder);
  console.log(`Node ${process.version}, ${availableParallelism()} cores\n`);
  for (const [name, program] of Object.entries(programs)) {
    run(`one file, ${name}`, [program, 'check', join(folder, first!)]);
    run(`${files} files, ${name}`, [program, 'check', folder]);
    run(`${files} files, ${name}, one at a time`, [program, 'check', folder, '--jobs', '1']);
    run(`measure of ${files} files, ${name}`, [program, 'measure', folder, '--format', 'csv']);
  }
} finally {
  rmSync(folder, { recursive: true });
}

/** GNU time tells what a finished process has used. */
function run(what: string, words: readonly string[]): void {
  const { error, stdout, stderr } = spawnSync('/usr/bin/time', ['-f', '%e %U %S %M', process.execPath, ...words], { encoding: 'utf8', maxBuffer: 2 ** 30 });
  if (error) throw new Error(`This benchmark needs GNU time (apt-get install time): ${error.message}`);
  const [seconds, user, system, kilobytes] = stderr.trim().split('\n').at(-1)!.split(' ').map(Number);
  const last = stdout.trimEnd().split('\n').at(-1);
  console.log(`${what.padEnd(42)} ${seconds!.toFixed(2)} s, processor ${(user! + system!).toFixed(2)} s, at most ${(kilobytes! / 1024).toFixed(0)} MB: ${last}`);
}
