/** What the checks of sessions have in common. */
import type { Span } from '../../grammar/tree.ts';
import type { Point } from '../geometry/point.ts';
import type { Part, Session } from '../model/session.ts';
import type { Edit } from '../problem.ts';
import type { PartSlot, SessionAnalysis, Slot } from '../session/analysis.ts';
import { formatLength, formatNumber, metresIn } from '../units.ts';

export function partsOf({ timetable }: SessionAnalysis): readonly (PartSlot & Slot)[] {
  return timetable.filter((slot) => slot.kind === 'part');
}

/** `75 min`, or seconds where that is no whole number of minutes: as the language writes a time. */
export function writtenTime(seconds: number): string {
  return seconds % 60 === 0 ? `${seconds / 60} min` : `${formatNumber(seconds, 2)} s`;
}

/** Metres in the unit of the session: `25 x 40 m`. */
export function sizeText({ units }: Session, width: number, length: number): string {
  return `${formatNumber(width / metresIn(units), 1)} x ${formatLength(length, units, 1)}`;
}

/** The places of the groups of a part, as the language writes them. */
export function placeEdits(part: Part, places: readonly Point[], { units }: Session): readonly Edit[] {
  const per = metresIn(units);
  const texts = places.map(({ x, y }) => `(${formatNumber(x / per, 2)}, ${formatNumber(y / per, 2)})`);
  const [first, last] = [part.at[0], part.at.at(-1)];
  if (first && last) return [{ span: { from: first.span.from, to: last.span.to }, text: texts.join(', ') }];
  return [{ span: endOf(part.span), text: ` at ${texts.join(', ')}` }];
}

export function endOf({ to }: Span): Span {
  return { from: to, to };
}

/** A line more, before a part. */
export function lineBefore(part: Part, line: string, text: string): Edit {
  const start = text.lastIndexOf('\n', part.span.from - 1) + 1;
  const indent = /^[^\S\n]*/.exec(text.slice(start, part.span.from))?.[0] ?? '';
  return { span: { from: part.span.from, to: part.span.from }, text: `${line}\n${indent}` };
}

/** `1 player`, `2 players` */
export function people(count: number): string {
  return `${count} ${count === 1 ? 'player' : 'players'}`;
}
