import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { jsonSchema } from '../../grammar/json/schema.ts';
import { broken, folder, halfturn } from './halfturn.ts';

const drill = 'import "walls.drill"  // of the club\n';
const json = `{
  "kind": "file",
  "items": [
    {
      "kind": "import",
      "path": "walls.drill",
      "margin": {
        "beside": "of the club"
      }
    }
  ]
}
`;
const bad = '{"kind": "file", "items": [{"kind": "import", "file": "a"}]}';
const many = `{"kind": "file", "items": [${Array.from({ length: 25 }, () => '1').join()}]}`;
const files = { 'a.drill': drill, 'a.json': json, 'broken.drill': broken, 'bad.json': bad, 'many.json': many, 'half.json': '{"kind":', 'a.txt': `\ufeff  ${json}` };

test.each<[what: string, words: string[], input: string, status: number, out: string | RegExp, err: string | RegExp, written: string | null]>([
  ['to JSON', ['a.drill', '-o', 'b.json'], '', 0, '', '', json],
  ['to text', ['a.json', '-o', 'b.drill'], '', 0, '', '', drill],
  ['to standard output', ['a.drill'], '', 0, json, '', null],
  ['text from standard input', ['-', '-o', 'b.json'], drill, 0, '', '', json],
  ['JSON from standard input', ['-', '-o', 'b.drill'], json, 0, '', '', drill],
  ['a filter', ['-'], json, 0, drill, '', null],
  ['by its content', ['a.txt'], '', 0, drill, '', null],
  ['not to its own kind', ['a.json', '-o', 'b.json'], '', 2, '', 'halfturn: a.json becomes a .drill file; b.json must end in .drill.\n', null],
  ['not what cannot be read', ['broken.drill', '-o', 'b.json'], '', 1, '', /^halfturn: broken\.drill is not converted, for line 7 cannot be read: `ball` cannot stand here\./, null],
  ['not what is no drill', ['bad.json', '-o', 'b.drill'], '', 1, '',
    'halfturn: bad.json: /items/0 needs `path`\nhalfturn: bad.json: /items/0/file is not a property of this: it has `kind`, `path` and `margin`\n', null],
  ['not what is no JSON', ['half.json', '-o', 'b.drill'], '', 1, '', /^halfturn: half\.json is not converted, for it is not JSON: /, null],
  ['not an empty object', ['-', '-o', 'b.drill'], '{}', 1, '', 'halfturn: Standard input: the whole needs `kind`: `file`\n', null],
  ['with many faults', ['many.json'], '', 1, '', /halfturn: many\.json has 5 more faults at least\.\n$/, null],
  ['a schema', ['--schema'], '', 0, `${JSON.stringify(jsonSchema(), null, 2)}\n`, '', null],
  ['a schema and no file', ['--schema', 'a.drill'], '', 2, '', 'halfturn: --schema stands alone: halfturn convert --schema\n', null],
  ['no file', [], '', 2, '', 'halfturn: Say which file: halfturn convert FILE -o OUT\n', null],
])('%s', async (_, words, input, status, out, err, written) => {
  const cwd = folder(files);
  const told = await halfturn(cwd, ['convert', ...words], { input });
  expect(told).toEqual({ status, out: wanted(out), err: wanted(err) });
  const made = ['b.json', 'b.drill'].map((name) => join(cwd, name)).filter((path) => existsSync(path));
  expect(made.map((path) => readFileSync(path, 'utf8'))).toEqual(written === null ? [] : [written]);
});

function wanted(said: string | RegExp): unknown {
  return typeof said === 'string' ? said : expect.stringMatching(said);
}
