/** Writes the files in `generated/`: node grammar/generate.ts */
import { mkdirSync, writeFileSync } from 'node:fs';
import { jsonSchema } from './json/schema.ts';
import { languageReference } from './reference.ts';
import { treeSchema } from './schema.ts';
import { textMateGrammar } from './textmate.ts';

const madeBy = 'Made by `node grammar/generate.ts`: do not edit.';

/** Every generated file by name. */
export function generated(): Map<string, string> {
  return new Map([
    ['drill.schema.json', `${JSON.stringify({ $comment: madeBy, ...jsonSchema() }, null, 2)}\n`],
    ['halfturn.tmLanguage.json', textMateGrammar(madeBy)],
    ['language-reference.md', languageReference(madeBy)],
    ['tree.schema.json', treeSchema(madeBy)],
  ]);
}

if (import.meta.main) {
  const folder = new URL('generated/', import.meta.url);
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of generated()) writeFileSync(new URL(name, folder), text);
}
