import type { Span, Word } from '../../grammar/tree.ts';
import { spanOf } from '../model/span.ts';
import type { Problem } from '../problem.ts';
import { formatNumber } from '../units.ts';
import { problem, type Check } from './check.ts';

export const check: Check = {
  code: 'impossible-value',
  group: 'writing',
  severity: 'error',
  title: 'A value that cannot be',
  why: 'Nothing is less than no metres wide, nobody is 140 years old, and half a player does not turn up. Such a number is a slip, and everything worked out from it would be wrong.',
  source: null,
  bad: [
    `drill "Two" {
  area ⟦-12⟧ x 12
}
`,
    `drill "Two" {
  age ⟦U140⟧
  area 12 x 12
}
`,
    `drill "Two" {
  area 12 x 12
  station Base at (2, 6) holds ⟦1.5⟧
}
`,
    `drill "Two" {
  area 12 x 12
  zone ⟦Bow⟧ polygon (1, 1) (8, 8) (8, 1) (1, 8)
}
`,
    `drill "Two" {
  area 12 x 12
  station Base at (2 m + ⟦3 s⟧, 6)
}
`,
  ],
  good: [
    `drill "Two" {
  age U14
  area 12 x 12
  station Base at (2 m + 3, 6) holds 2
  zone Diamond polygon (1, 1) (8, 1) (8, 8) (1, 8)
}
`,
  ],
  find: null,
};

/** `what` begins the sentence, `value` is said with its unit: `The width of the area`, `-12 yd`. */
export function notPositive(span: Span, what: string, value: string): Problem {
  return problem(check, span, `${what} is ${value}; it must be more than 0.`);
}

export function negative(span: Span, what: string, value: string): Problem {
  return problem(check, span, `${what} is ${value}; it cannot be less than 0.`);
}

/** Farther than anything on a training ground, or too large to be worked with. */
export function tooLarge(span: Span): Problem {
  return problem(check, span, 'That is farther than any training ground reaches: lengths and places stay within 1000 m.');
}

export function notWhole(span: Span, what: string, value: number): Problem {
  return problem(check, span, `${what} is ${formatNumber(value, 2)}; it must be a whole number.`);
}

export function outOfRange(span: Span, what: string, value: number | string, least: number, most: number): Problem {
  return problem(check, span, `${what} is ${typeof value === 'number' ? formatNumber(value, 2) : value}; it can be from ${least} to ${most}.`);
}

export function notA(span: Span, wanted: string, found: string): Problem {
  return problem(check, span, `This is ${article(found)}; ${article(wanted)} is wanted here.`);
}

export function cannotMix(span: Span, first: string, second: string): Problem {
  return problem(check, span, `${capital(article(first))} and ${article(second)} cannot be added: one is not made of the other.`);
}

export function divisionByZero(span: Span): Problem {
  return problem(check, span, 'This is 0, and nothing can be divided into 0 parts.');
}

export function tooFewCorners(zone: Word, corners: number): Problem {
  return problem(check, spanOf(zone), `\`${zone.text}\` has ${corners === 1 ? '1 corner' : `${corners} corners`}; a polygon has at least 3.`);
}

export function tooManyCorners(zone: Word, corners: number, most: number): Problem {
  return problem(check, spanOf(zone), `\`${zone.text}\` has ${corners} corners; at most ${most} can be marked out.`, {
    help: 'A circle or a few straight sides are easier to put down.',
  });
}

export function crossesItself(zone: Word): Problem {
  return problem(check, spanOf(zone), `The sides of \`${zone.text}\` cross: list its corners in order, walking once round it.`);
}

export function noSize(zone: Word): Problem {
  return problem(check, spanOf(zone), `\`${zone.text}\` has no size: its corners lie on one line.`);
}

export function everyonePlaced(span: Span, team: string, size: number): Problem {
  return problem(check, span, `${team} has ${size} ${size === 1 ? 'player' : 'players'}, and all of them are placed already.`, {
    help: `Raise the number of ${team}, or take this line out.`,
  });
}

/** A name from another file whose own value is wrong there. */
export function wrongElsewhere(span: Span, name: string, path: string): Problem {
  return problem(check, spanOf(span), `\`${name}\` has no value: it is wrong in “${path}”.`);
}

function article(kind: string): string {
  return kind.startsWith('neither') ? kind : `a ${kind}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
