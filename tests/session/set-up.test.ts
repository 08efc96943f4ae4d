/** What is laid: counted by hand, measured by Pythagoras through mathjs, changed into yards by the `convert` package. */
import { convert } from 'convert';
import fc from 'fast-check';
import { hypot } from 'mathjs';
import { expect, test } from 'vitest';
import { analysed, evening, parts, wall } from './evening.ts';

const square = (lines = '') => `drill "Square" {\n  area 10 x 10 ${lines}\n}\n`;
const kinds = (things: readonly { readonly kind: string }[]) => Object.fromEntries([...new Set(things.map(({ kind }) => kind))].map((kind) => [kind, things.filter((each) => each.kind === kind).length]));

// Counted by hand on squared paper: fence posts, not fence panels.
test.each<[what: string, lines: string, drill: string, counts: Readonly<Record<string, number>>]>([
  ['one square', 'groups 1 of "Square" at (0, 0)', square(), { disc: 4 }],
  ['two that share a side', 'groups 2 of "Square" at (0, 0), (10, 0)', square(), { disc: 6 }],
  ['two that share a corner', 'groups 2 of "Square" at (0, 0), (10, 10)', square(), { disc: 7 }],
  ['two apart', 'groups 2 of "Square" at (0, 0), (13, 0)', square(), { disc: 8 }],
  ['four in a block', 'groups 4 of "Square" at (0, 0), (10, 0), (0, 10), (10, 10)', square(), { disc: 9 }],
  ['five in a row', 'groups 5 of "Square" at (0, 0), (10, 0), (20, 0), (30, 0), (40, 0)', square(), { disc: 12 }],
  ['sides marked every 2.5 m', 'groups 1 of "Square" at (0, 0)', square('marked every 2.5'), { disc: 16 }],
  ['two of these that share a side', 'groups 2 of "Square" at (0, 0), (10, 0)', square('marked every 2.5'), { disc: 27 }],
  ['cones in the corners', 'groups 1 of "Square" at (0, 0)', square('\n  cone at (0, 0)\n  cone at (10, 10)'), { cone: 2, disc: 2 }],
  ['a cone of one where the other has a disc', 'groups 2 of "Square" at (0, 0), (10, 0)', square('\n  cone at (10, 0)'), { cone: 2, disc: 4 }],
  ['a gate is two cones', 'groups 1 of "Square" at (0, 0)', square('\n  gate at (5, 5) width 2'), { cone: 2, disc: 4 }],
  ['poles are not shared', 'groups 2 of "Square" at (0, 0), (10, 0)', square('\n  pole at (0, 5)\n  pole at (10, 5)'), { disc: 6, pole: 4 }],
])('%s', (_, lines, drill, counts) => {
  expect(kinds(parts(evening(`part "P" 10 min ${lines}`, drill))[0]!.setUp.things)).toEqual(counts);
});

test('one group needs what the drill itself counts', () => {
  const analysis = analysed('part "P" 10 min of "Wall"');
  const drill = analysis.drills[0]!.measures.kit;
  expect(analysis.sessions[0]!.kit.map(({ kind, needed }) => ({ what: `${kind}s`, count: needed }))).toEqual(drill);
});

test('a gate stands across the way through it', () => {
  const { setUp } = parts(evening('part "P" 10 min of "Square" at (3, 4)', square('\n  gate at (5, 5) width 3 facing right')))[0]!;
  const cones = setUp.things.filter(({ kind }) => kind === 'cone').map(({ at }) => [at.x, at.y]).sort((a, b) => a[1]! - b[1]!);
  expect(cones).toEqual([[8, 7.5], [8, 10.5]]);
});

const tapes = (drill: string) => parts(evening('part "P" 10 min of "D"', drill))[0]!.setUp.tapes;

