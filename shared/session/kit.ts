/** What the session needs at its busiest, against what the club has. */
import { kitKinds, type KitKind, type Session } from '../model/session.ts';
import type { KitLine, PartSlot, Slot } from './analysis.ts';

/** In the order of the kinds; bibs by colour. */
export function kitLines(timetable: readonly Slot[], kit: Session['kit']): readonly KitLine[] {
  const parts = timetable.filter((slot) => slot.kind === 'part').map(needIn);
  const keys = new Map(parts.flatMap(({ needs }) => needs.map(({ kind, colour }) => [keyOf({ kind, colour }), { kind, colour }])));
  const lines = [...keys.values()].map((need): KitLine => {
    const most = parts.reduce((best, part) => (countIn(part, need) > countIn(best, need) ? part : best));
    return {
      ...need,
      needed: countIn(most, need),
      mostIn: most.name,
      has: kit.length > 0 ? hasOf(kit, need) : null,
      short: kit.length > 0 ? Math.max(...parts.map((part) => shortIn(part, need, kit))) : 0,
    };
  });
  return lines.sort((a, b) => kitKinds.indexOf(a.kind) - kitKinds.indexOf(b.kind));
}

interface Wanted {
  readonly kind: KitKind;
  readonly colour: string | null;
}

interface PartNeed {
  readonly name: string;
  readonly needs: readonly (Wanted & { readonly count: number })[];
}

function needIn({ part, setUp }: PartSlot): PartNeed {
  const counted = kitKinds.map((kind) => ({ kind, colour: null, count: kind === 'ball' ? setUp.balls : setUp.things.filter((thing) => thing.kind === kind).length }));
  const colours = [...new Set(setUp.bibs.map(({ colour }) => colour.toLowerCase()))];
  const bibs = colours.map((colour) => {
    const own = setUp.bibs.filter((bib) => bib.colour.toLowerCase() === colour);
    return { kind: 'bib' as const, colour, count: own.reduce((sum, { count }) => sum + count, 0) };
  });
  return { name: part.name, needs: [...counted, ...bibs].filter(({ count }) => count > 0) };
}

function keyOf({ kind, colour }: Wanted): string {
  return `${kind} ${colour ?? ''}`;
}

function countIn({ needs }: PartNeed, { kind, colour }: Wanted): number {
  return needs.find((each) => each.kind === kind && each.colour === colour)?.count ?? 0;
}

/** Of bibs, those of that colour. */
function hasOf(kit: Session['kit'], { kind, colour }: Wanted): number {
  const own = kit.filter((item) => item.what === kind && (kind !== 'bib' || (item.colour?.toLowerCase() ?? null) === colour));
  return own.reduce((sum, { count }) => sum + count, 0);
}

/** Spare cones stand in for discs and discs for cones; bibs without a colour for any, in the order in which the colours are missing. */
function shortIn(part: PartNeed, need: Wanted, kit: Session['kit']): number {
  const missing = (of: Wanted): number => Math.max(0, countIn(part, of) - hasOf(kit, of));
  const spare = (of: Wanted): number => Math.max(0, hasOf(kit, of) - countIn(part, of));
  switch (need.kind) {
    case 'cone':
      return Math.max(0, missing(need) - spare({ kind: 'disc', colour: null }));
    case 'disc':
      return Math.max(0, missing(need) - spare({ kind: 'cone', colour: null }));
    case 'bib': {
      const bibs = part.needs.filter(({ kind }) => kind === 'bib');
      const earlier = bibs.slice(0, bibs.findIndex(({ colour }) => colour === need.colour)).reduce((sum, each) => sum + missing(each), 0);
      return Math.max(0, missing(need) - Math.max(0, hasOf(kit, { kind: 'bib', colour: null }) - earlier));
    }
    case 'pole':
    case 'mannequin':
    case 'goal':
    case 'minigoal':
    case 'hurdle':
    case 'ladder':
    case 'ball':
      return missing(need);
  }
}
