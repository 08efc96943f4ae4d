import type { DrillAnalysis } from '../analyse.ts';
import { headcount } from '../measure/measures.ts';
import type { Drill, Station } from '../model/drill.ts';

/** How many players one group of a drill takes, and how many of them keep goal. */
export interface Need {
  readonly least: number;
  readonly most: number;
  readonly usual: number;
  readonly keepers: number;
}

/** A queue works while one plays and one waits; one more than written may join it, more would only wait. CHOSEN: no source says. */
const working = 2;
const joining = 1;

/** Teams must be full; queues may be shorter and a little longer than written. A drill that places nobody takes everyone. */
export function needOf({ drill, measures }: DrillAnalysis): Need {
  const placed = headcount(drill);
  const usual = placed > 0 ? placed : measures.players;
  if (usual === 0) return { least: 0, most: Infinity, usual, keepers: 0 };
  const keepers = drill.actors.filter(({ kind }) => kind === 'keeper').length;
  return { least: usual - spareIn(drill), most: usual + joining * queuesOf(drill).length, usual, keepers };
}

/** How few can play a drill that says who stands where. */
export function leastOf(drill: Drill): number {
  return headcount(drill) - spareIn(drill);
}

function spareIn(drill: Drill): number {
  return queuesOf(drill).reduce((sum, { holds }) => sum + holds - working, 0);
}

function queuesOf({ stations }: Drill): readonly Station[] {
  return stations.filter((station) => station.team === null && station.holds >= working);
}
