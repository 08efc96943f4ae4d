import type { Part, Session } from '../model/session.ts';
import type { Registered } from './analysis.ts';

/** Everyone who is expected, by number: those who take part from the beginning, those who cannot take part fully, those who join later. */
export function registerOf({ players, without, joins }: Session): readonly Registered[] {
  const all = players?.value ?? 0;
  const late = joins.flatMap(({ count, keeper, part }) => Array.from({ length: count }, (): Entry => ({ keeper, joins: part, aside: null })));
  const aside = without.flatMap(({ count, reason, parts }) => Array.from({ length: count }, (): Entry => ({ keeper: false, joins: null, aside: { reason, parts } })));
  const special = [...aside, ...late].slice(0, all);
  const others = Array.from({ length: all - special.length }, (): Entry => ({ keeper: false, joins: null, aside: null }));
  return [...others, ...special].map((entry, index) => ({ number: index + 1, ...entry }));
}

type Entry = Omit<Registered, 'number'>;

/** Who is there for a part: who can play, who looks on, and who has not come yet. */
export function presentAt(part: Part, register: readonly Registered[], session: Session): {
  readonly able: readonly Registered[];
  readonly aside: readonly number[];
  readonly away: readonly number[];
} {
  const parts = session.parts.filter((each) => each.kind === 'part');
  const names = parts.map(({ name }) => name);
  const later = new Set(names.slice(parts.indexOf(part) + 1));
  for (const name of names.slice(0, parts.indexOf(part) + 1)) later.delete(name);
  const away = register.filter(({ joins }) => joins !== null && later.has(joins));
  const aside = register.filter(({ aside: out }) => out !== null && (out.parts.length === 0 || out.parts.includes(part.name)));
  const out = new Set([...away, ...aside]);
  return { able: register.filter((each) => !out.has(each)), aside: numbersOf(aside), away: numbersOf(away) };
}

export function numbersOf(people: readonly Registered[]): readonly number[] {
  return people.map(({ number }) => number);
}
