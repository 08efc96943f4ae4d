import type { ActorId, Area, Drill, Id } from '../model/drill.ts';
import { constants } from '../physics/constants.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { chaserOf, contestEffort } from './board.ts';
import { roleOf } from './possession.ts';
import { timeTo } from './race.ts';

/** Whose the ground is at a moment: of whoever can stand there first. */
export interface Control {
  /** Metres: the side of a cell, across and along, so that whole cells fill the area. */
  readonly cell: { readonly width: number; readonly length: number };
  readonly columns: number;
  readonly rows: number;
  /** Of each cell, row by row from the bottom left. */
  readonly owners: readonly ActorId[];
  /** Of each team and of the floaters, in the order of the text: their share of the area, 0 to 1. */
  readonly shares: readonly { readonly team: Id; readonly share: number }[];
}

/** The most cells along a side. */
const mostCells = 200;

/**
 * Nearest in time, not only in distance: everyone goes on as they were until they have reacted, then runs for the middle of
 * the cell as in the race to the ball. `cell`: about how many metres a cell is to measure. Null without an area or players.
 */
export function controlAt(drill: Drill, timeline: Timeline, time: number, cell = 1): Control | null {
  const actors = drill.actors.filter((actor) => roleOf(drill, actor, null) !== 'other');
  const tracks = new Map(timeline.tracks.map((track) => [track.actor, track]));
  const players = actors.flatMap((actor) => {
    const track = tracks.get(actor.id);
    return track ? [{ id: actor.id, team: actor.team, chaser: chaserOf(track, time, constants.reaction.value) }] : [];
  });
  if (!drill.area || players.length === 0) return null;
  const { columns, rows, ...size } = gridOf(drill.area, cell);
  const effort = contestEffort(drill);
  const first = Array.from({ length: columns * rows }, (_, index) => {
    const middle = { x: ((index % columns) + 0.5) * size.cell.width, y: (Math.floor(index / columns) + 0.5) * size.cell.length };
    let [best, least] = [players[0]!, Infinity];
    for (const player of players) {
      const there = timeTo(player.chaser, effort, middle);
      if (there < least) [best, least] = [player, there];
    }
    return best;
  });
  const shares = drill.teams.map((team) => ({ team: team.id, share: first.filter((player) => player.team === team.id).length / first.length }));
  return { ...size, columns, rows, owners: first.map((player) => player.id), shares };
}

function gridOf({ width, length }: Area, cell: number): Pick<Control, 'cell' | 'columns' | 'rows'> {
  const count = (side: number): number => Math.min(mostCells, Math.max(1, Math.round(side / cell)));
  const [columns, rows] = [count(width), count(length)];
  return { columns, rows, cell: { width: width / columns, length: length / rows } };
}
