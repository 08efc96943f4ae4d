import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { generated } from '../../grammar/generate.ts';
import { parse } from '../../grammar/parse.ts';
import { wordsOf } from '../../grammar/form.ts';
import { statementForms } from '../../grammar/statements/index.ts';
import { modifierPiece } from '../../grammar/modifiers.ts';
import { verbForms } from '../../grammar/verbs.ts';
import { words } from '../../grammar/words.ts';

const folder = new URL('../../grammar/generated/', import.meta.url);
const files = generated();

test('the generated files are those that the generator would write', () => {
  expect(Object.fromEntries(readdirSync(folder).map((name) => [name, readFileSync(new URL(name, folder), 'utf8')])))
    .toEqual(Object.fromEntries(files));
});

describe('the schema fits the tree of', () => {
  const schema = JSON.parse(files.get('tree.schema.json')!) as Schema;
  const texts = {
    'the kite': readFileSync(new URL('../support/kite.drill', import.meta.url), 'utf8'),
    'the games': readFileSync(new URL('games.drill', import.meta.url), 'utf8'),
    'a broken file': 'drill Kite {\nsequence {\nA passs to B\n}\nprogress {\n}\n}',
  };
  test.each(Object.entries(texts))('%s', (_, text) => {
    expect(misfits(JSON.parse(JSON.stringify(parse(text).file)), schema, schema, 'file')).toEqual([]);
  });
  test.each(statementForms.map(({ keyword, stands, example }) => [keyword, stands[0]!, example] as const))('%s', (_, context, example) => {
    expect(misfits(parse(inside(context, example)).file, schema, schema, 'file')).toEqual([]);
  });
  test('but not a tree with something missing, something more or something wrong', () => {
    const { file } = parse('let wide = 7');
    const [statement] = file.items;
    const { margin: _, ...bare } = statement!;
    for (const items of [[bare], [{ ...statement, colour: 'red' }], [{ ...statement, kind: 'const' }]]) {
      expect(misfits({ ...file, items }, schema, schema, 'file')).not.toEqual([]);
    }
  });
});

describe('every word of the language has an example without faults', () => {
  test.each(words.map((entry) => [entry.word, entry.group, entry.example] as const))('%s (%s)', (word, group, example) => {
    expect(` ${example} `).toMatch(new RegExp(`[^\\p{L}]${word}[^\\p{L}]`, 'u'));
    const text = group === 'place' || group === 'anchor' ? wholePlace(example) : example;
    expect(parse(inside(contextOf(text), text)).faults).toEqual([]);
  });
});

test('every word of every form is documented', () => {
  const documented = new Set(words.flatMap((entry) => entry.word.split(' ')));
  const used = [
    ...statementForms.flatMap(({ keyword, pieces }) => [keyword, ...wordsOf(pieces)]),
    ...verbForms.flatMap(({ verb, pieces }) => [...verb.split(' '), ...wordsOf(pieces)]), ...wordsOf([modifierPiece]),
  ];
  expect(used.filter((word) => !documented.has(word))).toEqual([]);
});

type Context = 'file' | 'drill' | 'session' | 'beats';

function inside(context: Context, text: string): string {
  switch (context) {
    case 'file': return text;
    case 'drill': return `drill "d" {\n${text}\n}`;
    case 'session': return `session "s" {\n${text}\n}`;
    case 'beats': return `drill "d" {\nsequence {\n${text}\n}\n}`;
  }
}

function contextOf(text: string): Context {
  const first = text.split(' ')[0]!;
  return statementForms.find(({ keyword }) => keyword === first)?.stands[0] ?? 'beats';
}

function wholePlace(example: string): string {
  const statement = contextOf(example) !== 'beats' || / (?:passes|runs) /.test(example);
  if (statement && !example.startsWith('area.')) return example;
  return example.startsWith('facing') ? `hurdle at (1, 2) ${example}` : `ball at ${example}`;
}

interface Schema {
  readonly $defs?: Readonly<Record<string, Schema>>;
  readonly $ref?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly type?: string;
  readonly items?: Schema;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly anyOf?: readonly Schema[];
}

/** What in a value does not fit the part of JSON Schema that the generator uses. */
function misfits(value: unknown, schema: Schema, root: Schema, path: string): string[] {
  if (schema.$ref !== undefined) return misfits(value, root.$defs![schema.$ref.replace('#/$defs/', '')]!, root, path);
  if (schema.anyOf !== undefined) {
    const all = schema.anyOf.map((one) => misfits(value, one, root, path));
    return all.some((found) => found.length === 0) ? [] : all.sort((a, b) => b[0]!.length - a[0]!.length)[0]!;
  }
  if (schema.enum !== undefined) return schema.enum.includes(value) ? [] : [`${path}: ${String(value)} is none of ${schema.enum.join(', ')}`];
  if ('const' in schema) return value === schema.const ? [] : [`${path}: ${String(value)} is not ${String(schema.const)}`];
  const type = value === null ? 'null' : Array.isArray(value) ? 'array' : typeof value;
  if (type !== schema.type) return [`${path}: ${type} is not ${schema.type!}`];
  if (type === 'array') return (value as unknown[]).flatMap((item, index) => misfits(item, schema.items!, root, `${path}[${index}]`));
  if (type !== 'object') return [];
  const fields = value as Record<string, unknown>;
  return [
    ...schema.required!.filter((key) => !(key in fields)).map((key) => `${path}: ${key} is missing`),
    ...Object.entries(fields).flatMap(([key, held]) => {
      const property = schema.properties![key];
      return property === undefined ? [`${path}: ${key} is unknown`] : misfits(held, property, root, `${path}.${key}`);
    }),
  ];
}
