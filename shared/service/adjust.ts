/** Changing what an expression is worth while leaving as much of it as it was. */
import type { Expression, LengthUnit } from '../../grammar/tree.ts';
import { formatNumber, metresIn, unitNamed } from '../units.ts';

export interface Written {
  readonly text: string;
  /** Of bare numbers. */
  readonly units: LengthUnit;
}

/** The step that numbers are rounded to, in the unit itself: what a coach would pace or tape out. */
const steps: Readonly<Record<LengthUnit, number>> = { m: 0.5, yd: 0.5, ft: 1, cm: 50 };

/** Metres. */
export function stepIn(unit: LengthUnit): number {
  return steps[unit] * metresIn(unit);
}

/** Metres as a number of steps of a unit, in that unit. */
export function inSteps(metres: number, unit: LengthUnit): number {
  return Number(formatNumber(Math.round(metres / stepIn(unit)) * steps[unit], 2));
}

/**
 * The text of a length that is so many metres more. A number becomes another one; anything else gets a number added, or
 * its last number changed.
 */
export function adjusted(expression: Expression, by: number, { text, units }: Written): string {
  const written = text.slice(expression.span.from, expression.span.to);
  const number = numberIn(expression, units);
  if (number) {
    if (Math.abs(by) < stepIn(number.unit) / 2) return written;
    const value = inSteps(number.value * metresIn(number.unit) + by, number.unit);
    return `${value}${number.suffix}`;
  }
  const last = expression.kind === 'sum' ? expression.terms.at(-1) : undefined;
  const term = last && numberIn(last.of, units);
  const unit = term?.unit ?? units;
  if (Math.abs(by) < stepIn(unit) / 2) return written;
  const before = term ? (last.sign === '-' ? -1 : 1) * term.value * metresIn(unit) : 0;
  const start = term && expression.kind === 'sum' ? written.slice(0, expression.terms.at(-2)!.of.span.to - expression.span.from) : written;
  const value = inSteps(before + by, unit);
  return value === 0 ? start : `${start} ${value < 0 ? '-' : '+'} ${Math.abs(value)}${term?.suffix ?? ''}`;
}

interface Length {
  readonly value: number;
  readonly unit: LengthUnit;
  /** The unit as written, with the space before it. */
  readonly suffix: string;
}

/** A number with or without its unit and its sign. */
function numberIn(expression: Expression, units: LengthUnit): Length | null {
  if (expression.kind === 'negative') {
    const inner = numberIn(expression.of, units);
    return inner && { ...inner, value: -inner.value };
  }
  if (expression.kind !== 'number') return null;
  if (expression.unit === null) return { value: expression.value, unit: units, suffix: '' };
  const unit = unitNamed(expression.unit.text);
  return unit?.kind === 'length' ? { value: expression.value, unit: unit.unit, suffix: ` ${expression.unit.text}` } : null;
}
