import fc from 'fast-check';
import type { Context, Items, Piece, Reader, StatementForm } from '../../grammar/form.ts';
import { modifierForms } from '../../grammar/modifiers.ts';
import { statementForms } from '../../grammar/statements/index.ts';
import { verbForms } from '../../grammar/verbs.ts';

/** Texts without faults, made from the forms of the language. */
export function correctFile(): fc.Arbitrary<string> {
  return fc.tuple(fc.constantFrom('', '\ufeff'), block('file', 3), above, fc.constantFrom('\n', '\r\n', '\r'))
    .map(([mark, lines, end, newline]) => mark + (lines + end).replaceAll('\n', newline));
}

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
