// Draws icon.png from icon.svg. Run: node client/icon/generate.mjs
import { readFileSync, writeFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';

const here = (name) => new URL(name, import.meta.url);
writeFileSync(here('icon.png'), new Resvg(readFileSync(here('icon.svg'), 'utf8')).render().asPng());
