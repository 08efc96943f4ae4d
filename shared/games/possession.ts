/** Who has the ball when, and who plays with whom. */
import type { Actor, ActorId, Drill, Id } from '../model/drill.ts';
import type { Pass, Timeline } from '../timeline/timeline.ts';

/** A stretch of time in which one side has the ball; a ball on its way belongs to who played it. Seconds. */
export interface Possession {
  readonly from: number;
  readonly to: number;
  readonly team: Id;
}

/**
 * In order of time and without gaps; empty when no team ever has a ball. Floaters and the coach keep it for the side before:
 * at first for `before`, or for the side that plays next.
 */
export function possessionOf(drill: Drill, timeline: Timeline, before: Id | null = null): readonly Possession[] {
  const teams = new Map(drill.actors.map((actor) => [actor.id, sideOf(drill, actor)]));
  const changes: { readonly time: number; readonly team: Id }[] = before === null ? [] : [{ time: 0, team: before }];
  for (const { time, holder } of holders(drill, timeline)) {
    const team = teams.get(holder) ?? null;
    if (team === null || changes.at(-1)?.team === team) continue;
    if (time === 0) changes.pop();
    changes.push({ time, team });
  }
  return changes.map(({ time, team }, index) => ({ from: index === 0 ? 0 : time, to: changes[index + 1]?.time ?? timeline.end, team }));
}

/** The side that has the ball at a time; null when none ever has. */
export function sideAt(possession: readonly Possession[], time: number): Id | null {
  return (possession.find((each) => time < each.to) ?? possession.at(-1))?.team ?? null;
}

export type Role = 'attacker' | 'floater' | 'defender' | 'other';

/** What somebody is while a side has the ball. Stations without a team and the coach play no part. */
export function roleOf(drill: Drill, actor: Actor, side: Id | null): Role {
  if (isFloater(drill, actor)) return 'floater';
  if (actor.team === null || actor.kind === 'coach' || actor.kind === 'next') return 'other';
  return actor.team === side ? 'attacker' : 'defender';
}

export function isFloater(drill: Drill, actor: Actor): boolean {
  return actor.team !== null && drill.teams.some((team) => team.kind === 'floaters' && team.id === actor.team);
}

/** Whether somebody may be an opponent of who plays a pass: then the race to the ball says whether they reach it. */
export function races(drill: Drill, pass: Pass, other: ActorId): boolean {
  if (drill.sequences.find((sequence) => sequence.id === pass.sequence)?.kind !== 'phase') return false;
  const [passer, second] = [pass.from, other].map((id) => drill.actors.find((actor) => actor.id === id));
  return !!second && second.team !== null && second.team !== passer?.team && !isFloater(drill, second);
}

function sideOf(drill: Drill, actor: Actor): Id | null {
  return actor.kind === 'coach' || isFloater(drill, actor) ? null : actor.team;
}

/** Everyone who has a ball that is played, from when; without play, who has one as it begins. */
function holders(drill: Drill, { balls, passes }: Timeline): { readonly time: number; readonly holder: ActorId }[] {
  const played = balls.filter((ball) => ball.stretches.some((stretch) => stretch.kind !== 'still'));
  if (played.length === 0) {
    const lying = balls.flatMap(({ stretches }) => (stretches[0]?.kind === 'still' ? [stretches[0]] : []));
    return (lying.length > 0 ? lying : drill.balls).flatMap(({ holder }) => (holder === null ? [] : [{ time: 0, holder }]));
  }
  const held = played.flatMap((ball) =>
    ball.stretches
      .flatMap((stretch) => {
        if (stretch.kind !== 'flight') return [{ time: stretch.start, holder: stretch.holder }];
        const { from, to } = passes[stretch.pass]!;
        return [{ time: stretch.start, holder: from }, { time: stretch.end, holder: to }];
      })
      .flatMap(({ time, holder }) => (holder === null ? [] : [{ time, holder }])),
  );
  return held.sort((a, b) => a.time - b.time);
}
