import type { ActorId, Area, Drill, Id } from '../model/drill.ts';
import { constants } from '../physics/constants.ts';
import { chaserOf, contestEffort } from './board.ts';
import type { PhaseAnalysis } from './phases.ts';
import { roleOf, sideAt } from './possession.ts';
import { timeTo } from './race.ts';

/** Whose the ground is at a moment: of whoever can stand there first. */
export interface Control {
  /** Metres: the side of a cell, across and along, so that whole cells fill the area. */
  readonly cell: { readonly width: number; readonly length: number };
  readonly columns: number;
  readonly rows: number;
  /** Of each cell, row by row from the bottom left. */
  readonly owners: readonly ActorId[];
  /** Whom the floaters play with; null while no side has the ball: then they are by themselves. */
  readonly floatersWith: Id | null;
  /** Of each side, in the order of the text: its share of the area, 0 to 1. */
  readonly shares: readonly { readonly team: Id; readonly share: number }[];
}

/** The most cells along a side. */
const mostCells = 200;

/**
 * Nearest in time, not only in distance: everyone goes on as they were until they have reacted, then runs for the middle of
 * the cell as in the race to the ball. The ground of floaters is that of the side with the ball, whose players they are then.
 * `cell`: about how many metres a cell is to measure. Null without an area or players.
 */
export function controlAt(drill: Drill, { timeline, possession }: Pick<PhaseAnalysis, 'timeline' | 'possession'>, time: number, cell = 1): Control | null {
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
  const floatersWith = sideAt(possession, time);
  const side = (team: Id | null): Id | null => sideOf(drill, floatersWith, team);
  const sides = drill.teams.filter(({ id }) => side(id) === id);
  const shares = sides.map((team) => ({ team: team.id, share: first.filter((player) => side(player.team) === team.id).length / first.length }));
  return { ...size, columns, rows, owners: first.map((player) => player.id), floatersWith, shares };
}

/** The side that a team's players control the ground for. */
export function sideOf({ teams }: Drill, floatersWith: Id | null, team: Id | null): Id | null {
  return floatersWith !== null && teams.some(({ id, kind }) => id === team && kind === 'floaters') ? floatersWith : team;
}

function gridOf({ width, length }: Area, cell: number): Pick<Control, 'cell' | 'columns' | 'rows'> {
  const count = (side: number): number => Math.min(mostCells, Math.max(1, Math.round(side / cell)));
  const [columns, rows] = [count(width), count(length)];
  return { columns, rows, cell: { width: width / columns, length: length / rows } };
}
