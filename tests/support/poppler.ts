import { execFileSync } from 'node:child_process';

/** One of the tools of Poppler, an independent reader of PDF: the tests need it (package `poppler-utils`). */
export function poppler(tool: 'pdftotext' | 'pdftoppm' | 'pdffonts' | 'pdfinfo', words: readonly string[]): Buffer {
  try {
    return execFileSync(tool, words, { maxBuffer: 1 << 28, stdio: ['ignore', 'pipe', 'pipe'] });
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') throw new Error(`${tool} is missing: install poppler-utils.`, { cause: error });
    throw error;
  }
}
