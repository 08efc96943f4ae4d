import type { Items, Piece, Reader, StatementForm } from './form.ts';
import { afterComma, modifierPiece } from './modifiers.ts';
import { statementForms } from './statements/index.ts';
import { isOneWord, quoteFor } from './tokens.ts';
import type {
  Action, Beat, Block, Comment, Expression, Facing, File, Margin, Modifier, Part, Place, Quote, SessionStatement, Size, Statement,
  Subject, TopLevel, Word,
} from './tree.ts';
import { unitSpellings } from './units.ts';
import { verbForms } from './verbs.ts';

/**
 * The one printed form of a file. A tree from a text without faults is read back as the same tree,
 * spans and spellings of units apart.
 */
export function print(file: File): string {
  const lines = [...linesOf(file.items, 0), ...commentLines(file.end, 0)];
  // What stands after the last drill is no part of it.
  if (file.items.length > 0 && file.end.length > 0) lines.splice(lines.length - file.end.length, 0, '');
  return lines.map((line) => `${line}\n`).join('');
}

/** One statement without its margin and its block. */
export function printStatement(statement: Printable): string {
  if (statement.kind === 'beat') return printBeat(statement).join(' ');
  const { head, rest } = columnsOf(statement);
  return rest === '' ? head : `${head} ${rest}`;
}

export function printExpression(expression: Expression): string {
  switch (expression.kind) {
    case 'number': {
      const { value, unit } = expression;
      return unit === null ? decimal(value) : `${decimal(value)} ${unitSpellings.get(unit.text) ?? unit.text}`;
    }
    case 'name': return expression.name.text;
    case 'measure': return `${expression.of.text}.${expression.side.text}`;
    case 'group': return `(${printExpression(expression.inner)})`;
    case 'negative': return `-${printExpression(expression.of)}`;
    case 'sum': return expression.terms
      .map(({ sign, of }, index) => (index === 0 ? '' : ` ${sign} `) + printExpression(of)).join('');
    case 'product': {
      // A fraction of two numbers is written tight: `1/3`.
      const { factors } = expression;
      const tight = factors.length === 2 && factors.every(({ of }) => of.kind === 'number' && of.unit === null);
      const space = tight ? '' : ' ';
      return factors
        .map(({ by, of }, index) => (index === 0 ? '' : space + by + space) + printExpression(of)).join('');
    }
  }
}

/** Of a shifted place only the innermost may be shifted: `2 above P + (1, 0)` is read as `2 above` the shifted P. */
export function printPlace(place: Place): string {
  switch (place.kind) {
    case 'at': return `(${printExpression(place.x)}, ${printExpression(place.y)})`;
    case 'name': return place.next ? `next ${place.name.text}` : place.name.text;
    case 'anchor': return `${place.of.text}.${place.anchor.text}`;
    case 'offset': return `${printPlace(place.from)} + (${printExpression(place.dx)}, ${printExpression(place.dy)})`;
    case 'beside': return `${printExpression(place.distance)} ${place.side} ${printPlace(place.of)}`;
    case 'between': return `between ${printPlace(place.a)} and ${printPlace(place.b)}`;
    case 'along': return `${printExpression(place.fraction)} from ${printPlace(place.start)} to ${printPlace(place.end)}`;
    case 'mirror': return `mirror of ${printPlace(place.of)} across ${place.across}`;
  }
}

export function printSize({ width, length }: Size): string {
  return `${printExpression(width)} x ${printExpression(length)}`;
}

/** Without the word `facing`. */
export function printFacing(facing: Facing): string {
  return facing.kind === 'way' ? facing.way : printPlace(facing.at);
}

export function printSubject({ name, next }: Subject): string {
  return next ? `next ${name.text}` : name.text;
}

export function printQuote({ text }: { readonly text: string }): string {
  const [start, end] = quoteFor(text);
  return start + text + end;
}

export function printAction(action: Action): string {
  const { pieces } = verbForms.find((form) => form.verb === action.verb)!;
  const wait = action.modifiers.find((modifier) => modifier.kind === 'for');
  const words = phrase(pieces, { ...action, wait });
  const modifiers = action.modifiers.filter((modifier) => modifier.kind !== 'for').map(printModifier);
  return [action.verb, ...words].join(' ') + modifiers.join('');
}

type Printable = Statement | SessionStatement | TopLevel | Beat;
type Fields = Readonly<Record<string, unknown>>;

