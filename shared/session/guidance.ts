/** Published guidance by age: cautions of associations, as data of their year. Local rules and the people on the spot come first. */

export const sessionLengths = {
  source: 'US Youth Soccer, "Recommended training session to match ratio", 30 April 2004',
  flag: 'READ',
  /** `age`: up to so many years; minutes. */
  rows: [
    { age: 6, label: 'U6', least: 45, most: 45 },
    { age: 8, label: 'U8', least: 45, most: 60 },
    { age: 10, label: 'U10', least: 60, most: 75 },
    { age: 12, label: 'U12', least: 60, most: 75 },
    { age: 14, label: 'U14', least: 75, most: 90 },
    { age: 16, label: 'U16', least: 90, most: 90 },
    { age: 19, label: 'U19', least: 90, most: 90 },
  ],
} as const;

/** The row for an age: that of the next age group the source names. Null for adults. */
export function sessionLengthFor(years: number): (typeof sessionLengths.rows)[number] | null {
  return sessionLengths.rows.find(({ age }) => years <= age) ?? null;
}

export const heading = {
  source: 'Heading guidance of The FA, the Irish FA and the Scottish FA, February 2020',
  flag: 'READ',
  /** `age`: up to so many years. */
  rows: [
    { age: 11, words: 'no heading in training' },
    { age: 12, words: 'heading in one session a month, at most 5 headers' },
    { age: 13, words: 'heading in one session a week, at most 5 headers' },
    { age: 16, words: 'heading in one session a week, at most 10 headers' },
    { age: 18, words: 'as little heading in training as possible' },
  ],
} as const;

/** In words; null for adults. */
export function headingFor(years: number): string | null {
  return heading.rows.find(({ age }) => years <= age)?.words ?? null;
}
