import { describe, expect, test } from 'vitest';
import { folder, halfturn, misspelt, sound } from './halfturn.ts';

describe('JSON', () => {
  /** Lengths and areas by hand: the stations stand 8 m apart on 12 x 12 m. */
  const expected: readonly (readonly [string, unknown])[] = [
    ['name', 'Two'],
    ['players', 2],
    ['area', { width: 12, length: 12, m2: 144 }],
    ['spacePerPlayer', { outfield: 72, all: 72 }],
    ['rotation', { closed: true, cycles: [['Base'], ['Wall']], order: 1 }],
    ['kit', [{ what: 'balls', count: 1 }, { what: 'discs', count: 6 }]],
  ];
  test.each(expected)('%s', async (key, value) => {
    const { files: [{ file, drills: [drill] }] } = JSON.parse((await halfturn(folder({ 'a.drill': sound }), ['measure', 'a.drill', '--format', 'json'])).out);
    expect([file, drill[key]]).toEqual(['a.drill', value]);
  });

  test.each([
    ['passes', ['from', 'to', 'length', 'flight', 'speed', 'slack', 'at'], [{ from: 'Base', to: 'Wall', length: 8, at: 0 }, { from: 'Wall', to: 'Base', length: 8 }]],
    ['perPlayer', ['touches', 'distance', 'working', 'waiting'], [{ actor: 'Base', touches: 1 }, { actor: 'Wall', touches: 2 }]],
  ])('%s', async (key, keys, rows) => {
    const { files: [{ drills: [drill] }] } = JSON.parse((await halfturn(folder({}), ['measure', '-', '--format', 'json'], { input: sound })).out);
    expect(drill[key]).toMatchObject(rows);
    for (const row of drill[key]) expect(Object.keys(row)).toEqual(expect.arrayContaining(keys));
    expect([drill.duration, drill.interval]).toEqual([expect.any(Number), expect.any(Number)]);
  });
});

test('CSV has a row a drill, quoted where it must be', async () => {
  const told = await halfturn(folder({ 'a.drill': sound.replace('Two', 'Two, “wall”') + sound }), ['measure', 'a.drill', '--format', 'csv']);
  const [head, first, second, end] = told.out.split('\r\n');
  expect(head).toBe('file,name,phase,players,width,length,m2,spaceOutfield,spaceAll,passes,leastSlack,leastMargin,duration,changesOfSide,interval,closed,order,touchesPerMinute,metresPerMinute');
  expect(first).toMatch(/^a\.drill,"Two, “wall”",,2,12,12,144,72,72,2,/);
  expect(second).toMatch(/^a\.drill,Two,,2,12,12,144,72,72,2,[\d.]+,,[\d.]+,,[\d.]+,true,1,[\d.]+,[\d.]+$/);
  expect(end).toBe('');
});

test('text of a game has no repetition, and one bib is one', async () => {
  const game = 'drill "Game" {\n  age U12\n  area 20 x 20\n  team Red bib red of 1\n  team Blue bib blue of 2\n  place 1 Red in area\n  place 2 Blue in area\n  ball at Blue1\n  phase "Over" {\n    Blue1 passes to Blue2\n  }\n}\n';
  const { out } = await halfturn(folder({ 'a.drill': game }), ['measure', 'a.drill']);
  expect(out).not.toContain('one repetition');
  expect(out).toContain('1 bib red, 2 bibs blue');
});

test('text is for a coach', async () => {
  const { status, out, err } = await halfturn(folder({ 'a.drill': sound }), ['measure', 'a.drill']);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  expect(out).toMatch(/^Two \(a\.drill\)\n {2}2 players on 12 x 12 m, 72 m² a player\n {2}one repetition {2}\d+\.\d s\n/);
  expect(out).toMatch(/^ {2}kit {13}1 ball, 6 discs$/m);
  expect(out).toMatch(/^ +0\.0 {2}Base {2}Wall {5}8\.0 /m);
});

test('a drill with errors is measured, with a warning', async () => {
  const { status, out, err } = await halfturn(folder({ 'a.drill': misspelt }), ['measure', 'a.drill']);
  expect(status).toBe(1);
  expect(out).toContain('Two (a.drill)');
  expect(err).toBe('halfturn: a.drill has errors, so its numbers may mislead; halfturn check a.drill shows them.\n');
});

