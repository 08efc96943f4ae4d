/** Writes what is generated from this room: npm run generate */
import { mkdirSync, writeFileSync } from 'node:fs';
import { generated } from './generated.ts';

const folder = new URL('./generated/', import.meta.url);
mkdirSync(folder, { recursive: true });
for (const [name, text] of Object.entries(generated())) writeFileSync(new URL(name, folder), text);
