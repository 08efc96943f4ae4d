import { extname, resolve } from 'node:path';
import { fromJson } from '../../grammar/json/from-json.ts';
import { jsonSchema } from '../../grammar/json/schema.ts';
import { toJson } from '../../grammar/json/to-json.ts';
import { parse } from '../../grammar/parse.ts';
import { print } from '../../grammar/printer.ts';
import { command } from '../command.ts';
import { linesOf, positionAt } from '../convert.ts';
import { complain, fine, problemsFound, Refusal, type Io } from '../io.ts';
import { readSource, type Source } from '../sources.ts';
import { counted } from '../text/report.ts';
import { writeWhole } from '../write.ts';

export const convert = command({
  name: 'convert',
  operands: 'FILE -o OUT',
  summary: 'a .drill file as .json, or a .json file as .drill, without loss',
  more: [
    'FILE may be - for standard input. Without -o the result is printed.',
    'A .drill file that does not parse and a .json file that is no drill are not converted.',
  ],
  takes: [0, 1],
  options: {
    out: { kind: 'text', value: 'OUT', short: 'o', help: 'the file to write: .json or .drill' },
    schema: { kind: 'flag', help: 'print the JSON Schema (draft 2020-12) of the .json files instead' },
  },
  run: async ({ options, operands: [name] }, io) => {
    if (options.schema) {
      if (name !== undefined || options.out !== null) throw new Refusal('--schema stands alone: halfturn convert --schema');
      io.out(`${JSON.stringify(jsonSchema(), null, 2)}\n`);
      return fine;
    }
    if (name === undefined) throw new Refusal('Say which file: halfturn convert FILE -o OUT');
    const source = await readSource(name, io);
    const holdsJson = isJson(source);
    if (options.out !== null) refuseSameKind(options.out, holdsJson ? '.drill' : '.json', name);
    const converted = holdsJson ? textOf(source) : jsonOf(source);
    if ('wrong' in converted) {
      complain(io, converted.wrong);
      return problemsFound;
    }
    give(converted.text, options.out, io);
    return fine;
  },
});

type Converted = { readonly text: string } | { readonly wrong: readonly string[] };

/** No drill begins with a brace. */
function isJson({ name, text }: Source): boolean {
  const ending = extname(name).toLowerCase();
  return ending === '.json' || (ending !== '.drill' && /^\ufeff?\s*\{/.test(text));
}

function refuseSameKind(out: string, wanted: '.json' | '.drill', name: string): void {
  if (extname(out).toLowerCase() !== wanted) throw new Refusal(`${name} becomes a ${wanted} file; ${out} must end in ${wanted}.`);
}

function jsonOf({ name, text }: Source): Converted {
  const { file, faults: [fault] } = parse(text);
  if (!fault) return { text: `${JSON.stringify(toJson(file), null, 2)}\n` };
  const line = positionAt(linesOf(text), fault.span.from).line + 1;
  return { wrong: [`${called(name)} is not converted, for line ${line} cannot be read: ${fault.message}`] };
}

/** Sentences told of one file. */
const mostTold = 20;

function textOf({ name, text }: Source): Converted {
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch (error) {
    return { wrong: [`${called(name)} is not converted, for it is not JSON: ${error instanceof Error ? error.message : String(error)}`] };
  }
  const { file, faults } = fromJson(json);
  if (file !== null) return { text: print(file) };
  const told = faults.slice(0, mostTold).map(({ path, message }) => `${called(name)}: ${path === '' ? 'the whole' : path} ${message}`);
  const more = faults.length - told.length;
  return { wrong: more > 0 ? [...told, `${called(name)} has ${counted(more, 'more fault')} at least.`] : told };
}

function called(name: string): string {
  return name === '-' ? 'Standard input' : name;
}

function give(text: string, out: string | null, io: Io): void {
  if (out === null) return io.out(text);
  writeWhole(resolve(io.cwd, out), text, out);
}
