import { contains } from '../geometry/polygon.ts';
import { distance, type Point } from '../geometry/point.ts';
import type { Actor, Drill, TouchRule, Zone } from '../model/drill.ts';

/** The most touches the drill's own rules allow this person at a place; null without such a rule. */
export function touchLimit(drill: Drill, actor: Actor, at: Point): number | null {
  return touchRuleFor(drill, actor, at)?.most ?? null;
}

/** The strictest of the rules that hold for this person at a place; of equals the first. */
export function touchRuleFor(drill: Drill, actor: Actor, at: Point): TouchRule | null {
  const rules = drill.touchRules.filter((rule) => appliesTo(drill, rule, actor) && inZone(drill, rule, at));
  return rules.reduce<TouchRule | null>((strictest, rule) => (strictest && strictest.most <= rule.most ? strictest : rule), null);
}

/** Whether a rule speaks of this person when they touch the ball: who does is an attacker. */
export function appliesTo(drill: Drill, rule: TouchRule, actor: Actor): boolean {
  if (rule.who === null || rule.who === 'attackers') return actor.kind !== 'coach';
  if (rule.who === 'floaters') return drill.teams.some((team) => team.kind === 'floaters' && team.id === actor.team);
  return rule.who === actor.team || rule.who === actor.name || rule.who === actor.station;
}

export function inZone(drill: Drill, rule: TouchRule, at: Point): boolean {
  if (rule.zone === null || rule.zone === 'area') return true;
  return drill.zones.some((zone) => (zone.id === rule.zone || zone.group === rule.zone) && inside(zone, at));
}

function inside(zone: Zone, at: Point): boolean {
  return zone.shape.kind === 'circle'
    ? distance(zone.shape.centre, at) <= zone.shape.radius
    : contains(zone.shape.points, at, 0.01);
}
