import fc from 'fast-check';
import { expect, test } from 'vitest';
import { alone, analyse } from '../../shared/analyse.ts';
import { applyEdits } from '../../shared/checks/edits.ts';
import type { Point } from '../../shared/geometry/point.ts';
import { boundsOf } from '../../shared/model/things.ts';
import { drag, type Handle } from '../../shared/service/drag.ts';
import { opened } from '../../shared/service/open.ts';
import { openIn } from './texts.ts';

function drill(place: string, units = 'm'): string {
  return `drill "A" {
  units ${units}
  area 60 x 60
  let wide = 7
  pole Near at (30, 30)
  pole Far at (40, 20)
  zone Box 8 x 6 at (20, 20)
  station Base at ${place} // stays
}
`;
}

/** The place of the station after it is dropped. */
function placed(place: string, to: Point, units = 'm'): string {
  const text = drill(place, units);
  const open = openIn({ 'a.drill': text }, 'a.drill');
  const edits = drag(open, { kind: 'thing', statement: open.analysis.drills[0]!.drill.stations[0]!.span }, to);
  return edits === null ? 'nothing' : /station Base at (.*) \/\/ stays/.exec(applyEdits(text, edits))![1]!;
}

test.each<[place: string, to: Point, becomes: string]>([
  ['(4, 4)', { x: 6.2, y: 9.9 }, '(6, 10)'],
  ['(4.25, 4)', { x: 4.3, y: 9.9 }, '(4.25, 10)'],
  ['(wide, 4)', { x: 9.1, y: 4 }, '(wide + 2, 4)'],
  ['(wide + 2, 4)', { x: 7.1, y: 4 }, '(wide, 4)'],
  ['(wide - 2, 4)', { x: 3, y: 4 }, '(wide - 4, 4)'],
  ['(area.width / 2, 4)', { x: 28, y: 4 }, '(area.width / 2 - 2, 4)'],
  ['(4 yd, 4)', { x: 5 * 0.9144, y: 4 }, '(5 yd, 4)'],
  ['2 left of Near', { x: 25, y: 30 }, '5 left of Near'],
  ['2 left of Near', { x: 33, y: 30 }, '3 right of Near'],
  ['2 left of Near', { x: 28, y: 31.5 }, '2 left of Near + (0, 1.5)'],
  ['2 left of Near', { x: 30, y: 30 }, 'Near'],
  ['2 above Near', { x: 30, y: 27 }, '3 below Near'],
  ['2 above Near', { x: 31, y: 33 }, '3 above Near + (1, 0)'],
  ['wide left of Near', { x: 20, y: 30 }, 'wide + 3 left of Near'],
  ['2 left of 3 above Near', { x: 27, y: 35 }, '3 left of 5 above Near'],
  ['Near', { x: 32, y: 30 }, '2 right of Near'],
  ['Near', { x: 32, y: 29 }, 'Near + (2, -1)'],
  ['area.centre', { x: 30, y: 24 }, '6 below area.centre'],
  ['Near + (1, 1)', { x: 34, y: 28 }, 'Near + (4, -2)'],
  ['Near + (1, 1)', { x: 30, y: 30 }, 'Near'],
  ['Near + (-wide, 0)', { x: 25, y: 30 }, 'Near + (-wide + 2, 0)'],
  ['between Near and Far', { x: 36, y: 25 }, '1 right of between Near and Far'],
  ['1/2 from Near to Far', { x: 36, y: 26 }, '1 right of 1 above 1/2 from Near to Far'],
  ['mirror of (10, 4) across length', { x: 52, y: 5 }, 'mirror of (8, 5) across length'],
  ['mirror of 2 left of Near across width', { x: 26, y: 30 }, 'mirror of 4 left of Near across width'],
  ['Box', { x: 20, y: 22 }, '2 above Box'],
  ['(4, 4)', { x: 4.1, y: 3.9 }, '(4, 4)'],
])('%s dropped at %j', (place, to, becomes) => {
  expect(placed(place, to)).toBe(becomes);
});

test.each([
  ['(4, 4)', 'yd', { x: 5 * 0.9144, y: 4 * 0.9144 }, '(5, 4)'],
  ['(4, 4)', 'ft', { x: 7 * 0.3048, y: 4 * 0.3048 }, '(7, 4)'],
  ['(4 m, 400)', 'cm', { x: 4, y: 6 }, '(4 m, 600)'],
])('%s in %s', (place, units, to, becomes) => {
  expect(placed(place, to, units)).toBe(becomes);
});

