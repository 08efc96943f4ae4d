import { readFileSync } from 'node:fs';
import peggy from 'peggy';

const parser = peggy.generate(readFileSync(new URL('drill.peggy', import.meta.url), 'utf8'));

/** The drill as a parsing expression grammar reads it; throws on a text outside the benchmark's part of the language. */
export function parseWithPeggy(text: string): unknown {
  return parser.parse(text);
}
