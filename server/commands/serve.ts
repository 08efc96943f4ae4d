import { command } from '../command.ts';
import { fine, Refusal } from '../io.ts';

export const serve = command({
  name: 'serve',
  operands: '--stdio',
  summary: 'the language server for any editor',
  more: ['Speaks the language server protocol on standard input and output until the editor ends it.'],
  takes: [0, 0],
  options: {
    stdio: { kind: 'flag', help: 'talk over standard input and output' },
  },
  run: async ({ options }) => {
    if (!options.stdio) throw new Refusal('serve talks over standard input and output: halfturn serve --stdio');
    // Begins to listen as it is loaded.
    await import('../node.ts');
    return fine;
  },
});
