/** The ways of balls and players as lines that differ by shape: dash, wave, bow, doubling and head, not by colour alone. */
import type { Span } from '../../grammar/tree.ts';
import type { Path, Segment } from '../geometry/path.ts';
import { distance, type Point } from '../geometry/point.ts';
import type { Drill, Part } from '../model/drill.ts';
import type { Move, Timeline } from '../timeline/timeline.ts';
import { type Disc, roundDiscs } from './detour.ts';
import { onSheet, type Box, boxAround } from './ground.ts';
import type { Ink } from './palette.ts';
import type { Plan, Shape } from './scene.ts';
import { filled, mm, path, polygon, polyline, stroked, type Spot } from './shapes.ts';
import { dense, gap, lengthOf, sliceOf, walker } from './traces.ts';

/** Handbooks disagree on which of the two is solid; wavy for a dribble is the one thing they share. */
export const conventions = ['solid pass', 'dashed pass'] as const;
export type Convention = (typeof conventions)[number];

export const lineKinds = ['pass', 'lofted', 'shot', 'dribble', 'run', 'press', 'mark', 'walk'] as const;
export type LineKind = (typeof lineKinds)[number];

/** One way on the ground, before it is drawn. */
export interface Way {
  readonly id: string;
  readonly kind: LineKind;
  /** Beats that this way is what they are about: it carries their numbers. */
  readonly beats: readonly number[];
  readonly actor: string;
  readonly span: Span;
  readonly path: Path;
}

/** A way as drawn. */
export interface DrawnLine {
  readonly way: Way;
  readonly shapes: readonly Shape[];
  /** Along the line, from start to head, at most a few millimetres apart. */
  readonly points: readonly Spot[];
  readonly head: Box;
}

/** Every way of a repetition, or of one of its beats, in order of its first start; what goes the same way again is the same way. */
export function waysOf(drill: Drill, timeline: Timeline, only?: number): Way[] {
  const leads = leadsOf(drill, timeline);
  const ledBy = (beat: number, actor: string, span: Span) => {
    const lead = leads.get(beat);
    return lead !== undefined && lead.actor === actor && lead.span.from <= span.from && span.to <= lead.span.to ? [beat] : [];
  };
  const ways: (Way & { readonly start: number })[] = [];
  const wanted = (beat: number): boolean => only === undefined || only === beat;
  for (const pass of timeline.passes) {
    if (!wanted(pass.beat)) continue;
    const kind = pass.kind === 'shot' ? 'shot' : pass.flight.kind === 'loft' ? 'lofted' : 'pass';
    const { fromAt: from, toAt: to } = pass;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    ways.push({
      id: `pass-${pass.index + 1}`, kind, beats: ledBy(pass.beat, pass.from, pass.action.span), actor: pass.from, span: pass.action.span,
      path: { segments: [{ kind: 'line', from, to, length }], length, from, to }, start: pass.start,
    });
  }
  for (const track of timeline.tracks) {
    for (const [index, move] of track.moves.entries()) {
      if (!wanted(move.beat)) continue;
      ways.push({
        id: wayId(move, track.actor, index), kind: kindOf(move), beats: ledBy(move.beat, track.actor, move.action.span),
        actor: track.actor, span: move.action.span, path: move.path, start: move.start,
      });
    }
  }
  const drawn = ways.filter((way) => way.path.length > 0.05).sort((a, b) => a.start - b.start);
  // The walks lie below everything else.
  return [...(only === undefined ? walksOf(drill, timeline, drawn) : []), ...merged(numberedOnce(drawn))];
}

/** Of the movement at this index of an actor's moves. */
export function wayId({ kind }: Pick<Move, 'kind'>, actor: string, index: number): string {
  return `${kind}-${actor}-${index + 1}`;
}

export function kindOf({ kind, action: { verb } }: Move): LineKind {
  if (kind === 'dribble') return 'dribble';
  if (verb === 'marks') return 'mark';
  return verb === 'presses' || verb === 'wins the ball from' ? 'press' : 'run';
}

/** Without the ball, in the course of a beat. */
export function isRun(kind: LineKind): boolean {
  return kind === 'run' || kind === 'press' || kind === 'mark';
}

