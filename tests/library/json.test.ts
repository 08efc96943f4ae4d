import { globSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Reader } from '../../grammar/form.ts';
import { fromJson } from '../../grammar/json/from-json.ts';
import { jsonSchema } from '../../grammar/json/schema.ts';
import { linesIn } from '../../grammar/json/shapes.ts';
import type { Shape, Value } from '../../grammar/json/shapes.ts';
import { toJson } from '../../grammar/json/to-json.ts';
import { parse } from '../../grammar/parse.ts';
import { print } from '../../grammar/printer.ts';
import { correctFile } from '../support/correct-file.ts';

/** Milliseconds: for a busy machine. */
const patience = 120_000;
const root = new URL('../../', import.meta.url);
const files = globSync(['shared/examples/*.drill', 'tests/**/*.drill'], { cwd: root.pathname })
  .map((name) => [name, readFileSync(new URL(name, root), 'utf8')] as const);

const fitsSchema = new Ajv2020({ allErrors: true }).compile(jsonSchema());

describe('there and back without loss', () => {
  test.each(files)('%s', (_, text) => thereAndBack(text));
  test('any text without faults', () => {
    fc.assert(fc.property(correctFile(), thereAndBack), { numRuns: 1500 });
  }, patience);
});

/** The printed text gives JSON that fits the schema, and that JSON gives the printed text and itself again. */
function thereAndBack(text: string): void {
  const printed = print(parse(text).file);
  const json: unknown = JSON.parse(JSON.stringify(toJson(parse(printed).file)));
  expect(fitsSchema(json) ? [] : fitsSchema.errors).toEqual([]);
  const back = fromJson(json);
  expect(back.faults).toEqual([]);
  expect(print(back.file!)).toBe(printed);
  expect(JSON.parse(JSON.stringify(toJson(back.file!)))).toEqual(json);
}

test('what is read from any JSON is written and read back as it was, and fits the schema', () => {
  let accepted = 0;
  fc.assert(fc.property(anyFile(), (json) => {
    const { file } = fromJson(json);
    if (file === null) return;
    accepted++;
    expect(fitsSchema(json) ? [] : fitsSchema.errors).toEqual([]);
    thereAndBack(print(file));
  }), { numRuns: 2000 });
  expect(accepted).toBeGreaterThan(100);
}, patience);

test('any JSON gets an answer', () => {
  fc.assert(fc.property(fc.oneof(fc.jsonValue(), brokenFile()), (json) => {
    const { file, faults } = fromJson(json);
    expect(file === null).toBe(faults.length > 0);
    for (const { path } of faults) expect(holds(json, path)).toBe(true);
  }), { numRuns: 1500 });
}, patience);

describe('every property is described', () => {
  const undescribed = (schema: unknown, path: string): string[] => {
    if (typeof schema !== 'object' || schema === null) return [];
    const { properties } = schema as { readonly properties?: Readonly<Record<string, { readonly description?: string | null }>> };
    const own = Object.entries(properties ?? {}).filter(([, { description }]) => !description).map(([name]) => `${path}/${name}`);
    return [...own, ...Object.entries(schema).flatMap(([name, held]) => undescribed(held, `${path}/${name}`))];
  };
  test('in words', () => expect(undescribed(jsonSchema(), '')).toEqual([]));
});

// ---------------------------------------------------------------- JSON that is right, or nearly

/** Made from the same shapes that it is read by, with leaves of all kinds. */
function anyFile(): fc.Arbitrary<unknown> {
  return fc.record({ kind: fc.constant('file'), items: fc.array(anyNode(linesIn('file'), 2), { minLength: 1, maxLength: 2 }) });
}

function anyNode(shapes: readonly Shape[], depth: number): fc.Arbitrary<unknown> {
  return fc.constantFrom(...shapes).chain(({ marks, fields }) => fc.record(
    Object.fromEntries([
      ...Object.entries(marks).map(([name, mark]) => [name, fc.constant(mark)] as const),
      ...fields.map(({ name, value }) => [name, anyValue(value, depth)] as const),
    ]),
    { requiredKeys: [...Object.keys(marks), ...fields.filter(({ optional }) => !optional).map(({ name }) => name)] },
  ));
}

