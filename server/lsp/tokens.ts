import type { SemanticTokensLegend } from 'vscode-languageserver';
import type { Span } from '../../grammar/tree.ts';
import { semanticTokens, semanticTypes } from '../../shared/service/semantic.ts';
import type { Open } from '../../shared/service/open.ts';
import { positionAt } from '../convert.ts';
import type { Document } from '../documents.ts';

export const legend: SemanticTokensLegend = { tokenTypes: [...semanticTypes], tokenModifiers: ['declaration'] };

/** Five numbers a word, each relative to the word before, as the protocol has it. */
export function encodedTokens({ lines }: Document, open: Open, within: Span): number[] {
  let [line, character] = [0, 0];
  return semanticTokens(open).filter(({ from, to }) => from < within.to && within.from < to).flatMap(({ from, to, type, declares }) => {
    const at = positionAt(lines, from);
    const start = at.line === line ? at.character - character : at.character;
    const encoded = [at.line - line, start, to - from, semanticTypes.indexOf(type), declares ? 1 : 0];
    ({ line, character } = at);
    return encoded;
  });
}
