/** Where and when the rules of the zones are broken. */
import type { Actor, ActorId, Drill, Rule } from '../model/drill.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { roleOf, sideAt, type Possession } from './possession.ts';
import { isIn, staysOf, zonesNamed, type Stay, type ZoneNumbers } from './zones.ts';

export type NumbersRule = Extract<Rule, { kind: 'numbers' }>;

export interface Breach {
  readonly kind: 'closed' | 'full' | 'short';
  readonly rule: NumbersRule;
  readonly zone: string;
  readonly start: number;
  readonly count: number;
  /** Whose coming or going breaks the rule; null when too few stood there from the start. */
  readonly stay: Stay | null;
}

/** Seconds for which a rule may be broken by who only passes through. A choice without a source, as the next one. */
export const passing = 0.5;
/** Seconds after the ball is won in which those whose part it changes may still be where they were. */
const change = 3;

/** A passage of play; `won` is when the ball last changed sides: before it began, in negative seconds, or never. */
export interface Passage {
  readonly timeline: Timeline;
  readonly possession: readonly Possession[];
  readonly numbers: readonly ZoneNumbers[];
  readonly won: number;
}

/** Of one kind, the first breach of every rule in every zone it speaks of. */
export function breachesOf(kind: Breach['kind'], drill: Drill, passage: Passage): readonly Breach[] {
  const rules = drill.rules.filter((rule) => rule.kind === 'numbers').filter((rule) => canBe(kind, rule));
  return rules.flatMap((rule) =>
    zonesNamed(drill, rule.zone).flatMap((zone): Breach[] => {
      const seen = { ...passage, drill, rule, stays: staysOf(passage, zone) };
      const found = kind === 'short' ? firstUnder(seen) : firstOver(seen);
      return found ? [{ ...found, kind, rule, zone: zone.id }] : [];
    }),
  );
}

function canBe(kind: Breach['kind'], rule: NumbersRule): boolean {
  switch (kind) {
    case 'closed':
      return mostOf(rule) === 0;
    case 'full':
      return (mostOf(rule) ?? 0) > 0;
    case 'short':
      return leastOf(rule) !== null;
  }
}

/** The most that may be there; null without such a limit. */
export function mostOf({ bound, count }: NumbersRule): number | null {
  switch (bound) {
    case 'no':
      return 0;
    case 'at most':
    case 'exactly':
      return count;
    case 'at least':
      return null;
  }
}

function leastOf({ bound, count }: NumbersRule): number | null {
  return (bound === 'at least' || bound === 'exactly') && count > 0 ? count : null;
}

interface Seen extends Passage {
  readonly drill: Drill;
  readonly rule: NumbersRule;
  readonly stays: readonly Stay[];
}

type Found = Pick<Breach, 'start' | 'count' | 'stay'>;

function firstOver(seen: Seen): Found | null {
  const most = mostOf(seen.rule)!;
  return first(seen, (inside) => {
    if (inside.length <= most) return null;
    const last = inside.reduce((latest, stay) => (stay.start >= latest.start ? stay : latest));
    return { count: inside.length, stay: last };
  });
}

function firstUnder(seen: Seen): Found | null {
  const least = leastOf(seen.rule)!;
  return first(seen, (inside, time, stays) => {
    if (inside.length >= least) return null;
    const left = stays.filter((stay) => stay.leftBy !== null && stay.end <= time);
    return { count: inside.length, stay: left.length === 0 ? null : left.reduce((latest, stay) => (stay.end >= latest.end ? stay : latest)) };
  });
}

/** The first breach that lasts. Between two events nothing changes, so it is enough to look once in between. */
function first(seen: Seen, judge: (inside: readonly Stay[], time: number, stays: readonly Stay[]) => Omit<Found, 'start'> | null): Found | null {
  const { drill, rule, timeline, possession, won, stays: all } = seen;
  const actors = new Map(drill.actors.map((actor) => [actor.id, actor]));
  const spokenOf = (id: ActorId, time: number): boolean => {
    const actor = actors.get(id);
    return actor !== undefined && speaksOf(drill, rule, actor, sideAt(possession, time));
  };
  const byPart = rule.who === 'attackers' || rule.who === 'defenders';
  const turns = byPart ? [won, ...possession.slice(1).map(({ from }) => from)] : [];
  const events = [...new Set([0, ...turns.flatMap((from) => [from, from + change]), ...all.flatMap(({ start, end, leftBy }) => (leftBy === null ? [start] : [start, end]))])].filter((time) => time >= 0 && time <= timeline.end).sort((a, b) => a - b);
  const excused = (time: number): boolean => turns.some((from) => from <= time && time < from + change);
  let open: Found | null = null;
  for (const [index, time] of events.entries()) {
    const next = events[index + 1] ?? Infinity;
    const stays = all.filter((stay) => spokenOf(stay.actor, time));
    const found = excused(time) ? null : judge(stays.filter((stay) => isIn(stay, time)), time, stays);
    if (!found) open = null;
    else open ??= { ...found, start: time };
    if (open && next - open.start > passing) return open;
  }
  return null;
}

/** Whether a rule speaks of somebody while a side has the ball. Of goalkeepers only by name: 5 v 5 does not count them. */
function speaksOf(drill: Drill, { who }: NumbersRule, actor: Actor, side: string | null): boolean {
  if (actor.kind === 'keeper') return who === actor.name;
  const role = roleOf(drill, actor, side);
  if (who === 'attackers') return side !== null && (role === 'attacker' || role === 'floater');
  if (who === 'defenders') return side !== null && role === 'defender';
  if (who === 'floaters') return role === 'floater';
  return who === actor.team || who === actor.name || who === actor.station;
}
