/** The time line: a row a player and one a ball, what each does when, and how early or late every ball is met. */
import type { DrillAnalysis } from '../analyse.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import type { Drill } from '../model/drill.ts';
import { lateFrom, type Pass, type Timeline, type Track } from '../timeline/timeline.ts';
import { cut, textWidth } from '../font/text.ts';
import { kindOf, type LineKind } from './lines.ts';
import type { Theme } from './palette.ts';
import { cutBlocks, possessionBand } from './possession.ts';
import type { Mark, Shape, StripAxis } from './scene.ts';
import { box, filled, line, mm, path, stroked, text } from './shapes.ts';
import { figure } from './units.ts';
import { actorName, beatLabels } from './words.ts';

export interface Strip {
  readonly marks: readonly Mark[];
  readonly axis: StripAxis;
}

/** Millimetres. */
interface Corner {
  readonly left: number;
  readonly top: number;
  readonly width: number;
}

const nameRoom = 21;
const headRoom = 9;
const footRoom = 6.5;

export function stripHeight({ drill, timeline }: DrillAnalysis, phase: PhaseAnalysis | null): number {
  const count = rowsOf(drill, timeline, phase).length;
  return count === 0 ? 0 : headRoom + bandRoom(phase) + footRoom + count * rowHeight(count);
}

/** For whose ball it is. */
function bandRoom(phase: PhaseAnalysis | null): number {
  return phase && phase.possession.length > 0 ? 5 : 0;
}

/** Null when nothing happens. */
export function stripOf({ drill, timeline }: DrillAnalysis, phase: PhaseAnalysis | null, theme: Theme, { left, top, width }: Corner): Strip | null {
  const rows = rowsOf(drill, timeline, phase);
  const head = headRoom + bandRoom(phase);
  if (rows.length === 0) return null;
  const height = rowHeight(rows.length);
  const start = left + nameRoom;
  const axis: StripAxis = {
    left: start,
    perSecond: (left + width - start - 2) / timeline.end,
    top: top + headRoom - 2,
    bottom: top + head + rows.length * height + 1,
  };
  const x = (time: number) => axis.left + axis.perSecond * time;
  const band = bandRoom(phase);
  const marks: Mark[] = [{
    id: 'strip', layer: 'strip', span: null, label: null,
    shapes: [text({ x: left, y: top + 3.2 }, 'TIME LINE', 1.9, 'note', { weight: 'bold' }), ...legend(timeline, start, top), ...beatLines(drill, timeline, axis, x), ...seconds(timeline.end, axis, x)],
  }];
  if (phase && band > 0) marks.push(...possessionBand(drill, phase, theme, x, axis.top + 0.8));
  for (const [index, row] of rows.entries()) {
    const y = top + head + index * height;
    marks.push({
      id: `strip-${row.id}`, layer: 'strip', span: null, label: row.label,
      shapes: [
        text({ x: start - 2, y: y + height * 0.74 }, cut(row.name, nameRoom - 3, 2.3, 'medium'), 2.3, 'ink', { anchor: 'end' }),
        line({ x: start, y: y + height * 0.66 }, { x: x(timeline.end), y: y + height * 0.66 }, stroked('wait', 0.15)),
        ...(row.track ? playerRow(row.track, row.passes, timeline.end, x, y, height) : ballRow(timeline, row.id, x, y, height)),
        ...(phase && !row.track ? cutBlocks(phase, row.id, x, y + height * 0.66) : []),
      ],
    });
  }
  return { marks, axis };
}

interface Row {
  readonly id: string;
  readonly name: string;
  readonly label: string;
  /** Null for a ball. */
  readonly track: Track | null;
  /** Passes this player receives. */
  readonly passes: readonly Pass[];
}

/** Whoever starts at a station or plays in a game, whoever else has a part, and the balls that move. */
function rowsOf(drill: Drill, timeline: Timeline, phase: PhaseAnalysis | null): Row[] {
  if (!(timeline.end > 0)) return [];
  const actors = new Map(drill.actors.map((actor) => [actor.id, actor]));
  const received = new Map<string, Pass[]>();
  for (const pass of timeline.passes) if (pass.to !== null) received.set(pass.to, [...(received.get(pass.to) ?? []), pass]);
  const players = timeline.tracks.flatMap((track): Row[] => {
    const actor = actors.get(track.actor);
    const idle = track.moves.length === 0 && track.touches.length === 0 && !received.has(track.actor);
    if (!actor || (idle && (phase !== null || actor.kind === 'next' || actor.kind === 'coach'))) return [];
    return [{ id: track.actor, name: actorName(actor), label: rowLabel(actorName(actor), track), track, passes: received.get(track.actor) ?? [] }];
  });
  const moving = timeline.balls.filter((ball) => ball.stretches.some((stretch) => stretch.kind !== 'still'));
  const balls = moving.map((ball, index): Row => {
    const name = moving.length === 1 ? 'Ball' : `Ball ${index + 1}`;
    return { id: ball.id, name, label: name, track: null, passes: [] };
  });
  return [...players, ...balls];
}

