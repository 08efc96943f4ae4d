/** Candidates for quick fixes. Each is tried on the text before it is offered, so these may be guesses. */
import type { Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import type { Beat, Part } from '../model/drill.ts';
import type { Problem } from '../problem.ts';
import type { Pass } from '../timeline/timeline.ts';
import type { Cure } from './check.ts';

/** Lets the receiver set off one beat earlier: their part moves from one line to the line before. */
export function earlierBeat({ drill }: DrillAnalysis, pass: Pass, text: string): Cure[] {
  const beats = drill.sequences.find((sequence) => sequence.id === pass.sequence && sequence.mirrorOf === null)?.beats ?? [];
  const found = partOf(beats, pass);
  const before = found && beats[found.beat.index - 1];
  if (!found || !before || [before.lead, ...before.meanwhile].some((part) => part.actor === found.part.actor)) return [];
  const words = text.slice(found.part.span.from, found.part.span.to);
  const joined = before.meanwhile.length === 0 ? ` while ${words}` : `, ${words}`;
  const insert = { span: { from: before.span.to, to: before.span.to }, text: joined };
  return [{ title: `Let ${found.part.actor} set off one beat earlier`, about: 'earlier', edits: [insert, { span: cutOf(found, text), text: '' }] }];
}

/** Lets the passer wait until the receiver is there; a run of the same beat sets off with the waiting. */
export function waitFirst({ drill, timeline }: DrillAnalysis, pass: Pass, text: string): Cure[] {
  const beats = drill.sequences.find((sequence) => sequence.id === pass.sequence && sequence.mirrorOf === null)?.beats ?? [];
  const index = timeline.beats.find((beat) => beat.number === pass.beat)?.index;
  const beat = beats.find((each) => each.index === index);
  if (!beat || pass.slack === null || pass.action.firstTime) return [];
  const found = partOf([beat], pass);
  const time = Math.ceil(-pass.slack * 2) / 2;
  const before = beats[beat.index - 1]?.lead;
  const waiting = before?.actor === pass.from ? before.chain.find((action) => action.verb === 'waits') : undefined;
  if (!found && waiting?.length) {
    const longer = waiting.length + time;
    return [{ title: `Let ${pass.from} wait ${longer} s instead of ${waiting.length} s`, about: 'wait', edits: [{ span: waiting.span, text: `waits ${longer} s` }] }];
  }
  const indent = text.slice(text.lastIndexOf('\n', beat.span.from - 1) + 1, beat.span.from);
  const meanwhile = found ? ` while ${text.slice(found.part.span.from, found.part.span.to)}` : '';
  const line = { span: { from: beat.span.from, to: beat.span.from }, text: `${pass.from} waits ${time} s${meanwhile}\n${indent}` };
  const cut = found ? [{ span: cutOf(found, text), text: '' }] : [];
  return [{ title: `Let ${pass.from} wait ${time} s first`, about: 'wait', edits: [line, ...cut] }];
}

/** Who is played into space goes there with the movement before, instead of somewhere else first. */
export function straightThere({ timeline }: DrillAnalysis, pass: Pass, text: string): Cure[] {
  const moves = timeline.tracks.find((track) => track.actor === pass.to)?.moves ?? [];
  const before = pass.receiverMove && moves[moves.indexOf(pass.receiverMove) - 1]?.action.targetSpan;
  const there = pass.action.targetSpan;
  if (!before || !there || pass.action.verb !== 'passes into') return [];
  const place = text.slice(there.from, there.to);
  return [{ title: `Let ${pass.to} go straight to ${place}`, about: 'straight there', edits: [{ span: before, text: place }] }];
}

/** Lets a movement begin a moment later. */
export function startLater(run: Span, text: string): Cure[] {
  if (text.slice(run.from, run.to).includes(' after ')) return [];
  return [0.5, 1, 1.5].map((delay) => ({
    title: `Let the run start ${delay} s later`,
    about: 'later',
    edits: [{ span: { from: run.to, to: run.to }, text: ` after ${delay} s` }],
  }));
}

/** Plays a ball through the air. */
export function playOver(pass: Span): Cure {
  return { title: 'Play it over the top (lofted)', about: 'lofted', edits: [{ span: { from: pass.to, to: pass.to }, text: ', lofted' }] };
}

/** How many values to each side of a number are tried. */
const tries = 12;

/**
 * Other values for the numbers a place depends on: every `let` of the drill, its area, and the numbers in the lines the
 * problem speaks of. The nearest value that works is the limit of that number.
 */
export function lengthCures(problem: Problem, { drill }: DrillAnalysis, text: string): Cure[] {
  const places = [problem.span, ...problem.related.map((related) => related.span)];
  const lets = drill.lets.map((each) => ({ name: each.name, span: each.valueSpan }));
  const area = drill.area ? [{ name: 'the area', span: drill.area.span }] : [];
  const named = [...lets, ...area, ...places.map((span) => ({ name: null, span }))];
  return named.flatMap(({ name, span }) => numbersIn(text, span).flatMap((number) => otherValues(text, number, name)));
}

/** An arrow more: a station left out is put between two others, an open chain is led back to its beginning. */
export function missingArrow({ drill, rotation }: DrillAnalysis): Cure[] {
  if (drill.rotation.kind !== 'arrows' || !rotation) return [];
  const { arrows } = drill.rotation;
  const named = new Set(arrows.flatMap((arrow) => [arrow.from, arrow.to]));
  const missing = drill.stations.filter((station) => !named.has(station.id));
  const between = missing.flatMap((station) =>
    arrows.map((arrow) => ({
      title: `Rotate ${arrow.from} -> ${station.name} -> ${arrow.to}`,
      about: `${arrow.from} ${station.name}`,
      edits: [{ span: arrow.span, text: `${arrow.from} -> ${station.name} -> ${arrow.to}` }],
    })),
  );
  const [first, last] = [arrows[0], arrows.at(-1)];
  if (!first || !last || last.to === first.from) return between;
  const close = { span: { from: last.span.to, to: last.span.to }, text: ` -> ${first.from}` };
  return [{ title: `Add the missing arrow ${last.to} -> ${first.from}`, about: 'close', edits: [close] }, ...between];
}

interface FoundPart {
  readonly beat: Beat;
  readonly part: Part;
}

/** The part, beside the lead, that holds the movement which makes the receiver late. */
function partOf(beats: readonly Beat[], pass: Pass): FoundPart | null {
  const action = pass.receiverMove?.action;
  for (const beat of beats) {
    const part = beat.meanwhile.find((each) => each.chain.some((link) => link.span.from === action?.span.from));
    if (part) return { beat, part };
  }
  return null;
}

/** The text of a part with the `while` or the comma that joins it to its line. */
function cutOf({ beat, part }: FoundPart, text: string): Span {
  const index = beat.meanwhile.indexOf(part);
  const next = beat.meanwhile[index + 1];
  if (index === 0 && next) return { from: part.span.from, to: next.span.from };
  const before = index === 0 ? beat.lead : beat.meanwhile[index - 1]!;
  return text.slice(before.span.to, part.span.from).includes('//') ? part.span : { from: before.span.to, to: part.span.to };
}

function numbersIn(text: string, span: Span): Span[] {
  return [...text.slice(span.from, span.to).matchAll(/(?<![\p{L}\d_.])\d+(\.\d+)?/gu)].map((match) => {
    const from = span.from + match.index;
    return { from, to: from + match[0].length };
  });
}

function lineOf(text: string, offset: number): number {
  return text.slice(0, offset).split('\n').length;
}

/** Values around a number in steps of a half (of one from 20 on), the nearest first. */
function otherValues(text: string, span: Span, name: string | null): Cure[] {
  const value = Number(text.slice(span.from, span.to));
  const step = value >= 20 ? 1 : 0.5;
  return Array.from({ length: 2 * tries }, (_, i) => value + (i % 2 === 0 ? -1 : 1) * step * (Math.floor(i / 2) + 1))
    .filter((other) => other > 0)
    .map((other) => ({
      title: name === null ? `In line ${lineOf(text, span.from)}, write ${other} instead of ${value}` : `Let ${name} be ${other} instead of ${value}`,
      about: `number ${span.from}`,
      edits: [{ span, text: String(other) }],
    }));
}
