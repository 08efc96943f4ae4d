/**
 * Items in an order in which each comes after everything it needs, and the rings of items that need themselves, each
 * ring as a walk that ends where it would begin again. Iterative (Tarjan's strongly connected components with an
 * explicit stack), so a chain may be of any length.
 */
export function ordered<T extends object>(
  items: Iterable<T>,
  needs: (item: T) => readonly T[],
): { readonly order: readonly T[]; readonly rings: readonly (readonly T[])[] } {
  const order: T[] = [];
  const rings: T[][] = [];
  const seen = new Map<T, { readonly index: number; low: number; open: boolean }>();
  const open: T[] = [];

  const enter = (item: T) => {
    const state = { index: seen.size, low: seen.size, open: true };
    seen.set(item, state);
    open.push(item);
    return { item, state, wanted: needs(item), next: 0 };
  };

  for (const root of items) {
    if (seen.has(root)) continue;
    const path = [enter(root)];
    for (let top = path[0]; top; top = path.at(-1)) {
      const wanted = top.wanted[top.next++];
      if (wanted !== undefined) {
        const known = seen.get(wanted);
        if (!known) path.push(enter(wanted));
        else if (known.open) top.state.low = Math.min(top.state.low, known.index);
        continue;
      }
      path.pop();
      const below = path.at(-1);
      if (below) below.state.low = Math.min(below.state.low, top.state.low);
      if (top.state.low < top.state.index) continue;
      const members = open.splice(open.lastIndexOf(top.item));
      for (const member of members) seen.get(member)!.open = false;
      if (members.length > 1 || top.wanted.includes(top.item)) rings.push(shortestRing(members, needs));
      for (const member of members) order.push(member);
    }
  }
  return { order, rings };
}

/** The shortest way from the first member back to itself. */
function shortestRing<T extends object>(members: readonly T[], needs: (item: T) => readonly T[]): T[] {
  const first = members[0]!;
  const inside = new Set(members);
  const cameFrom = new Map<T, T>();
  const queue = [first];
  for (const item of queue) {
    for (const next of needs(item)) {
      if (next === first) {
        const ring = [item];
        for (let step = item; step !== first; ) ring.push((step = cameFrom.get(step)!));
        return ring.reverse();
      }
      if (!inside.has(next) || cameFrom.has(next)) continue;
      cameFrom.set(next, item);
      queue.push(next);
    }
  }
  return [first];
}
