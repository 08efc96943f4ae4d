/** Pitches and goals by age of one youth association, as data of one season: associations change them. */
export const youthFormats = {
  association: 'The FA (England)',
  edition: 'The FA Handbook 2016-17, "Goalpost and pitch sizes", p. 556',
  flag: 'READ',
  rows: [
    { ages: ['U7', 'U8'], format: '5v5', goal: { height: 6, width: 12 }, pitch: { length: 40, width: 30 }, withRunOff: { length: 46, width: 36 } },
    { ages: ['U9', 'U10'], format: '7v7', goal: { height: 6, width: 12 }, pitch: { length: 60, width: 40 }, withRunOff: { length: 66, width: 46 } },
    { ages: ['U11', 'U12'], format: '9v9', goal: { height: 7, width: 16 }, pitch: { length: 80, width: 50 }, withRunOff: { length: 86, width: 56 } },
    { ages: ['U13', 'U14'], format: '11v11', goal: { height: 7, width: 21 }, pitch: { length: 90, width: 55 }, withRunOff: { length: 96, width: 61 } },
    { ages: ['U15', 'U16'], format: '11v11', goal: { height: 8, width: 24 }, pitch: { length: 100, width: 60 }, withRunOff: { length: 106, width: 66 } },
    { ages: ['U17', 'U18', 'adult'], format: '11v11', goal: { height: 8, width: 24 }, pitch: { length: 110, width: 70 }, withRunOff: { length: 116, width: 76 } },
  ],
} as const satisfies YouthFormats;

export interface YouthFormats {
  readonly association: string;
  readonly edition: string;
  readonly flag: 'READ';
  readonly rows: readonly YouthFormat[];
}

export interface YouthFormat {
  readonly ages: readonly string[];
  readonly format: string;
  /** Feet. */
  readonly goal: { readonly height: number; readonly width: number };
  /** Yards: the greatest recommended size. */
  readonly pitch: { readonly length: number; readonly width: number };
  /** Yards, with the free strip all round. */
  readonly withRunOff: { readonly length: number; readonly width: number };
}
