import fc from 'fast-check';
import parity from 'permutation-parity';
import { expect, test } from 'vitest';
import { cyclesOf, leastCommonMultiple } from '../../shared/rotation/rotate.ts';

const permutations = fc.integer({ min: 1, max: 24 }).chain((size) => fc.shuffledSubarray([...Array(size).keys()], { minLength: size, maxLength: size }));

test('the cycles of a rotation have the parity that a permutation library finds', () => {
  // Source: npm permutation-parity; a cycle of length n is n - 1 swaps (elementary algebra).
  fc.assert(
    fc.property(permutations, (image) => {
      const swaps = cyclesOf(image).reduce((sum, cycle) => sum + cycle.length - 1, 0);
      // The library says 1 for an even permutation and -1 for an odd one (its README has them the other way round).
      expect(swaps % 2 === 0 ? 1 : -1).toBe(parity(image));
    }),
  );
});

test('everyone is home after as many repetitions as the least common multiple of the cycles, and not before', () => {
  // Source: the order of a permutation, worked out here by repeating it.
  fc.assert(
    fc.property(permutations, (image) => {
      const order = cyclesOf(image).map((cycle) => cycle.length).reduce(leastCommonMultiple, 1);
      let at = image.map((_, place) => place);
      for (let repetition = 1; repetition <= order; repetition += 1) {
        at = at.map((place) => image[place]!);
        expect(at.every((place, player) => place === player)).toBe(repetition === order);
      }
    }),
    { numRuns: 60 },
  );
});

test.each([
  { image: [1, 2, 0], cycles: [[0, 1, 2]] },
  { image: [0, 2, 1], cycles: [[0], [1, 2]] },
  { image: [2, 3, 0, 1], cycles: [[0, 2], [1, 3]] },
])('the cycles of $image', ({ image, cycles }) => {
  expect(cyclesOf(image)).toEqual(cycles);
});
