import type { Registered } from './analysis.ts';

export interface Named {
  /** Of every number on the register, in order; null where no name is left. */
  readonly names: readonly (string | null)[];
  /** Sentences: too few names, too many, one twice. */
  readonly faults: readonly string[];
}

/**
 * Names for the numbers of a register, from a plain list: one name a line, in the order of the register, empty lines and lines after `#` left out.
 * Names are kept out of drill files; whoever prints a sheet asks for them.
 */
export function namesOf(text: string, register: readonly Registered[]): Named {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n?|\n/);
  const written = lines.map((line) => line.replace(/#.*/, '').replaceAll(/\s+/g, ' ').trim()).filter((name) => name !== '');
  const again = [...new Set(written.filter((name, index) => written.indexOf(name) < index))];
  const [needed, found] = [register.length, written.length];
  return {
    names: register.map((_, index) => written[index] ?? null),
    faults: [
      ...(found < needed ? [`The list has ${counted(found)} for ${needed} players: ${counted(needed - found)} missing.`] : []),
      ...(found > needed ? [`The list has ${counted(found)} for ${needed} players: ${quoted(written.slice(needed))} left over.`] : []),
      ...(again.length > 0 ? [`Twice in the list: ${quoted(again)}. Tell them apart, by a letter of the family name for instance.`] : []),
    ],
  };
}

function counted(count: number): string {
  return `${count} ${count === 1 ? 'name' : 'names'}`;
}

/** The first few. */
function quoted(names: readonly string[]): string {
  const shown = names.slice(0, 3).join(', ');
  return names.length > 3 ? `${shown} and ${names.length - 3} more` : shown;
}
