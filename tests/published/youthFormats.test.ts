import { expect, test } from 'vitest';
import { youthFormats, type YouthFormat } from '../../shared/space/youthFormats.ts';
import { metresIn } from '../../shared/units.ts';

const rows: readonly YouthFormat[] = youthFormats.rows;

// The FA Handbook 2016-17, "Goalpost and pitch sizes", p. 556 (READ): goal in feet, pitch and pitch with run-off in yards.
// The last four columns are those sizes in metres (COMPUTED, exact).
test.each([
  ['U7', '5v5', [6, 12], [40, 30], [46, 36], [36.576, 27.432], [1.8288, 3.6576]],
  ['U9', '7v7', [6, 12], [60, 40], [66, 46], [54.864, 36.576], [1.8288, 3.6576]],
  ['U11', '9v9', [7, 16], [80, 50], [86, 56], [73.152, 45.72], [2.1336, 4.8768]],
  ['U13', '11v11', [7, 21], [90, 55], [96, 61], [82.296, 50.292], [2.1336, 6.4008]],
  ['U15', '11v11', [8, 24], [100, 60], [106, 66], [91.44, 54.864], [2.4384, 7.3152]],
  ['U17', '11v11', [8, 24], [110, 70], [116, 76], [100.584, 64.008], [2.4384, 7.3152]],
] as const)('%s plays %s', (age, format, goal, pitch, withRunOff, pitchMetres, goalMetres) => {
  const row = rows.find((each) => each.ages.includes(age)) as YouthFormat;
  expect(row).toMatchObject({
    format,
    goal: { height: goal[0], width: goal[1] },
    pitch: { length: pitch[0], width: pitch[1] },
    withRunOff: { length: withRunOff[0], width: withRunOff[1] },
  });
  expect([row.pitch.length, row.pitch.width].map((yards) => yards * metresIn('yd'))).toEqual(pitchMetres.map((each) => expect.closeTo(each, 9)));
  expect([row.goal.height, row.goal.width].map((feet) => feet * metresIn('ft'))).toEqual(goalMetres.map((each) => expect.closeTo(each, 9)));
});

// The same page (READ): at least three yards of free grass all round.
test.each(rows)('$ages.0 has three yards of run-off on every side', ({ pitch, withRunOff }) => {
  expect(withRunOff).toEqual({ length: pitch.length + 6, width: pitch.width + 6 });
});
