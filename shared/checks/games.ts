/** What the checks of games share: the moments they look at, and the rules of the zones in words. */
import type { Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import { breachesOf, type Breach } from '../games/breaches.ts';
import { possessionOf, type Possession } from '../games/possession.ts';
import { isIn, numbersOf, staysOf, zonesNamed, type ZoneNumbers } from '../games/zones.ts';
import type { ActorId, Drill, Sequence } from '../model/drill.ts';
import type { Problem } from '../problem.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { problem, type Check } from './check.ts';
import { seconds, Who } from './say.ts';

export interface Passage {
  /** Null for how the game is set out, when it has no phases. */
  readonly phase: Sequence | null;
  readonly timeline: Timeline;
  readonly possession: readonly Possession[];
  readonly numbers: readonly ZoneNumbers[];
}

/** The phases; without any, how everyone stands when the game begins. */
export function passagesOf({ drill, timeline, phases }: DrillAnalysis): readonly Passage[] {
  if (phases.length > 0) return phases;
  if (drill.teams.length === 0 || timeline.end > 0) return [];
  return [{ phase: null, timeline, possession: possessionOf(drill, timeline), numbers: numbersOf(drill, timeline) }];
}

/** The breaches of one kind as problems, each place told once; the message ends without its full stop. */
export function breached(check: Check, kind: Breach['kind'], analysis: DrillAnalysis, words: (breach: Breach) => { readonly message: string; readonly help: string }): Problem[] {
  const { drill } = analysis;
  const told = new Set<number>();
  const passages = passagesOf(analysis);
  const breachesIn = (passage: Passage) => breachesOf(kind, drill, { ...passage, won: wonBefore(passages, passage) });
  return passages.flatMap((passage) =>
    breachesIn(passage).flatMap((breach) => {
      const span = placeOf(drill, passages, passage, breach);
      const before = beforeOf(passages, passage);
      const again = before && breach.start === 0 && span === breach.rule.span && breachesIn(before).some(({ rule, zone }) => rule === breach.rule && zone === breach.zone);
      if (told.has(span.from) || again) return [];
      told.add(span.from);
      const { message, help } = words(breach);
      const related = span === breach.rule.span ? [] : [{ span: breach.rule.span, message: 'This is the rule.' }];
      return problem(check, span, `${message}${uncounted(drill, passage, breach)}${whenOf(passage, breach)}.`, { help, related });
    }),
  );
}

function whenOf({ phase }: Passage, { start }: Breach): string {
  if (phase === null || (start === 0 && phase.after === null)) return '';
  const name = phase.name === null ? 'the phase' : `“${phase.name}”`;
  return start === 0 ? `, at the start of ${name}` : `, ${seconds(start)} into ${name}`;
}

/** Goalkeepers are left out of the numbers: said where one stands among them. */
function uncounted(drill: Drill, passage: Passage, { kind, zone, start }: Breach): string {
  if (kind === 'closed') return '';
  const stays = zonesNamed(drill, zone).flatMap((each) => staysOf(passage, each));
  return stays.some((stay) => isIn(stay, start) && isKeeper(drill, stay.actor)) ? ' (goalkeepers are not counted)' : '';
}

export function isKeeper({ actors }: Drill, id: ActorId): boolean {
  return actors.some((actor) => actor.id === id && actor.kind === 'keeper');
}

/** The passage from whose end this one starts. */
function beforeOf(passages: readonly Passage[], { phase }: Passage): Passage | undefined {
  return phase?.after ? passages.find((each) => each.phase?.id === phase.after) : undefined;
}

/** When the ball last changed sides in the passages before, counted from the start of this one. */
function wonBefore(passages: readonly Passage[], passage: Passage): number {
  const before = beforeOf(passages, passage);
  if (!before) return -Infinity;
  const last = before.possession.slice(1).at(-1)?.from;
  return (last ?? wonBefore(passages, before)) - before.timeline.end;
}

/**
 * The movement that breaks the rule, in this passage or in one before it; where the ball was won, when that has changed who
 * is spoken of; who stands there from the start; the rule itself where somebody is missing.
 */
function placeOf(drill: Drill, passages: readonly Passage[], passage: Passage, breach: Breach): Span {
  const { kind, stay, rule } = breach;
  const move = kind === 'short' ? stay?.leftBy : stay?.cameBy;
  if (move) return move.action.targetSpan ?? move.action.span;
  const byPart = rule.who === 'attackers' || rule.who === 'defenders';
  for (let each: Passage | undefined = passage; each; each = beforeOf(passages, each)) {
    const last = each === passage ? undefined : each.timeline.tracks.find(({ actor }) => actor === stay?.actor)?.moves.at(-1);
    if (last) return last.action.targetSpan ?? last.action.span;
    const won = byPart && (each !== passage || breach.start > 0) ? winOf(each) : null;
    if (won) return won;
  }
  const standing = kind === 'short' ? undefined : drill.actors.find((actor) => actor.id === stay?.actor);
  return standing?.span ?? rule.span;
}

/** The line that last brought the ball to the other side. */
function winOf({ timeline, possession }: Passage): Span | null {
  const from = possession.slice(1).at(-1)?.from;
  if (from === undefined) return null;
  const tackle = timeline.tracks.flatMap(({ moves }) => moves).find(({ action, end }) => action.verb === 'wins the ball from' && Math.abs(end - from) < 1e-6);
  const pass = timeline.passes.find(({ received, arrival }) => received === from || arrival === from);
  return tackle?.action.span ?? pass?.action.span ?? null;
}

/** `defenders`, `Blues`, as the rule has it. */
export function whoOf({ rule }: Breach): string {
  return rule.who === 'attackers' || rule.who === 'defenders' || rule.who === 'floaters' ? rule.who : `\`${rule.who}\``;
}

/** Who breaks it, at the start of a sentence. */
export function culprit({ stay }: Breach): string {
  return stay ? Who(stay.actor) : 'Somebody';
}
