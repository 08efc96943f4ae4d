export interface Timing {
  /** Milliseconds; `p10` is what it takes when the rest of the machine is quiet. */
  readonly p10: number;
  readonly median: number;
  readonly p95: number;
  readonly runs: number;
}

/**
 * Runs each of some works until it is warm, then all of them in turn, so that whatever else the machine does falls on all
 * alike. Each gets about `budget` milliseconds, and three runs at least; before that `warming` milliseconds that do not count.
 */
export function time(works: readonly (() => unknown)[], budget = 1000, warming = budget / 3): Timing[] {
  for (const work of works) for (const end = performance.now() + warming; performance.now() < end;) work();
  const taken = works.map((): number[] => []);
  for (const end = performance.now() + budget * works.length; performance.now() < end || taken[0]!.length < 3;) {
    for (const [index, work] of works.entries()) taken[index]!.push(once(work));
  }
  return taken.map((each) => {
    each.sort((a, b) => a - b);
    return { p10: each[Math.floor(each.length * 0.1)]!, median: each[Math.floor(each.length / 2)]!, p95: each[Math.floor(each.length * 0.95)]!, runs: each.length };
  });
}

function once(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** The slope of a straight line through the logarithms: 1 is linear, 2 is quadratic. */
export function slope(points: readonly (readonly [size: number, cost: number])[]): number {
  const logs = points.map(([size, cost]) => [Math.log(size), Math.log(cost)] as const);
  const mean = (index: 0 | 1): number => logs.reduce((sum, each) => sum + each[index], 0) / logs.length;
  const [x, y] = [mean(0), mean(1)];
  return logs.reduce((sum, each) => sum + (each[0] - x) * (each[1] - y), 0) / logs.reduce((sum, each) => sum + (each[0] - x) ** 2, 0);
}
