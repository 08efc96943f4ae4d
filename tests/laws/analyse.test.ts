import fc from 'fast-check';
import { readFileSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { alone, analyse } from '../../shared/analyse.ts';
import { checks } from '../../shared/checks/index.ts';
import { withFixes } from '../../shared/checks/cure.ts';
import { applyEdits } from '../../shared/checks/edits.ts';
import { toSvg } from '../../shared/render/svg.ts';
import { stage } from '../../shared/scene/scene.ts';
import { marked } from '../support/marked.ts';

const examples = new URL('../../shared/examples/', import.meta.url);
const seeds = [
  readFileSync(new URL('../support/kite.drill', import.meta.url), 'utf8'),
  ...readdirSync(examples).filter((name) => name.endsWith('.drill')).map((name) => readFileSync(new URL(name, examples), 'utf8')),
  ...checks.flatMap((check) => [...check.bad, ...check.good]).map((text) => marked(text).plain),
];

/** A drill with a few cuts, doublings, swaps and strange words, as half-typed text has. */
const edited = fc
  .record({
    seed: fc.constantFrom(...seeds),
    edits: fc.array(
      fc.record({ at: fc.double({ min: 0, max: 1, noNaN: true }), length: fc.nat(30), kind: fc.constantFrom('cut', 'double', 'insert'), word: strangeWord() }),
      { minLength: 1, maxLength: 6 },
    ),
  })
  .map(({ seed, edits }) =>
    edits.reduce((text, { at, length, kind, word }) => {
      const from = Math.floor(at * text.length);
      const piece = text.slice(from, from + length);
      if (kind === 'cut') return text.slice(0, from) + text.slice(from + length);
      return text.slice(0, from) + (kind === 'double' ? piece : word) + text.slice(from);
    }, seed),
  );

function strangeWord(): fc.Arbitrary<string> {
  return fc.oneof(
    fc.constantFrom('(', ')', '{', '}', '"', ' while ', ' then ', ',', '\n', '0', '-1', '1e9', '999999999', ' x ', 'next ', 'Base', ' -> ', '𝒜', '前', '😀', '\r\n', '/ 0', ' after 1e3 s', ' yards'),
    fc.string({ unit: 'binary', maxLength: 6 }),
  );
}

test('any text gives an analysis whose places lie inside it and whose numbers are numbers', () => {
  fc.assert(
    fc.property(edited, (text) => {
      const { problems, drills } = analyse(text);
      for (const { span, message, related } of problems) {
        expect(span.from).toBeGreaterThanOrEqual(0);
        expect(span.to).toBeGreaterThanOrEqual(span.from);
        expect(span.to).toBeLessThanOrEqual(text.length);
        expect(message).not.toMatch(/NaN|undefined|Infinity|\[object/);
        for (const other of related) expect(other.span.to).toBeLessThanOrEqual(text.length);
      }
      for (const { timeline, measures } of drills) {
        expect(JSON.stringify({ timeline, measures })).not.toContain('null,null');
        expect(Number.isFinite(timeline.duration)).toBe(true);
        for (const pass of timeline.passes) expect([pass.start, pass.arrival, pass.received].every(Number.isFinite)).toBe(true);
        for (const track of timeline.tracks) for (const move of track.moves) expect([move.start, move.end, move.path.length].every(Number.isFinite)).toBe(true);
      }
    }),
    { numRuns: 20_000 },
  );
});

test('any text that has a drill gives a picture without a hole in it', () => {
  fc.assert(
    fc.property(edited, (text) => {
      const { drills, problems } = analyse(text);
      for (const analysis of drills) {
        expect(toSvg(stage(analysis, { theme: 'light', convention: 'solid pass', problems }), { embedFont: false })).not.toMatch(/NaN|Infinity|undefined/);
      }
    }),
    { numRuns: 1_000 },
  );
});

test('every fix that is offered makes its problem go away', () => {
  const faulty = checks.flatMap((check) => check.bad).map((text) => marked(text).plain);
  for (const text of faulty) {
    const analysis = analyse(text);
    for (const problem of withFixes(analysis, alone)) {
      for (const fix of problem.fixes) {
        const after = analyse(applyEdits(text, fix.edits)).problems;
        expect(after.filter((other) => other.code === problem.code).length, `${problem.code}: ${fix.title}`).toBeLessThan(
          analysis.problems.filter((other) => other.code === problem.code).length,
        );
      }
    }
  }
});