/** Characters; a beat that is longer goes on over several lines. */
const longest = 100;

const formsByKind: ReadonlyMap<string, StatementForm> = new Map(
  statementForms.map((form) => [form.kind ?? form.keyword, form]),
);

// ---------------------------------------------------------------- blocks

/** Blocks are as deeply nested as the parser allows, which is little. */
function linesOf(statements: readonly Printable[], depth: number): string[] {
  const indent = '  '.repeat(depth);
  const lines: string[] = [];
  const widths = columnWidths(statements);
  statements.forEach((statement, index) => {
    const { above, beside, gap } = statement.margin;
    if (gap && index > 0) lines.push('');
    lines.push(...commentLines(above, depth));
    const remark = beside === null ? '' : `  ${printComment(beside)}`;
    if (statement.kind === 'beat') {
      const beat = printBeat(statement, longest - indent.length).map((line) => indent + line);
      lines.push(...beat.slice(0, -1), beat.at(-1)! + remark);
      return;
    }
    const { head, rest } = columnsOf(statement);
    const text = rest === '' ? head : head.padEnd(widths[index]!) + rest;
    const block = 'body' in statement ? statement.body : null;
    if (block === null) lines.push(indent + text + remark);
    else lines.push(`${indent}${text} {${remark}`, ...blockLines(block, depth + 1), `${indent}}`);
  });
  return lines;
}

function blockLines(block: Block<Printable>, depth: number): string[] {
  return [...linesOf(block.lines, depth), ...commentLines(block.end, depth)];
}

function commentLines(comments: readonly Comment[], depth: number): string[] {
  return comments.map((comment) => '  '.repeat(depth) + printComment(comment));
}

function printComment({ text }: Comment): string {
  return text === '' ? '//' : `// ${text}`;
}

// ---------------------------------------------------------------- columns

/** The first column of a statement, and the rest. */
function columnsOf(statement: Exclude<Printable, Beat>): { head: string; rest: string } {
  const { keyword, pieces, head } = formOf(statement);
  const fields = statement as unknown as Fields;
  return {
    head: joined([keyword, ...phrase(pieces.slice(0, head), fields)]),
    rest: joined(phrase(pieces.slice(head), fields)),
  };
}

/** How wide the first column of each statement is, with the space after it: as wide as the widest of its run. */
function columnWidths(statements: readonly Printable[]): number[] {
  const widths: number[] = [];
  let start = 0;
  while (start < statements.length) {
    let end = start + 1;
    while (end < statements.length && sameRun(statements[start]!, statements[end]!)) end++;
    const run = statements.slice(start, end);
    const widest = Math.max(...run.map((each) => (each.kind === 'beat' ? 0 : columnsOf(each).head.length)));
    const space = familyOf(run[0]!) === 'header' && run.length > 1 ? 2 : 1;
    for (const _ of run) widths.push(widest + space);
    start = end;
  }
  return widths;
}

function sameRun(first: Printable, later: Printable): boolean {
  const { gap, above } = (later as { readonly margin: Margin }).margin;
  return !gap && above.length === 0 && familyOf(first) !== null && familyOf(first) === familyOf(later);
}

function familyOf(statement: Printable): string | null {
  if (statement.kind === 'beat') return null;
  const { family } = formOf(statement);
  return family === 'kind' ? statement.kind : family;
}

function formOf(statement: Exclude<Printable, Beat>): StatementForm {
  return formsByKind.get(statement.kind === 'mirrored' ? 'sequence' : statement.kind)!;
}

// ---------------------------------------------------------------- beats

/** A beat that is too long is broken before `while` and between those who move at once, and then before `then`. */
function printBeat({ lead, meanwhile }: Beat, width = Infinity): string[] {
  const parts = [printPart(lead), ...meanwhile.map((part, index) => (index === 0 ? 'while ' : '') + printPart(part))];
  const whole = [parts.slice(0, 2).join(' '), ...parts.slice(2)].join(', ');
  if (whole.length <= width) return [whole];
  return [lead, ...meanwhile].flatMap((part, index) => {
    const indent = index === 0 ? '' : '  ';
    const comma = index > 0 && index < meanwhile.length ? ',' : '';
    const text = indent + parts[index]! + comma;
    if (text.length <= width) return [text];
    const [first, ...then] = part.chain.map(printAction);
    const start = `${indent}${index === 1 ? 'while ' : ''}${printSubject(part.subject)} ${first!}`;
    return [start, ...then.map((action) => `${indent}  then ${action}`)].join('\n').concat(comma).split('\n');
  });
}

