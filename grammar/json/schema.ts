import type { Context, Reader } from '../form.ts';
import { keywords, nouns, wordPattern } from '../tokens.ts';
import { descriptionOf } from './descriptions.ts';
import { actionShapes, blockShapes, fileShape, linesIn, marginShape, modifierShapes, partShape } from './shapes.ts';
import type { Shape, Value } from './shapes.ts';

export type JsonSchema = Readonly<Record<string, unknown>>;

/** JSON Schema (draft 2020-12) of the JSON form of a `.drill` file. Every property is described. */
export function jsonSchema(): JsonSchema {
  const statements = [...new Set(contexts.flatMap(linesIn))];
  const kinds = [...new Set(statements.map(kindOf))];
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'A .drill file as JSON',
    ...objectOf(fileShape),
    $defs: {
      ...leaves,
      comment: { type: 'string', pattern: oneLine, description: 'A comment on one line, without the two slashes.' },
      margin: objectOf(marginShape),
      modifier: anyOf(modifierShapes.map(objectOf)),
      action: anyOf(actionShapes.map(objectOf)),
      part: objectOf(partShape),
      ...Object.fromEntries(contexts.map((context) => [`${context}Block`, objectOf(blockShapes[context])])),
      ...Object.fromEntries(kinds.map((kind) => [`${kind}Line`, anyOf(statements.filter((shape) => kindOf(shape) === kind).map(objectOf))])),
    },
  };
}

const contexts: readonly Context[] = ['file', 'drill', 'session', 'beats'];
const kindOf = ({ marks }: Shape): string => String(marks['kind']);
const oneLine = '^[^\\r\\n]*$';
const reserved = [...keywords.keys()].sort();
const whole = (pattern: string): string => `^${pattern}$`;
const ref = (definition: string): JsonSchema => ({ $ref: `#/$defs/${definition}` });
const anyOf = (schemas: readonly JsonSchema[]): JsonSchema => (schemas.length === 1 ? schemas[0]! : { anyOf: schemas });
const ownNouns = [...nouns].sort();
const point = { type: 'array', prefixItems: [ref('length'), ref('length')], minItems: 2, items: false };

/** Strings that are written by the rules of the language are told no further: whoever reads the file reads them. */
const leaves: Readonly<Record<Reader, JsonSchema>> = {
  name: { type: 'string', pattern: whole(wordPattern), not: { enum: reserved }, description: 'A name that you choose: one word.' },
  noun: { anyOf: [ref('name'), { enum: ownNouns }], description: `A name, or one of ${ownNouns.join(', ')}.` },
  word: { type: 'string', pattern: whole(wordPattern), description: 'One word.' },
  text: { type: 'string', pattern: oneLine, description: 'Any text on one line.' },
  label: { type: 'string', pattern: oneLine, description: 'A word or a text.' },
  subject: {
    type: 'string', description: 'A player by the name of their station or their own: `Base`, or `next Base` for who waits there.',
    pattern: whole(`(?:next )?${wordPattern}`),
  },
  length: { anyOf: [{ type: 'number' }, { type: 'string', minLength: 1 }], description: 'A number in the unit of the drill, or as it is written in a drill: `"3 yd"`, `"side + 2"`, `"area.width / 2"`.' },
  count: { anyOf: [{ type: 'number' }, { type: 'string', minLength: 1 }], description: 'A number, or as it is written in a drill: `"side + 2"`.' },
  size: {
    type: 'object', properties: { width: { ...ref('length'), description: 'How wide.' }, length: { ...ref('length'), description: 'How long, or how high.' } },
    required: ['width', 'length'], additionalProperties: false, description: 'Wide by long.',
  },
  place: { anyOf: [{ type: 'string', minLength: 1 }, point], description: 'A place: `[2, 13]`, or as it is written in a drill: `"Base"`, `"2 above Base"`, `"area.topRight"`.' },
  facing: { anyOf: [{ type: 'string', minLength: 1 }, point], description: 'A direction: `up`, `down`, `left`, `right` or a place.' },
};

function objectOf(shape: Shape): JsonSchema {
  const { marks, fields, doc } = shape;
  const described = (property: string, schema: JsonSchema): [string, JsonSchema] => [property, { ...schema, description: descriptionOf(kindOf(shape), property) }];
  return {
    ...(doc === null ? {} : { description: doc }),
    type: 'object',
    properties: Object.fromEntries([
      ...Object.entries(marks).map(([property, mark]) => described(property, { const: mark })),
      ...fields.map(({ name: property, value }) => described(property, property === 'margin' ? ref('margin') : schemaOf(value))),
    ]),
    required: [...Object.keys(marks), ...fields.filter(({ optional }) => !optional).map(({ name: property }) => property)],
    additionalProperties: false,
  };
}

function schemaOf(value: Value): JsonSchema {
  switch (value.kind) {
    case 'leaf': return ref(value.reader);
    case 'choice': return { enum: value.words };
    case 'comment': return ref('comment');
    case 'flag': return { const: true };
    case 'list': return { type: 'array', items: schemaOf(value.of), ...(value.least > 0 ? { minItems: value.least } : {}) };
    case 'block': return ref(`${value.context}Block`);
    case 'node': return anyOf([...new Set(value.shapes.map((shape) => JSON.stringify(referred(shape))))].map((text) => JSON.parse(text) as JsonSchema));
  }
}

/** Shapes that stand in many places have a definition of their own. */
function referred(shape: Shape): JsonSchema {
  if (shape === partShape) return ref('part');
  if (actionShapes.includes(shape)) return ref('action');
  if (modifierShapes.includes(shape)) return ref('modifier');
  return shape.fields.some(({ name: property }) => property === 'margin') ? ref(`${kindOf(shape)}Line`) : objectOf(shape);
}
