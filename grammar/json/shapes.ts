/**
 * What a node of the JSON form holds, worked out from the forms of the language: whatever is written in a text has one place in
 * JSON, and a word added to the vocabulary has its place at once. Reading, writing and the schema all go by these shapes.
 */
import { either } from '../form.ts';
import type { Context, Items, Piece, Reader, StatementForm } from '../form.ts';
import { modifierForms } from '../modifiers.ts';
import { statementForms } from '../statements/index.ts';
import { verbForms } from '../verbs.ts';

export interface Shape {
  /** What it is for, where the vocabulary says so. */
  readonly doc: string | null;
  /** What tells it from other shapes, as it stands in JSON. */
  readonly marks: Readonly<Record<string, string | true>>;
  /** What the tree holds for it and JSON leaves out. */
  readonly unsaid: Readonly<Record<string, null | false | readonly []>>;
  readonly fields: readonly ShapeField[];
}

export interface ShapeField {
  readonly name: string;
  readonly value: Value;
  /** Whether it is left out when there is nothing to say. */
  readonly optional: boolean;
}

export type Value =
  | { readonly kind: 'leaf'; readonly reader: Reader }
  | { readonly kind: 'choice'; readonly words: readonly string[] }
  | { readonly kind: 'comment' }
  | { readonly kind: 'flag' }
  | { readonly kind: 'list'; readonly of: Value; readonly least: number }
  | { readonly kind: 'node'; readonly shapes: readonly Shape[] }
  | { readonly kind: 'block'; readonly context: Context };

/** The statements that may stand in a block. */
export function linesIn(context: Context): readonly Shape[] {
  return lines[context];
}

const comments: Value = { kind: 'list', of: { kind: 'comment' }, least: 0 };
const empty: Shape = { doc: null, marks: {}, unsaid: {}, fields: [] };
const required = (name: string, value: Value): ShapeField => ({ name, value, optional: false });
const optional = (name: string, value: Value): ShapeField => ({ name, value, optional: true });
const node = (...shapes: readonly Shape[]): Value => ({ kind: 'node', shapes });
const list = (of: Value, least: number): Value => ({ kind: 'list', of, least });

export const marginShape: Shape = {
  ...empty, fields: [optional('above', comments), optional('beside', { kind: 'comment' }), optional('gap', { kind: 'flag' })],
};
const margin = optional('margin', node(marginShape));

export const modifierShapes: readonly Shape[] = modifierForms.flatMap(({ alternative, doc }) =>
  shapesOf([either(alternative)]).map((shape) => ({ ...shape, doc })));

export const actionShapes: readonly Shape[] = verbForms.map(({ verb, pieces, doc }) => ({
  doc,
  marks: { verb },
  unsaid: { target: null, about: null, receiver: null },
  fields: [...shapesOf(pieces)[0]!.fields.map(asWait), optional('modifiers', list(node(...modifierShapes), 0))],
}));

export const partShape: Shape = {
  ...empty, doc: 'What one player does in a beat.', fields: [required('subject', { kind: 'leaf', reader: 'subject' }), required('chain', list(node(...actionShapes), 1))],
};

const beatShape: Shape = {
  ...empty, doc: 'One line of a sequence or a phase.', marks: { kind: 'beat' },
  fields: [required('lead', node(partShape)), optional('meanwhile', list(node(partShape), 0)), margin],
};

const statements = statementForms.map((form) => ({ form, shapes: statementShapes(form) }));
const standing = (context: Context): readonly Shape[] => statements.flatMap(({ form, shapes }) => (form.stands.includes(context) ? shapes : []));
const lines: Readonly<Record<Context, readonly Shape[]>> = {
  file: standing('file'), drill: standing('drill'), session: standing('session'), beats: [beatShape],
};

const blockOf = (context: Context): Shape => ({
  ...empty, fields: [required('lines', list(node(...lines[context]), 0)), optional('end', comments)],
});
export const blockShapes: Readonly<Record<Context, Shape>> = {
  file: blockOf('file'), drill: blockOf('drill'), session: blockOf('session'), beats: blockOf('beats'),
};

export const fileShape: Shape = {
  ...empty, marks: { kind: 'file' }, fields: [required('items', list(node(...lines.file), 0)), optional('end', comments)],
};

/** A statement that is the mirror image of another has no block of its own. */
function statementShapes({ kind, pieces, body, doc }: StatementForm): Shape[] {
  return shapesOf(pieces).map((shape) => {
    const marks = kind === null ? shape.marks : { kind, ...shape.marks };
    const block = body === null || marks['kind'] === 'mirrored' ? [] : [required('body', { kind: 'block', context: body })];
    return { ...shape, doc, marks, fields: [...shape.fields, ...block, margin] };
  });
}

/** The tree keeps the length of `waits 1 s` among the modifiers; in JSON it is a property of the action. */
function asWait(field: ShapeField): ShapeField {
  return field.name === 'wait' ? required('wait', { kind: 'leaf', reader: 'length' }) : field;
}

/** One shape for every way through the choices of a form. */
function shapesOf(pieces: readonly Piece[], inMaybe = false): readonly Shape[] {
  return pieces.reduce<readonly Shape[]>((shapes, piece) => shapes.flatMap((before) => shapesOfPiece(piece, inMaybe).map((after) => ({
    ...empty, marks: { ...before.marks, ...after.marks }, unsaid: { ...before.unsaid, ...after.unsaid }, fields: [...before.fields, ...after.fields],
  }))), [empty]);
}

function shapesOfPiece(piece: Piece, inMaybe: boolean): readonly Shape[] {
  if (typeof piece === 'string' || 'word' in piece) return [empty];
  if ('maybe' in piece) return shapesOf(piece.maybe, true);
  if ('either' in piece) return piece.either.flatMap(({ set, pieces }) => shapesOf(pieces, inMaybe).map((shape) => withSet(shape, set)));
  return [{ ...empty, fields: [{ name: piece.field, value: valueOf(piece), optional: inMaybe }] }];
}

function withSet(shape: Shape, set: Readonly<Record<string, string | null | boolean | readonly []>>): Shape {
  const said = Object.entries(set).filter((entry): entry is [string, string | true] => typeof entry[1] === 'string' || entry[1] === true);
  const unsaid = Object.entries(set).filter((entry): entry is [string, null | false | readonly []] => typeof entry[1] !== 'string' && entry[1] !== true);
  return { ...shape, marks: { ...Object.fromEntries(said), ...shape.marks }, unsaid: { ...Object.fromEntries(unsaid), ...shape.unsaid } };
}

function valueOf(piece: Extract<Piece, { field: string }>): Value {
  if ('node' in piece) return node(...shapesOf(piece.node));
  if ('list' in piece) return list(itemOf(piece.list), piece.between === '->' ? 2 : 1);
  return typeof piece.as === 'string' ? { kind: 'leaf', reader: piece.as } : { kind: 'choice', words: piece.as };
}

function itemOf(items: Items): Value {
  if (typeof items === 'string') return { kind: 'leaf', reader: items };
  return 'list' in items ? list(itemOf(items.list), items.between === '->' ? 2 : 1) : node(...shapesOf(items));
}
