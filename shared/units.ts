/** Units by word. Inside, everything is metres, seconds and metres a second. */
import type { LengthUnit, SpeedUnit, TimeUnit } from '../grammar/tree.ts';

/** `factor`: how many metres, seconds or metres a second one of it is. */
export type UnitMeaning =
  | { readonly kind: 'length'; readonly unit: LengthUnit; readonly factor: number }
  | { readonly kind: 'time'; readonly unit: TimeUnit; readonly factor: number }
  | { readonly kind: 'speed'; readonly unit: SpeedUnit; readonly factor: number };

/** What a word means as a unit (`yards` is `yd`), or null. */
export function unitNamed(word: string): UnitMeaning | null {
  return units.find((unit) => unit.words.includes(word))?.meaning ?? null;
}

/** Every word for the units of a kind, for suggestions. */
export function unitWords(kind: UnitMeaning['kind']): string[] {
  return units.flatMap(({ meaning, words }) => (meaning.kind === kind ? words : []));
}

export function metresIn(unit: LengthUnit): number {
  return lengths[unit];
}

/** `8 yd`, `7.5 m`: rounded to `decimals`, without trailing zeros. */
export function formatLength(metres: number, unit: LengthUnit, decimals: number): string {
  return `${formatNumber(metres / metresIn(unit), decimals)} ${unit}`;
}

/** Rounded to `decimals`, without trailing zeros and without a minus before zero. */
export function formatNumber(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals)) + 0);
}

/** The international yard and pound agreement of 1959: a yard is exactly 0.9144 m, a foot a third of it. */
const lengths: Readonly<Record<LengthUnit, number>> = { m: 1, cm: 0.01, yd: 0.9144, ft: 0.3048 };

const units: readonly { readonly meaning: UnitMeaning; readonly words: readonly string[] }[] = [
  { meaning: { kind: 'length', unit: 'm', factor: lengths.m }, words: ['m', 'metre', 'metres', 'meter', 'meters'] },
  { meaning: { kind: 'length', unit: 'cm', factor: lengths.cm }, words: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'] },
  { meaning: { kind: 'length', unit: 'yd', factor: lengths.yd }, words: ['yd', 'yds', 'yard', 'yards'] },
  { meaning: { kind: 'length', unit: 'ft', factor: lengths.ft }, words: ['ft', 'foot', 'feet'] },
  { meaning: { kind: 'time', unit: 's', factor: 1 }, words: ['s', 'sec', 'secs', 'second', 'seconds'] },
  { meaning: { kind: 'time', unit: 'min', factor: 60 }, words: ['min', 'mins', 'minute', 'minutes'] },
  { meaning: { kind: 'speed', unit: 'm/s', factor: 1 }, words: ['m/s'] },
  { meaning: { kind: 'speed', unit: 'km/h', factor: 1 / 3.6 }, words: ['km/h', 'kmh', 'kph'] },
];