/** Metres within which a run has led to the next place already. */
const led = 3;

/** The ways to the next place that no run shows. */
function walksOf(drill: Drill, timeline: Timeline, drawn: readonly Way[]): Way[] {
  const spans = new Map(drill.actors.map(({ id, span }) => [id, span]));
  const runs = drawn.filter(({ kind }) => kind === 'run');
  return timeline.tracks.flatMap(({ actor, moves, walk }): Way[] => {
    const span = spans.get(actor);
    if (!walk || !span) return [];
    const { from, to, length } = walk.path;
    const shown = (moves.at(-1)?.kind === 'run' && length < led) || runs.some(({ path }) => distance(path.from, from) < 1 && distance(path.to, to) < led);
    return shown ? [] : [{ id: `walk-${actor}`, kind: 'walk', beats: [], actor, span, path: walk.path }];
  });
}

/** The leading part of every beat, by its number. */
function leadsOf(drill: Drill, timeline: Timeline): Map<number, Part> {
  const sequences = new Map(drill.sequences.map((sequence) => [sequence.id, sequence]));
  return new Map(timeline.beats.flatMap(({ sequence, index, number }): [number, Part][] => {
    const lead = sequences.get(sequence)?.beats[index]?.lead;
    return lead ? [[number, lead]] : [];
  }));
}

/** A beat's number goes to its ball, or to its first run when it has none; to the first of several dribbles. */
function numberedOnce(ways: readonly Way[]): Way[] {
  const taken = new Set(ways.filter((way) => !isRun(way.kind)).flatMap((way) => way.beats));
  const dribbled = new Set<number>();
  return ways.map((way) => {
    if (!isRun(way.kind) && way.kind !== 'dribble') return way;
    const told = isRun(way.kind) ? taken : dribbled;
    const beats = way.beats.filter((beat) => !told.has(beat));
    for (const beat of beats) told.add(beat);
    return { ...way, beats };
  });
}

/** Ways of one kind between the same two spots (to half a metre), as one with all their numbers. */
function merged(ways: readonly Way[]): Way[] {
  const found = new Map<string, Way>();
  for (const way of ways) {
    const { from, to, length } = way.path;
    const key = [way.kind, from.x, from.y, to.x, to.y, length].map((part) => (typeof part === 'number' ? Math.round(part * 2) : part)).join();
    const before = found.get(key);
    found.set(key, before ? { ...before, beats: [...before.beats, ...way.beats] } : way);
  }
  return [...found.values()];
}

/**
 * Draws the ways: cut back where they would run under a disc, and set side by side where they would lie on each other.
 * Runs go round the discs on their way. A way hidden by the discs at its ends (a step up in the queue) is left out, unless a beat is about it.
 */
export function drawLines(ways: readonly Way[], plan: Plan, discs: readonly Disc[], convention: Convention): DrawnLine[] {
  const shifts = sideBySide(ways, plan);
  return ways.flatMap((way, index) => drawWay(way, plan, discs, convention, shifts[index] as Spot) ?? []);
}

/** A line of this kind as the key shows it, from left to right. */
export function lineSample(kind: LineKind, convention: Convention, from: Spot, length: number): Shape[] {
  const to = { x: from.x + length, y: from.y };
  const points = kind === 'lofted' ? bowed(from, to) : dense([from, to], 1);
  return inked(kind, convention, points, null);
}

// ---------------------------------------------------------------- one way

function drawWay(way: Way, plan: Plan, discs: readonly Disc[], convention: Convention, shift: Spot): DrawnLine | null {
  const trace = tracePath(way.path, plan).map((spot) => ({ x: spot.x + shift.x, y: spot.y + shift.y }));
  const [from, to] = freeOfDiscs(trace, discs);
  if (to - from < (way.kind === 'walk' ? 4 : 1.5) && way.beats.length === 0) return null;
  const ends = sliceOf(trace, from, to);
  const onFoot = isRun(way.kind) || way.kind === 'walk';
  const bent = onFoot ? roundDiscs(ends, discs) : null;
  const points = bent ?? (way.kind === 'lofted' ? bowed(ends[0] as Spot, ends[ends.length - 1] as Spot) : ends);
  // A run keeps its true arcs; everything else is drawn through its points.
  const curve = onFoot && !bent ? (cut: number) => arcsOf(way.path, plan, shift, from, to - cut) : null;
  const head = points[points.length - 1] as Spot;
  return { way, shapes: inked(way.kind, convention, points, curve), points, head: boxAround(head, way.kind === 'walk' ? 2.4 : 3.4) };
}

