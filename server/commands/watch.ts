import { command } from '../command.ts';
import { Refusal } from '../io.ts';
import { watching } from '../watching.ts';
import { formats, isFolder, kindOf } from './draw.ts';

export const watch = command({
  name: 'watch',
  operands: 'PATH',
  summary: 'checks, and draws, again as files change: beside any editor',
  more: ['PATH is a file, or a folder with every .drill file in it. What they import is watched too. Ctrl-C ends it.'],
  takes: [1, 1],
  options: {
    out: { kind: 'text', value: 'OUT', short: 'o', help: 'the picture of the file to keep current, or a folder for those of all' },
    format: { kind: 'choice', choices: formats, help: 'the kind of the pictures in a folder (svg)' },
  },
  run: ({ options: { out, format }, operands: [name] }, io) => {
    const many = isFolder(name!, io.cwd);
    const into = out !== null && isFolder(out, io.cwd);
    if (many && out !== null && !into) throw new Refusal(`${out} is one picture, and there may be more to draw: halfturn watch FOLDER -o FOLDER/`);
    if (format !== null && !into) throw new Refusal('--format is for -o FOLDER/; the ending of a picture says which kind it is.');
    return watching(name!, many, out === null ? null : { out, single: !into, kind: into ? `.${format ?? 'svg'}` : kindOf(out) }, io);
  },
});
