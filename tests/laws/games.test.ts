import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import { controlAt } from '../../shared/games/control.ts';

const games = ['switch-to-the-corners', 'three-zones', 'rondo', 'crowded-game'].map((name) => readFileSync(new URL(`../../shared/examples/${name}.drill`, import.meta.url), 'utf8'));

/** A game with some of its lines left out, doubled, swapped or ended early, and numbers changed. */
const edited = fc
  .record({
    text: fc.constantFrom(...games),
    edits: fc.array(
      fc.record({ line: fc.nat(90), other: fc.nat(90), kind: fc.constantFrom('drop', 'double', 'swap', 'cut', 'number'), number: fc.constantFrom('0', '-3', '0.001', '7', '40', '1e6', '300') }),
      { minLength: 1, maxLength: 6 },
    ),
  })
  .map(({ text, edits }) => {
    const lines = text.split('\n');
    for (const { line, other, kind, number } of edits) {
      const [a, b] = [line % lines.length, other % lines.length];
      if (kind === 'drop') lines.splice(a, 1);
      else if (kind === 'double') lines.splice(b, 0, lines[a]!);
      else if (kind === 'swap') [lines[a], lines[b]] = [lines[b]!, lines[a]!];
      else if (kind === 'cut') lines[a] = lines[a]!.slice(0, other % 40);
      else lines[a] = lines[a]!.replace(/\d+(\.\d+)?/, number);
    }
    return lines.join('\n');
  });

test('any game gives phases of finite numbers, whole possession and lanes between people who are there', () => {
  fc.assert(
    fc.property(edited, (text) => {
      const { drills, problems } = analyse(text);
      for (const { message, span } of problems) {
        expect(message).not.toMatch(/NaN|undefined|Infinity|\[object/);
        expect(span.to).toBeLessThanOrEqual(text.length);
      }
      for (const { drill, phases } of drills) {
        const known = new Set(drill.actors.map(({ id }) => id));
        for (const { possession, lanes, numbers, timeline, standing, challenges } of phases) {
          possession.forEach(({ from, to }, index) => {
            expect(from).toBe(index === 0 ? 0 : possession[index - 1]!.to);
            expect(to).toBeGreaterThanOrEqual(from);
          });
          for (const { race, lanes: all, time } of lanes) {
            expect(Number.isFinite(time)).toBe(true);
            if (race) expect([race.margin, race.time, race.at.x, race.at.y].every(Number.isFinite)).toBe(true);
            expect(all.every(({ to, by }) => known.has(to) && (by === null || known.has(by)))).toBe(true);
          }
          for (const { by, margin, at } of challenges) expect(known.has(by) && [margin, at.x, at.y].every(Number.isFinite)).toBe(true);
          for (const { stays } of numbers) for (const { start, end } of stays) expect(end).toBeGreaterThanOrEqual(start);
          expect(standing.every((id) => known.has(id))).toBe(true);
          const control = controlAt(drill, { timeline, possession }, timeline.end / 2, 5);
          if (control) expect(control.shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 6);
        }
      }
    }),
    { numRuns: 1500 },
  );
});