export function printPart({ subject, chain }: Part): string {
  return `${printSubject(subject)} ${chain.map(printAction).join(' then ')}`;
}

function printModifier(modifier: Modifier): string {
  return (afterComma.has(modifier.kind) ? ', ' : ' ') + joined(phrase([modifierPiece], modifier as unknown as Fields));
}

// ---------------------------------------------------------------- forms

function phrase(pieces: readonly Piece[], fields: Fields): string[] {
  return pieces.flatMap((piece): string[] => {
    if (typeof piece === 'string') return [piece];
    if ('word' in piece) return [isOne(fields[piece.by]) ? piece.one : piece.word];
    if ('maybe' in piece) return fits(piece.maybe, fields) ? phrase(piece.maybe, fields) : [];
    if ('either' in piece) {
      const fitting = piece.either.find(({ set, pieces: inner }) => sets(set, fields) && fits(inner, fields));
      return fitting === undefined ? [] : phrase(fitting.pieces, fields);
    }
    const value = fields[piece.field];
    if (value === null || value === undefined) return [];
    if ('node' in piece) return phrase(piece.node, value as Fields);
    if ('list' in piece) return [printItems(value as readonly unknown[], piece.list, piece.between)];
    return [typeof piece.as === 'string' ? printValue(value, piece.as) : String(value)];
  });
}

/** Words and signs in a row; a dot stands close. */
function joined(words: readonly string[]): string {
  return words.map((word, index) => {
    const close = index === 0 || word === '.' || words[index - 1] === '.';
    return close ? word : ` ${word}`;
  }).join('');
}

/** Whether a node has the values that an alternative would have set when it was read. */
function sets(set: Fields, fields: Fields): boolean {
  return Object.entries(set).every(([field, value]) => Array.isArray(value) || fields[field] === value);
}

/** Whether a node has everything that the pieces must have. */
function fits(pieces: readonly Piece[], fields: Fields): boolean {
  return pieces.every((piece) => {
    if (typeof piece === 'string' || 'word' in piece || 'maybe' in piece) return true;
    if ('either' in piece) return piece.either.some(({ set, pieces: inner }) => sets(set, fields) && fits(inner, fields));
    const value = fields[piece.field];
    return value !== null && value !== undefined && !(Array.isArray(value) && value.length === 0);
  });
}

function printItems(values: readonly unknown[], items: Items, between: string): string {
  const texts = values.map((value) => {
    if (typeof items === 'string') return printValue(value, items);
    if ('list' in items) return printItems(value as readonly unknown[], items.list, items.between);
    return joined(phrase(items, value as Fields));
  });
  if (between === ',') return texts.join(', ');
  // A minus sign after a name would be taken for a subtraction.
  if (between === ' ') return texts.reduce((line, text) => line + (text.startsWith('-') ? ', ' : ' ') + text);
  return texts.join(` ${between} `);
}

function printValue(value: unknown, reader: Reader): string {
  switch (reader) {
    case 'name':
    case 'noun':
    case 'word': return (value as Word).text;
    case 'text': return printQuote(value as Quote);
    case 'label': {
      const label = value as Word | Quote;
      return isOneWord(label.text) ? label.text : printQuote(label);
    }
    case 'place': return printPlace(value as Place);
    case 'length':
    case 'count': return printExpression(value as Expression);
    case 'size': return printSize(value as Size);
    case 'facing': return printFacing(value as Facing);
    case 'subject': return printSubject(value as Subject);
  }
}

function isOne(value: unknown): boolean {
  const expression = value as Expression;
  return expression.kind === 'number' && expression.value === 1;
}

/** The shortest decimal that is read back as the same number; the language has no exponents. */
export function decimal(value: number): string {
  const [digits = '', exponent] = String(Math.abs(value)).split('e');
  const sign = value < 0 ? '-' : '';
  if (exponent === undefined) return sign + digits;
  const [whole = '', fraction = ''] = digits.split('.');
  const point = whole.length + Number(exponent);
  const all = whole + fraction;
  return sign + (point <= 0 ? `0.${'0'.repeat(-point)}${all}` : all.padEnd(point, '0'));
}
