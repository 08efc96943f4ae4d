/**
 * `halfturn check` over a thousand different sound drills, and over one, each timed cold as a whole process, from the bundle
 * and from the sources, with the most memory it held. Run after npm run build: node tests/bench/many.ts
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const files = 1000;
const folder = mkdtempSync(join(tmpdir(), 'halfturn-'));
const root = fileURLToPath(new URL('../..', import.meta.url));
const programs = { bundle: join(root, 'dist/halfturn.js'), sources: join(root, 'server/cli.ts') };
try {
  for (let index = 0; index < files; index += 1) {
    const place = join(folder, `group-${index % 10}`);
    mkdirSync(place, { recursive: true });
    writeFileSync(join(place, `drill-${index}.drill`), drillOf(index));
  }
  console.log(`Node ${process.version}, ${availableParallelism()} cores\n`);
  for (const [name, program] of Object.entries(programs)) {
    run(`one file, ${name}`, [program, 'check', join(folder, 'group-0/drill-0.drill')]);
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

/** Another drill for every number: other sizes, tempo, players, lines of play. Of plain passes with time enough, so there is nothing to find. */
function drillOf(index: number): string {
  const wide = 6 + (index % 7);
  const deep = 7 + (index % 5);
  const rounds = 1 + (index % 4);
  const lines = Array.from({ length: rounds }, (_, round) => [
    `    Base passes to Left${index % 3 === 0 ? ' firm' : ''}`,
    '    Left passes to Top',
    '    Top passes to Right',
    ...(round % 2 === 0 ? ['    Right touches to 1 left of Right'] : []),
    '    Right passes to Base',
  ].join('\n'));
  return `// Number ${index}.
drill "Ring ${index}" {
  age     U${12 + (index % 6)}
  players 4
  tempo   ${['walk', 'steady', 'match'][index % 3]}
  area ${wide + 6} x ${deep + 6}
  let edge = ${3 + (index % 10) / 10}
  station Base  at (edge, edge)
  station Left  at ${deep} above Base
  station Top   at ${wide} right of Left
  station Right at ${wide} right of Base
  ball at Base
  sequence {
${lines.join('\n')}
  }
  point technical "Open the body before the ball arrives"
}
`;
}
