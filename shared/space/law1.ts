/**
 * The Laws of the Game on the field and the goals, as data of one season.
 *
 * The Laws print metres and yards side by side: two roundings, not conversions. Each system keeps its own table here,
 * and a converted Law value is not the Law.
 */
export const law1 = {
  edition: 'Laws of the Game 2024/25, The IFAB, Law 1 and Law 2',
  flag: 'READ',
  lines: [
    { name: 'touchline, least', clause: 'Law 1 §3', metres: 90, printed: { value: 100, unit: 'yd' } },
    { name: 'touchline, most', clause: 'Law 1 §3', metres: 120, printed: { value: 130, unit: 'yd' } },
    { name: 'goal line, least', clause: 'Law 1 §3', metres: 45, printed: { value: 50, unit: 'yd' } },
    { name: 'goal line, most', clause: 'Law 1 §3', metres: 90, printed: { value: 100, unit: 'yd' } },
    { name: 'international touchline, least', clause: 'Law 1 §4', metres: 100, printed: { value: 110, unit: 'yd' } },
    { name: 'international touchline, most', clause: 'Law 1 §4', metres: 110, printed: { value: 120, unit: 'yd' } },
    { name: 'international goal line, least', clause: 'Law 1 §4', metres: 64, printed: { value: 70, unit: 'yd' } },
    { name: 'international goal line, most', clause: 'Law 1 §4', metres: 75, printed: { value: 80, unit: 'yd' } },
    { name: 'centre circle, radius', clause: 'Law 1 §2', metres: 9.15, printed: { value: 10, unit: 'yd' } },
    { name: 'goal area, from each post and deep', clause: 'Law 1 §5', metres: 5.5, printed: { value: 6, unit: 'yd' } },
    { name: 'penalty area, from each post and deep', clause: 'Law 1 §6', metres: 16.5, printed: { value: 18, unit: 'yd' } },
    { name: 'penalty mark, from the goal line', clause: 'Law 1 §6', metres: 11, printed: { value: 12, unit: 'yd' } },
    { name: 'penalty arc, radius', clause: 'Law 1 §6', metres: 9.15, printed: { value: 10, unit: 'yd' } },
    { name: 'corner arc, radius', clause: 'Law 1 §7', metres: 1, printed: { value: 1, unit: 'yd' } },
    { name: 'flagpost, least height', clause: 'Law 1 §8', metres: 1.5, printed: { value: 5, unit: 'ft' } },
    { name: 'goal, between the posts', clause: 'Law 1 §10', metres: 7.32, printed: { value: 8, unit: 'yd' } },
    { name: 'goal, below the crossbar', clause: 'Law 1 §10', metres: 2.44, printed: { value: 8, unit: 'ft' } },
  ],
} as const satisfies LawTable;

export interface LawTable {
  readonly edition: string;
  readonly flag: 'READ';
  readonly lines: readonly LawLine[];
}

export interface LawLine {
  readonly name: string;
  readonly clause: string;
  /** As the Law prints it in metres. */
  readonly metres: number;
  /** As the Law prints it in yards or feet. */
  readonly printed: { readonly value: number; readonly unit: 'yd' | 'ft' };
}
