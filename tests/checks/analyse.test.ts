import { expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';

/** The codes found in a drill of two, with these lines in it. */
function codes(lines: string): string[] {
  return analyse(`drill "Two" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  ball at Base
${lines}
  sequence {
    Base passes to Wall
    Wall passes to Base
  }
}
`).problems.map((problem) => problem.code);
}

test.each([
  { what: 'a name whose declaration cannot be read is not told again', lines: '  station Top on (6, 10)\n  cone Mark at 1 above Top', found: ['syntax'] },
  { what: 'a let whose only use cannot be read is not called unused', lines: '  let gap = 3\n  cone Mark at gap above above Base', found: ['syntax'] },
  { what: 'a let that nothing uses', lines: '  let gap = 3', found: ['unused-name'] },
  { what: 'allowed at the end of the line, with a reason', lines: '  let gap = 3  // allow unused-name: kept for the younger group', found: [] },
  { what: 'allowed on the line above', lines: '  // allow unused-name: kept for the younger group\n  let gap = 3', found: [] },
  { what: 'not allowed without a reason', lines: '  let gap = 3  // allow unused-name:', found: ['unused-name'] },
  { what: 'another code is not allowed by it, and the remark is told', lines: '  let gap = 3  // allow late-receiver: walk-through', found: ['unused-name', 'unused-name'] },
  { what: 'a remark that allows nothing', lines: '  cone at (1, 1)\n  // allow late-receiver: walk-through\n  cone at (3, 3)', found: ['unused-name'] },
  { what: 'words in a text are no remark', lines: '  note "// allow late-receiver: walk-through"', found: [] },
  { what: 'a remark in a file that cannot be read whole', lines: '  station Top on (6, 10)  // allow late-receiver: walk-through', found: ['syntax'] },
])('$what', ({ lines, found }) => {
  expect(codes(lines)).toEqual(found);
});

test('a change that breaks the drill is told at its name, one that mends nothing is silent', () => {
  const text = (gap: number): string => `drill "Two" {
  area 40 x 12
  let gap = 8
  station Base at (2, 6)
  station Wall at gap right of Base
  ball at Base
  sequence {
    Base passes to Wall
    Wall passes to Base
  }
  progress space "Longer" {
    let gap = ${gap}
  }
}
`;
  const told = (gap: number): string[] => analyse(text(gap)).problems.map(({ code, span }) => `${code} ${text(gap).slice(span.from, span.to)}`);
  expect(told(10)).toEqual([]);
  expect(told(1)).toEqual(['pass-length "Longer"']);
});

test('a mirrored sequence does not tell the faults of its original again', () => {
  const { problems } = analyse(`drill "Mirror" {
  area 20 x 12
  station Right at (14, 2)
  station RightTop at (14, 3.5)
  station Left at (6, 2)
  station LeftTop at (6, 3.5)
  ball at Right
  ball at Left
  sequence "right" {
    Right passes to RightTop
    RightTop sets to Right
  }
  sequence "left" mirrors "right" across length
  order "right" and "left"
}
`);
  expect(problems.map((problem) => problem.code)).toEqual(['pass-length']);
});

test('a game with another number of players is told to change its teams: it has no stations', () => {
  const { problems } = analyse('drill "Five" {\n  age U12\n  players 4\n  area 20 x 20\n  team Red of 5\n  place 5 Red in area\n}\n');
  expect(problems.map(({ code, help }) => [code, help])).toContainEqual(['player-count', 'Correct the number, or make a team larger or smaller (team Red of 4).']);
});

test('who plays twice from a queue is told of the one behind', () => {
  const twice = (holds: number) => analyse(`drill "Two" {
  age U12
  area 12 x 12
  station Base at (2, 6) holds ${holds}
  station Wall at (10, 6)
  ball at Base
  sequence {
    Base passes to Wall
    Base passes to Wall
  }
}
`).problems.find(({ code }) => code === 'no-ball')?.help;
  expect(twice(2)).toMatch(/If whoever waits behind them is meant, write `next Base`\.$/);
  expect(twice(1)).toMatch(/with `ball at`\.$/);
});
