/**
 * The candidate that a word was most likely meant to be, or null when none is near: at most two slips
 * (a letter left out, added, changed, or two swapped), fewer in short words. Capitals count for nothing.
 */
export function nearest(word: string, candidates: Iterable<string>): string | null {
  const written = word.toLowerCase();
  let best: string | null = null;
  let bestScore = Infinity;
  for (const candidate of candidates) {
    const meant = candidate.toLowerCase();
    const limit = slipsAllowed(written, meant);
    if (Math.abs(written.length - meant.length) > limit) continue;
    const slips = distance(written, meant);
    if (slips > limit) continue;
    // Between equals the one that starts alike, then the one that comes first.
    const score = slips + (written[0] === meant[0] ? 0 : 0.5);
    if (score < bestScore) {
      best = candidate;
      bestScore = score;
    }
  }
  return best;
}

function slipsAllowed(written: string, meant: string): number {
  const length = Math.min(written.length, meant.length);
  if (length <= 1) return 0;
  if (length === 2) return written.length === 2 && written[0] !== meant[1] ? 0 : 1;
  return length <= 4 ? 1 : 2;
}

/** Damerau-Levenshtein, neighbouring swaps only. */
function distance(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const changed = a[row - 1] === b[column - 1] ? 0 : 1;
      let least = Math.min(above[column]! + 1, current[column - 1]! + 1, above[column - 1]! + changed);
      if (row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]) {
        least = Math.min(least, before[column - 2]! + 1);
      }
      current.push(least);
    }
    before = above;
    above = current;
  }
  return above[b.length]!;
}
