import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Context, Items, Piece, Reader, StatementForm } from '../../grammar/form.ts';
import { modifierForms } from '../../grammar/modifiers.ts';
import { parse } from '../../grammar/parse.ts';
import { print } from '../../grammar/printer.ts';
import { statementForms } from '../../grammar/statements/index.ts';
import type { Span } from '../../grammar/tree.ts';
import { unitSpellings } from '../../grammar/units.ts';
import { verbForms } from '../../grammar/verbs.ts';
import { words } from '../../grammar/words.ts';

const kite = readFileSync(new URL('../support/kite.drill', import.meta.url), 'utf8');
const games = readFileSync(new URL('../grammar/games.drill', import.meta.url), 'utf8');

/** Milliseconds: for a busy machine. */
const patience = 120_000;

describe('any text is read', () => {
  test('of any characters', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 60 }), readsWell), { numRuns: 5000 });
  }, patience);
  test('of the words and signs of the language in any order', () => {
    fc.assert(fc.property(soup(), readsWell), { numRuns: 9000 });
  }, patience);
  test('that was a file before some edits', () => {
    fc.assert(fc.property(edited(kite), readsWell), { numRuns: 1200 });
    fc.assert(fc.property(edited(games), readsWell), { numRuns: 800 });
  }, patience);
});

test('a text without faults is read back as the same tree from its printed form', () => {
  fc.assert(fc.property(correctFile(), (text) => {
    const { file, faults } = parse(text);
    expect(faults.map(({ message, span }) => [message, text.slice(span.from, span.to)])).toEqual([]);
    const again = parse(print(file));
    expect(again.faults).toEqual([]);
    expect(meaning(again.file)).toEqual(meaning(file));
    readsWell(text);
  }), { numRuns: 4000 });
}, patience);

/** Never throws, keeps every span inside the text and inside its parent's, and prints to a fixed point. */
function readsWell(text: string): void {
  const { file, faults } = parse(text);
  const whole: Span = { from: 0, to: text.length };
  for (const { span } of faults) expectInside(span, whole);
  expectSpansInside(file, whole, whole);
  const printed = print(file);
  expect(print(parse(printed).file)).toBe(printed);
}

function expectSpansInside(value: unknown, parent: Span, whole: Span): void {
  if (Array.isArray(value)) {
    for (const item of value) expectSpansInside(item, parent, whole);
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  const fields = value as Record<string, unknown>;
  const span = spanIn(fields) ?? parent;
  expectInside(span, parent);
  for (const [key, held] of Object.entries(fields)) {
    if (key === 'span') continue;
    // A comment stands beside its statement, not in it.
    const frame = key === 'margin' ? whole : span;
    if (key === 'verbSpan') expectInside(held as Span, span);
    else expectSpansInside(held, frame, whole);
  }
}

function spanIn(fields: Record<string, unknown>): Span | undefined {
  if ('span' in fields) return fields['span'] as Span;
  return typeof fields['from'] === 'number' ? fields as unknown as Span : undefined;
}

function expectInside(span: Span, parent: Span): void {
  if (!(parent.from <= span.from && span.from <= span.to && span.to <= parent.to)) {
    throw new Error(`${JSON.stringify(span)} is not inside ${JSON.stringify(parent)}`);
  }
}

/** A tree without spans, and with every unit spelt as it is printed. */
function meaning(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(meaning);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).flatMap(([key, held]) => {
    if (key === 'span' || key === 'verbSpan' || typeof held === 'number' && (key === 'from' || key === 'to')) return [];
    if (key === 'unit' && held !== null) {
      const { text } = held as { text: string };
      return [[key, unitSpellings.get(text) ?? text]];
    }
    return [[key, meaning(held)]];
  }));
}

// ---------------------------------------------------------------- texts with faults

function soup(): fc.Arbitrary<string> {
  const sign = fc.constantFrom(
    '(', ')', ',', '.', '=', '{', '}', '+', '-', '*', '/', '->', '"', '“', '«', '//', '\n', '\r\n', '\t', '3', '0.5', '4x4', '×', '⚽', ';', '\'',
  );
  const word = fc.constantFrom(...words.flatMap((entry) => entry.word.split(' ')), 'Base', 'Left', 'wide', 'Flügel', '𝒜b');
  const text = fc.constantFrom('"a"', '"b c"');
  const token = fc.oneof({ weight: 3, arbitrary: word }, { weight: 3, arbitrary: sign }, { weight: 1, arbitrary: text });
  return fc.tuple(fc.array(token, { maxLength: 40 }), fc.constantFrom(' ', ''), fc.constantFrom('', 'drill "d" {\n', 'drill "d" {\nsequence {\n'))
    .map(([tokens, space, start]) => start + tokens.join(space));
}

