import { severities } from '../../shared/problem.ts';
import { command } from '../command.ts';
import { Refusal, type Io } from '../io.ts';
import { manyOptions, throughAll, type Total } from '../many/many.ts';
import { summaryText } from '../text/report.ts';

export const check = command({
  name: 'check',
  operands: 'PATH…',
  summary: 'problems with the source lines they point at',
  more: [
    'PATH is a file, a folder (every .drill file in it), a glob in quotes, or - for standard input.',
    'A halfturn.json above a file sets how serious problems are: { "severity": { "long-wait": "off" } }.',
  ],
  takes: [1, Infinity],
  options: {
    format: { kind: 'choice', choices: ['text', 'json', 'sarif'], help: 'how the problems are written (text)' },
    level: { kind: 'choice', choices: severities, help: 'leave out whatever is milder (hint)' },
    fix: { kind: 'flag', help: 'make in the files what has one sure fix, and say which; how the play is mended stays your choice' },
    ...manyOptions,
  },
  run: async ({ options, operands }, io) => {
    if (options.fix && operands.includes('-')) throw new Refusal('--fix changes files, and standard input is none.');
    const { fix } = options;
    const format = options.format ?? 'text';
    const last = await ending(format, io);
    return throughAll({
      operands,
      // A file that is mended may be imported by the next.
      jobs: fix ? 1 : options.jobs,
      shard: options.shard,
      job: () => ({ name: 'check', options: { format, level: options.level ?? 'hint', fix, colour: io.colour, cwd: io.cwd } }),
      doing: 'files checked',
      // Fixes are tried out, each by an analysis of its own.
      worthAThread: format === 'text' ? 600 : 25,
    }, io, last);
  },
});

/** What is written when every file has been checked. */
async function ending(format: 'text' | 'json' | 'sarif', io: Io): Promise<(total: Total) => void> {
  switch (format) {
    case 'text':
      return ({ files, counts, undone }) => {
        if (files > 0) io.out(`${summaryText(counts, files, undone)}\n`);
      };
    case 'json':
      return ({ data }) => io.out(`${JSON.stringify({ files: data }, null, 2)}\n`);
    case 'sarif': {
      const { sarifLog } = await import('../text/sarif.ts');
      return ({ data }) => io.out(`${JSON.stringify(sarifLog(data, io.cwd), null, 2)}\n`);
    }
  }
}
