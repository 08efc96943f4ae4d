import { command } from '../command.ts';
import { manyOptions, throughAll } from '../many/many.ts';
import { csvHead, measuresDocument } from '../text/measures.ts';

export const measure = command({
  name: 'measure',
  operands: 'PATH…',
  summary: 'every computed number',
  more: [
    'PATH is a file, a folder (every .drill file in it), a glob in quotes, or - for standard input.',
    'Lengths are in metres, times in seconds. CSV has one row a drill, one a phase and one a part of a session, with the main numbers; JSON has them all.',
  ],
  takes: [1, Infinity],
  options: {
    format: { kind: 'choice', choices: ['text', 'json', 'csv'], help: 'how the numbers are written (text)' },
    ...manyOptions,
  },
  run: ({ options: { format: asked, ...options }, operands }, io) => {
    const format = asked ?? 'text';
    return throughAll({
      ...options,
      operands,
      job: () => ({ name: 'measure', options: { format, cwd: io.cwd } }),
      doing: 'files measured',
      worthAThread: 600,
      head: format === 'csv' ? csvHead() : '',
      between: format === 'text' ? '\n' : '',
    }, io, ({ data }) => {
      if (format === 'json') io.out(measuresDocument(data));
    });
  },
});
