import { explainCommand, playCommand } from '../../shared/protocol.ts';

/** Names of the commands that a source registers. */
export function codes(source: string): string[] {
  const written = [...source.matchAll(/^ {2}'(halfturn\.\w+)':/gm)].map((found) => found[1]!);
  return [...written, ...(source.includes('[playCommand]:') ? [playCommand] : []), ...(source.includes('[explainCommand]:') ? [explainCommand] : [])];
}
