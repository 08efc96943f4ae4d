import { expect, test } from 'vitest';
import { evening, game, parts, wall } from './evening.ts';

const passing = `drill "Pass" {
  age U13
  players 3
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
  ball at Base
  sequence {
    Base passes to Wall
    Wall passes to Base
    Base dribbles to (2, 2)
  }
  point technical "Side-on"
  point technical "Weight"
  point social "Call"
  progress task "One touch" {
    rule touches 1
    point physical "Quick feet"
  }
}
`;

test('minutes by what is done', () => {
  const { figures } = evening('part "A" 10 min of "Wall"\npause 90 s\npart "G" 25 min of "Game"\npart "Talk" 8 min');
  expect(figures.minutes).toEqual({ practice: 10, game: 25, pause: 1.5, other: 8 });
});

test('coaching points count once a part, with those of the progression that is played', () => {
  const { figures } = evening('part "A" 10 min of "Pass"\npart "B" 10 min of "Pass" with "One touch"\npart "C" 10 min of "Wall"', passing + wall);
  expect(figures.corners).toEqual({ technical: 4, psychological: 0, physical: 1, social: 2 });
});

test('a repetition after another, shared among those of a group', () => {
  const analysis = evening('players 4\npart "A" 10 min of "Pass"', passing);
  const [part] = analysis.figures.perPart;
  const { measures, timeline } = parts(analysis)[0]!.drill!;
  const starts = 600 / measures.interval!.seconds;
  // Counted by looking a thousand times a second whether the ball is at their feet.
  const atFeet = timeline.tracks.map(({ touches, moves }) => {
    const spans = [...touches, ...moves.filter(({ kind }) => kind === 'dribble')];
    const looks = Array.from({ length: Math.ceil(measures.duration * 1000) }, (_, look) => (look + 0.5) / 1000);
    return looks.filter((time) => spans.some(({ start, end }) => start <= time && time < end)).length / 1000;
  }).reduce((sum, seconds) => sum + seconds, 0);
  expect(atFeet).toBeGreaterThan(1);
  // A group of four: three as the drill says and one who joins the queue.
  expect(part!.touches).toBeCloseTo((measures.perMinute!.touches * 10 * 3) / 4, 9);
  expect(part!.metres).toBeCloseTo((measures.perMinute!.metres * 10 * 3) / 4, 9);
  expect(Math.abs((part!.withBall! * 4) / starts - atFeet)).toBeLessThan(0.01);
  expect(part!.space).toBe(36);
  expect(part!.work! + part!.rest!).toBeCloseTo(600, 9);
});

test.each<[bouts: string, minutes: number, work: number, rest: number, like: string | null]>([
  ['4 x 4 min rest 3 min', 25, 960, 540, 'Selmi et al. 2020, OAJSM 11:77-84'],
  ['4 x 4 min rest 2 min', 22, 960, 360, 'Kelly and Drust 2009, J Sci Med Sport'],
  ['4 x 4 min rest 2 min', 10, 600, 0, 'Kelly and Drust 2009, J Sci Med Sport'],
  ['10 x 20 s rest 10 s', 5, 200, 100, null],
])('bouts %s in %i min', (bouts, minutes, work, rest, like) => {
  const { figures } = evening(`part "G" ${minutes} min of "Game"`, game.replace('area 20 x 20', `area 20 x 20\n  bouts ${bouts}`));
  expect(figures.perPart.map((part) => [part.work, part.rest, part.like?.source ?? null])).toEqual([[work, rest, like]]);
});

test('a game without bouts is played all the time, and a drill without a sequence says nothing', () => {
  const { figures } = evening('part "G" 10 min of "Game"\npart "W" 5 min of "Wall"');
  expect(figures.perPart.map(({ part, work, rest, touches }) => [part, work, rest, touches])).toEqual([['G', 600, 0, null], ['W', null, null, null]]);
});
