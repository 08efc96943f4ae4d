import type { Registered } from './analysis.ts';

/**
 * A list of names, one a line, put to the numbers of the register in their order: null where no line is left. `faults` are
 * sentences about too few, too many, and the same name twice; names that are too many are kept behind the others.
 */
export function namesOf(text: string, register: readonly Registered[]): { readonly names: readonly (string | null)[]; readonly faults: readonly string[] } {
  const listed = text.replace(/^\ufeff/, '').split(/\r\n|\r|\n/).map((line) => line.trim()).filter((line) => line !== '');
  const count = register.length;
  const twice = [...new Set(listed.filter((name, index) => listed.indexOf(name) !== index))];
  const faults = [
    ...(listed.length < count ? [`The list has ${listed.length} names for ${count} players: the rest are shown by number.`] : []),
    ...(listed.length > count ? [`The list has ${listed.length} names for ${count} players.`] : []),
    ...twice.map((name) => `The list has ${name} twice.`),
  ];
  return { names: Array.from({ length: Math.max(count, listed.length) }, (_, index) => listed[index] ?? null), faults };
}