const headLength = { pass: 2.4, lofted: 2.4, shot: 3.2, dribble: 2.2, run: 2, press: 0.4, mark: 1.4, walk: 1.4 } as const satisfies Record<LineKind, number>;

function inked(kind: LineKind, convention: Convention, points: readonly Spot[], curve: ((cut: number) => string) | null): Shape[] {
  const length = lengthOf(points);
  const size = Math.min(headLength[kind], length * 0.6);
  const tip = points[points.length - 1] as Spot;
  const at = walker(points);
  const back = at(Math.max(0, length - size));
  const end = Math.max(0, length - size * 0.8);
  const straight = (): string => polyline([at(0), at(end)]);
  const bent = (): string => polyline(sliceOf(points, 0, end));
  const passDash = convention === 'solid pass' ? null : '2 1.3';
  const runDash = convention === 'solid pass' ? '1.7 1.2' : null;
  switch (kind) {
    case 'pass':
      return [path(straight(), stroked('ball', 0.5, passDash)), closedHead(tip, back, 0.36, 'ball')];
    case 'lofted':
      return [path(bent(), stroked('ball', 0.5, '3.2 1 0.5 1')), closedHead(tip, back, 0.36, 'ball')];
    case 'shot':
      return [
        path(straight(), stroked('ball', 1.5)), path(straight(), stroked('paper', 0.6)),
        closedHead(tip, back, 0.5, 'ball'),
      ];
    case 'dribble':
      return [path(length < size + 3.5 ? bent() : wave(points, size), stroked('ball', 0.45)), closedHead(tip, back, 0.4, 'ball')];
    case 'run':
      return [path(curve?.(size * 0.3) ?? bent(), stroked('run', 0.4, runDash)), openHead(tip, back, 0.45)];
    case 'press':
      return [path(curve?.(0.2) ?? bent(), stroked('run', 0.4, runDash)), bar(tip, back)];
    case 'mark':
      return [path(curve?.(size) ?? bent(), stroked('run', 0.4, runDash)), cup(tip, back)];
    case 'walk':
      return [path(curve?.(size * 0.3) ?? bent(), stroked('run', 0.3, '0.4 0.9')), openHead(tip, back, 0.3)];
  }
}

function closedHead(tip: Spot, back: Spot, half: number, ink: Ink): Shape {
  const [dx, dy] = [tip.x - back.x, tip.y - back.y];
  return polygon([tip, { x: back.x - dy * half, y: back.y + dx * half }, { x: back.x + dy * half, y: back.y - dx * half }], filled(ink));
}

function openHead(tip: Spot, back: Spot, width: number): Shape {
  const [dx, dy] = [(tip.x - back.x) * 0.5, (tip.y - back.y) * 0.5];
  const wings = [{ x: back.x - dy, y: back.y + dx }, tip, { x: back.x + dy, y: back.y - dx }];
  return path(polyline(wings), stroked('run', width));
}

/** Square across the end. */
function bar(tip: Spot, back: Spot): Shape {
  const { x, y } = towards(back, tip);
  return path(polyline([{ x: tip.x - y * 1.7, y: tip.y + x * 1.7 }, { x: tip.x + y * 1.7, y: tip.y - x * 1.7 }]), stroked('run', 0.8));
}

/** A hollow half round, open to who is covered. */
function cup(tip: Spot, back: Spot): Shape {
  const { x, y } = towards(back, tip);
  const [a, b] = [{ x: tip.x - y * 1.6, y: tip.y + x * 1.6 }, { x: tip.x + y * 1.6, y: tip.y - x * 1.6 }];
  return path(`M${mm(a.x)} ${mm(a.y)}A1.6 1.6 0 0 1 ${mm(b.x)} ${mm(b.y)}`, stroked('run', 0.55));
}

