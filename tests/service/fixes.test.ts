import { expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import { check as lateReceiver } from '../../shared/checks/late-receiver.ts';
import { applyEdits } from '../../shared/checks/edits.ts';
import { allowance, fixesOf } from '../../shared/service/fixes.ts';
import { atLevels, levelsFrom } from '../../shared/service/levels.ts';
import { openIn, square } from './texts.ts';

const late = square({ beat: 'Left passes to Top' }).replace('2 left of Top', '(4, 2)');

test.each([
  ['late-receiver', lateReceiver.bad[0]!.replaceAll(/[⟦⟧]/g, '')],
  ['unused-name', square()],
  ['unknown-name', square({ line: 'cone at Nera' })],
])('what is offered cures the problem: %s', (code, text) => {
  const open = openIn({ 'a.drill': text }, 'a.drill');
  const problem = open.analysis.problems.find((each) => each.code === code)!;
  const count = (of: string) => analyse(of).problems.filter((each) => each.code === code).length;
  const fixes = fixesOf(problem, open);
  expect(fixes.length).toBeGreaterThan(0);
  for (const fix of fixes) expect(count(applyEdits(text, fix.edits))).toBeLessThan(count(text));
});

test('other drills in the file change nothing about the cures', () => {
  const lone = lateReceiver.bad[0]!.replaceAll(/[⟦⟧]/g, '');
  const titles = (text: string) => {
    const open = openIn({ 'a.drill': text }, 'a.drill');
    return fixesOf(open.analysis.problems.findLast(({ code }) => code === 'late-receiver')!, open).map(({ title }) => title.replaceAll(/line \d+/g, 'line N'));
  };
  expect(titles(`${square()}// 🥅\n${late.replace('Square', 'Other')}${lone}`)).toEqual(titles(lone));
});

test.each([
  ['at the end of the line', late],
  ['above a line with a comment', late.replace('Left passes to Top', 'Left passes to Top  // quickly')],
  ['with line ends of two characters', late.replace('Left passes to Top', 'Left passes to Top  // quickly').replaceAll('\n', '\r\n')],
])('allowed %s, and nothing else', (_, text) => {
  const open = openIn({ 'a.drill': text }, 'a.drill');
  const problem = open.analysis.problems.find(({ code }) => code === 'late-receiver')!;
  const allowed = applyEdits(text, allowance(problem, open)!.edits);
  const codes = (of: string) => analyse(of).problems.map(({ code }) => code);
  expect(codes(allowed)).toEqual(codes(text).filter((code) => code !== 'late-receiver'));
  expect(allowed.replaceAll('\r\n', '').includes('\r')).toBe(false);
});

test('what cannot be read is not allowed', () => {
  const open = openIn({ 'a.drill': 'drill {\n}\n' }, 'a.drill');
  expect(open.analysis.problems.map((problem) => allowance(problem, open))).toEqual([null]);
});

test.each<[setting: unknown, levels: readonly string[]]>([
  [{}, ['unused-name hint', 'late-receiver error']],
  [{ 'late-receiver': 'off' }, ['unused-name hint']],
  [{ 'late-receiver': 'info', 'unused-name': 'off' }, ['late-receiver info']],
  [{ 'late-receiver': 'loud', 'unused-name': 3 }, ['unused-name hint', 'late-receiver error']],
  ['off', ['unused-name hint', 'late-receiver error']],
  [null, ['unused-name hint', 'late-receiver error']],
])('with the setting %j', (setting, levels) => {
  const problems = analyse(late).problems.filter(({ code }) => code === 'late-receiver' || code === 'unused-name');
  const shown = atLevels(problems, levelsFrom(setting)).map(({ code, severity }) => `${code} ${severity}`);
  expect([...new Set(shown)]).toEqual(levels);
});
