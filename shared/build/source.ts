/**
 * Writes the builder's classes: a method for every verb, modifier and statement of the language, in the order of its words. What must
 * be said comes first, what may be said stands in one object at the end.
 */
import type { Context, Reader } from '../../grammar/form.ts';
import { actionShapes, linesIn, modifierShapes } from '../../grammar/json/shapes.ts';
import type { Shape, ShapeField, Value } from '../../grammar/json/shapes.ts';
import { toJson } from '../../grammar/json/to-json.ts';
import { parse } from '../../grammar/parse.ts';
import { statementForms } from '../../grammar/statements/index.ts';
import { verbForms } from '../../grammar/verbs.ts';
import { words } from '../../grammar/words.ts';

/** Every generated file by name. */
export function builderSources(madeBy: string): Map<string, string> {
  return new Map([['verbs.ts', verbs(madeBy)], ['statements.ts', statements(madeBy)]]);
}

/** The name of the method for some words: `wins the ball from` is `winsTheBallFrom`. */
export function methodName(words: string): string {
  return words.replaceAll(/[ .](\p{L})/gu, (_, letter: string) => letter.toUpperCase());
}

function verbs(madeBy: string): string {
  return [
    `// ${madeBy}`,
    "import type { Length, Spot, Who } from '../values.ts';\n",
    '/** What a player does: the verbs of the language. */',
    'export abstract class Verbs<Result> {',
    '  protected abstract does(action: Readonly<Record<string, unknown>>): Result;',
    ...actionShapes.map((shape) => {
      const verb = String(shape.marks['verb']);
      return method(methodOf(verb, [shape]), verbForms.find((form) => form.verb === verb)?.example, 'Result', (said) => `return this.does(${said});`, ['modifiers']);
    }),
    '}\n',
    '/** How it is done: the modifiers of the language, each for the action before it. */',
    'export abstract class Modifiers<Result> {',
    '  protected abstract how(modifier: Readonly<Record<string, unknown>>): Result;',
    ...modifierShapes.map((shape) => {
      const kind = String(shape.marks['kind']);
      const example = words.find(({ word, group }) => group === 'modifier' && word === (kind === 'gait' ? 'at' : kind))?.example;
      return method(methodOf(kind, [shape]), example, 'Result', (said) => `return this.how(${said});`, []);
    }),
    '}\n',
  ].join('\n');
}

function statements(madeBy: string): string {
  return [
    `// ${madeBy}`,
    "import { beats, block, Lines } from '../lines.ts';",
    "import { Player } from '../play.ts';",
    "import type { Beat, Doing } from '../play.ts';",
    "import { extra } from '../values.ts';",
    "import type { Length, Spot, Who } from '../values.ts';\n",
    ...(['file', 'drill', 'session'] as const).flatMap((context) => [
      `/** The lines of a ${context}. */`, `export class ${className(context)} extends Lines {`, ...methodsIn(context), '}\n',
    ]),
  ].join('\n');
}

const className = (context: Context): string => `${context[0]!.toUpperCase()}${context.slice(1)}Lines`;

/** Shapes of one name are one method, and what only some of them have may be said. */
function methodsIn(context: Context): string[] {
  const flat = linesIn(context).flatMap(withoutInner);
  return [...new Set(flat.map(nameOf))].map((name) => {
    const said = methodOf(name, flat.filter((shape) => nameOf(shape) === name));
    const kind = String(said.marks['kind']);
    return method(said, examples.get(name), returned(kind, said.fields), (json) => `this.add(${json});${returning(kind, said.fields)}`, ['margin']);
  });
}