const evening = `${sound}session "Tuesday" {
  players 4
  kit 20 discs, 3 balls
  pitch 40 x 20
  part "Wall" 10 min groups 2 of "Two" at (0, 0), (12, 0)
  pause 2 min "drinks"
  part "Talk" 3 min
}
`;

test('a session is measured part by part', async () => {
  const { out, status } = await halfturn(folder({ 'a.drill': evening }), ['measure', 'a.drill']);
  expect(status).toBe(0);
  expect(out).toMatch(/^Tuesday \(a\.drill\)\n {2}15 min, 4 players\n {2}minutes {9}10 practice, 2 pause, 3 other\n {2}kit {13}10 discs of 20, 2 balls of 3\n/m);
  expect(out).toMatch(/^ +0 {2}Wall +2 \+ 2 .* 72 +[\d min]+ s$/m);
  expect(out).toMatch(/^ +10 {2}drinks$/m);
});

test('a session as data', async () => {
  const json = JSON.parse((await halfturn(folder({ 'a.drill': evening }), ['measure', 'a.drill', '--format', 'json'])).out);
  const [session] = json.files[0].sessions;
  expect(session).toMatchObject({ name: 'Tuesday', players: 4, figures: { minutes: { practice: 10, game: 0, pause: 2, other: 3 } } });
  expect(session.timetable.map((slot: { part?: string; pause?: string; start: number; end: number }) => [slot.part ?? slot.pause, slot.start, slot.end])).toEqual([
    ['Wall', 0, 600], ['drinks', 600, 720], ['Talk', 720, 900],
  ]);
  const rows = (await halfturn(folder({ 'a.drill': evening }), ['measure', 'a.drill', '--format', 'csv'])).out.split('\r\n');
  expect(rows.slice(1).map((row) => row.split(',').slice(0, 9).join(','))).toEqual(['a.drill,Two,,2,12,12,144,72,72', 'a.drill,Tuesday: Wall,,2,12,12,144,72,72', '']);
});

describe('phases of a game', () => {
  /** By hand: Ann and Bea stand 10 m apart; Dan is 20 m away and far too late; two of Red and one of Blue are in the half below. */
  const game = `drill "Two v one" {
  age U15
  area 30 x 30
  zone Back 30 x 15 in area.bottomLeft
  team Red bib orange
  team Blue bib blue
  player Ann of Red at (5, 5)
  player Bea of Red at (5, 15)
  player Dan of Blue at (25, 5)
  ball at Ann
  phase "Up" {
    Ann passes to Bea
  }
}
`;

  test('JSON has passes with margins, who has the ball, numbers and ground', async () => {
    const { files: [{ drills: [drill] }] } = JSON.parse((await halfturn(folder({}), ['measure', '-', '--format', 'json'], { input: game })).out);
    expect(drill.phases).toMatchObject([{
      name: 'Up', possession: [{ team: 'Red', from: 0 }], passes: [{ from: 'Ann', to: 'Bea', kind: 'pass', length: 10, nearest: 'Dan', openLanes: 1 }],
      numbers: [{ zone: 'Back', with: 2, against: 1 }], control: [{ team: 'Red' }, { team: 'Blue' }],
    }]);
    const [phase] = drill.phases;
    expect(phase.passes[0].margin).toBeGreaterThan(0.5);
    expect(phase.control[0].mean + phase.control[1].mean).toBeCloseTo(1, 5);
  });

  test('CSV has a row more for each', async () => {
    const [, , row, end] = (await halfturn(folder({ 'a.drill': game }), ['measure', 'a.drill', '--format', 'csv'])).out.split('\r\n');
    expect(row).toMatch(/^a\.drill,Two v one,Up,3,30,30,900,300,300,1,[\d.]+,[\d.]+,[\d.]+,0,,,,,$/);
    expect(end).toBe('');
  });

  test('text says them to a coach', async () => {
    const { out } = await halfturn(folder({ 'a.drill': game }), ['measure', 'a.drill']);
    expect(out).toMatch(/^ {2}phase “Up”, \d\.\d s\n {4}the ball {6}Red from 0\.0 s\n {4}ground {8}Red \d+ %, Blue \d+ % on average\n {4}in zones {6}Back 2 v 1 /m);
    expect(out).toMatch(/^ +0\.0 {2}Ann {3}Bea +10\.0 .* Dan +\+\d\.\d +1$/m);
  });
});
