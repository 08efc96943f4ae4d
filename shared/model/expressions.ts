/** What expressions are worth: metres, seconds, metres a second, or plain numbers. */
import type { Expression, LengthUnit, NumberValue, Size, Word } from '../../grammar/tree.ts';
import { cannotMix, divisionByZero, notA, notPositive, notWhole, outOfRange, tooLarge } from '../checks/impossible-value.ts';
import { unknownUnit } from '../checks/unknown-unit.ts';
import type { Problem } from '../problem.ts';
import { formatLength, metresIn, unitNamed } from '../units.ts';

/** A number with the powers of metres and seconds it is in: a speed has length 1 and time -1. */
export interface Quantity {
  readonly value: number;
  readonly length: number;
  readonly time: number;
}

/** What an expression sees of the text around it. Whoever answers null has reported why. */
export interface Values {
  readonly units: LengthUnit;
  readonly report: (problem: Problem) => void;
  readonly quantity: (name: Word) => Quantity | null;
  readonly side: (of: Word, side: Word) => Quantity | null;
}

/** More than this, of players or of anything else that is counted, no drill needs. */
export const mostPeople = 200;

/** Farther than this, in metres, nothing of a drill can be. */
export const farthest = 1000;

/** Null when something is wrong with it, which has then been reported. */
export function evaluate(expression: Expression, values: Values): Quantity | null {
  const result = worked(expression, values);
  if (result === null || Number.isFinite(result.value)) return result;
  values.report(tooLarge(expression.span));
  return null;
}

/** Metres, at most {@link farthest} either way; a bare number is in `unit`, by default the drill's own. */
export function lengthOf(expression: Expression, values: Values, unit: LengthUnit = values.units): number | null {
  const found = evaluate(expression, values);
  if (found === null) return null;
  const value = isPlain(found) ? found.value * metresIn(unit) : found.value;
  if (!isPlain(found) && (found.length !== 1 || found.time !== 0)) values.report(notA(expression.span, 'length', kindOf(found)));
  else if (Math.abs(value) > farthest) values.report(tooLarge(expression.span));
  else return value;
  return null;
}

/** Seconds; a bare number is in seconds. */
export function timeOf(expression: Expression, values: Values): number | null {
  return valueAs('time', expression, values);
}

/** Metres a second; a bare number is in metres a second. */
export function speedOf(expression: Expression, values: Values): number | null {
  return valueAs('speed', expression, values);
}

export function numberOf(expression: Expression, values: Values): number | null {
  const found = evaluate(expression, values);
  if (found === null || isPlain(found)) return found?.value ?? null;
  values.report(notA(expression.span, 'plain number', kindOf(found)));
  return null;
}

/** A whole number from `least` to `most`; `what` begins the message: `The number of players`. */
export function countOf(
  expression: Expression,
  values: Values,
  { what, least = 1, most = mostPeople }: { readonly what: string; readonly least?: number; readonly most?: number },
): number | null {
  const value = numberOf(expression, values);
  if (value === null) return null;
  if (!Number.isInteger(value)) values.report(notWhole(expression.span, what, value));
  else if (value < least || value > most) values.report(outOfRange(expression.span, what, value, least, most));
  else return value;
  return null;
}

/** Metres, more than none. */
export function positiveLength(expression: Expression, values: Values, what: string): number | null {
  const length = lengthOf(expression, values);
  return length !== null && isPositive(length, expression, values, what) ? length : null;
}

export function positiveSize(size: Size, values: Values, of: string): { readonly width: number; readonly length: number } | null {
  const { width, length } = sizeOf(size, values);
  const wide = width !== null && isPositive(width, size.width, values, `The width of ${of}`);
  const long = length !== null && isPositive(length, size.length, values, `The length of ${of}`);
  return width !== null && length !== null && wide && long ? { width, length } : null;
}

function isPositive(value: number, expression: Expression, values: Values, what: string): boolean {
  if (value <= 0) values.report(notPositive(expression.span, what, formatLength(value, values.units, 2)));
  return value > 0;
}

