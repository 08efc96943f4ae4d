import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';
import { runHalfturn } from '../../server/command-line.ts';

/** What a run of the command line said, and its exit status. */
export interface Told {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** A folder with these files, gone when the test is over. */
export function folder(files: Readonly<Record<string, string | Uint8Array>>): string {
  const path = mkdtempSync(join(tmpdir(), 'halfturn-'));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(path, name)), { recursive: true });
    writeFileSync(join(path, name), content);
  }
  return path;
}

/** Runs the command line in this process. */
export async function halfturn(cwd: string, words: readonly string[], more: { readonly input?: string; readonly colour?: boolean } = {}): Promise<Told> {
  let out = '';
  let err = '';
  const status = await runHalfturn(words, {
    cwd,
    out: (text) => void (out += text),
    err: (text) => void (err += text),
    input: async () => new TextEncoder().encode(more.input ?? ''),
    colour: more.colour ?? false,
    watched: false,
    program: new URL('../../server/cli.ts', import.meta.url),
    onInterrupt: () => () => {},
  });
  return { status, out, err };
}

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Runs the command line as a process of its own. */
export function inProcess(cwd: string, words: readonly string[], more: { readonly input?: string; readonly env?: Readonly<Record<string, string>> } = {}): Told {
  const { status, stdout, stderr } = spawnSync(join(root, 'node_modules/.bin/node'), [join(root, 'server/cli.ts'), ...words], {
    cwd, encoding: 'utf8', input: more.input ?? '', env: { PATH: '', ...more.env },
  });
  return { status: status ?? -1, out: stdout, err: stderr };
}

/** Nothing to complain of. */
export const sound = `drill "Two" {
  age      U13
  players  2
  area 12 x 12
  station Base at (2, 6)
  station Wall at 8 right of Base
  ball at Base
  sequence {
    Base passes to Wall
    Wall passes to Base
  }
}
`;

/** One error with a fix: the name is misspelt. */
export const misspelt = sound.replace('right of Base', 'right of Bsae');

/** A line that cannot be read. */
export const broken = sound.replace('ball at Base', 'ball ball ball');
