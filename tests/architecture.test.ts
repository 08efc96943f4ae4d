import { globSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const root = new URL('..', import.meta.url).pathname;

/** Run when something is generated, and never imported by what is shipped: free to read and write files. */
const generators = new Set(['grammar/generate.ts', 'grammar/schema.ts', 'shared/generate.ts']);

/** What the files of a room may import: other rooms, and packages by the beginning of their names. */
const rooms: Readonly<Record<string, { readonly rooms: readonly string[]; readonly packages: readonly string[] }>> = {
  grammar: { rooms: ['grammar'], packages: ['chevrotain'] },
  shared: { rooms: ['grammar', 'shared'], packages: [] },
  server: { rooms: ['grammar', 'shared', 'server', 'package.json'], packages: ['node:', '@resvg/resvg-js', 'bidi-js', 'fontkit', 'gifenc', 'pdfkit', 'vscode-languageserver', 'sarif', 'chokidar'] },
  client: { rooms: ['grammar', 'shared', 'client'], packages: ['vscode', 'vscode-languageclient'] },
};

test.each(Object.entries(rooms))('%s imports only what it may', (room, allowed) => {
  const files = globSync(`${room}/**/*.ts`, { cwd: root }).filter((file) => !generators.has(file));
  expect(files.length).toBeGreaterThan(0);
  expect(files.flatMap((file) => importsOf(file).filter((name) => !mayImport(file, name, allowed)).map((name) => `${file}: ${name}`))).toEqual([]);
});

function importsOf(file: string): string[] {
  const text = readFileSync(`${root}${file}`, 'utf8');
  return [...text.matchAll(/^(?:import|export)\b[^'"`;]*?from '([^']+)'|^import '([^']+)'|\b(?:import|require)\('([^']+)'\)/gm)]
    .map((found) => (found[1] ?? found[2] ?? found[3])!);
}

function mayImport(file: string, name: string, allowed: { readonly rooms: readonly string[]; readonly packages: readonly string[] }): boolean {
  if (!name.startsWith('.')) return allowed.packages.some((each) => name === each || name.startsWith(each.endsWith(':') ? each : `${each}/`));
  const target = new URL(name, `file:///${file}`).pathname.slice(1);
  return allowed.rooms.includes(target.split('/')[0]!) && !generators.has(target);
}
