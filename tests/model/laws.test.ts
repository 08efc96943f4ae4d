import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ordered } from '../../shared/model/ordered.ts';
import { read } from './read.ts';

const kite = readFileSync(new URL('../support/kite.drill', import.meta.url), 'utf8');
const words = kite.split(/(\s+|[(),"{}])/).filter((word) => word.trim() !== '');

/** One edit: takes some text out and puts words of the same drill, or numbers, in its place. */
const edit = fc.record({
  from: fc.nat(kite.length),
  length: fc.nat(40),
  words: fc.array(fc.oneof(fc.constantFrom(...words), fc.constantFrom('0', '-1', '1e9', '0.5', 'let', 'next', 'of', 'mirrors', 'split')), { maxLength: 4 }),
});

function edited(edits: readonly { readonly from: number; readonly length: number; readonly words: readonly string[] }[]): string {
  return edits.reduce((text, { from, length, words: put }) => `${text.slice(0, from)} ${put.join(' ')} ${text.slice(from + length)}`, kite);
}

test('any text gives drills of finite numbers, problems inside the text, and the same again when it is read again', () => {
  fc.assert(
    fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => {
      const text = edited(edits);
      const first = read(text);
      const json = JSON.stringify(first, (_, value: unknown) => (typeof value === 'number' && !Number.isFinite(value) ? 'not finite' : value));
      expect(json).not.toContain('not finite');
      expect(first.problems.filter(({ span, message }) => !(span.from >= 0 && span.from <= span.to && span.to <= text.length && message))).toEqual([]);
      expect(JSON.stringify(read(text))).toBe(JSON.stringify(first));
    }),
    { numRuns: 300 },
  );
});

test('everything an action names is there', () => {
  fc.assert(
    fc.property(fc.array(edit, { maxLength: 3 }), (edits) => {
      for (const drill of read(edited(edits)).drills.flatMap((each) => [each, ...each.changes.map((change) => change.drill)])) {
        const actors = new Set(drill.actors.map((actor) => actor.id));
        const named = drill.sequences.flatMap(({ beats }) =>
          beats.flatMap(({ lead, meanwhile }) =>
            [lead, ...meanwhile].flatMap(({ actor, chain }) => [actor, ...chain.flatMap(({ to, receiver, about }) => [to, receiver, about?.who ?? null])]),
          ),
        );
        expect(named.filter((name) => name !== null && !actors.has(name))).toEqual([]);
        expect(actors.size).toBe(drill.actors.length);
      }
    }),
    { numRuns: 200 },
  );
});

const many = 5000;
const numbers = Array.from({ length: many }, (_, index) => index);

test.each<[name: string, lines: readonly string[], of: string]>([
  ['lets, each needing the one before', numbers.map((index) => (index === 0 ? 'let v0 = 1' : `let v${index} = v${index - 1} + 0.01`)), 'v4999'],
  ['lets, each needing the one after', numbers.map((index) => (index === many - 1 ? `let v${index} = 1` : `let v${index} = v${index + 1} + 0.01`)), 'v0'],
  ['cones, each above the one before', numbers.map((index) => (index === 0 ? 'cone v0 at (1, 1)' : `cone v${index} at 0.01 above v${index - 1}`)), '0'],
])('thousands of %s', (_, lines, of) => {
  const { drills, problems } = read(`drill "Test" {\n${lines.join('\n')}\ncone Last at (${of}, 1)\n}`);
  expect(problems).toEqual([]);
  const [last, before] = drills[0]!.furniture.toReversed();
  expect(last!.at.x + (before?.at.y ?? 1)).toBeCloseTo(1 + 0.01 * (many - 1) + (before ? 0 : 1), 6);
});

test('thousands of lets in one ring are one problem', () => {
  const lines = numbers.map((index) => `let v${index} = v${(index + 1) % many}`);
  const { problems } = read(`drill "Test" {\n${lines.join('\n')}\n}`);
  expect(problems.map(({ message }) => message)).toEqual([`\`v0\` needs itself: v0 → v1 → v2 → v3 → … → v${many - 2} → v${many - 1} → v0.`]);
});

test('a zone of ten thousand corners is refused', () => {
  const corners = Array.from({ length: 10_000 }, (_, index) => `(${index % 100}, ${Math.floor(index / 100)})`);
  const { problems } = read(`drill "Test" {\nzone Z polygon ${corners.join(' ')}\n}`);
  expect(problems.map(({ message }) => message)).toEqual(['`Z` has 10000 corners; at most 1000 can be marked out.']);
});

test('each comes after what it needs, and whatever needs itself is in a ring', () => {
  fc.assert(
    fc.property(fc.array(fc.array(fc.nat(9), { maxLength: 3 }), { minLength: 10, maxLength: 10 }), (needs) => {
      const items = needs.map((wanted, index) => ({ index, wanted }));
      const { order, rings } = ordered(items, ({ wanted }) => wanted.map((index) => items[index]!));
      const reaches = reachable(needs);
      expect(new Set(order).size).toBe(items.length);
      for (const item of items) {
        const early = item.wanted.filter((index) => order.indexOf(items[index]!) > order.indexOf(item) && !reaches[index]!.has(item.index));
        expect(early).toEqual([]);
      }
      for (const ring of rings) {
        ring.forEach((item, at) => expect(item.wanted).toContain(ring[(at + 1) % ring.length]!.index));
      }
      const circles = new Set(items.filter(({ index }) => reaches[index]!.has(index)).map(({ index }) => [...reaches[index]!].filter((other) => reaches[other]!.has(index)).sort().join()));
      expect(rings.length).toBe(circles.size);
    }),
  );
});

function reachable(needs: readonly (readonly number[])[]): readonly ReadonlySet<number>[] {
  return needs.map((wanted) => {
    const found = new Set(wanted);
    for (const index of found) for (const next of needs[index]!) found.add(next);
    return found;
  });
}