/** For each method a line of text that says the same, where the vocabulary has one. */
const examples: ReadonlyMap<string, string> = new Map([...words, ...statementForms].map(({ example }) => example).toReversed().flatMap((example) =>
  [example, `drill "" {\n${example}\n}`, `session "" {\n${example}\n}`].flatMap((text): [string, string][] => {
    const { file, faults } = parse(text);
    const [top] = toJson(file).items as readonly Line[];
    const line = text === example ? top : top?.body?.lines[0];
    if (faults.length > 0 || line === undefined) return [];
    const kinds = [line.kind, line.rule, line.follow === true ? 'follow' : undefined, line.shape?.kind, line.for?.kind];
    return [[methodName(kinds.filter((each) => each !== undefined).join(' ')), example.split('\n')[0]!.replace(/ \{.*$/, '')]];
  })));

/** What may tell one statement of the JSON form from another. */
interface Line {
  readonly kind: string;
  readonly rule?: string;
  readonly follow?: true;
  readonly shape?: { readonly kind: string };
  readonly for?: { readonly kind: string };
  readonly body?: { readonly lines: readonly Line[] };
}

/** A statement that holds a node with shapes of its own, such as a zone, is one statement for each of them. */
function withoutInner(shape: Shape): Shape[] {
  const inner = shape.fields.find(({ name, value }) => name !== 'margin' && value.kind === 'node');
  if (inner?.value.kind !== 'node') return [shape];
  return inner.value.shapes.map((one) => ({
    ...shape, fields: shape.fields.flatMap((field) => (field === inner ? one.fields.map((each) => ({ ...each, inside: inner.name, mark: one.marks['kind'] })) : [field])),
  }));
}

interface InnerField extends ShapeField {
  /** The property of the statement that holds it, and the kind of that. */
  readonly inside?: string;
  readonly mark?: string;
}

function nameOf({ marks, fields }: Shape): string {
  const [kind, ...more] = Object.entries(marks).map(([key, mark]) => (mark === true ? key : mark));
  const inner = (fields as readonly InnerField[]).find(({ mark }) => mark !== undefined)?.mark;
  return methodName([kind, ...more, ...(inner === undefined ? [] : [inner])].join(' '));
}

interface Method {
  readonly name: string;
  readonly doc: string;
  readonly marks: Shape['marks'];
  readonly fields: readonly InnerField[];
}

function methodOf(words: string, shapes: readonly Shape[]): Method {
  const fullest = shapes.reduce((best, each) => (each.fields.length > best.fields.length ? each : best));
  const everywhere = (name: string): boolean => shapes.every(({ fields }) => fields.some((field) => field.name === name));
  const all = new Map([fullest, ...shapes].toReversed().flatMap(({ fields }) => fields.map((field): [string, InnerField] => [field.name, field])));
  const order = [...new Set([fullest, ...shapes].flatMap(({ fields }) => fields.map(({ name }) => name)))];
  return {
    name: methodName(words), doc: fullest.doc ?? '', marks: fullest.marks,
    fields: order.map((name) => (everywhere(name) ? all.get(name)! : { ...all.get(name)!, optional: true })),
  };
}

/** `skipped` are fields that are said in another way. */
function method({ name, doc, marks, fields: all }: Method, example: string | undefined, result: string, body: (said: string) => string, skipped: readonly string[]): string {
  const fields = all.filter((field) => !skipped.includes(field.name));
  const needed = fields.filter((field) => !field.optional || isLeadingName(field));
  const more = fields.filter((field) => !needed.includes(field));
  const rest = more.length === 0 && needed.at(-1)?.value.kind === 'list';
  const parameters = needed.flatMap((field, index) => parametersOf(field, rest && index === needed.length - 1));
  const inner = fields.find(({ inside }) => inside !== undefined);
  // What does not belong inside is taken out of the rest.
  const beside = inner === undefined ? [] : more.filter((field) => field.inside === undefined).map(saidOf);
  if (more.length > 0) parameters.push(`${beside.length === 0 ? 'more' : `{ ${[...beside, '...more'].join(', ')} }`}: { ${more.map((field) => `readonly ${field.name}?: ${typeOf(field.value)}`).join('; ')} } = {}`);
  const generic = result === 'Name' ? '<Name extends string | null>' : '';
  const outside = [...needed.filter(({ inside }) => inside === undefined).map(saidOf), ...beside];
  const inside = needed.filter((field) => field.inside !== undefined).map(saidOf);
  const marked = Object.entries(marks).map(([key, mark]) => `${key}: ${JSON.stringify(mark).replaceAll('"', "'")}`);
  const spread = more.length > 0 ? ['...extra(more)'] : [];
  const said = inner === undefined ? [...marked, ...outside, ...spread]
    : [...marked, ...outside, `${inner.inside!}: { kind: '${inner.mark!}', ${[...inside, ...spread].join(', ')} }`];
  return [
    `  /** ${doc}${example === undefined ? '' : ` \`${example}\``} */`,
    `  ${name}${generic}(${parameters.join(', ')}): ${result} {`,
    ...body(`{ ${said.join(', ')} }`).split(/(?<=;)(?=return )/).map((line) => `    ${line}`),
    '  }',
  ].join('\n');
}

/** Equipment may have a name, which is said first, or null. */
function isLeadingName({ name, value }: ShapeField): boolean {
  return name === 'name' && value.kind === 'leaf' && value.reader === 'name';
}

function parametersOf(field: InnerField, rest: boolean): string[] {
  if (field.value.kind === 'leaf' && field.value.reader === 'size') return ['width: Length', 'length: Length'];
  if (isLeadingName(field) && field.optional) return [`name: Name`];
  return [`${rest ? '...' : ''}${parameterName(field.name)}: ${typeOf(field.value)}`];
}

function saidOf(field: InnerField): string {
  const { name, value } = field;
  if (value.kind === 'leaf' && value.reader === 'size') return 'size: { width, length }';
  if (isLeadingName(field) && field.optional) return 'name: name ?? undefined';
  if (value.kind === 'block') return `body: ${blockOf(value.context)}`;
  return parameterName(name) === name ? name : `${name}: ${parameterName(name)}`;
}

/** The words that JavaScript keeps for itself. */
function parameterName(name: string): string {
  return name === 'for' ? 'what' : name;
}

function blockOf(context: Context): string {
  return context === 'beats' ? 'beats(body)' : `block(new ${className(context)}('${context}'), body)`;
}

const readerTypes: Readonly<Record<Reader, string>> = {
  name: 'string', noun: 'Who', word: 'string', text: 'string', label: 'string', place: 'Spot', length: 'Length', count: 'Length',
  size: 'readonly [Length, Length]', facing: 'Spot', subject: 'Who',
};

function typeOf(value: Value): string {
  switch (value.kind) {
    case 'leaf': return readerTypes[value.reader];
    case 'choice': return value.words.map((word) => `'${word}'`).join(' | ');
    case 'comment': return 'string';
    case 'flag': return 'true';
    case 'list': {
      const item = typeOf(value.of);
      return `readonly ${item.includes(' ') ? `(${item})` : item}[]`;
    }
    case 'node': return value.shapes.map(({ fields }) => `{ ${fields.map((field) => `readonly ${field.name}${field.optional ? '?' : ''}: ${typeOf(field.value)}`).join('; ')} }`).join(' | ');
    case 'block': return value.context === 'beats' ? 'readonly (Doing | Beat)[]' : `(lines: ${className(value.context)}) => void`;
  }
}

const doers: ReadonlySet<string> = new Set(['station', 'player', 'keeper']);

/** Whoever can do something comes back as a player, what has a name as that name. */
function returned(kind: string, fields: readonly ShapeField[]): string {
  if (doers.has(kind)) return 'Player';
  const name = fields.find(isLeadingName);
  if (name === undefined) return 'void';
  return name.optional ? 'Name' : 'string';
}

function returning(kind: string, fields: readonly ShapeField[]): string {
  if (doers.has(kind)) return 'return new Player(name);';
  return fields.some(isLeadingName) ? 'return name;' : '';
}
