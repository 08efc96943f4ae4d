import { analyse } from '../../shared/analyse.ts';
import type { PartSlot, SessionAnalysis } from '../../shared/session/analysis.ts';
import { folder } from '../support/folder.ts';

/** Three on 12 x 12 m: six discs mark the corners and the stations. Takes three or four. */
export const wall = `drill "Wall" {
  players 3
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}
`;

/** Two against two with a goalkeeper each on 20 x 20 m. Takes six, not one more or fewer. */
export const game = `drill "Game" {
  area 20 x 20
  goal South 3 x 2 at area.bottom facing up
  goal North 3 x 2 at area.top facing down
  team Reds bib red of 3
  team Blues bib blue of 3
  keeper Rob of Reds at 1 above South
  keeper Bea of Blues at 1 below North
  player Reds1 of Reds at (6, 6)
  player Reds2 of Reds at (14, 6)
  player Blues1 of Blues at (6, 14)
  player Blues2 of Blues at (14, 14)
}
`;

export function analysed(lines: string, drills = wall + game, others: Readonly<Record<string, string>> = {}) {
  return analyse(`${drills}session "Tuesday" {\n${lines}\n}\n`, folder(others));
}

/** The session with these lines. */
export function evening(lines: string, drills?: string, others?: Readonly<Record<string, string>>): SessionAnalysis {
  return analysed(lines, drills, others).sessions[0]!;
}

export function parts({ timetable }: SessionAnalysis): readonly PartSlot[] {
  return timetable.filter((slot) => slot.kind === 'part');
}