/** The text with up to four places deleted, doubled, swapped with their neighbour or filled with something else. */
function edited(text: string): fc.Arbitrary<string> {
  const edit = fc.record({
    at: fc.nat(text.length), length: fc.integer({ min: 0, max: 12 }),
    how: fc.constantFrom('delete', 'double', 'swap', '{', '}', '"', '\n', '(', ',', 'while', 'x', '7'),
  });
  return fc.array(edit, { minLength: 1, maxLength: 4 }).map((edits) => edits.reduce((written, { at, length, how }) => {
    const [before, piece, after] = [written.slice(0, at), written.slice(at, at + length), written.slice(at + length)];
    switch (how) {
      case 'delete': return before + after;
      case 'double': return before + piece + piece + after;
      case 'swap': return before + after.slice(0, length) + piece + after.slice(length);
      default: return before + how + written.slice(at);
    }
  }, text));
}

// ---------------------------------------------------------------- texts without faults, made from the forms

const name = fc.constantFrom('A', 'Base', 'Left', 'wide', 'Flügel', '前', '𝒜b', 'm', 'U13', 'x1');
const noun = fc.oneof({ weight: 5, arbitrary: name }, { weight: 1, arbitrary: fc.constantFrom('area', 'coach', 'floaters') });
const number = fc.oneof(fc.nat(30).map(String), fc.constantFrom('.5', '2.50', '0.1', '1234567890123456789012', '0.0000001'));
const quote = fc.oneof(
  fc.constantFrom('""', '"a"', '“b c”', '„d“', '«say "go"»', '‘don’t’', '"the \'free\' player // not a comment"'),
  fc.string({ unit: 'grapheme', maxLength: 8 }).map((text) => `"${text.replaceAll(/["\r\n]/g, '')}"`),
);
const word = fc.oneof(name, fc.constantFrom('left', 'passes', 'of', 'balls'));
const label = fc.oneof(name, quote);

function phrase(...parts: readonly fc.Arbitrary<string>[]): fc.Arbitrary<string> {
  return fc.tuple(...parts).map((texts) => texts.filter((text) => text !== '').join(' '));
}

function values(units: boolean): fc.Arbitrary<string> {
  const measured = units ? phrase(number, fc.constantFrom('', 'm', 'yards', 'ft', 'sec', 'm/s', 'zzz')) : number;
  return fc.letrec<{ value: string; factor: string }>((tie) => ({
    factor: fc.oneof(
      { depthSize: 'small' }, measured, name,
      phrase(noun, fc.constantFrom('.width', '.length')).map((text) => text.replace(' ', '')),
      tie('value').map((value) => `(${value})`), tie('factor').map((factor) => `-${factor}`),
    ),
    value: fc.array(fc.tuple(fc.constantFrom('+', '-', '*', '/', ' − '), tie('factor')), { maxLength: 2 }).chain((further) =>
      tie('factor').map((first) => further.reduce((text, [sign, factor]) => `${text} ${sign} ${factor}`, first))),
  })).value;
}

const length = values(true);
const count = values(false);
/** What may stand before `left of`: a sum could be taken for a place that is moved. */
const distance = fc.oneof(phrase(number, fc.constantFrom('', 'm', 'yd')), name, length.map((value) => `(${value})`), fc.constant('area.width / 2'));
const point = fc.tuple(length, length).map(([x, y]) => `(${x}, ${y})`);

const place = fc.letrec<{ place: string; spot: string }>((tie) => ({
  spot: fc.oneof(
    { depthSize: 'small' }, noun, point, noun.map((of) => `next ${of}`),
    fc.tuple(noun, fc.constantFrom('centre', 'topLeft', 'left', 'nowhere')).map(([of, anchor]) => `${of}.${anchor}`),
    phrase(distance, fc.constantFrom('left of', 'right of', 'above', 'below'), tie('place')),
    phrase(fc.constant('between'), tie('place'), fc.constant('and'), tie('place')),
    phrase(fc.constantFrom('1/3', 'half', '0.5'), fc.constant('from'), tie('place'), fc.constant('to'), tie('place')),
    phrase(fc.constant('mirror of'), tie('place'), fc.constantFrom('across width', 'across length')),
  ),
  place: fc.tuple(tie('spot'), fc.array(point, { maxLength: 1 })).map(([spot, moves]) => [spot, ...moves].join(' + ')),
})).place;

