import { parse } from '../parse.ts';
import { print } from '../printer.ts';
import { nearest } from '../spelling.ts';
import type { File } from '../tree.ts';
import { isComment, readLeaf, shown } from './leaf.ts';
import { blockShapes, fileShape } from './shapes.ts';
import type { Shape, Value } from './shapes.ts';
import { toJson } from './to-json.ts';

/** What is wrong, and where. */
export interface JsonFault {
  /** JSON Pointer (RFC 6901): `/items/0/body/lines/3/size/width`; empty for the whole. */
  readonly path: string;
  /** In words: `must be a number or …`. */
  readonly message: string;
}

/**
 * The tree of what `JSON.parse` made of a file in the JSON form; its places are those in the printed text. Total: whatever is
 * wrong is told in the faults, and then there is no file.
 */
export function fromJson(json: unknown): { readonly file: File; readonly faults: readonly [] } | { readonly file: null; readonly faults: readonly [JsonFault, ...JsonFault[]] } {
  const { node, faults } = readValue(json, { kind: 'node', shapes: [fileShape] }, 0);
  const [first, ...more] = faults.slice(0, mostFaults);
  if (first !== undefined) return { file: null, faults: [first, ...more] };
  const draft = node as File;
  const { file, faults: unread } = parse(print(draft));
  if (unread.length === 0) return { file, faults: [] };
  // Each leaf can be read by itself, but not what they make together.
  return { file: null, faults: [{ path: difference(toJson(draft), toJson(file), ''), message: `cannot be written: ${unread[0]!.message}` }] };
}

/** Reads one node of the JSON form, such as a statement, without what stands around it. */
export function readNode(json: unknown, shapes: readonly Shape[]): Reading {
  return readValue(json, { kind: 'node', shapes }, 0);
}

/** A node of the tree without places in a text; of use only when there are no faults. */
export interface Reading {
  readonly node: unknown;
  readonly faults: readonly JsonFault[];
}

/** More are of no help. */
const mostFaults = 100;
/** Blocks within blocks, as in a text. */
const deepest = 64;

const fine = (node: unknown): Reading => ({ node, faults: [] });
const bad = (message: string, path = ''): Reading => ({ node: null, faults: [{ path, message }] });

function readValue(json: unknown, value: Value, depth: number): Reading {
  switch (value.kind) {
    case 'leaf': {
      if (value.reader === 'size') return readObject(json, [sizeShape], depth);
      const leaf = readLeaf(json, value.reader);
      return 'fault' in leaf ? bad(`must be ${leaf.fault}`) : fine(leaf.node);
    }
    case 'choice': return value.words.some((word) => word === json) ? fine(json) : bad(notOneOf(json, value.words));
    case 'comment': return isComment(json) ? fine({ text: json.trim() }) : bad('must be a comment: a text on one line');
    case 'flag': return json === true ? fine(true) : bad(`must be \`true\`, or left out, not ${shown(json)}`);
    case 'list': return readList(json, value, depth);
    case 'node': return readObject(json, value.shapes, depth);
    case 'block': return depth < deepest ? readObject(json, [blockShapes[value.context]], depth + 1) : bad(`is inside ${deepest} blocks already: no drill needs so many`);
  }
}

const sizeShape: Shape = {
  doc: null, marks: {}, unsaid: {},
  fields: ['width', 'length'].map((name) => ({ name, value: { kind: 'leaf', reader: 'length' }, optional: false })),
};

function readList(json: unknown, { of, least }: Extract<Value, { kind: 'list' }>, depth: number): Reading {
  if (!Array.isArray(json)) return bad(`must be a list, not ${shown(json)}`);
  if (json.length < least) return bad(`must be a list of ${least === 1 ? 'one' : 'two'} or more`);
  const nodes: unknown[] = [];
  const faults: JsonFault[] = [];
  for (const [index, item] of json.entries()) {
    if (faults.length >= mostFaults) break;
    const reading = readValue(item, of, depth);
    nodes.push(reading.node);
    faults.push(...within(String(index), reading));
  }
  return { node: nodes, faults };
}

/** As the one of these shapes that it is; when it is none of them, the faults are those of the one that it comes nearest to. */
function readObject(json: unknown, shapes: readonly Shape[], depth: number): Reading {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) return bad(`must be an object${markName(shapes)}, not ${shown(json)}`);
  const given = new Map(Object.entries(json));
  let fitting = shapes;
  const marked = new Set<string>();
  for (let name = nextMark(fitting, marked); name !== undefined; name = nextMark(fitting, marked)) {
    marked.add(name);
    const mark = given.get(name);
    const words = [...new Set(fitting.map(({ marks }) => String(marks[name!])))];
    fitting = fitting.filter(({ marks }) => marks[name!] === mark);
    if (fitting.length === 0) return given.has(name) ? bad(notOneOf(mark, words), `/${name}`) : bad(`needs \`${name}\`: ${either(words)}`);
  }
  const shape = fitting.length === 1 ? fitting[0]! : fitting.reduce((best, each) => (distance(given, each) < distance(given, best) ? each : best));
  const faults = misfits(given, shape).map((misfit) => told(misfit, given, shape));
  const node: Record<string, unknown> = { ...shape.unsaid, ...shape.marks };
  for (const { name, value } of shape.fields) {
    const reading = given.has(name) ? readValue(given.get(name), value, depth) : fine(nothing(value));
    node[name] = reading.node;
    faults.push(...within(name, reading));
  }
  return { node: 'verb' in shape.marks ? withWait(node) : node, faults };
}