function rowLabel(name: string, track: Track): string {
  const running = track.moves.reduce((sum, move) => sum + move.end - move.start, 0);
  const touches = track.touches.reduce((sum, touch) => sum + touch.count, 0);
  return `${name}: moves for ${figure(Math.round(running * 10) / 10)} s, ${touches} touch${touches === 1 ? '' : 'es'}`;
}

function rowHeight(count: number): number {
  return Math.min(5.6, Math.max(4, 110 / count));
}

function playerRow(track: Track, passes: readonly Pass[], end: number, x: (time: number) => number, y: number, height: number): Shape[] {
  const middle = y + height * 0.66;
  const shapes: Shape[] = [];
  for (const move of track.moves) {
    if (move.start > move.asked + 0.01) {
      // The notch between being asked and setting off.
      shapes.push(path(`M${mm(x(move.asked))} ${mm(middle - 0.9)}v1.8M${mm(x(move.asked))} ${mm(middle)}H${mm(x(move.start))}`, stroked('run', 0.35)));
    }
    const width = Math.max(0.2, x(move.end) - x(move.start));
    shapes.push(...moveBar(kindOf(move), x(move.start), middle, width));
  }
  if (track.walk && track.walk.start < end) {
    shapes.push(line({ x: x(track.walk.start), y: middle }, { x: x(Math.min(track.walk.end, end)), y: middle }, stroked('run', 0.5, '0.5 0.8')));
  }
  for (const touch of track.touches) {
    shapes.push(box(x(touch.start) - 0.25, middle - 1.3, Math.max(0.5, x(touch.end) - x(touch.start)), 2.6, filled('ink')));
  }
  let written = -Infinity;
  for (const pass of passes) {
    // Who stood ready from the start, or long before, was never in a hurry: no figure says more.
    if (pass.slack === null || pass.receiverMove === null || pass.slack > 5) continue;
    const met = meeting(pass.arrival, pass.slack, x, y, height, written);
    shapes.push(...met.shapes);
    written = met.written;
  }
  return shapes;
}

/** Pressing ends in a bar and covering in a hollow one, as on the plan. */
function moveBar(kind: LineKind, left: number, middle: number, width: number): Shape[] {
  if (kind === 'dribble') return [box(left, middle - 0.65, width, 1.3, filled('paper', 'ball', 0.45))];
  if (kind === 'mark') return [box(left, middle - 0.55, width, 1.1, filled('paper', 'run', 0.4))];
  const bar = box(left, middle - 0.55, width, 1.1, filled('run'));
  return kind === 'press' ? [bar, box(left + width - 0.7, middle - 1.5, 0.7, 3, filled('run'))] : [bar];
}

/** Early: a bracket with the seconds in hand. Late: a solid hatched block and words. */
function meeting(arrival: number, slack: number, x: (time: number) => number, y: number, height: number, written: number): { shapes: Shape[]; written: number } {
  const late = slack <= -lateFrom;
  const seconds = figure(Math.abs(Math.round(slack * 10) / 10));
  const [from, to] = late ? [x(arrival), x(arrival - slack)] : [x(arrival - Math.min(slack, arrival)), x(arrival)];
  const middle = y + height * 0.66;
  const shapes: Shape[] = [];
  if (late) {
    const bars = Array.from({ length: Math.floor((to - from) / 1.1) }, (_, index) => from + 0.6 + index * 1.1);
    shapes.push(box(from, middle - 1.2, to - from, 2.4, filled('late', 'late', 0.3)));
    shapes.push(path(bars.map((bar) => `M${mm(bar)} ${mm(middle + 1.1)}l0.7 -2.2`).join(''), stroked('paper', 0.25)));
  } else if (to - from > 0.6) {
    shapes.push(path(`M${mm(from)} ${mm(middle - 1.3)}v-0.9H${mm(to)}v0.9`, stroked('note', 0.2)));
  }
  const words = late ? `${seconds} s late` : seconds;
  const size = late ? 2.1 : 1.9;
  const weight = late ? 'bold' : 'medium';
  const width = textWidth(words, size, weight);
  const left = Math.max(late ? from : (from + to - width) / 2, late ? written + 0.5 : -Infinity);
  const fits = late || (slack >= 0.05 && left > written + 0.5);
  if (fits) shapes.push(text({ x: left, y: middle - (late ? 1.6 : 2.5) }, words, size, late ? 'late' : 'note', { weight }));
  return { shapes, written: fits ? left + width : written };
}

