/** Lengths as the drill writes them. */
import type { Drill } from '../model/drill.ts';

export interface Measure {
  /** What is written behind a length. */
  readonly name: string;
  readonly metres: number;
  /** Metres between the lines of the grid; every fifth is heavier. */
  readonly grid: number;
}

/** Centimetres are drawn as metres: nobody lays out grass in centimetres. */
export function measureOf(drill: Pick<Drill, 'units'>): Measure {
  switch (drill.units) {
    case 'm':
    case 'cm':
      return { name: 'm', metres: 1, grid: 1 };
    case 'yd':
      return { name: 'yd', metres: 0.9144, grid: 0.9144 };
    case 'ft':
      return { name: 'ft', metres: 0.3048, grid: 0.9144 };
  }
}

/** At most two digits behind the point, none that says nothing. */
export function lengthWords(metres: number, measure: Measure): string {
  return figure(metres / measure.metres);
}

export function figure(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return Number.isFinite(rounded) ? `${rounded === 0 ? 0 : rounded}`.replace('-', '−') : '0';
}
