import { printExpression, printFacing, printPlace, printSubject } from '../printer.ts';
import type { Reader } from '../form.ts';
import type { Action, Expression, Facing, File, Place, Size, Subject, Word } from '../tree.ts';
import type { JsonFile } from './json.ts';
import { blockShapes, fileShape } from './shapes.ts';
import type { Shape, Value } from './shapes.ts';

/** The JSON form of a tree: what `print` would show of it. For a text that has faults, of what could be read of it. */
export function toJson(file: File): JsonFile {
  return nodeToJson(file as unknown as Fields, [fileShape]) as unknown as JsonFile;
}

type Fields = Readonly<Record<string, unknown>>;

function nodeToJson(node: Fields, shapes: readonly Shape[]): Fields {
  const said = 'verb' in node ? withWait(node as unknown as Action) : node;
  const shape = shapes.find((each) => fits(said, each)) ?? shapes[0]!;
  const entries = shape.fields.flatMap(({ name, value, optional }): [string, unknown][] => {
    const held = said[name];
    if (held === null || held === undefined) return [];
    const json = toJsonValue(held, value);
    return optional && isNothing(json) ? [] : [[name, json]];
  });
  return { ...shape.marks, ...Object.fromEntries(entries) };
}

function fits(node: Fields, { marks, unsaid, fields }: Shape): boolean {
  return Object.entries(marks).every(([name, mark]) => node[name] === mark)
    && Object.entries(unsaid).every(([name, value]) => fields.some((field) => field.name === name) || isSame(node[name], value))
    && fields.every(({ name, optional }) => optional || (node[name] !== null && node[name] !== undefined));
}

function isSame(held: unknown, value: unknown): boolean {
  return Array.isArray(value) ? Array.isArray(held) && held.length === 0 : held === value;
}

function withWait(action: Action): Fields {
  const wait = action.modifiers.find((modifier) => modifier.kind === 'for');
  return { ...action, wait: wait?.length ?? null, modifiers: action.modifiers.filter((modifier) => modifier !== wait) };
}

/** Whether there is nothing to say: no, none, or an object without properties. */
function isNothing(json: unknown): boolean {
  return json === false || (typeof json === 'object' && json !== null && Object.keys(json).length === 0);
}

function toJsonValue(held: unknown, value: Value): unknown {
  switch (value.kind) {
    case 'leaf': return leafToJson(held, value.reader);
    case 'comment': return (held as Word).text;
    case 'choice':
    case 'flag': return held;
    case 'list': return (held as readonly unknown[]).map((item) => toJsonValue(item, value.of));
    case 'node': return nodeToJson(held as Fields, value.shapes);
    case 'block': return nodeToJson(held as Fields, [blockShapes[value.context]]);
  }
}

function leafToJson(held: unknown, reader: Reader): unknown {
  switch (reader) {
    case 'name':
    case 'noun':
    case 'word':
    case 'text':
    case 'label': return (held as Word).text;
    case 'length':
    case 'count': return lengthToJson(held as Expression);
    case 'size': {
      const { width, length } = held as Size;
      return { width: lengthToJson(width), length: lengthToJson(length) };
    }
    case 'place': return placeToJson(held as Place);
    case 'facing': {
      const facing = held as Facing;
      return facing.kind === 'towards' ? placeToJson(facing.at) : printFacing(facing);
    }
    case 'subject': return printSubject(held as Subject);
  }
}

/** JSON knows neither minus nought nor what is too large for a number. */
function lengthToJson(expression: Expression): number | string {
  const value = expression.kind === 'negative' ? -plainNumber(expression.of) : plainNumber(expression);
  return Number.isFinite(value) && !Object.is(value, -0) ? value : printExpression(expression);
}

function plainNumber(expression: Expression): number {
  return expression.kind === 'number' && expression.unit === null ? expression.value : NaN;
}

function placeToJson(place: Place): unknown {
  return place.kind === 'at' ? [lengthToJson(place.x), lengthToJson(place.y)] : printPlace(place);
}