const shapes = [
  '(4, 4)', '(wide, 4 yd)', '2 left of Near', '2.5 above Near', 'wide right of Near', 'Near', 'area.top', 'Near + (1, -wide)',
  'between Near and Far', '1/3 from Near to Far', 'mirror of 2 above Near across length', 'mirror of (3, 5) across width',
  '2 left of between Near and Far', '1 above 2 left of Near + (1, 1)',
];

test('wherever it is dropped, it comes to lie within half a step, and nothing else changes', () => {
  const metre = fc.double({ min: 1, max: 59, noNaN: true });
  fc.assert(fc.property(fc.constantFrom(...shapes), fc.constantFrom('m', 'yd', 'ft'), metre, metre, (place, units, x, y) => {
    const text = drill(place, units);
    const open = opened(text, alone);
    const station = open.analysis.drills[0]!.drill.stations[0]!;
    const edits = drag(open, { kind: 'thing', statement: station.span }, { x, y })!;
    const after = applyEdits(text, edits);
    const { at } = analyse(after).drills[0]!.drill.stations[0]!;
    // Half a step of the coarsest unit written, and a hair for rounding to hundredths.
    expect(Math.abs(at.x - x)).toBeLessThanOrEqual(0.25 + 0.006);
    expect(Math.abs(at.y - y)).toBeLessThanOrEqual(0.25 + 0.006);
    expect(after.replace(/Base at .* \/\//, '')).toBe(text.replace(/Base at .* \/\//, ''));
  }));
});

/** What the text says after a side of the zone was dragged there; the edit is checked against the drill that comes out. */
function zoneAfter(shape: string, side: 'left' | 'right' | 'bottom' | 'top', to: number): string {
  const text = `drill "A" {\n  area 40 x 40\n  let wide = 7\n  zone Box ${shape} // stays\n}\n`;
  const open = opened(text, alone);
  const zone = open.analysis.drills[0]!.drill.zones[0]!;
  const edits = drag(open, { kind: 'side', statement: zone.span, side }, { x: to, y: to });
  if (edits === null) return 'nothing';
  const after = applyEdits(text, edits);
  expect(Math.abs(boundsOf(analyse(after).drills[0]!.drill.zones[0]!.shape)[side] - to)).toBeLessThanOrEqual(0.25 + 1e-6);
  return /zone Box (.*) \/\/ stays/.exec(after)![1]!;
}

test.each<[shape: string, side: 'left' | 'right' | 'bottom' | 'top', to: number, becomes: string]>([
  ['8 x 6 at area.centre', 'right', 26, '12 x 6 at area.centre'],
  ['8 x 6 at area.centre', 'bottom', 18, '8 x 4 at area.centre'],
  ['8 x 6 yd at area.centre', 'right', 20 + 5 * 0.9144, '10 x 6 yd at area.centre'],
  ['wide x 6 at area.centre', 'left', 16, 'wide + 1 x 6 at area.centre'],
  ['8 x 6 in area.topRight', 'left', 30, '10 x 6 in area.topRight'],
  ['8 x 6 in area.topRight', 'right', 38, 'nothing'],
  ['8 x 6 in area.top', 'left', 15, '10 x 6 in area.top'],
  ['from (4, 4) to (12, 10)', 'right', 14, 'from (4, 4) to (14, 10)'],
  ['from (4, 4) to (12, 10)', 'bottom', 2, 'from (4, 2) to (12, 10)'],
  ['from (12, 10) to (4, 4)', 'left', 6, 'from (12, 10) to (6, 4)'],
  ['circle 5 at area.centre', 'top', 28, 'circle 8 at area.centre'],
])('zone Box %s, its %s side at %d', (shape, side, to, becomes) => {
  expect(zoneAfter(shape, side, to)).toBe(becomes);
});

type Part = Handle extends infer H ? (H extends { readonly statement: unknown } ? Omit<H, 'statement'> : never) : never;
const strips = 'split area by length into Back 8, Front 12';
const boxes = 'zones Box 4 x 4 in corners of area';
const wedge = 'zone Wedge polygon (0, 0) (6, 0) (3, 8)';

test.each<[line: string, part: Part, to: Point, becomes: string | null]>([
  ['area 20 x 24', { kind: 'side', side: 'right' }, { x: 22.1, y: 5 }, 'area 22 x 24'],
  ['area 20 x 24', { kind: 'side', side: 'left' }, { x: 2, y: 5 }, null],
  [boxes, { kind: 'side', side: 'top', zone: 'BoxBottomLeft' }, { x: 0, y: 6 }, 'zones Box 4 x 6 in corners of area'],
  [boxes, { kind: 'side', side: 'left', zone: 'BoxTopRight' }, { x: 14, y: 18 }, 'zones Box 6 x 4 in corners of area'],
  [boxes, { kind: 'side', side: 'right', zone: 'BoxTopRight' }, { x: 14, y: 18 }, null],
  [boxes, { kind: 'side', side: 'right' }, { x: 14, y: 18 }, null],
  [strips, { kind: 'side', side: 'top', zone: 'Back' }, { x: 4, y: 10.1 }, 'Back 10, Front 10'],
  [strips, { kind: 'side', side: 'bottom', zone: 'Front' }, { x: 4, y: 7 }, 'Back 7, Front 13'],
  [strips, { kind: 'side', side: 'top', zone: 'Front' }, { x: 4, y: 7 }, null],
  [strips, { kind: 'side', side: 'left', zone: 'Front' }, { x: 4, y: 7 }, null],
  [strips, { kind: 'thing' }, { x: 3, y: 2 }, null],
  [wedge, { kind: 'corner', index: 2 }, { x: 4, y: 10 }, 'polygon (0, 0) (6, 0) (4, 10)'],
  [wedge, { kind: 'corner', index: 3 }, { x: 4, y: 10 }, null],
  ['zone Box 8 x 6 at area.centre', { kind: 'thing' }, { x: 12, y: 10 }, 'at 2 right of area.centre'],
  ['balls 6 at (2, 2)', { kind: 'thing' }, { x: 3, y: 2 }, 'balls 6 at (3, 2)'],
  ['cone at (2, 2)', { kind: 'thing' }, { x: 3, y: 2 }, 'cone at (3, 2)'],
  ['coach at (2, 2)', { kind: 'thing' }, { x: 3, y: 2 }, 'coach at (3, 2)'],
  ['cone at (2, // here\n 2)', { kind: 'thing' }, { x: 3, y: 2 }, null],
])('%s, its %j to %j', (line, part, to, becomes) => {
  const area = line.startsWith('area') ? '' : '  area 20 x 20\n';
  const text = `drill "A" {\n${area}  ${line}\n}\n`;
  const from = text.indexOf(line);
  const edits = drag(opened(text, alone), { ...part, statement: { from, to: from + line.length } }, to);
  expect(edits === null ? null : applyEdits(text, edits)).toEqual(becomes === null ? null : expect.stringContaining(becomes));
});

test.each([
  ['Base runs to (6, 6)', { x: 8, y: 6 }, 'Base runs to (8, 6)'],
  ['Base passes into 2 left of Near for Base', { x: 7, y: 10 }, 'into 3 left of Near for Base'],
  ['Base spins around Near to 2 above Near', { x: 10, y: 14 }, 'around Near to 4 above Near'],
  ['Base runs to Base', { x: 4, y: 6 }, 'Base runs to 2 above Base'],
])('the end of %s', (beat, to, becomes) => {
  const text = `drill "A" {\n  area 20 x 20\n  pole Near at (10, 10)\n  station Base at (4, 4)\n  sequence {\n    ${beat}\n  }\n}\n`;
  const action = opened(text, alone).analysis.drills[0]!.drill.sequences[0]!.beats[0]!.lead.chain[0]!;
  expect(applyEdits(text, drag(opened(text, alone), { kind: 'end', action: action.span }, to)!)).toContain(becomes);
});

// The image of (x, y) on an area 20 wide and 20 long is (20 - x, y) across its length and (x, 20 - y) across its width: worked out by hand.
test.each([
  ['length', '(16, 12)', 'run-Right-1', { x: 14, y: 16 }, 'Left runs to (6, 16)'],
  ['length', '(16, 12)', 'run-Right-2', { x: 17, y: 12 }, 'then runs to (3, 12)'],
  ['width', '(4, 8)', 'run-Right-1', { x: 8, y: 4 }, 'Left runs to (8, 16)'],
  ['length', '(16, 12)', 'run-Right-9', { x: 8, y: 4 }, null],
])('a run mirrored across the %s moves its original', (across, right, way, to, becomes) => {
  const base = across === 'length' ? '(10, 2)' : '(10, 10)';
  const last = `sequence "right" mirrors "left" across ${across}`;
  const text = `drill "A" {\n  area 20 x 20\n  station Base at ${base}\n  station Left at (4, 12)\n  station Right at ${right}\n  ball at Base\n  sequence "left" {\n    Base passes to Left while Left runs to (7, 15) then runs to (4, 12)\n    Left passes to Base\n  }\n  ${last}\n}\n`;
  const from = text.indexOf(last);
  const edits = drag(opened(text, alone), { kind: 'end', action: { from, to: from + last.length }, way }, to);
  expect(edits === null ? null : applyEdits(text, edits)).toEqual(becomes === null ? null : expect.stringContaining(becomes));
});
