import { describe, expect, it } from 'vitest';
import { analyse, type Analysis } from '../../shared/analyse.ts';
import { drillSheet, sessionSheet, type Sheet } from '../../shared/sheet/sheet.ts';

const drill = `drill "Rondo" {
  age U12
  players 6
  area 9 x 9
  team Yellow bib yellow of 4
  team Blue bib blue of 2
  place 4 Yellow in area
  place 2 Blue in area
}
`;
const evening = (players: number, kit: string) => `${drill}session "Thursday" {
  players ${players}
  kit ${kit}
  part "Warm up" 10 min of "Rondo" resting 1
}
`;
const options = { theme: 'print', convention: 'solid pass', perPage: 1, names: [] } as const;
const sheetOf = (analysis: Analysis): Sheet => {
  const [session] = analysis.sessions;
  return session ? sessionSheet(session, { ...options, problems: analysis.problems }) : drillSheet(analysis.drills, 'x', { ...options, problems: analysis.problems });
};
/** Everything the sheet says, a line a block or a row. */
const said = (text: string): string[] => sheetOf(analyse(text)).pages.flatMap(({ bands }) => bands.flatMap(({ columns }) => columns.flat().flatMap(({ piece: { block } }) => (
  block.kind === 'table' ? block.rows.map((row) => row.join(' | ')) : 'text' in block ? [block.text] : []
))));

describe('the front page', () => {
  // Common practice, no source: what is printed is not checked again on the grass.
  it('says what cannot be played as it is written', () => {
    const lines = said(evening(6, '8 balls'));
    expect(lines.slice(lines.indexOf('To mend before it is played'))[1]).toBe('Rondo needs 6 players, and 6 are there for "Warm up", of whom 1 rests. Let nobody rest: leave out resting.');
    expect(said(evening(7, '9 discs, 1 ball, 9 bibs'))).not.toContain('To mend before it is played');
  });
  it('says what stands in for kit that is missing', () => {
    // By hand: four corners, four yellow bibs and two blue ones.
    expect(said(evening(7, '1 disc, 8 cones, 2 bibs yellow, 9 bibs'))).toEqual(expect.arrayContaining([
      'discs | 4 | 1 + 3 cones | – | Warm up', 'yellow bibs | 4 | 2 + 2 of any colour | – | Warm up',
    ]));
  });
  it('says everyone only where nobody rests', () => {
    expect(said(evening(7, '9 discs'))).toEqual(expect.arrayContaining(['6 players: players 1–6', 'Resting, in turn: player 7']));
    expect(said(evening(6, '9 discs').replace(' resting 1', ''))).toContain('Everyone: players 1–6');
  });
});

it('says on the page of a drill what is wrong with it, not with its progressions', () => {
  const lines = said(drill.replace('of 2\n', 'of 2\n  rule Box no Blue\n').replace('place 2 Blue in area\n', 'place 2 Blue in area\n  progress people "More" { players 9 }\n'));
  expect(lines.slice(lines.indexOf('To mend before it is played'))[1]).toBe('There is no zone called Box. There is: area.');
  expect(lines.filter((line) => line.includes('9 players'))).toEqual([]);
});

describe('the page of a part', () => {
  const queue = `drill "Wall" {
  age U12
  players 4
  area 12 x 12
  station Base at (2, 6) holds 3
  station Wall at (10, 6)
  ball at Base
  balls 4 at 1 left of area.left
  balls 2 at (13, -2)
}
`;
  it('says how a group of another size stands', () => {
    const lines = said(`${queue}session "S" {\n  players 7\n  part "Wall" 10 min groups 4, 3 of "Wall"\n}\n`);
    expect(lines).toContain('Group 2: 3 players, 1 fewer to wait in the queues.');
    expect(lines.filter((line) => line.startsWith('Group 1'))).toEqual([]);
  });
  // Common practice, no source: nobody paces out a negative number.
  it('says how far beside the area something is', () => {
    expect(said(queue)).toEqual(expect.arrayContaining(['4 balls at 1 m left of the area, 6 m up.', '2 balls at 1 m right of the area, 2 m below the area.']));
  });
});

it('tells a coaching point in one line with its corner', () => {
  expect(said(drill.replace('area 9 x 9', 'area 9 x 9\n  point social "Call"\n  point technical "Open up"'))).toEqual(expect.arrayContaining(['Technical: Open up', 'Social: Call']));
});
