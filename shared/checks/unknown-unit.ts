import { nearest } from '../../grammar/spelling.ts';
import type { Span, Word } from '../../grammar/tree.ts';
import { spanOf } from '../model/span.ts';
import type { Problem } from '../problem.ts';
import { unitWords } from '../units.ts';
import { problem, type Check } from './check.ts';

export const check: Check = {
  code: 'unknown-unit',
  group: 'writing',
  severity: 'error',
  title: 'Not a unit',
  why: 'Ten yards are 9.14 m. A unit that cannot be read is never guessed, because a cone in the wrong place spoils the timing of every pass.',
  source: null,
  bad: [
    `drill "Two" {
  area 12 x 12
  station Base at 10 ⟦yrd⟧ above area.bottom
}
`,
    `drill "Two" {
  time ⟦20⟧
  area 12 x 12
}
`,
  ],
  good: [
    `drill "Two" {
  time 20 min
  area 12 x 12
  station Base at 10 yd above area.bottom
}
`,
  ],
  find: null,
};

/** `units` are the words that could stand here. */
export function unknownUnit(unit: Word, units: readonly string[] = everyUnit): Problem {
  const guess = nearest(unit.text, units);
  const message = `\`${unit.text}\` is not a unit.`;
  if (guess === null) return problem(check, spanOf(unit), message, { help: 'Lengths are in m, yd, ft or cm, times in s or min.' });
  return problem(check, spanOf(unit), `${message} Did you mean \`${guess}\`?`, {
    fixes: [{ title: `Change to ${guess}`, edits: [{ span: spanOf(unit), text: guess }] }],
  });
}

const everyUnit = [...unitWords('length'), ...unitWords('time'), ...unitWords('speed')];

/** A length of time that could be minutes or seconds. */
export function minutesOrSeconds(span: Span, value: number): Problem {
  return problem(check, span, `Is that ${value} ${value === 1 ? 'minute or 1 second' : `minutes or ${value} seconds`}?`, {
    help: `Write ${value} min or ${value} s.`,
    fixes: ['min', 's'].map((unit) => ({ title: `Change to ${value} ${unit}`, edits: [{ span: { from: span.to, to: span.to }, text: ` ${unit}` }] })),
  });
}