const subject = phrase(fc.constantFrom('', '', 'next'), noun);
const facing = fc.oneof(fc.constantFrom('up', 'down', 'left', 'right'), place);
const size = fc.oneof(phrase(length, fc.constantFrom('x', '×'), length), fc.constant('4x4'));

const readers: Readonly<Record<Reader, fc.Arbitrary<string>>> = {
  name, noun, word, text: quote, label, place, length, count, size, facing, subject,
};

function written(pieces: readonly Piece[]): fc.Arbitrary<string> {
  return phrase(...pieces.map((piece): fc.Arbitrary<string> => {
    if (typeof piece === 'string') return fc.constant(piece);
    if ('word' in piece) return fc.constantFrom(piece.word, piece.one);
    if ('node' in piece) return written(piece.node);
    if ('list' in piece) return writtenList(piece.list, piece.between);
    if ('maybe' in piece) return fc.oneof(fc.constant(''), written(piece.maybe));
    if ('either' in piece) return fc.oneof(...piece.either.map((one) => written(one.pieces)));
    return typeof piece.as === 'string' ? readers[piece.as] : fc.constantFrom(...piece.as);
  })).map((text) => text.replaceAll(' . ', '.'));
}

function writtenList(items: Items, between: string): fc.Arbitrary<string> {
  const item = typeof items === 'string' ? readers[items] : 'list' in items ? writtenList(items.list, items.between) : written(items);
  const separator = between === ' ' ? ', ' : ` ${between} `;
  return fc.array(item, { minLength: between === '->' ? 2 : 1, maxLength: 3 }).map((all) => all.join(separator));
}

const action = fc.tuple(
  fc.oneof(...verbForms.map(({ verb, pieces }) => phrase(fc.constant(verb), written(pieces)))),
  fc.array(fc.tuple(fc.constantFrom(' ', ', '), fc.oneof(...modifierForms.map(({ alternative }) => written(alternative.pieces)))), { maxLength: 2 }),
).map(([verb, modifiers]) => verb + modifiers.flat().join(''));
const part = fc.tuple(
  // In a sequence these would begin another statement.
  subject.filter((text) => text !== 'area' && text !== 'floaters'), fc.array(action, { minLength: 1, maxLength: 2 }), fc.constantFrom(' then ', '\n  then '),
).map(([who, actions, then]) => `${who} ${actions.join(then)}`);
const beat = fc.tuple(part, fc.array(part, { maxLength: 2 }), fc.constantFrom(' while ', ', while ', '\n // meanwhile\n while '), fc.constantFrom(', ', ',\n', ', while '))
  .map(([lead, others, start, further]) => lead + (others.length === 0 ? '' : start + others.join(further)));

const comment = fc.constantFrom('', '', '', ' // beside', ' //');
const above = fc.constantFrom('', '', '', '\n', '// above\n', '\n//\n// two\n', '\n\n\n');

function block(context: Context, depth: number): fc.Arbitrary<string> {
  const forms = statementForms.filter((form) => form.stands.includes(context) && (form.body === null || depth > 0));
  const line = context === 'beats' ? beat : fc.oneof(...forms.map((form) => statement(form, depth)));
  return fc.array(fc.tuple(above, line, comment), { maxLength: 4 })
    .map((lines) => lines.map(([over, text, beside]) => `${over}${text}${beside}\n`).join(''));
}

function statement(form: StatementForm, depth: number): fc.Arbitrary<string> {
  const header = phrase(fc.constant(form.keyword), written(form.pieces));
  if (form.body === null) return header;
  return fc.tuple(header, comment, block(form.body, depth - 1), above).map(([text, beside, lines, end]) =>
    text.includes(' mirrors ') ? text : `${text} {${beside}\n${lines}${end}}`);
}

function correctFile(): fc.Arbitrary<string> {
  return fc.tuple(fc.constantFrom('', '\ufeff'), block('file', 3), above, fc.constantFrom('\n', '\r\n', '\r'))
    .map(([mark, lines, end, newline]) => mark + (lines + end).replaceAll('\n', newline));
}
