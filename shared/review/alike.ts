/** How alike two lists of words are, and which of two lists belong together. */

/** Words and what stands beside what, each with how often it is there: the same words in another order are less alike. */
export type Features = ReadonlyMap<string, number>;

export function featuresOf(tokens: readonly string[]): Features {
  const found = new Map<string, number>();
  for (const [index, token] of tokens.entries()) {
    found.set(token, (found.get(token) ?? 0) + 1);
    const next = tokens[index + 1];
    if (next !== undefined) found.set(`${token} ${next}`, (found.get(`${token} ${next}`) ?? 0) + 1);
  }
  return found;
}

/** From 0, nothing in common, to 1, the same: the coefficient of Dice (1945) and Sørensen (1948). */
export function alike(a: Features, b: Features): number {
  let [shared, all] = [0, 0];
  for (const [token, times] of a) {
    shared += Math.min(times, b.get(token) ?? 0);
    all += times;
  }
  for (const times of b.values()) all += times;
  return all === 0 ? 1 : (2 * shared) / all;
}

export type IndexPair = readonly [number, number];

/** Comparing every one with every other is given up beyond so many pairs. */
const mostPairs = 400_000;

/** The best pairs first, each of either list at most once; of equally good ones those that stand at about the same place. */
export function best(rows: number, columns: number, score: (row: number, column: number) => number, least: number): IndexPair[] {
  if (rows * columns > mostPairs) return [];
  const found: { readonly pair: IndexPair; readonly score: number }[] = [];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const value = score(row, column);
      if (value >= least) found.push({ pair: [row, column], score: value });
    }
  }
  const off = ({ pair: [row, column] }: { readonly pair: IndexPair }) => Math.abs(row - column);
  found.sort((a, b) => b.score - a.score || off(a) - off(b) || a.pair[0] - b.pair[0] || a.pair[1] - b.pair[1]);
  const [left, right] = [new Set<number>(), new Set<number>()];
  return found.flatMap(({ pair }) => {
    if (left.has(pair[0]) || right.has(pair[1])) return [];
    left.add(pair[0]);
    right.add(pair[1]);
    return [pair];
  });
}

/**
 * The pairs in the same order on both sides whose scores sum to the most: a longest common subsequence in which things that
 * are at least `least` alike count as far as they are alike.
 */
export function aligned(rows: number, columns: number, score: (row: number, column: number) => number, least: number): IndexPair[] {
  let start = 0;
  while (start < Math.min(rows, columns) && score(start, start) === 1) start += 1;
  let end = 0;
  while (end < Math.min(rows, columns) - start && score(rows - 1 - end, columns - 1 - end) === 1) end += 1;
  const between = alignedBetween(rows - start - end, columns - start - end, (row, column) => score(start + row, start + column), least);
  return [
    ...Array.from({ length: start }, (_, index) => [index, index] as const),
    ...between.map(([row, column]) => [start + row, start + column] as const),
    ...Array.from({ length: end }, (_, index) => [rows - end + index, columns - end + index] as const),
  ];
}

/** Without the ends that are the same on both sides. */
function alignedBetween(rows: number, columns: number, score: (row: number, column: number) => number, least: number): IndexPair[] {
  const width = columns + 1;
  if (rows * columns > mostPairs) return Array.from({ length: Math.min(rows, columns) }, (_, index) => [index, index] as const).filter(([row, column]) => score(row, column) >= least);
  const sums = new Float64Array((rows + 1) * width);
  const scores = new Float64Array(rows * columns);
  for (let row = rows - 1; row >= 0; row -= 1) {
    for (let column = columns - 1; column >= 0; column -= 1) {
      const value = score(row, column);
      scores[row * columns + column] = value;
      const here = row * width + column;
      const both = value >= least ? value + sums[here + width + 1]! : 0;
      sums[here] = Math.max(both, sums[here + width]!, sums[here + 1]!);
    }
  }
  const pairs: IndexPair[] = [];
  for (let row = 0, column = 0; row < rows && column < columns; ) {
    const here = row * width + column;
    const value = scores[row * columns + column]!;
    if (value >= least && sums[here] === value + sums[here + width + 1]!) pairs.push([row++, column++]);
    else if (sums[here + width]! >= sums[here + 1]!) row += 1;
    else column += 1;
  }
  return pairs;
}
