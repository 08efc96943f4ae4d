/** Guidance for sessions against the published tables, row by row. */
import { expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import { boutDesigns, designLike } from '../../shared/session/bouts.ts';
import { headingFor } from '../../shared/session/guidance.ts';

const problems = (lines: string) => analyse(`session "S" {\n${lines}\n}\n`).problems.map(({ code, message }) => [code, message]);
const long = (age: string, minutes: number) => problems(`age ${age}\nlength ${minutes} min\npart "P" ${minutes} min`);

// US Youth Soccer, "Recommended training session to match ratio", 30 April 2004 (READ): minutes a session, from and to.
// Ages between two rows are put to the next one up: a choice of this project.
test.each([
  ['U6', 45, 45, 'U6'], ['U7', 45, 60, 'U7 (U8 in the table)'], ['U8', 45, 60, 'U8'], ['U9', 60, 75, 'U9 (U10 in the table)'], ['U10', 60, 75, 'U10'],
  ['U11', 60, 75, 'U11 (U12 in the table)'], ['U12', 60, 75, 'U12'], ['U13', 75, 90, 'U13 (U14 in the table)'], ['U14', 75, 90, 'U14'],
  ['U16', 90, 90, 'U16'], ['U19', 90, 90, 'U19'],
] as const)('%s: at most the longest of the table', (age, least, most, name) => {
  const range = least === most ? `${most} min` : `${least} to ${most} min`;
  expect(long(age, most)).toEqual([]);
  expect(long(age, most + 1)).toEqual([['long-session', `The session takes ${most + 1} min; for ${name} the guidance is ${range}.`]]);
});

test.each(['adult', 'U21'])('%s is not compared', (age) => {
  expect(long(age, 240)).toEqual([]);
});

// The FA, the Irish FA and the Scottish FA, heading guidance, February 2020 (READ).
test.each([
  [7, 'no heading'], [11, 'no heading'], [12, 'one session a month, at most 5'], [13, 'one session a week, at most 5'], [14, 'one session a week, at most 10'],
  [16, 'one session a week, at most 10'], [18, 'as little'],
] as const)('heading at %i', (age, words) => {
  expect(headingFor(age)).toContain(words);
});

test('grown-ups head as they like', () => {
  expect([headingFor(19), headingFor(21)]).toEqual([null, null]);
});

// Section "Bout designs actually used" of the papers' abstracts (READ): bouts, minutes of work, minutes of rest.
test.each([
  [4, 4, 2, 'Kelly and Drust 2009'], [4, 4, 3, 'Selmi et al. 2020'], [3, 8, 5, 'Casamichana and Castellano 2010'], [4, 6, 2, 'J Hum Kinet 2021'],
  [6, 2, 0.5, 'McLean et al. 2016'], [6, 2, 2, 'McLean et al. 2016'],
] as const)('%i x %f min with %f min rest is that of %s', (count, work, rest, source) => {
  expect(designLike({ count, length: work * 60, rest: rest * 60 })?.source).toContain(source);
});

// Casamichana, Castellano and Dellal 2013: 16 min of play in bouts with a work to rest ratio of 4 to 1 (READ); the rests are COMPUTED from it.
test('the rests that follow from four to one', () => {
  const computed = boutDesigns.filter(({ flag }) => flag === 'COMPUTED');
  expect(computed.map(({ count, work, rest }) => [count! * work, work / rest!])).toEqual([[960, 4], [960, 4]]);
});

test.each([{ count: 4, length: 30, rest: 30 }, { count: 20, length: 240, rest: 120 }, { count: 4, length: 240, rest: 1200 }])('nothing published is like $count x $length s', (bouts) => {
  expect(designLike(bouts)).toBe(null);
});
