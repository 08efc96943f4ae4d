import { parse } from '../../grammar/parse.ts';
import { print } from '../../grammar/printer.ts';
import { command } from '../command.ts';
import { linesOf, positionAt } from '../convert.ts';
import { complain, fine, problemsFound, Refusal, refused, type Io } from '../io.ts';
import { progressOn } from '../progress.ts';
import { readSources, type Source } from '../sources.ts';
import { counted } from '../text/report.ts';
import { writeWhole } from '../write.ts';

export const format = command({
  name: 'format',
  operands: 'PATH…',
  summary: 'the one printed form, in place',
  more: [
    'PATH is a file, a folder (every .drill file in it), a glob in quotes, or - to read standard input and print the result.',
    'A file that does not parse is left as it is.',
  ],
  takes: [1, Infinity],
  options: {
    verify: { kind: 'flag', help: 'change nothing; name the files that differ from their printed form, and exit with 1' },
  },
  run: async ({ options, operands }, io) => {
    const { sources, unread } = await readSources(operands, io);
    const undone = [...unread];
    let status = fine;
    const progress = progressOn(io);
    for (const [index, source] of sources.entries()) {
      progress.step(index, sources.length, 'files');
      const formatted = formOf(source);
      progress.clear();
      if ('broken' in formatted) {
        complain(io, [formatted.broken]);
        status = problemsFound;
      } else if (options.verify) {
        if (formatted.text === source.text) continue;
        io.out(`${source.name} is not in its printed form; halfturn format ${source.name} writes it.\n`);
        status = problemsFound;
      } else {
        write(source, formatted.text, io, undone);
      }
    }
    if (options.verify && status === fine && undone.length === 0) io.out(`${counted(sources.length, 'file')} in printed form.\n`);
    complain(io, undone);
    return undone.length > 0 ? refused : status;
  },
});

type Formatted = { readonly text: string } | { readonly broken: string };

/** What did not parse is not in the tree, so printing it would lose it. */
function formOf(source: Source): Formatted {
  const { file, faults } = parse(source.text);
  const fault = faults[0];
  if (!fault) return { text: print(file) };
  const line = positionAt(linesOf(source.text), fault.span.from).line + 1;
  const name = source.path === null ? 'Standard input' : source.name;
  return { broken: `${name} is left as it is, for line ${line} cannot be read: ${fault.message}` };
}

function write(source: Source, text: string, io: Io, undone: string[]): void {
  if (source.path === null) return io.out(text);
  if (text === source.text) return;
  try {
    writeWhole(source.path, text, source.name);
    io.out(`${source.name} formatted.\n`);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    undone.push(error.message);
  }
}