function anyValue(value: Value, depth: number): fc.Arbitrary<unknown> {
  switch (value.kind) {
    case 'leaf': return leaves[value.reader];
    case 'choice': return fc.constantFrom(...value.words);
    case 'comment': return fc.constantFrom('', 'why', ' two  spaces ', '// again');
    case 'flag': return fc.constant(true);
    case 'list': return fc.array(anyValue(value.of, depth), { minLength: value.least, maxLength: 2 });
    case 'node': return anyNode(value.shapes, depth);
    case 'block': {
      const lines = linesIn(value.context).filter(({ fields }) => depth > 0 || fields.every((field) => field.value.kind !== 'block'));
      return fc.record({ lines: fc.array(anyNode(lines, depth - 1), { maxLength: 3 }) });
    }
  }
}

/** A few of them cannot be written. */
const name = fc.oneof({ weight: 40, arbitrary: fc.constantFrom('A', 'Base', 'Flügel', 'm', 'x1') }, { weight: 1, arbitrary: fc.constantFrom('to', 'a b', '') });
const text = fc.oneof({ weight: 20, arbitrary: fc.constantFrom('', 'one', 'say "go"', 'don’t // stop') }, { weight: 1, arbitrary: fc.constantFrom('a\nb', '"”»’') });
const number = fc.oneof(fc.integer({ min: -9, max: 99 }), fc.double({ noNaN: true, noDefaultInfinity: true }));
const length = fc.oneof({ weight: 20, arbitrary: number }, { weight: 10, arbitrary: fc.constantFrom('3 yards', ' side  + 2', '(1 + 2) * area.width', '-0', '7') }, { weight: 1, arbitrary: fc.constantFrom('', '3 +', '1 // one', NaN) });
const place = fc.oneof(
  { weight: 10, arbitrary: fc.tuple(length, length) },
  { weight: 20, arbitrary: fc.constantFrom('Base', 'next Base', '2 above area.top', 'between (1, 2) and A + (1, 1)', 'mirror of A across width') },
  { weight: 1, arbitrary: fc.constantFrom('up', '2 above', 'A\nball at B', 'A {') },
);
const leaves: Readonly<Record<Reader, fc.Arbitrary<unknown>>> = {
  name, noun: fc.oneof(name, fc.constantFrom('coach', 'floaters')), word: fc.constantFrom('U13', 'left', 'cones'), text, label: text,
  subject: fc.oneof(name, fc.constant('next Base')), length, count: fc.oneof(number, fc.constantFrom('side + 1', '2')),
  size: fc.record({ width: length, length }), place, facing: fc.oneof(place, fc.constantFrom('up', 'left')),
};

/** A file in which one thing is something else, has gone or has come. */
function brokenFile(): fc.Arbitrary<unknown> {
  return fc.tuple(fc.constantFrom(...files), fc.nat(), fc.oneof(fc.jsonValue(), fc.constant(undefined))).map(([[, text], at, held]) => {
    const json: unknown = JSON.parse(JSON.stringify(toJson(parse(text).file)));
    const places: [Record<string, unknown>, string][] = [];
    const visit = (value: unknown): void => {
      if (typeof value !== 'object' || value === null) return;
      for (const [key, inner] of Object.entries(value)) {
        places.push([value as Record<string, unknown>, key]);
        visit(inner);
      }
    };
    visit(json);
    const [node, key] = places[at % places.length]!;
    if (held === undefined && !Array.isArray(node)) delete node[key];
    else Object.defineProperty(node, at % 3 === 0 && !Array.isArray(node) ? '__proto__' : key, { value: held ?? null, enumerable: true, configurable: true });
    return json;
  });
}

/** Whether there is something at this path. */
function holds(json: unknown, path: string): boolean {
  return path.split('/').slice(1).map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~')).reduce<{ held: unknown } | null>(
    (found, part) => (typeof found?.held === 'object' && found.held !== null && Object.hasOwn(found.held, part) ? { held: (found.held as Record<string, unknown>)[part] } : null),
    { held: json },
  ) !== null;
}
