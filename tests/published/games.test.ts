/** Games as they are commonly played. Common practice: there is no source to cite for these numbers. */
import { describe, expect, test } from 'vitest';
import { alone, analyse } from '../../shared/analyse.ts';
import { countAt, zonesNamed } from '../../shared/games/zones.ts';

function played(lines: readonly string[]) {
  const { drills, problems } = analyse(`drill "Game" {\n${lines.join('\n')}\n}`, alone);
  return { ...drills[0]!, codes: problems.filter(({ severity }) => severity === 'error').map(({ code }) => code) };
}

const square = [
  'units yd', 'tempo match', 'area 40 x 40', 'zones Box 5 x 5 in corners of area', 'team Red bib orange of 6', 'team Blue bib blue of 6', 'floaters Joker bib white of 2',
  'rule Box no defenders',
];

describe('a square of about 40 yards with protected corner boxes of about 5 yards', () => {
  const blues = ['(8, 2)', '(2, 8)', '(8, 8)', '(20, 12)', '(12, 20)', '(20, 20)'].map((at, index) => `player Blue${index + 1} of Blue at ${at}`);
  const others = ['player Red1 of Red at (14, 6)', 'place 4 Red in area', 'place 2 Joker in area'];
  const free = (corner: string) => {
    const { phases } = played([...square, ...blues, ...others, `player Red6 of Red at ${corner}`, 'ball at Red1', 'phase "P" {\nRed1 waits 1 s\n}']);
    return phases[0]!.lanes[0]!.lanes.find(({ to }) => to === 'Red6')!.open;
  };

  test('a player of the side in possession who stands in a box is out of everyone’s reach', () => {
    const { codes, drill } = played([...square, ...blues, ...others, 'player Red6 of Red at (2, 2)', 'ball at Red1', 'phase "P" {\nRed6 waits 1 s\n}']);
    expect(codes).toEqual([]);
    const nearest = Math.min(...drill.actors.filter(({ team }) => team === 'Blue').map(({ home }) => Math.hypot(home.x - drill.actors.find(({ id }) => id === 'Red6')!.home.x, home.y - drill.actors.find(({ id }) => id === 'Red6')!.home.y)));
    expect(nearest).toBeGreaterThan(2);
  });

  test.each(['(2, 38)', '(38, 2)', '(38, 38)'])('and the ball can be played out to the free corner at %s', (corner) => {
    expect(free(corner)).not.toBe(null);
  });
});

test('two floaters make six against six eight against six', () => {
  const { codes } = played([...square, 'place 6 Red in area', 'place 6 Blue in area', 'place 2 Joker in area', 'ball at Red1', 'expect 8 v 6 in area'].filter((line) => !line.startsWith('rule')));
  expect(codes).toEqual([]);
});

test('ten passes make a point', () => {
  const { drill, codes } = played([...square, 'place 6 Red in area', 'ball at Red1', 'score 1 for 10 passes']);
  expect(drill.rules.find(({ kind }) => kind === 'score')).toMatchObject({ by: 'passes', count: 10, points: 1 });
  expect(codes).toEqual([]);
});

describe('zones of 15 + 10 + 15 yards by 25', () => {
  const zones = [
    'units yd', 'tempo match', 'area 25 x 40', 'split area by length into Back 15, Middle 10, Front 15', 'team Red bib orange', 'team Blue bib blue', 'floaters Joker bib white',
    'place 3 Red in Front', 'place 3 Blue in Front', 'place 3 Red in Back', 'place 3 Blue in Back', 'player Joker1 of Joker at (12, 20)', 'ball at Red1',
    'phase "Step in" {\nJoker1 runs to (12, 27)\n}',
  ];
  const { drill, phases, codes } = played([...zones, 'expect 3 v 3 in Front', 'expect 4 v 3 in Front', 'expect 3 v 3 in Back']);
  const { numbers, possession, timeline } = phases[0]!;
  const at = (zone: string, time: number) => {
    const ids = zonesNamed(drill, zone).map(({ id }) => id);
    const { attackers, floaters, defenders } = countAt(drill, numbers.filter((each) => ids.includes(each.zone)), possession, time);
    return [attackers + floaters, defenders];
  };

  test.each([['Front', 0, [3, 3]], ['Back', 0, [3, 3]], ['Front', 1, [4, 3]], ['Back', 1, [3, 3]]] as const)('%s, at %d of the phase: %j', (zone, share, wanted) => {
    expect(at(zone, share * timeline.end)).toEqual(wanted);
  });

  test('the strips fill the area and the expectations hold', () => {
    expect(codes).toEqual([]);
  });
});
