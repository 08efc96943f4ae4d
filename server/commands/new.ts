import { basename, extname, resolve } from 'node:path';
import { starter } from '../../shared/examples/starter.ts';
import { command } from '../command.ts';
import { fine, Refusal } from '../io.ts';
import { writeNew } from '../write.ts';

export const newDrill = command({
  name: 'new',
  operands: 'NAME',
  summary: 'a commented starter file',
  more: ['Writes NAME.drill. It never writes over a file that is there.'],
  takes: [1, 1],
  options: {},
  run: ({ operands }, io) => {
    const name = operands[0]!;
    const title = basename(name, '.drill').replaceAll('"', '’');
    if (title.trim() === '' || name.endsWith('/')) throw new Refusal('Give the file a name: halfturn new "Passing square".');
    const file = extname(name) === '.drill' ? name : `${name}.drill`;
    writeNew(resolve(io.cwd, file), starter(title), file);
    io.out(`${file} is there; halfturn check ${quoted(file)} looks at it, halfturn draw ${quoted(file)} -o drill.svg draws it.\n`);
    return fine;
  },
});

/** As it must be typed in a shell. */
function quoted(file: string): string {
  return /^[\p{L}\p{N}_./-]+$/u.test(file) ? file : `'${file.replaceAll("'", `'\\''`)}'`;
}
