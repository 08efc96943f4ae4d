import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse } from '../../grammar/parse.ts';
import { print } from '../../grammar/printer.ts';
import { analyse } from '../../shared/analyse.ts';
import { folder } from '../support/folder.ts';

const example = (name: string) => readFileSync(new URL(`../../shared/examples/${name}`, import.meta.url), 'utf8');
const evening = example('tuesday-evening.drill');
const others = folder({ 'rondo.drill': example('rondo.drill'), 'diamond.drill': example('diamond.drill') });
/** The lines of the session, which is the last thing in the file. */
const first = evening.split('\n').findIndex((line) => line.startsWith('session'));

/** The evening with some lines of its session left out, doubled, swapped or ended early, and numbers changed. */
const edited = fc
  .array(
    fc.record({ line: fc.nat(30), other: fc.nat(90), kind: fc.constantFrom('drop', 'double', 'swap', 'cut', 'number'), number: fc.constantFrom('0', '-3', '0.001', '7', '40', '1e6', '500') }),
    { minLength: 1, maxLength: 6 },
  )
  .map((edits) => {
    const lines = evening.split('\n');
    for (const { line, other, kind, number } of edits) {
      const [a, b] = [first + (line % (lines.length - first)), first + (other % (lines.length - first))];
      if (kind === 'drop') lines.splice(a, 1);
      else if (kind === 'double') lines.splice(b, 0, lines[a]!);
      else if (kind === 'swap') [lines[a], lines[b]] = [lines[b]!, lines[a]!];
      else if (kind === 'cut') lines[a] = lines[a]!.slice(0, other % 60);
      else lines[a] = lines[a]!.replace(/\d+(\.\d+)?/, number);
    }
    return lines.join('\n');
  });

test('any session is worked out in finite numbers that survive JSON, with problems inside the text and words a coach understands', () => {
  fc.assert(fc.property(edited, (text) => {
    const { sessions, problems } = analyse(text, others);
    for (const { message, help, span } of problems) {
      expect(`${message} ${help}`).not.toMatch(/NaN|undefined|Infinity|\[object/);
      expect([span.from >= 0, span.to <= text.length]).toEqual([true, true]);
    }
    for (const session of sessions) {
      const { timetable, changeovers, kit, figures, proposal, register } = session;
      expect(JSON.parse(JSON.stringify(session))).toEqual(session);
      let end = 0;
      for (const slot of timetable) {
        expect([slot.start, slot.end > slot.start]).toEqual([end, true]);
        end = slot.end;
        if (slot.kind === 'part') expect(slot.groups.flatMap(({ members }) => members).length + slot.resting.length + slot.aside.length + slot.away.length).toBe(register.length);
      }
      const { practice, game, pause, other } = figures.minutes;
      expect(practice + game + pause + other).toBeCloseTo(end / 60, 6);
      for (const line of kit) expect(line.short).toBeLessThanOrEqual(line.needed);
      for (const { seconds, walk } of changeovers) expect([seconds >= 0, walk >= 0]).toEqual([true, true]);
      if (proposal) expect(proposal.proposed).toBeLessThan(proposal.written);
    }
  }), { numRuns: 150 });
});

test('printing and reading what was printed give the same again', () => {
  fc.assert(fc.property(edited, (text) => {
    const printed = print(parse(text).file);
    if (parse(text).faults.length === 0) expect(print(parse(printed).file)).toBe(printed);
  }));
});