test.each<[what: string, inside: string, tapes: readonly (readonly [string, string, string | null, number])[]]>([
  // 3-4-5 and 5-12-13 triangles.
  ['an area', 'area 9 x 12', [['width', 'area', null, 9], ['length', 'area', null, 12], ['diagonal', 'area', null, 15]]],
  ['a mark inside, from both ends of the nearer of bottom and top', 'area 14 x 20\n  pole Post at (5, 12)', [
    ['width', 'area', null, 14], ['length', 'area', null, 20], ['diagonal', 'area', null, Math.sqrt(596)],
    ['point', 'Post', 'top left', Math.sqrt(89)], ['point', 'Post', 'top right', Math.sqrt(145)],
  ]],
  ['a mark on a side, from the nearer corner', 'area 9 x 12\n  pole Post at (9, 8)', [
    ['width', 'area', null, 9], ['length', 'area', null, 12], ['diagonal', 'area', null, 15], ['point', 'Post', 'top right', 4],
  ]],
  ['strips', 'area 9 x 12\n  split area by length into Back 5, Front 7', [
    ['width', 'area', null, 9], ['length', 'area', null, 12], ['diagonal', 'area', null, 15], ['length', 'Back', null, 5], ['length', 'Front', null, 7],
  ]],
  ['a zone', 'area 20 x 20\n  zone Box 6 x 8 at (8, 9)', [
    ['width', 'area', null, 20], ['length', 'area', null, 20], ['diagonal', 'area', null, Math.sqrt(800)],
    ['point', 'Box', 'bottom left', Math.sqrt(50)], ['point', 'Box', 'bottom right', Math.sqrt(250)],
    ['width', 'Box', null, 6], ['length', 'Box', null, 8], ['diagonal', 'Box', null, 10],
  ]],
  ['no area', 'pole One at (0, 0)\n  pole Two at (3, 4)', [['point', 'Two', 'One', 5]]],
])('tapes of %s', (_, inside, expected) => {
  const found = tapes(`drill "D" {\n  ${inside}\n}\n`);
  expect(found.map(({ kind, what, from, metres }) => [kind, what, from, metres])).toEqual(expected.map(([kind, what, from, metres]) => [kind, what, from, expect.closeTo(metres, 9)]));
});

test('diagonals are those of Pythagoras, and yards those of the convert package, whatever the size and the unit', () => {
  fc.assert(fc.property(fc.integer({ min: 20, max: 1000 }), fc.integer({ min: 20, max: 1000 }), fc.constantFrom('m', 'yd', 'ft'), (wide, long, unit) => {
    const found = tapes(`drill "D" {\n  units ${unit}\n  area ${wide / 10} x ${long / 10}\n}\n`);
    const [width, length, diagonal] = found.map(({ metres }) => metres);
    expect(width).toBeCloseTo(convert(wide / 10, unit).to('m'), 9);
    expect(diagonal).toBeCloseTo(hypot(width!, length!) as number, 9);
    for (const { metres, yards, strides } of found) {
      expect(yards).toBeCloseTo(convert(metres, 'm').to('yd'), 9);
      expect(Math.abs(strides - metres)).toBeLessThanOrEqual(0.5);
    }
  }), { numRuns: 50 });
});

// By hand: two of the six discs of `Wall` stand on the side they share.
test('the kit is that of the busiest part, and spare cones stand in for discs', () => {
  const { kit } = evening('kit 8 discs, 3 cones\npart "One" 10 min of "Wall"\npart "Two" 10 min groups 2 of "Wall" at (0, 0), (12, 0)', wall);
  expect(kit).toEqual([{ kind: 'disc', colour: null, needed: 10, mostIn: 'Two', has: 8, short: 0 }]);
});

test.each<[kit: string, short: readonly (readonly [string, string | null, number])[]]>([
  ['10 bibs red, 10 bibs blue', []],
  ['6 bibs', []],
  ['2 bibs red, 4 bibs', []],
  ['2 bibs red, 3 bibs', [['bib', 'blue', 1]]],
  ['9 bibs green', [['bib', 'red', 3], ['bib', 'blue', 3]]],
])('bibs for three reds and three blues from %s', (kit, short) => {
  const lines = evening(`kit 20 discs, 2 goals, ${kit}\npart "P" 10 min of "Game"`).kit;
  expect(lines.filter((line) => line.short > 0).map((line) => [line.kind, line.colour, line.short])).toEqual(short);
});

test('a session without a kit is short of nothing', () => {
  expect(evening('part "P" 10 min of "Wall"').kit.map(({ has, short }) => [has, short])).toEqual([[null, 0]]);
});
