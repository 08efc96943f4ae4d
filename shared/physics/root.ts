/**
 * Where a rising function crosses zero between `low` and `high`, by halving: sixty times leaves nothing that a double
 * could tell apart on the scale of the interval; fewer `steps` are quicker. Gives the nearer end when the crossing lies outside.
 */
export function root(f: (x: number) => number, low: number, high: number, steps = 60): number {
  let below = low;
  let above = high;
  for (let step = 0; step < steps; step += 1) {
    const middle = (below + above) / 2;
    if (f(middle) < 0) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
}
