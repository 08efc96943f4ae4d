/**
 * Where a rising function crosses zero between `low` and `high`, to what a double can tell apart on the scale of the
 * interval, or roughly after fewer `steps`: false position, with the Illinois rule for an end that stays. Gives the
 * nearer end when the crossing lies outside.
 * Source: Dowell and Jarratt, A modified regula falsi method for computing the root of an equation, BIT 11 (1971), from memory.
 */
export function root(f: (x: number) => number, low: number, high: number, steps = 60): number {
  let [below, above] = [low, high];
  let [under, over] = [f(below), f(above)];
  if (!(under < 0)) return low;
  if (!(over > 0)) return high;
  const close = Math.abs(high - low) * 1e-15;
  let side = 0;
  for (let step = 0; step < steps; step += 1) {
    const middle = above - (over * (above - below)) / (over - under);
    const value = f(middle);
    if (value === 0) return middle;
    if (value < 0) {
      if (middle - below <= close) return middle;
      [below, under] = [middle, value];
      if (side === -1) over /= 2;
      side = -1;
    } else {
      if (above - middle <= close) return middle;
      [above, over] = [middle, value];
      if (side === 1) under /= 2;
      side = 1;
    }
  }
  return (below + above) / 2;
}
