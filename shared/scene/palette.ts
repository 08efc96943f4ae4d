/** The inks of the drawing. Every one that carries meaning is told from its ground, and from its like, by contrast as well as hue. */

export const themes = ['light', 'dark', 'print'] as const;
export type Theme = (typeof themes)[number];

const light = {
  paper: '#fbfaf5',
  ink: '#1d2a33',
  /** Captions and dimensions. */
  note: '#52606a',
  /** Decoration: nothing depends on seeing them. */
  gridMinor: '#eeeadd',
  gridMajor: '#ddd7c4',
  tint: '#eef1ea',
  ball: '#0a4f8c',
  run: '#a14400',
  later: '#65727b',
  marker: '#7c5200',
  late: '#b0005c',
  wait: '#7f898f',
  /** Where the ball could go. */
  lane: '#3d6b58',
  zone0: '#3f7390',
  zone1: '#7a6316',
  zone2: '#446e3e',
  zone3: '#84588c',
  team0: '#0a4f8c',
  team1: '#c05200',
  team2: '#6b6100',
  team3: '#6a3d74',
} as const;

export type Ink = keyof typeof light;
/** An ink, or a colour of its own (a bib). */
export type Paint = Ink | `#${string}`;
export type Palette = Readonly<Record<Ink, string>>;

export const palettes: Readonly<Record<Theme, Palette>> = {
  light,
  dark: {
    paper: '#12191e',
    ink: '#ece7d9',
    note: '#a3b0b8',
    gridMinor: '#1b252b',
    gridMajor: '#2a3740',
    tint: '#172127',
    ball: '#78bdf5',
    run: '#f2a65e',
    later: '#93a1aa',
    marker: '#d9b25f',
    late: '#ff86b4',
    wait: '#73818a',
    lane: '#8fc9ac',
    zone0: '#6fa8c7',
    zone1: '#c0a552',
    zone2: '#83b27a',
    zone3: '#bd92c6',
    team0: '#78bdf5',
    team1: '#f2a65e',
    team2: '#d8cf78',
    team3: '#cfa3d8',
  },
  print: {
    paper: '#ffffff',
    ink: '#000000',
    note: '#3d3d3d',
    gridMinor: '#ececec',
    gridMajor: '#d4d4d4',
    tint: '#f4f4f4',
    ball: '#000000',
    run: '#000000',
    later: '#5c5c5c',
    marker: '#2b2b2b',
    late: '#000000',
    wait: '#7d7d7d',
    lane: '#4a4a4a',
    zone0: '#555555',
    zone1: '#555555',
    zone2: '#555555',
    zone3: '#555555',
    team0: '#000000',
    team1: '#000000',
    team2: '#000000',
    team3: '#000000',
  },
};

/** Bibs by the word a coach writes; #rrggbb is taken as it is, anything else has no colour of its own. */
export function bibColour(word: string): `#${string}` | null {
  const hex = /^#[0-9a-f]{6}$/i.exec(word);
  return hex ? (word.toLowerCase() as `#${string}`) : (bibs[word.toLowerCase()] ?? null);
}

const bibs: Readonly<Record<string, `#${string}`>> = {
  red: '#c8202f', blue: '#1f5fae', green: '#1d7a46', yellow: '#f2d21b', orange: '#ee7d11', white: '#ffffff', black: '#161616',
  purple: '#6c3f99', violet: '#6c3f99', pink: '#ef86b4', grey: '#8b8f94', gray: '#8b8f94', brown: '#7a4a24', turquoise: '#1aa39b', navy: '#1c2f5e',
};

/** Black or white, whichever reads better on the colour: never below 4.5:1 (WCAG 2.2, 1.4.3). */
export function textOn(colour: string): '#000000' | '#ffffff' {
  const channel = (from: number) => {
    const share = Number.parseInt(colour.slice(from, from + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  const luminance = 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
  return (luminance + 0.05) / 0.05 > 1.05 / (luminance + 0.05) ? '#000000' : '#ffffff';
}
