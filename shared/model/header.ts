/** The first lines of a drill: whom it is for and how it is played. */
import type { Expression, LengthUnit, Span, Statement, Word } from '../../grammar/tree.ts';
import { writtenTwice } from '../checks/duplicate-name.ts';
import { notPositive, outOfRange } from '../checks/impossible-value.ts';
import { unknownName } from '../checks/unknown-name.ts';
import { minutesOrSeconds, unknownUnit } from '../checks/unknown-unit.ts';
import type { Problem } from '../problem.ts';
import { formatNumber, unitNamed } from '../units.ts';
import { grounds, tempos, type Drill, type Sourced } from './drill.ts';
import { countOf, positiveLength, speedOf, timeOf, type Values } from './expressions.ts';
import { spanOf } from './span.ts';

export type HeaderValues = Pick<
  Drill,
  | 'age' | 'ageLabel' | 'players' | 'tempo' | 'ground' | 'roll' | 'passPace' | 'runPace' | 'theme' | 'time' | 'level' | 'tags'
  | 'notes' | 'questions' | 'safety' | 'points'
>;

/** Years of someone who is simply an adult. */
const adult = 21;

export function headerOf(statements: readonly Statement[], values: Values): HeaderValues {
  const age = only(statements, 'age', values);
  const pace = (of: 'pass' | 'run') => {
    const lines = statements.filter((statement) => statement.kind === 'pace' && statement.of === of);
    reportTwice(lines, `pace ${of}`, values);
    const speed = lines[0]?.kind === 'pace' ? lines[0].speed : null;
    return sourced(speed, (expression) => positive(expression, speedOf(expression, values), `The pace of a ${of}`, 'm/s', values));
  };
  const players = only(statements, 'players', values);
  const time = only(statements, 'time', values);
  const ground = only(statements, 'ground', values);
  return {
    age: age ? { value: ageOf(age.value, values) ?? adult, span: spanOf(age.value) } : { value: adult, span: null },
    ageLabel: age?.value.text ?? null,
    players: sourced(players?.count ?? null, (count) => countOf(count, values, { what: 'The number of players' })),
    tempo: oneOf(tempos, only(statements, 'tempo', values)?.value, 'tempo', 'steady', values),
    ground: oneOf(grounds, ground?.value, 'ground', 'grass', values),
    roll: sourced(ground?.roll ?? null, (roll) => positiveLength(roll, values, 'The roll of the ball')),
    passPace: pace('pass'),
    runPace: pace('run'),
    theme: only(statements, 'theme', values)?.text.text ?? null,
    time: sourced(time?.length ?? null, (length) => durationOf(length, values, 'The time')),
    level: only(statements, 'level', values)?.text.text ?? null,
    tags: statements.flatMap((statement) => (statement.kind === 'tags' ? statement.tags.map((tag) => tag.text) : [])),
    notes: texts(statements, 'note'),
    questions: texts(statements, 'question'),
    safety: texts(statements, 'safety'),
    points: statements.flatMap((statement) =>
      statement.kind === 'point' ? [{ corner: statement.corner, text: statement.text.text, span: statement.span }] : [],
    ),
  };
}

/** The unit of bare numbers: metres unless the text says otherwise. */
export function unitsOf(statements: readonly Statement[], report: (problem: Problem) => void): LengthUnit {
  const line = only(statements, 'units', { report });
  if (!line) return 'm';
  const unit = unitNamed(line.value.text);
  if (unit?.kind === 'length') return unit.unit;
  report(unknownUnit(line.value, ['m', 'yd', 'ft', 'cm']));
  return 'm';
}

/** Years: 13 for `U13`. */
export function ageOf(word: Word, values: Pick<Values, 'report'>): number | null {
  if (word.text === 'adult') return adult;
  const years = /^U(\d+)$/.exec(word.text)?.[1];
  if (years === undefined) values.report(unknownName(word, 'age group', ages));
  else if (Number(years) < 4 || Number(years) > 99) values.report(outOfRange(spanOf(word), 'The age', word.text, 4, 99));
  else return Number(years);
  return null;
}

const ages = [...Array.from({ length: 18 }, (_, index) => `U${index + 4}`), 'adult'];

/** Seconds of something that lasts minutes as a rule: the unit must be written. */
export function durationOf(expression: Expression, values: Values, what: string): number | null {
  if (expression.kind === 'number' && expression.unit === null) {
    values.report(minutesOrSeconds(expression.span, expression.value));
    return null;
  }
  return positive(expression, timeOf(expression, values), what, 's', values);
}

function positive(expression: Expression, value: number | null, what: string, unit: string, values: Values): number | null {
  if (value === null || value > 0) return value;
  values.report(notPositive(expression.span, what, `${formatNumber(value, 2)} ${unit}`));
  return null;
}

function sourced<T>(expression: Expression | null, read: (expression: Expression) => T | null): Sourced<T> | null {
  const value = expression && read(expression);
  return expression === null || value === null ? null : { value, span: expression.span };
}

function oneOf<T extends string>(known: readonly T[], word: Word | undefined, what: string, fallback: T, values: Values): Sourced<T> {
  if (!word) return { value: fallback, span: null };
  const value = known.find((each) => each === word.text);
  if (value === undefined) values.report(unknownName(word, what, known));
  return { value: value ?? fallback, span: spanOf(word) };
}

/** The first statement of a kind of which there is one; reports the others. */
export function only<S extends { readonly kind: string; readonly span: Span }, K extends S['kind']>(
  statements: readonly S[],
  kind: K,
  values: Pick<Values, 'report'>,
): Extract<S, { kind: K }> | undefined {
  const found = statements.filter((statement): statement is Extract<S, { kind: K }> => statement.kind === kind);
  reportTwice(found, kind, values);
  return found[0];
}

function reportTwice(found: readonly { readonly span: Span }[], keyword: string, { report }: Pick<Values, 'report'>): void {
  for (const again of found.slice(1)) report(writtenTwice(again.span, keyword, found[0]!.span));
}

function texts(statements: readonly Statement[], kind: 'note' | 'question' | 'safety'): string[] {
  return statements.flatMap((statement) => (statement.kind === kind ? [statement.text.text] : []));
}
