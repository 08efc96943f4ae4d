import { gameOf, spaceOf, spaceRows, spaceUnder, type Game, type SpaceRow } from '../space/spacePerPlayer.ts';
import { formatNumber } from '../units.ts';
import { problem, type Check } from './check.ts';
import { lengthCures } from './cures.ts';
import { check as pitchSize } from './pitch-size.ts';

/** Share by which a game may leave what is published before it is worth a word. */
const margin = 0.25;

export const check: Check = {
  code: 'space-per-player',
  group: 'ground',
  severity: 'info',
  title: 'More or less room than in published games',
  why: 'The room a player has decides how hard a game is and how long they have on the ball. The area is divided by the players as the source does it, with or without goalkeepers, and compared with games of the same numbers; a quarter beyond the smallest or largest of them is told. Games with floaters, uneven sides or players bound to zones are not compared: no figures are published for them.',
  source: 'Owen, Twist and Ford 2004; Casamichana and Castellano 2010; J Hum Kinet 2021; IJERPH 2021: the pitches and areas stated there',
  bad: [
    `drill "Three each" {
  ⟦area 40 x 30⟧
  team Red bib red of 3
  team Blue bib blue of 3
  place 3 Red in area
  place 3 Blue in area
}
`,
  ],
  good: [
    `drill "Three each" {
  area 25 x 30
  team Red bib red of 3
  team Blue bib blue of 3
  place 3 Red in area
  place 3 Blue in area
}
`,
  ],
  find: (analysis) => {
    const game = gameOf(analysis.drill);
    const area = analysis.drill.area;
    if (!game || !area || pitchSize.find!(analysis).length > 0) return [];
    const beyond = outOfRange(game);
    if (!beyond) return [];
    const { row, tight } = beyond;
    const sides = `${game.outfield} v ${game.outfield}${row.keepers > 0 ? ' with goalkeepers' : ''}`;
    const counting = row.keepers === 0 ? '' : row.counts === 'all' ? ', goalkeepers counted' : ', goalkeepers not counted';
    const message = `${square(spaceUnder(row, game.m2))} a player${counting}: published games of ${sides} have ${tight ? 'at least' : 'at most'} ${square(spaceOf(row))} (${row.source}).`;
    return [problem(check, area.span, message, { help: `Fine if it is meant; otherwise make the area ${tight ? 'larger' : 'smaller'}.` })];
  },
  cures: lengthCures,
};

/** The nearest published row, when the game is too far from all of its numbers on the same side. */
function outOfRange(game: Game): { readonly row: SpaceRow; readonly tight: boolean } | null {
  const shares = spaceRows
    .filter((row) => row.kind === 'training' && row.outfield === game.outfield && row.keepers === game.keepers)
    .map((row) => ({ row, share: spaceUnder(row, game.m2) / spaceOf(row) }))
    .sort((a, b) => a.share - b.share);
  const [roomiest, tightest] = [shares[0], shares.at(-1)];
  if (!roomiest || !tightest) return null;
  if (tightest.share < 1 - margin) return { row: tightest.row, tight: true };
  return roomiest.share > 1 + margin ? { row: roomiest.row, tight: false } : null;
}

/** Square metres are what every source states, whatever the units of the drill. */
function square(m2: number): string {
  return `${formatNumber(m2, 0)} m²`;
}
