import type { Drill } from '../model/drill.ts';
import { law1 } from '../space/law1.ts';
import { youthFormats } from '../space/youthFormats.ts';
import { metresIn } from '../units.ts';
import { problem, type Check } from './check.ts';
import { lengthCures } from './cures.ts';
import { formatFor, sizeWords } from './ground.ts';

/** Share by which a pitch may be larger: metres and yards are rounded apart. */
const margin = 0.05;
/** Players of a side from which a game with two goals is like a match. */
const leastSide = 5;

export const check: Check = {
  code: 'pitch-size',
  group: 'ground',
  severity: 'info',
  title: 'A larger pitch than for this age',
  why: 'A match on a pitch made for older players is running without the ball. A game with two goals and five or more a side is compared with the largest pitch listed for the age: for young players that of the association named here, for adults that of the Laws of the Game. Smaller pitches are ordinary training and not told.',
  source: `${youthFormats.association}, ${youthFormats.edition}; ${law1.edition}`,
  bad: [
    `drill "Match" {
  age U10
  ⟦area 50 x 80⟧
  goal Low 12 ft x 6 ft at area.bottom
  goal High 12 ft x 6 ft at area.top
  team Red bib red of 7
  team Blue bib blue of 7
  place 7 Red in area
  place 7 Blue in area
}
`,
  ],
  good: [
    `drill "Match" {
  age U10
  area 40 yd x 60 yd
  goal Low 12 ft x 6 ft at area.bottom
  goal High 12 ft x 6 ft at area.top
  team Red bib red of 6
  team Blue bib blue of 6
  place 6 Red in area
  place 6 Blue in area
  keeper Rob of Red at 1 above Low
  keeper Bea of Blue at 1 below High
}
`,
  ],
  find: ({ drill }) => {
    const { area } = drill;
    const largest = area && isMatch(drill) ? largestFor(drill) : null;
    if (!area || !largest) return [];
    const [width, length] = [Math.min(area.width, area.length), Math.max(area.width, area.length)];
    if (width <= largest.width * (1 + margin) + 1e-9 && length <= largest.length * (1 + margin) + 1e-9) return [];
    const size = sizeWords(drill, largest.width, largest.length);
    const message = `The pitch is ${sizeWords(drill, area.width, area.length)}. For ${drill.ageLabel} the largest that ${largest.source} lists is ${size}${largest.printed}.`;
    return [problem(check, area.span, message, { help: 'Fine if it is meant; otherwise make the area smaller.' })];
  },
  cures: lengthCures,
};

function isMatch(drill: Drill): boolean {
  const goals = drill.furniture.filter((thing) => thing.kind === 'goal').length;
  const sides = drill.teams.filter((team) => team.kind === 'team');
  return goals === 2 && sides.length === 2 && sides.every((team) => team.size >= leastSide) && drill.stations.length === 0;
}

interface Largest {
  readonly source: string;
  /** Metres; the width is the shorter side. */
  readonly width: number;
  readonly length: number;
  /** The size as the source prints it, when the drill has other units. */
  readonly printed: string;
}

function largestFor(drill: Drill): Largest | null {
  const format = formatFor(drill);
  if (!format) return null;
  if (drill.age.value >= 19) {
    const [width, length] = [lawLine(drill, 'goal line, most'), lawLine(drill, 'touchline, most')];
    return { source: 'the Laws of the Game', width, length, printed: '' };
  }
  const { width, length } = format.pitch;
  const printed = drill.units === 'yd' ? '' : ` (${width} x ${length} yd)`;
  return { source: youthFormats.association, width: width * metresIn('yd'), length: length * metresIn('yd'), printed };
}

/** Metres by the table of the drill's own units: the Laws' metres and yards are not conversions of each other. */
function lawLine(drill: Drill, name: string): number {
  const line = law1.lines.find((each) => each.name === name)!;
  return drill.units === 'yd' || drill.units === 'ft' ? line.printed.value * metresIn(line.printed.unit) : line.metres;
}
