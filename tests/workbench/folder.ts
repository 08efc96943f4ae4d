/** The folder that is opened, a git repository: the example drills and two files of which one imports the other. */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from './pitch-page.ts';

export function demoFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'halfturn-demo-'));
  const examples = join(root, 'shared/examples');
  for (const name of readdirSync(examples)) if (name.endsWith('.drill')) cpSync(join(examples, name), join(folder, name));
  writeFileSync(join(folder, 'lengths.drill'), lengths);
  writeFileSync(join(folder, 'give-and-go.drill'), giveAndGo);
  const git = (...words: string[]) => execFileSync('git', ['-c', 'user.name=Coach', '-c', 'user.email=coach@example.org', ...words], { cwd: folder });
  git('init', '--quiet');
  git('add', '.');
  git('commit', '--quiet', '--message', 'As it was');
  return folder;
}

const lengths = `// What several drills share.
let lane = 8
`;

export const giveAndGo = `import "lengths.drill"

drill "Give and go" {
  age     U13
  players 5
  area 14 x 16

  station Base at (7, 3) holds 3
  station Wall at lane above Base holds 2

  ball at Base

  sequence {
    Base passes to Wall
    Wall passes to next Base while Base follows, Wall follows
  }
}
`;
