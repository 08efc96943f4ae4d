import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from '../../grammar/parse.ts';
import { print } from '../../grammar/printer.ts';
import type { Span } from '../../grammar/tree.ts';
import { unitSpellings } from '../../grammar/units.ts';
import { words } from '../../grammar/words.ts';
import { correctFile } from '../support/correct-file.ts';

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
