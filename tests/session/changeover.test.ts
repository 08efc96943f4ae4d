/** Changeovers against every possible assignment, tried one by one. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Thing } from '../../shared/session/analysis.ts';
import { carrying } from '../../shared/session/carrying.ts';
import { changeoverOf } from '../../shared/session/changeover.ts';
import { cheapest } from '../../shared/session/matching.ts';
import { shorter, worthwhile, type Laid } from '../../shared/session/proposal.ts';
import { evening, parts } from './evening.ts';

function permutations(count: number): readonly (readonly number[])[] {
  if (count === 0) return [[]];
  return permutations(count - 1).flatMap((rest) => Array.from({ length: count }, (_, at) => [...rest.slice(0, at), count - 1, ...rest.slice(at)]));
}

test('the assignment is the cheapest of all there are', () => {
  const costs = fc.integer({ min: 1, max: 6 }).chain((size) => fc.array(fc.array(fc.integer({ min: 0, max: 50 }), { minLength: size, maxLength: size }), { minLength: size, maxLength: size }));
  fc.assert(fc.property(costs, (matrix) => {
    const sum = (columns: readonly number[]) => columns.reduce((total, column, row) => total + matrix[row]![column]!, 0);
    const found = cheapest(matrix);
    expect([...found].sort((a, b) => a - b)).toEqual(matrix.map((_, row) => row));
    expect(sum(found)).toBe(Math.min(...permutations(matrix.length).map(sum)));
  }));
});

// By hand: from corner to corner 3 + 4 + 3 = 10; the other way 1 + 4 + 9 = 14, and the four others are between.
test('a worked example', () => {
  expect(cheapest([[1, 2, 3], [2, 4, 6], [3, 6, 9]])).toEqual([2, 1, 0]);
});

const disc = (x: number, y: number): Thing => ({ kind: 'disc', at: { x, y } });
const square = (side: number, x = 0, y = 0) => [disc(x, y), disc(x + side, y), disc(x, y + side), disc(x + side, y + side)];

// By hand. Walking: metres over the load of 20 discs at 1.4 m/s. Handling: 2 s up and 5 s down for each that moves.
test.each<[what: string, before: readonly Thing[], after: readonly Thing[], counts: readonly number[], metres: number, handled: number]>([
  ['nothing changes', square(10), square(10), [4, 0, 0, 0], 0, 0],
  ['two metres wider', square(10), square(12), [1, 3, 0, 0], 2 + 2 + Math.sqrt(8), 21],
  ['the square beside it: two stay, two go over', square(10), square(10, 10), [2, 2, 0, 0], 40, 14],
  ['setting out', [], [disc(3, 4)], [0, 0, 0, 1], 5, 5],
  ['clearing away', [disc(3, 4), disc(6, 8)], [], [0, 0, 2, 0], 15, 4],
  ['one more is fetched, the nearest to the pile', [disc(3, 4)], [disc(3, 4), disc(6, 8)], [1, 0, 0, 1], 10, 5],
  ['another kind is not the same', [{ kind: 'pole', at: { x: 3, y: 4 } }], [], [0, 0, 1, 0], 25, 4],
])('%s', (_, before, after, counts, metres, handled) => {
  const { stays, moves, comesUp, goesDown, walk, seconds } = changeoverOf(before, after, 2);
  expect([stays.length, moves.length, comesUp.length, goesDown.length]).toEqual(counts);
  expect(walk).toBeCloseTo(metres / 20, 9);
  expect(seconds).toBeCloseTo((metres / 20 / 1.4 + handled) / 2, 9);
});

const spot = fc.record({ x: fc.integer({ min: 0, max: 20 }), y: fc.integer({ min: 0, max: 20 }) });
const things = (most: number) => fc.array(fc.record({ kind: fc.constantFrom('disc' as const, 'pole' as const), at: spot }), { maxLength: most });

/** Seconds for one pair of hands, from trying every assignment kind by kind; the pile fills up the shorter side. */
function leastSeconds(before: readonly Thing[], after: readonly Thing[]): number {
  return (['disc', 'pole'] as const).reduce((total, kind) => {
    const [from, to] = [before, after].map((all) => all.filter((thing) => thing.kind === kind).map(({ at }) => at));
    const size = Math.max(from!.length, to!.length);
    const { up, down, load } = carrying.things[kind];
    const cost = (row: number, column: number): number => {
      const [a, b] = [from![row], to![column]];
      const [start, end] = [a ?? carrying.pile, b ?? carrying.pile];
      const metres = Math.hypot(end.x - start.x, end.y - start.y);
      return a && b && metres < 0.3 ? 0 : (a ? up : 0) + (b ? down : 0) + metres / load / carrying.speed;
    };
    return total + Math.min(...permutations(size).map((columns) => columns.reduce((sum, column, row) => sum + cost(row, column), 0)));
  }, 0);
}

test('no changeover is quicker, and nothing is lost or made', () => {
  fc.assert(fc.property(things(5), things(5), (before, after) => {
    const { stays, moves, comesUp, goesDown, seconds } = changeoverOf(before, after, 1);
    expect(seconds).toBeCloseTo(leastSeconds(before, after), 6);
    expect([stays.length + moves.length + comesUp.length, stays.length + moves.length + goesDown.length]).toEqual([before.length, after.length]);
  }), { numRuns: 300 });
});

