/** `place 3 N in ZONE`: the next three of a team that have no place yet, spread evenly. */
import type { People, Statement } from '../../grammar/tree.ts';
import { everyonePlaced } from '../checks/impossible-value.ts';
import type { Point } from '../geometry/point.ts';
import { countOf, mostPeople } from './expressions.ts';
import { teamNamed } from './people.ts';
import { boundsNamed, type Scope } from './scope.ts';
import { centreOf, type Bounds, type Named } from './things.ts';

export type Placing = Extract<People, { kind: 'place' }>;

/** How many each `place` line takes, and how many the lines before it take of the same team and in the same zone. */
export type PlacingPlan = ReadonlyMap<Placing, Share>;

interface Share {
  readonly count: number;
  readonly beforeInTeam: number;
  readonly beforeInZone: number;
  /** Of all lines. */
  readonly inZone: number;
}

export function placingPlan(statements: readonly Statement[], scope: Scope): PlacingPlan {
  const inTeam = new Map<string, number>();
  const inZone = new Map<string, number>();
  const counted = statements
    .filter((statement) => statement.kind === 'place')
    .map((placing) => {
      const count = countOf(placing.count, scope, { what: `The number of ${placing.of.text}` }) ?? 0;
      const beforeInTeam = added(inTeam, placing.of.text, count);
      return { placing, count, beforeInTeam, beforeInZone: added(inZone, placing.zone.text, count) };
    });
  return new Map(counted.map(({ placing, ...share }) => [placing, { ...share, inZone: inZone.get(placing.zone.text) ?? 0 }]));
}

/** Adds to a count and gives what it was before. */
function added(counts: Map<string, number>, name: string, more: number): number {
  const before = counts.get(name) ?? 0;
  counts.set(name, before + more);
  return before;
}

export function playersPlaced(placing: Placing, plan: PlacingPlan, statements: readonly Statement[], scope: Scope): readonly Named[] {
  const team = teamNamed(placing.of, scope);
  const bounds = boundsNamed(placing.zone, scope);
  const share = plan.get(placing);
  if (team === null || !share) return [];
  const { count, beforeInTeam, beforeInZone, inZone } = share;
  const own = statements.filter((statement) => statement.kind === 'player' && statement.of.text === team.name).length;
  const size = team.size > 0 ? team.size : mostPeople;
  const room = Math.max(0, size - own - beforeInTeam);
  if (count > room) scope.report(everyonePlaced(placing.span, team.name, size));
  if (room === 0) return [];
  const spots = bounds && spread(inZone, roomIn(placing.zone.text, bounds, scope));
  return freeNumbers(team.name, beforeInTeam, Math.min(count, room), scope).map((number, index): Named => {
    const name = `${team.name}${number}`;
    const at = spots && { ...spots[beforeInZone + index]!, span: placing.span };
    const player = at && ({ role: 'player', name, team: team.id, at, span: placing.span } as const);
    return { name, thing: player && { kind: 'player', player } };
  });
}

/** The numbers of a team that have no statement of their own, without the first few. */
function freeNumbers(team: string, before: number, count: number, scope: Scope): number[] {
  const free: number[] = [];
  for (let number = 1; free.length < before + count; number++) {
    if (!scope.declarations.byName.has(`${team}${number}`)) free.push(number);
  }
  return free.slice(before);
}

/** Of a circle, the largest square inside. */
function roomIn(name: string, bounds: Bounds, scope: Scope): Bounds {
  const thing = scope.things.get(name);
  if (thing?.kind !== 'zone' || thing.zone.shape.kind !== 'circle') return bounds;
  const { x, y } = centreOf(bounds);
  const half = thing.zone.shape.radius * Math.SQRT1_2;
  return { left: x - half, bottom: y - half, right: x + half, top: y + half };
}

/** Rows from the bottom, each evenly filled, with about as much room across as up. */
function spread(count: number, { left, bottom, right, top }: Bounds): Point[] {
  const width = right - left;
  const length = top - bottom;
  const rows = Math.min(count, Math.max(1, Math.round(Math.sqrt((count * length) / width))));
  return Array.from({ length: count }, (_, index) => {
    const row = Math.floor((index * rows) / count);
    const first = Math.ceil((row * count) / rows);
    const inRow = Math.ceil(((row + 1) * count) / rows) - first;
    return { x: left + (width * (index - first + 0.5)) / inRow, y: bottom + (length * (row + 0.5)) / rows };
  });
}
