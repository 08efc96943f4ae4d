/** Why something moved although its own line says the same: what it hangs on has changed. */
import { renamed, type Pair, type Renames } from './match.ts';
import type { Difference } from './differences.ts';
import type { Thing } from './thing.ts';

/** The differences that this one follows from, each changed by its own line; empty for one that changed by itself, or nobody knows why. */
export type CausesOf = (difference: Difference) => ReadonlySet<Difference>;

export function causesOf(differences: readonly Difference[], renames: Renames): CausesOf {
  const named = new Map<string, Difference>();
  for (const each of differences) {
    const { before, after } = each.pair;
    for (const thing of [before, after]) if (thing && hangable.has(thing.kind) && thing.kind !== 'action' && thing.kind !== 'balls') named.set(thing.kind === 'area' ? 'area' : thing.id, each);
  }
  const units = differences.find(({ pair, changes }) => pair.after?.kind === 'drill' && changes.has('units')) ?? null;
  const known = new Map<Difference, ReadonlySet<Difference>>();

  const rootsOf = (difference: Difference): ReadonlySet<Difference> => {
    const found = known.get(difference);
    if (found) return found;
    // Whoever comes back here meanwhile, in a circle, finds nothing.
    known.set(difference, new Set());
    const { before, after } = difference.pair;
    const roots = new Set<Difference>();
    if (before && after && saysTheSame(difference.pair, renames)) {
      for (const name of mentioned(after)) {
        const other = named.get(name);
        if (!other || other === difference || other.changes.size === 0) continue;
        for (const root of isRoot(other, renames) ? [other] : rootsOf(other)) roots.add(root);
      }
      // The same number in another unit is another length.
      if (roots.size === 0 && units && /\d/.test(after.words ?? '') && hangable.has(after.kind)) roots.add(units);
    }
    known.set(difference, roots);
    return roots;
  };
  return rootsOf;
}

/** Whether its own words, but for new names, are what they were. */
export function saysTheSame({ before, after }: Pair, renames: Renames): boolean {
  return before !== null && after !== null && before.words !== null && after.words !== null && renamed(before.words, renames) === after.words;
}

const hangable: ReadonlySet<Thing['kind']> = new Set(['let', 'area', 'zone', 'furniture', 'station', 'player', 'action', 'balls']);

/** Changed by its own line, in more than its name. */
function isRoot({ pair, changes }: Difference, renames: Renames): boolean {
  return [...changes.keys()].some((property) => property !== 'name') && !saysTheSame(pair, renames);
}

function mentioned({ words, id }: Thing): string[] {
  return [...new Set((words ?? '').match(/[\p{L}\p{N}_]+/gu) ?? [])].filter((name) => name !== id);
}
