/**
 * Published small-sided games and the ground each player has in them. Sources divide the pitch by different players:
 * some by the outfield players, some by the goalkeepers too. A game is compared with a row only under that row's own
 * counting. No source read says how floaters count, so games with floaters are compared with none.
 */
import type { Drill } from '../model/drill.ts';

export interface SpaceRow {
  readonly source: string;
  /** A whole match of eleven a side is kept to check the counting by; training games are not measured against it. */
  readonly kind: 'training' | 'match';
  /** Outfield players and goalkeepers of one side. */
  readonly outfield: number;
  readonly keepers: 0 | 1;
  /** Whom the source divides the pitch by. */
  readonly counts: 'outfield' | 'all';
  /** Metres; null where the source was read without the size. */
  readonly pitch: readonly [number, number] | null;
  /** Square metres a player as the source states them; null where it states only the pitch. */
  readonly stated: number | null;
}

const owen = 'Owen, Twist and Ford 2004, Insight 7(2)';
const possession = 'J Hum Kinet 2021 (hukin-2021-0109)';
const keepersLeftOut = 'J Hum Kinet 2021, 78:187-196';
const keepersCounted = 'IJERPH 2021, 18(18):9833';
const casamichana = 'Casamichana and Castellano 2010, J Sports Sci 28(14):1615-1623';

export const spaceRows: readonly SpaceRow[] = [
  ...pitches(owen, 1, [5, 10], [10, 15], [15, 20]),
  ...pitches(owen, 2, [10, 15], [15, 20], [20, 25]),
  ...pitches(owen, 3, [15, 20], [20, 25], [25, 30]),
  ...pitches(owen, 4, [20, 25], [25, 30], [30, 35]),
  ...pitches(owen, 5, [25, 30], [30, 35], [35, 40]),
  ...pitches(possession, 4, [20, 15], [25, 20], [30, 25]),
  { source: keepersLeftOut, kind: 'training', outfield: 5, keepers: 1, counts: 'outfield', pitch: [38, 26], stated: 100 },
  { source: keepersLeftOut, kind: 'training', outfield: 5, keepers: 1, counts: 'outfield', pitch: [53, 37], stated: 200 },
  { source: casamichana, kind: 'training', outfield: 5, keepers: 1, counts: 'outfield', pitch: null, stated: 75 },
  { source: casamichana, kind: 'training', outfield: 5, keepers: 1, counts: 'outfield', pitch: null, stated: 175 },
  { source: casamichana, kind: 'training', outfield: 5, keepers: 1, counts: 'outfield', pitch: null, stated: 275 },
  { source: keepersCounted, kind: 'training', outfield: 5, keepers: 1, counts: 'all', pitch: [30, 30], stated: 75 },
  { source: keepersCounted, kind: 'training', outfield: 5, keepers: 1, counts: 'all', pitch: [35, 45], stated: 131 },
  { source: keepersCounted, kind: 'training', outfield: 7, keepers: 1, counts: 'all', pitch: [35, 45], stated: 98 },
  { source: 'Int J Sports Sci Coach 2025 (17479541251343589)', kind: 'match', outfield: 10, keepers: 1, counts: 'all', pitch: [105, 68], stated: 325 },
];

/** Two sides with the same numbers on one open area. */
export interface Game {
  /** Outfield players and goalkeepers of one side. */
  readonly outfield: number;
  readonly keepers: number;
  readonly m2: number;
}

/** Null where no published figure fits: patterns, uneven sides, floaters, or players bound to zones, whose space is the zone. */
export function gameOf({ area, teams, stations, rules, actors }: Drill): Game | null {
  const [ours, theirs] = teams;
  if (!area || !ours || !theirs || teams.length > 2 || teams.some((team) => team.kind === 'floaters')) return null;
  if (stations.length > 0 || rules.some((rule) => rule.kind === 'numbers')) return null;
  const [keepers, others] = [ours, theirs].map((team) => actors.filter((actor) => actor.kind === 'keeper' && actor.team === team.id).length);
  const outfield = ours.size - keepers!;
  if (keepers !== others || ours.size !== theirs.size || outfield < 1) return null;
  return { outfield, keepers: keepers!, m2: area.width * area.length };
}

/** Square metres a player on a ground under the counting of a row. */
export function spaceUnder(row: SpaceRow, m2: number): number {
  return m2 / (2 * (row.outfield + (row.counts === 'all' ? row.keepers : 0)));
}

/** Square metres a player of the row itself: as stated, or its own pitch under its own counting. */
export function spaceOf(row: SpaceRow): number {
  return row.stated ?? spaceUnder(row, row.pitch ? row.pitch[0] * row.pitch[1] : 0);
}

/** Games without goalkeepers, of which only the pitches are stated. */
function pitches(source: string, outfield: number, ...sizes: readonly (readonly [number, number])[]): SpaceRow[] {
  return sizes.map((pitch) => ({ source, kind: 'training', outfield, keepers: 0, counts: 'outfield', pitch, stated: null }));
}
