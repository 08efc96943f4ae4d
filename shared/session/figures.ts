/** What the evening comes to, part by part and in all. */
import type { Corner } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import type { Figures, PartFigures, PartSlot, Slot } from './analysis.ts';
import { designLike } from './bouts.ts';
import { minutes } from './words.ts';

export function figuresOf(timetable: readonly Slot[]): Figures {
  const parts = timetable.flatMap((slot, index) => (slot.kind === 'part' ? [{ slot, index }] : []));
  return {
    minutes: {
      practice: minutesOf(timetable, (slot) => slot.kind === 'part' && slot.drill !== null && !isGame(slot.drill)),
      game: minutesOf(timetable, (slot) => slot.kind === 'part' && slot.drill !== null && isGame(slot.drill)),
      pause: minutesOf(timetable, (slot) => slot.kind === 'pause'),
      other: minutesOf(timetable, (slot) => slot.kind === 'part' && slot.drill === null),
    },
    perPart: parts.flatMap(({ slot, index }) => (slot.drill ? [partFigures(slot, slot.drill, index)] : [])),
    corners: cornersOf(parts.flatMap(({ slot }) => slot.drill ?? [])),
  };
}

function minutesOf(timetable: readonly Slot[], fits: (slot: Slot) => boolean): number {
  return timetable.filter(fits).reduce((sum, { start, end }) => sum + end - start, 0) / 60;
}

/** Two sides play against each other. */
export function isGame({ drill }: DrillAnalysis): boolean {
  return drill.teams.filter(({ kind }) => kind === 'team').length >= 2;
}

function cornersOf(drills: readonly DrillAnalysis[]): Readonly<Record<Corner, number>> {
  const corners = { technical: 0, psychological: 0, physical: 0, social: 0 };
  for (const { drill } of drills) for (const { corner } of drill.points) corners[corner] += 1;
  return corners;
}

/** A repetition is started over and over, every `interval`, for as long as the part or its bouts last. */
function partFigures({ part, groups }: PartSlot, analysis: DrillAnalysis, slot: number): PartFigures {
  const { drill, measures } = analysis;
  const { bouts } = drill;
  const active = bouts ? Math.min(part.length, bouts.count * bouts.length) : part.length;
  const players = groups.reduce((sum, { members }) => sum + members.length, 0) / Math.max(1, groups.length);
  const starts = measures.interval && measures.interval.seconds > 0 ? active / measures.interval.seconds : null;
  const each = (sum: number): number | null => (starts !== null && players > 0 ? (sum * starts) / players : null);
  const busy = each(sumOf(measures.perPlayer.map(({ working }) => working)));
  const work = bouts || isGame(analysis) ? active : busy === null ? null : Math.min(active, busy);
  const like = bouts && designLike(bouts);
  return {
    slot,
    part: part.name,
    work,
    rest: work === null ? null : part.length - work,
    touches: each(sumOf(measures.perPlayer.map(({ touches }) => touches))),
    metres: each(sumOf(measures.perPlayer.map(({ distance }) => distance))),
    withBall: each(withBall(analysis)),
    space: measures.area && players > 0 ? measures.area.m2 / players : null,
    tempo: drill.tempo.value,
    like: like && {
      text: `${like.count === null ? '' : `${like.count} x `}${minutes(like.work)}${like.rest === null ? '' : `, ${minutes(like.rest)}${like.resting ? ` ${like.resting}` : ''} rest`}`,
      source: like.source,
    },
  };
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

/** Seconds of a repetition in which somebody has a ball at their feet: it is being played, or it is dribbled. */
function withBall({ timeline }: DrillAnalysis): number {
  return sumOf(timeline.tracks.map(({ touches, moves }) => covered([...touches, ...moves.filter(({ kind }) => kind === 'dribble')])));
}

/** Seconds that these cover together: a dribble is one way and many touches. */
function covered(spans: readonly { readonly start: number; readonly end: number }[]): number {
  let sum = 0;
  let until = -Infinity;
  for (const { start, end } of [...spans].sort((a, b) => a.start - b.start)) {
    sum += Math.max(0, end - Math.max(start, until));
    until = Math.max(until, end);
  }
  return sum;
}
