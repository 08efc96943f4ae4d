import type { Part } from '../model/session.ts';
import type { Registered } from './analysis.ts';
import type { Need } from './need.ts';
import { numbersOf } from './register.ts';

export interface Grouped {
  readonly groups: readonly { readonly members: readonly number[]; readonly keepers: readonly number[] }[];
  readonly resting: readonly number[];
}

/**
 * The groups of a part: as even as they can be unless their sizes are written, never larger than the drill takes. Whoever was
 * together in the part before stays together as long as the sizes allow; goalkeepers go first to where a goal is kept; those who have rested least rest.
 */
export function groupedFor(part: Part, able: readonly Registered[], need: Need, before: Grouped | null, rested: ReadonlyMap<number, number>): Grouped {
  const sizes = sizesOf(part, able.length, need);
  const places = sizes.reduce((sum, size) => sum + size, 0);
  const keeps = ({ keeper }: Registered): number => (keeper && need.keepers > 0 ? 1 : 0);
  const rests = ({ number }: Registered): number => rested.get(number) ?? 0;
  const order = [...able].sort((a, b) => keeps(b) - keeps(a) || rests(b) - rests(a) || a.number - b.number);
  const playing = new Set(order.slice(0, places));
  const free = new Set([...playing].sort((a, b) => a.number - b.number));
  const groups = sizes.map((): Registered[] => []);
  const take = (index: number, person: Registered): void => {
    if (groups[index]!.length >= sizes[index]! || !free.delete(person)) return;
    groups[index]!.push(person);
  };

  const keeping = [...free].filter((each) => each.keeper).slice(0, need.keepers * groups.length);
  for (const [index, keeper] of keeping.entries()) take(index % groups.length, keeper);
  for (const index of groups.keys()) {
    const together = new Set(before?.groups[index]?.members);
    for (const person of free) if (together.has(person.number)) take(index, person);
  }
  for (const index of groups.keys()) for (const person of free) take(index, person);

  return {
    groups: groups.map((members) => {
      const inOrder = members.sort((a, b) => a.number - b.number);
      return { members: numbersOf(inOrder), keepers: numbersOf(inOrder.filter((each) => each.keeper)) };
    }),
    resting: numbersOf(able.filter((each) => !playing.has(each))),
  };
}

/** Sizes that are written are cut where too few came. */
function sizesOf({ groups, sizes, resting }: Part, able: number, { most }: Need): readonly number[] {
  if (sizes) {
    let left = able;
    return sizes.map((size) => {
      const taken = Math.min(size, left);
      left -= taken;
      return taken;
    });
  }
  const playing = Math.max(0, able - resting.value);
  return Array.from({ length: groups }, (_, index) => Math.min(most, Math.floor(playing / groups) + (index < playing % groups ? 1 : 0)));
}
