import type { Unit } from './tree.ts';

/** Every spelling of a unit, and the one that is printed. */
export const unitSpellings: ReadonlyMap<string, Unit> = new Map<string, Unit>([
  ...spellings('m', 'm', 'metre', 'metres', 'meter', 'meters'),
  ...spellings('yd', 'yd', 'yard', 'yards'),
  ...spellings('ft', 'ft', 'foot', 'feet'),
  ...spellings('cm', 'cm'),
  ...spellings('s', 's', 'sec', 'seconds'),
  ...spellings('min', 'min', 'minutes'),
  ...spellings('m/s', 'm/s'),
  ...spellings('km/h', 'km/h'),
]);

export const unitDocs: Readonly<Record<Unit, string>> = {
  m: 'Metres.',
  yd: 'Yards: 0.9144 m.',
  ft: 'Feet: 0.3048 m.',
  cm: 'Centimetres.',
  s: 'Seconds.',
  min: 'Minutes.',
  'm/s': 'Metres a second.',
  'km/h': 'Kilometres an hour.',
};

function spellings(unit: Unit, ...written: readonly string[]): [string, Unit][] {
  return written.map((word) => [word, unit]);
}