function ballRow(timeline: Timeline, id: string, x: (time: number) => number, y: number, height: number): Shape[] {
  const middle = y + height * 0.66;
  const stretches = timeline.balls.find((ball) => ball.id === id)?.stretches ?? [];
  return stretches.flatMap((stretch): Shape[] => {
    const [from, to] = [x(stretch.start), x(stretch.end)];
    switch (stretch.kind) {
      case 'still':
        return [];
      case 'carried':
        return [box(from, middle - 0.65, Math.max(0.2, to - from), 1.3, filled('paper', 'ball', 0.45))];
      case 'flight':
        return stretch.flight.kind === 'loft'
          ? [path(`M${mm(from)} ${mm(middle + 0.75)}Q${mm((from + to) / 2)} ${mm(middle - height * 0.9)} ${mm(to)} ${mm(middle + 0.75)}Z`, filled('ball'))]
          : [box(from, middle - 0.75, Math.max(0.2, to - from), 1.5, filled('ball'))];
    }
  });
}

/** What the bars mean, beside the heading; only those that are there. */
function legend(timeline: Timeline, left: number, top: number): Shape[] {
  const y = top + 2.5;
  const tracks = timeline.tracks;
  const slacks = timeline.passes.filter((pass) => pass.receiverMove !== null && pass.slack !== null).map((pass) => pass.slack as number);
  const entries: [boolean, string, (x: number) => Shape | Shape[]][] = [
    [tracks.some((track) => track.moves.some((move) => kindOf(move) === 'run')), 'run', (x) => moveBar('run', x, y, 5)],
    [tracks.some((track) => track.moves.some((move) => kindOf(move) === 'press')), 'press', (x) => moveBar('press', x, y, 5)],
    [tracks.some((track) => track.moves.some((move) => kindOf(move) === 'mark')), 'cover', (x) => moveBar('mark', x, y, 5)],
    [tracks.some((track) => track.touches.length > 0), 'on the ball', (x) => box(x, y - 1.3, 5, 2.6, filled('ink'))],
    [slacks.some((slack) => slack >= 0.05 && slack <= 5), 'seconds in hand', (x) => path(`M${mm(x)} ${mm(y + 0.5)}v-0.9h5v0.9`, stroked('note', 0.2))],
    [tracks.some((track) => track.walk !== null && track.walk.start < timeline.end), 'to the next place', (x) => line({ x, y }, { x: x + 5, y }, stroked('run', 0.5, '0.5 0.8'))],
    [timeline.passes.length > 0, 'ball on its way', (x) => box(x, y - 0.75, 5, 1.5, filled('ball'))],
  ];
  const shapes: Shape[] = [];
  let x = left;
  for (const [used, words, sample] of entries) {
    if (!used) continue;
    shapes.push(...[sample(x)].flat(), text({ x: x + 6, y: y + 0.7 }, words, 2.1, 'note'));
    x += 6 + textWidth(words, 2.1, 'medium') + 3.5;
  }
  return shapes;
}

function beatLines(drill: Drill, timeline: Timeline, axis: StripAxis, x: (time: number) => number): Shape[] {
  const shapes: Shape[] = [];
  let written = -Infinity;
  for (const [start, labels] of beatsByStart(drill, timeline)) {
    const at = x(start);
    if (at < written + 1.2) continue;
    const words = labels.join(', ');
    shapes.push(line({ x: at, y: axis.top }, { x: at, y: axis.bottom }, stroked('gridMajor', 0.25)));
    shapes.push(text({ x: at + 0.5, y: axis.top - 0.4 }, words, 2.3, 'ball', { weight: 'bold' }));
    written = at + 0.5 + textWidth(words, 2.3, 'bold');
  }
  return shapes;
}

/** Beats that start at the same moment, to a twentieth of a second. */
function beatsByStart(drill: Drill, timeline: Timeline): Map<number, string[]> {
  const labels = beatLabels(drill, timeline);
  const found = new Map<number, string[]>();
  for (const { start, number } of timeline.beats) {
    const moment = Math.round(start * 20) / 20;
    found.set(moment, [...(found.get(moment) ?? []), labels.get(number) ?? '']);
  }
  return found;
}

function seconds(end: number, axis: StripAxis, x: (time: number) => number): Shape[] {
  const step = [0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300].find((each) => each * axis.perSecond >= 8) ?? 600;
  const count = Math.floor(end / step + 1e-9);
  const shapes: Shape[] = [line({ x: axis.left, y: axis.bottom }, { x: x(end), y: axis.bottom }, stroked('note', 0.25))];
  for (let index = 0; index <= count; index += 1) {
    const at = x(index * step);
    shapes.push(line({ x: at, y: axis.bottom }, { x: at, y: axis.bottom + 1 }, stroked('note', 0.25)));
    shapes.push(text({ x: at, y: axis.bottom + 3.4 }, index === count ? `${figure(index * step)} s` : figure(index * step), 1.9, 'note', { anchor: 'middle' }));
  }
  return shapes;
}
