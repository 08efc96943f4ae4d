/** `place 3 N in ZONE`: the next three of a team that have no place yet, spread out in the zone. */
import type { People, Statement } from '../../grammar/tree.ts';
import { everyonePlaced } from '../checks/impossible-value.ts';
import type { Point } from '../geometry/point.ts';
import type { Zone } from './drill.ts';
import { countOf, mostPeople } from './expressions.ts';
import { teamNamed } from './people.ts';
import { boundsNamed, type Scope } from './scope.ts';
import { spread } from './spread.ts';
import type { Bounds, Named } from './things.ts';

export type Placing = Extract<People, { kind: 'place' }>;

/** How many each `place` line takes, and how many of the same team the lines before it take. */
export type PlacingPlan = ReadonlyMap<Placing, { readonly count: number; readonly before: number }>;

export function placingPlan(statements: readonly Statement[], scope: Scope): PlacingPlan {
  const inTeam = new Map<string, number>();
  return new Map(
    statements
      .filter((statement) => statement.kind === 'place')
      .map((placing) => {
        const count = countOf(placing.count, scope, { what: `The number of ${placing.of.text}` }) ?? 0;
        const before = inTeam.get(placing.of.text) ?? 0;
        inTeam.set(placing.of.text, before + count);
        return [placing, { count, before }];
      }),
  );
}

export function playersPlaced(placing: Placing, plan: PlacingPlan, statements: readonly Statement[], scope: Scope): readonly Named[] {
  const team = teamNamed(placing.of, scope);
  const bounds = boundsNamed(placing.zone, scope);
  const share = plan.get(placing);
  if (team === null || !share) return [];
  const { count, before } = share;
  const own = statements.filter((statement) => statement.kind === 'player' && statement.of.text === team.name).length;
  const size = team.size > 0 ? team.size : mostPeople;
  const room = Math.max(0, size - own - before);
  if (count > room) scope.report(everyonePlaced(placing.span, team.name, size));
  if (room === 0) return [];
  const placed = Math.min(count, room);
  const spots = bounds && spread(placed, shapeOf(placing.zone.text, bounds, scope), peopleIn(scope));
  return freeNumbers(team.name, before, placed, scope).map((number, index): Named => {
    const name = `${team.name}${number}`;
    const at = spots && { ...spots[index]!, span: placing.span };
    const player = at && ({ role: 'player', name, team: team.id, at, span: placing.span } as const);
    return { name, thing: player && { kind: 'player', player } };
  });
}

function shapeOf(name: string, { left, bottom, right, top }: Bounds, scope: Scope): Zone['shape'] {
  const thing = scope.things.get(name);
  if (thing?.kind === 'zone') return thing.zone.shape;
  return { kind: 'polygon', points: [{ x: left, y: bottom }, { x: right, y: bottom }, { x: right, y: top }, { x: left, y: top }] };
}

/** Everyone who has a place so far: those placed by hand, and by the lines before. */
function peopleIn({ things }: Scope): readonly Point[] {
  return [...things.values()].flatMap((thing) => (thing?.kind === 'player' ? [thing.player.at] : thing?.kind === 'station' ? [thing.station.at] : []));
}

/** The numbers of a team that have no statement of their own, without the first few. */
function freeNumbers(team: string, before: number, count: number, scope: Scope): number[] {
  const free: number[] = [];
  for (let number = 1; free.length < before + count; number++) {
    if (!scope.declarations.byName.has(`${team}${number}`)) free.push(number);
  }
  return free.slice(before);
}
