/** The evening as a strip to scale: parts as boxes, pauses hatched, minutes below. */
import { textWidth } from '../font/text.ts';
import type { Shape } from '../scene/scene.ts';
import { box, filled, line, mm, path, stroked, text } from '../scene/shapes.ts';
import type { SessionAnalysis } from '../session/analysis.ts';
import type { Figure } from './blocks.ts';
import { contentWidth } from './style.ts';
import { minutes, partsOf } from './words.ts';

const barTop = 1;
const barHeight = 12;
const height = 20.5;

export function timeStrip(session: SessionAnalysis): Figure | null {
  const { timetable } = session;
  const end = Math.max(0, ...timetable.map((slot) => slot.end));
  if (!(end > 0)) return null;
  const at = (seconds: number) => (seconds / end) * contentWidth;
  const numbers = new Map(partsOf(session).map(({ slot, number }) => [slot, number]));
  const shapes: Shape[] = [];
  for (const slot of timetable) {
    const [left, width] = [at(slot.start), at(slot.end) - at(slot.start)];
    if (slot.kind === 'pause') {
      shapes.push(hatch(left, width), box(left, barTop, width, barHeight, stroked('ink', 0.25)));
      continue;
    }
    const number = `${numbers.get(slot) ?? ''}`;
    const { name } = slot.part;
    const tail = textWidth(number, 5, 'bold') + 2;
    const named = width - tail - 3 >= textWidth(name, 3.18, 'medium');
    shapes.push(box(left, barTop, width, barHeight, filled('tint', 'ink', 0.35)));
    if (named) shapes.push(text({ x: left + 2, y: barTop + 7.8 }, number, 5, 'ink', { weight: 'bold' }), text({ x: left + 2 + tail, y: barTop + 7.5 }, name, 3.18, 'ink'));
    else if (width >= tail) shapes.push(text({ x: left + width / 2, y: barTop + 7.8 }, number, 5, 'ink', { weight: 'bold', anchor: 'middle' }));
  }
  return { kind: 'figure', width: contentWidth, height, label: aloud(session), content: { kind: 'shapes', shapes: [...shapes, ...ticks(end, at)] } };
}

/** Every minute, longer every fifth; a number as often as there is room. */
function ticks(end: number, at: (seconds: number) => number): Shape[] {
  const whole = Math.floor(end / 60);
  const every = [5, 10, 15, 30, 60, 120].find((step) => at(step * 60) >= 9) ?? 240;
  const shapes: Shape[] = [line({ x: 0, y: barTop + barHeight + 1 }, { x: contentWidth, y: barTop + barHeight + 1 }, stroked('ink', 0.25))];
  const fine = at(60) >= 0.8 ? 1 : every;
  for (let minute = 0; minute <= whole; minute += fine) {
    const x = at(minute * 60);
    const labelled = minute % every === 0;
    shapes.push(line({ x, y: barTop + barHeight + 1 }, { x, y: barTop + barHeight + (labelled ? 3 : minute % 5 === 0 ? 2.4 : 1.7) }, stroked('ink', labelled ? 0.3 : 0.15)));
    if (!labelled) continue;
    const anchor = minute === 0 ? 'start' : contentWidth - x < 3 ? 'end' : 'middle';
    shapes.push(text({ x, y: height - 0.6 }, minute === 0 ? '0 min' : `${minute}`, 3.18, 'ink', { anchor }));
  }
  return shapes;
}

/** Oblique strokes within a box. */
function hatch(left: number, width: number): Shape {
  let d = '';
  for (let x = 1.5; x < width + barHeight; x += 1.8) {
    const from = { x: Math.min(x, width), y: Math.max(0, x - width) };
    const to = { x: Math.max(0, x - barHeight), y: Math.min(x, barHeight) };
    d += `M${mm(left + from.x)} ${mm(barTop + from.y)}L${mm(left + to.x)} ${mm(barTop + to.y)}`;
  }
  return path(d, stroked('note', 0.15));
}

function aloud(session: SessionAnalysis): string {
  const numbers = new Map(partsOf(session).map(({ slot, number }) => [slot, number]));
  const told = session.timetable.map((slot) => {
    const when = `minute ${minutes(slot.start)} to ${minutes(slot.end)}`;
    return slot.kind === 'part' ? `${numbers.get(slot)} ${slot.part.name}, ${when}` : `${slot.pause.name ?? 'pause'}, ${when}`;
  });
  return `Time line: ${told.join('; ')}.`;
}