function towards(from: Spot, to: Spot): Spot {
  const length = gap(from, to) || 1;
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

/** A wave along the points that runs out straight before the head. */
function wave(points: readonly Spot[], head: number): string {
  const length = lengthOf(points) - head * 0.8;
  const straight = Math.min(1, length * 0.2);
  const halves = Math.max(2, Math.round((length - straight) / 1.5));
  const half = (length - straight) / halves;
  const at = walker(points);
  let d = `M${mm(at(0).x)} ${mm(at(0).y)}`;
  for (let index = 0; index < halves; index += 1) {
    const a = at(index * half);
    const b = at((index + 1) * half);
    const side = (index % 2 === 0 ? 1 : -1) * 0.9;
    d += `Q${mm((a.x + b.x) / 2 - ((b.y - a.y) / half) * side)} ${mm((a.y + b.y) / 2 + ((b.x - a.x) / half) * side)} ${mm(b.x)} ${mm(b.y)}`;
  }
  const end = at(length);
  return `${d}L${mm(end.x)} ${mm(end.y)}`;
}

/** A shallow bow, always to the left of the flight. */
function bowed(from: Spot, to: Spot): Spot[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const rise = Math.min(6, length * 0.14) / Math.max(length, 1e-6);
  const steps = Math.max(4, Math.ceil(length / 2));
  return Array.from({ length: steps + 1 }, (_, index) => {
    const share = index / steps;
    const lift = 4 * share * (1 - share) * rise;
    return { x: from.x + (to.x - from.x) * share + (to.y - from.y) * lift, y: from.y + (to.y - from.y) * share - (to.x - from.x) * lift };
  });
}

// ---------------------------------------------------------------- traces

function tracePath(track: Path, plan: Plan): Spot[] {
  const spots: Spot[] = [onSheet(plan, track.from)];
  for (const segment of track.segments) {
    const steps = segment.kind === 'line' ? Math.ceil((segment.length * plan.perMetre) / 2) : Math.ceil(Math.abs(segment.sweep) / 0.12);
    for (let step = 1; step <= Math.max(1, steps); step += 1) spots.push(onSheet(plan, pointOn(segment, step / Math.max(1, steps))));
  }
  return spots;
}

function pointOn(segment: Segment, share: number): Point {
  if (segment.kind === 'line') {
    return { x: segment.from.x + (segment.to.x - segment.from.x) * share, y: segment.from.y + (segment.to.y - segment.from.y) * share };
  }
  const angle = segment.start + segment.sweep * share;
  return { x: segment.centre.x + Math.cos(angle) * segment.radius, y: segment.centre.y + Math.sin(angle) * segment.radius };
}

/** The path between two lengths on the sheet, with its arcs as arcs. */
function arcsOf(track: Path, plan: Plan, shift: Spot, from: number, to: number): string {
  let d = '';
  let before = 0;
  const spot = (segment: Segment, share: number) => {
    const { x, y } = onSheet(plan, pointOn(segment, share));
    return `${mm(x + shift.x)} ${mm(y + shift.y)}`;
  };
  for (const segment of track.segments) {
    const length = segment.length * plan.perMetre;
    const start = Math.max(0, from - before) / length;
    const end = Math.min(length, to - before) / length;
    before += length;
    if (!(end > start)) continue;
    if (d === '') d = `M${spot(segment, start)}`;
    if (segment.kind === 'line') {
      d += `L${spot(segment, end)}`;
      continue;
    }
    const radius = mm(segment.radius * plan.perMetre);
    // Two halves, so that no arc is longer than half a circle; y points down on the sheet, so anticlockwise is sweep 0.
    for (const share of [(start + end) / 2, end]) d += `A${radius} ${radius} 0 0 ${segment.sweep > 0 ? 0 : 1} ${spot(segment, share)}`;
  }
  return d;
}

/** From where to where along the trace (millimetres) it is clear of the discs it starts and ends at. */
function freeOfDiscs(trace: readonly Spot[], discs: readonly Disc[]): [number, number] {
  const length = lengthOf(trace);
  const at = walker(trace);
  const near = (spot: Spot) => discs.filter((disc) => gap(disc, spot) < disc.r + 0.6);
  const clear = (spot: Spot, those: readonly Disc[]) => those.every((disc) => gap(disc, spot) >= disc.r + 0.6);
  const most = length * 0.45;
  let from = 0;
  const first = near(at(0));
  while (from < most && !clear(at(from), first)) from += 0.3;
  let cut = 0;
  const last = near(at(length));
  while (cut < most && !clear(at(length - cut), last)) cut += 0.3;
  return [Math.min(from, most), length - Math.min(cut, most)];
}

// ---------------------------------------------------------------- side by side

/** Millimetres between lines that would lie on each other: enough for a number on each; a whole bundle stays this wide. */
const apart = 3.7;
const bundleWidth = 4.8;
const besideWalk = 1.6;

/**
 * Straight ways on the same line (there and back, or a pass and the run that follows it) move apart, spread evenly
 * about the true line, walks beside them; how far each moves, on the sheet.
 */
function sideBySide(ways: readonly Way[], plan: Plan): Spot[] {
  const straights = ways.map((way) => (way.kind === 'lofted' ? null : straightOf(way, plan)));
  const bundle = ways.map((_, index) => index);
  const top = (index: number): number => (bundle[index] === index ? index : (bundle[index] = top(bundle[index] as number)));
  for (let a = 0; a < ways.length; a += 1) {
    for (let b = 0; b < a; b += 1) {
      const [one, other] = [straights[a], straights[b]];
      if (one && other && onEachOther(one, other)) bundle[top(a)] = top(b);
    }
  }
  const members = new Map<number, number[]>();
  for (const index of ways.keys()) members.set(top(index), [...(members.get(top(index)) ?? []), index]);
  const shifts: Spot[] = ways.map(() => ({ x: 0, y: 0 }));
  for (const those of members.values()) {
    if (those.length === 1) continue;
    const { dx, dy } = straights[those[0] as number] as Straight;
    const walks = those.filter((index) => ways[index]?.kind === 'walk');
    const others = those.filter((index) => ways[index]?.kind !== 'walk');
    const spread = others.length > 1 ? Math.min(apart, bundleWidth / (others.length - 1)) : 0;
    const asides = new Map(others.map((index, rank) => [index, (rank - (others.length - 1) / 2) * spread]));
    for (const walk of walks) {
      const beside = [...asides].filter(([index]) => onEachOther(straights[walk] as Straight, straights[index] as Straight)).map(([, aside]) => aside);
      const [left, right] = [Math.min(...beside) - besideWalk, Math.max(...beside) + besideWalk];
      asides.set(walk, beside.length === 0 ? 0 : -left < right ? left : right);
    }
    for (const [index, aside] of asides) shifts[index] = { x: -dy * aside, y: dx * aside };
  }
  return shifts;
}

interface Straight {
  readonly from: Spot;
  readonly dx: number;
  readonly dy: number;
  readonly length: number;
}

function straightOf(way: Way, plan: Plan): Straight | null {
  if (way.path.segments.length !== 1 || way.path.segments[0]?.kind !== 'line') return null;
  const [from, to] = [onSheet(plan, way.path.from), onSheet(plan, way.path.to)];
  const length = gap(from, to);
  return length < 1 ? null : { from, dx: (to.x - from.x) / length, dy: (to.y - from.y) / length, length };
}

function onEachOther(a: Straight, b: Straight): boolean {
  if (Math.abs(a.dx * b.dy - a.dy * b.dx) > 0.07) return false;
  const along = (spot: Spot) => (spot.x - a.from.x) * a.dx + (spot.y - a.from.y) * a.dy;
  const across = (spot: Spot) => Math.abs((spot.y - a.from.y) * a.dx - (spot.x - a.from.x) * a.dy);
  const end = { x: b.from.x + b.dx * b.length, y: b.from.y + b.dy * b.length };
  if (Math.min(across(b.from), across(end)) > 1.2 || Math.max(across(b.from), across(end)) > 2.5) return false;
  const [low, high] = [Math.min(along(b.from), along(end)), Math.max(along(b.from), along(end))];
  return Math.min(high, a.length) - Math.max(low, 0) > 5;
}