/** Wide and long in metres, where a unit on the last number counts for both: `18 x 24 yd`. */
function sizeOf(size: Size, values: Values): { readonly width: number | null; readonly length: number | null } {
  const lastUnit = size.length.kind === 'number' && size.length.unit ? unitNamed(size.length.unit.text) : null;
  const shared = size.width.kind === 'number' && lastUnit?.kind === 'length' ? lastUnit.unit : values.units;
  return { width: lengthOf(size.width, values, shared), length: lengthOf(size.length, values) };
}

const powers = { time: { length: 0, time: 1 }, speed: { length: 1, time: -1 } } as const;

function valueAs(kind: keyof typeof powers, expression: Expression, values: Values): number | null {
  const found = evaluate(expression, values);
  if (found === null) return null;
  if (isPlain(found) || sameKind(found, powers[kind])) return found.value;
  values.report(notA(expression.span, kind, kindOf(found)));
  return null;
}

function worked(expression: Expression, values: Values): Quantity | null {
  switch (expression.kind) {
    case 'number':
      return numberWithUnit(expression, values);
    case 'name':
      return values.quantity(expression.name);
    case 'measure':
      return values.side(expression.of, expression.side);
    case 'group':
      return evaluate(expression.inner, values);
    case 'negative': {
      const found = evaluate(expression.of, values);
      return found && { ...found, value: -found.value };
    }
    case 'sum':
      return sum(expression, values);
    case 'product':
      return product(expression, values);
  }
}

function numberWithUnit(expression: NumberValue, values: Values): Quantity | null {
  if (expression.unit === null) return { value: expression.value, length: 0, time: 0 };
  const unit = unitNamed(expression.unit.text);
  if (unit) return { value: expression.value * unit.factor, ...(unit.kind === 'length' ? metre : powers[unit.kind]) };
  values.report(unknownUnit(expression.unit));
  return null;
}

const metre = { length: 1, time: 0 } as const;

/** A bare number among lengths is a length in the drill's unit; among times or speeds, seconds or metres a second. */
function sum(expression: Extract<Expression, { kind: 'sum' }>, values: Values): Quantity | null {
  const terms = expression.terms.map(({ sign, of }) => ({ sign, span: of.span, worth: evaluate(of, values) }));
  const known = terms.flatMap((term) => (term.worth ? [{ ...term, worth: term.worth }] : []));
  if (known.length < terms.length) return null;
  const leader = known.find(({ worth }) => !isPlain(worth))?.worth ?? { length: 0, time: 0 };
  const scale = sameKind(leader, metre) ? metresIn(values.units) : 1;
  let total = 0;
  for (const { sign, span, worth } of known) {
    if (!isPlain(worth) && !sameKind(worth, leader)) {
      values.report(cannotMix(span, kindOf(leader), kindOf(worth)));
      return null;
    }
    total += (sign === '-' ? -1 : 1) * worth.value * (isPlain(worth) ? scale : 1);
  }
  return { value: total, length: leader.length, time: leader.time };
}

function product(expression: Extract<Expression, { kind: 'product' }>, values: Values): Quantity | null {
  let total: Quantity | null = { value: 1, length: 0, time: 0 };
  for (const { by, of } of expression.factors) {
    const worth = evaluate(of, values);
    if (by === '/' && worth?.value === 0) values.report(divisionByZero(of.span));
    if (total === null || worth === null || (by === '/' && worth.value === 0)) {
      total = null;
      continue;
    }
    const sign: number = by === '*' ? 1 : -1;
    total = {
      value: by === '*' ? total.value * worth.value : total.value / worth.value,
      length: total.length + sign * worth.length,
      time: total.time + sign * worth.time,
    };
  }
  return total;
}

function isPlain(quantity: Omit<Quantity, 'value'>): boolean {
  return quantity.length === 0 && quantity.time === 0;
}

function sameKind(a: Omit<Quantity, 'value'>, b: Omit<Quantity, 'value'>): boolean {
  return a.length === b.length && a.time === b.time;
}

export type QuantityKind = 'plain number' | 'length' | 'time' | 'speed' | 'neither a length, a time nor a speed';

function kindOf(quantity: Omit<Quantity, 'value'>): QuantityKind {
  if (isPlain(quantity)) return 'plain number';
  if (sameKind(quantity, metre)) return 'length';
  if (sameKind(quantity, powers.time)) return 'time';
  return sameKind(quantity, powers.speed) ? 'speed' : 'neither a length, a time nor a speed';
}
