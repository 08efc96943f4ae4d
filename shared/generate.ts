/** Writes what is generated from this room: npm run generate */
import { mkdirSync, writeFileSync } from 'node:fs';
import { builderSources } from './build/source.ts';
import { generated } from './generated.ts';

write('./generated/', Object.entries(generated()));
write('./build/generated/', builderSources('Made by npm run generate: do not edit.'));

function write(to: string, files: Iterable<readonly [name: string, text: string]>): void {
  const folder = new URL(to, import.meta.url);
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of files) writeFileSync(new URL(name, folder), text);
}