test('hundreds of markers are matched, those that lie right left alone', () => {
  const grid = Array.from({ length: 400 }, (_, index) => disc(index % 20, Math.floor(index / 20)));
  const { stays, moves, comesUp, goesDown } = changeoverOf(grid, grid.map(({ kind, at }) => ({ kind, at: { x: at.x + 1, y: at.y } })), 1);
  expect([stays.length, moves.length, comesUp.length, goesDown.length]).toEqual([380, 20, 0, 0]);
});

const pitch = { width: 60, length: 60, span: { from: 0, to: 0 } };

function laid(own: readonly Thing[]): Laid {
  const xs = own.map(({ at }) => at.x);
  const ys = own.map(({ at }) => at.y);
  return { at: [{ x: 0, y: 0 }], extent: { left: Math.min(...xs), bottom: Math.min(...ys), right: Math.max(...xs), top: Math.max(...ys) }, things: own };
}

const moved = (own: readonly Thing[], dx: number, dy: number) => own.map(({ kind, at }): Thing => ({ kind, at: { x: at.x + dx, y: at.y + dy } }));

/** Every way to lay the parts so that one thing of each comes to where one of the part before stands, or the part stays. */
function leastOfAll(before: readonly Thing[], rest: readonly (readonly Thing[])[]): number {
  const [part, ...others] = rest;
  if (!part) return 0;
  const shifts = [[0, 0], ...before.flatMap((there) => part.filter(({ kind }) => kind === there.kind).map(({ at }) => [there.at.x - at.x, there.at.y - at.y]))];
  const fitting = shifts.map(([dx, dy], index) => ({ placed: moved(part, dx!, dy!), index }))
    .filter(({ placed, index }) => index === 0 || placed.every(({ at }) => at.x >= 0 && at.y >= 0 && at.x <= pitch.width && at.y <= pitch.length));
  return Math.min(...fitting.map(({ placed }) => leastSeconds(before, placed) + leastOfAll(placed, others)));
}

const session = fc.array(things(3).filter((all) => all.length > 0), { minLength: 2, maxLength: 3 });

test('the proposal is the best there is in a small session, and never worse than what is written', () => {
  fc.assert(fc.property(session, (all) => {
    const written = all.slice(1).reduce((sum, part, index) => sum + leastSeconds(all[index]!, part), 0);
    const best = leastOfAll(all[0]!, all.slice(1));
    const found = shorter(all.map(laid), pitch, 'm', 1);
    if (found) expect([found.written, found.proposed]).toEqual([expect.closeTo(written, 6), expect.closeTo(best, 6)]);
    else expect(best).toBeGreaterThan(written - worthwhile - 1e-6);
  }), { numRuns: 200 });
});

const large = fc.array(fc.array(fc.record({ kind: fc.constant('disc' as const), at: fc.record({ x: fc.integer({ min: 0, max: 60 }), y: fc.integer({ min: 0, max: 60 }) }) }), { minLength: 4, maxLength: 14 }), { minLength: 2, maxLength: 4 });

test('what is proposed takes as long as is said, on the pitch, and less than what is written', () => {
  let proposals = 0;
  fc.assert(fc.property(large, (all) => {
    const found = shorter(all.map(laid), pitch, 'm', 1);
    if (!found) return;
    proposals += 1;
    const placed = all.map((part, index) => moved(part, found.shifts[index]!.x, found.shifts[index]!.y));
    const seconds = placed.slice(1).reduce((sum, part, index) => sum + changeoverOf(placed[index]!, part, 1).seconds, 0);
    expect(seconds).toBeCloseTo(found.proposed, 6);
    expect(found.proposed).toBeLessThanOrEqual(found.written - worthwhile);
    for (const { at } of placed.flat()) expect([at.x >= -1e-9, at.y >= -1e-9, at.x <= 60 + 1e-9, at.y <= 60 + 1e-9]).toEqual([true, true, true, true]);
  }), { numRuns: 60 });
  expect(proposals).toBeGreaterThan(0);
});

const grid = 'drill "Grid" {\n  area 12 x 12 marked every 3\n}\n';

test('the session gets the proposal, with the changeovers in their order and the pauses between', () => {
  const analysis = evening('pitch 60 x 40\npart "A" 9 min of "Grid" at (0, 0)\npause 1 min\npart "Talk" 2 min\npart "B" 9 min of "Grid" at (40, 20)\npart "C" 9 min of "Grid" at (40, 20)', grid);
  expect(analysis.changeovers.map(({ from, to, available, stays }) => [from, to, available, stays.length])).toEqual([
    [null, 0, null, 0], [0, 3, 180, 0], [3, 4, null, 16], [4, null, null, 0],
  ]);
  expect(analysis.proposal).toEqual({ at: [[{ x: 0, y: 0 }], [], [{ x: 0, y: 0 }], [{ x: 0, y: 0 }]], written: expect.closeTo(analysis.changeovers[1]!.seconds, 6), proposed: 0 });
  expect(parts(analysis).map(({ setUp }) => setUp.things.length)).toEqual([16, 0, 16, 16]);
});