/** A property that tells all of these shapes apart and has not been looked at yet. */
function nextMark(shapes: readonly Shape[], seen: ReadonlySet<string>): string | undefined {
  return Object.keys(shapes[0]!.marks).find((name) => !seen.has(name) && shapes.every(({ marks }) => name in marks));
}

function markName(shapes: readonly Shape[]): string {
  const name = nextMark(shapes, new Set());
  return name === undefined ? '' : ` with \`${name}\``;
}

/** A mark that is not there is the surest sign that another shape was meant. */
function distance(given: Given, shape: Shape): number {
  return misfits(given, shape).reduce((sum, { name }) => sum + (name in shape.marks ? 2 : 1), 0);
}

type Given = ReadonlyMap<string, unknown>;
interface Misfit {
  readonly name: string;
  readonly is: 'missing' | 'another' | 'unknown';
}

/** Properties that are not there, that are another than the shape is known by, and that have no place in it. */
function misfits(given: Given, { marks, fields }: Shape): Misfit[] {
  const found: Misfit[] = [];
  for (const [name, mark] of Object.entries(marks)) if (given.get(name) !== mark) found.push({ name, is: given.has(name) ? 'another' : 'missing' });
  for (const { name, optional } of fields) if (!optional && !given.has(name)) found.push({ name, is: 'missing' });
  for (const name of given.keys()) if (!(Object.hasOwn(marks, name) || fields.some((field) => field.name === name))) found.push({ name, is: 'unknown' });
  return found;
}

function told({ name, is }: Misfit, given: Given, { marks, fields }: Shape): JsonFault {
  const path = `/${escaped(name)}`;
  switch (is) {
    case 'missing': return { path: '', message: `needs \`${name}\`` };
    case 'another': return { path, message: `must be \`${String(marks[name])}\`` };
    case 'unknown': {
      const known = [...Object.keys(marks), ...fields.map((field) => field.name)];
      const guess = nearest(name, known);
      const more = guess === null || given.has(guess) ? `it has ${either(known).replace(/ or ([^ ]*)$/, ' and $1')}` : `did you mean \`${guess}\`?`;
      return { path, message: `is not a property of this: ${more}` };
    }
  }
}

/** What the tree holds where nothing is said. */
function nothing(value: Value): unknown {
  switch (value.kind) {
    case 'list': return [];
    case 'flag': return false;
    // Of what may be left out only the margin is a node.
    case 'node': return { above: [], beside: null, gap: false };
    case 'leaf':
    case 'choice':
    case 'comment':
    case 'block': return null;
  }
}

function withWait({ wait, ...action }: Record<string, unknown>): unknown {
  return wait === undefined ? action : { ...action, modifiers: [{ kind: 'for', length: wait }, ...action['modifiers'] as readonly unknown[]] };
}

function within(name: string, { faults }: Reading): JsonFault[] {
  return faults.map(({ path, message }) => ({ path: `/${escaped(name)}${path}`, message }));
}

function escaped(name: string): string {
  return name.replaceAll('~', '~0').replaceAll('/', '~1');
}

function notOneOf(json: unknown, words: readonly string[]): string {
  const guess = typeof json === 'string' ? nearest(json, words) : null;
  return `must be ${guess === null ? either(words) : `\`"${guess}"\`, perhaps`}, not ${shown(json)}`;
}

/** A long list is told in part. */
function either(words: readonly string[]): string {
  if (words.length > 24) return `one of the ${words.length} words that the schema lists, such as ${words.slice(0, 3).map((word) => `\`${word}\``).join(', ')}`;
  const all = words.map((word) => `\`${word}\``);
  return all.length === 1 ? all[0]! : `${all.slice(0, -1).join(', ')} or ${all.at(-1)!}`;
}

/** Where two values in the JSON form first differ. */
function difference(a: unknown, b: unknown, path: string): string {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return path;
  const [before, after] = [new Map(Object.entries(a)), new Map(Object.entries(b))];
  for (const [name, held] of before) {
    if (JSON.stringify(held) !== JSON.stringify(after.get(name))) return difference(held, after.get(name), `${path}/${escaped(name)}`);
  }
  return path;
}
