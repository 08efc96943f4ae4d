/** What differs in each pair of things, under the keys of the record of values. */
import type { Change, Unit, Value, Values } from './comparison.ts';
import { called, type Pair } from './match.ts';
import type { Thing, Valued } from './thing.ts';

/** A pair with all that differs in it. */
export interface Difference {
  readonly pair: Pair;
  /** By property. */
  readonly changes: ReadonlyMap<string, Change>;
}

export function differencesOf(pairs: readonly Pair[]): { readonly values: { readonly before: Values; readonly after: Values }; readonly differences: readonly Difference[] } {
  const before = new Map<string, Value>();
  const after = new Map<string, Value>();
  const taken = new Set(pairs.flatMap((pair) => (pair.before ? [nameOf(pair.before)] : [])));
  const differences = pairs.map((pair): Difference => {
    const own = nameOf(pair.before ?? pair.after!);
    const name = pair.before || !taken.has(own) ? own : `${own} (new)`;
    const [was, is] = [valuesOf(pair.before), valuesOf(pair.after)];
    const changes = new Map<string, Change>();
    for (const property of new Set([...Object.keys(was), ...Object.keys(is)])) {
      const key = `${name}/${property}`;
      const [old, now] = [was[property] ?? null, is[property] ?? null];
      if (old) before.set(key, old.value);
      if (now) after.set(key, now.value);
      if (old?.value !== now?.value) changes.set(property, changeOf(key, old, now));
    }
    return { pair, changes };
  });
  return { values: { before: Object.fromEntries(before), after: Object.fromEntries(after) }, differences };
}

function nameOf({ kind, id }: Thing): string {
  return id === '' ? kind : `${kind} ${id}`;
}

/** Also what it is called, where other lines call it. */
function valuesOf(thing: Thing | null): Readonly<Record<string, Valued>> {
  if (!thing) return {};
  return called.has(thing.kind) && thing.kind !== 'sequence' && thing.traits[1] !== 'unnamed' ? { name: { value: thing.id, unit: 'text' }, ...thing.values } : thing.values;
}

function changeOf(key: string, old: Valued | null, now: Valued | null): Change {
  const [before, after] = [old?.value ?? null, now?.value ?? null];
  const unit: Unit = (now ?? old)!.unit;
  return { key, before, after, unit, by: typeof before === 'number' && typeof after === 'number' ? Math.round((after - before) * 1e6) / 1e6 + 0 : null };
}
