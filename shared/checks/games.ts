/** What the checks of games share: the moments they look at, and the rules of the zones in words. */
import type { Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import { breachesOf, type Breach } from '../games/breaches.ts';
import { possessionOf, type Possession } from '../games/possession.ts';
import type { Sequence } from '../model/drill.ts';
import type { Problem } from '../problem.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { problem, type Check } from './check.ts';
import { seconds, Who } from './say.ts';

export interface Passage {
  /** Null for how the game is set out, when it has no phases. */
  readonly phase: Sequence | null;
  readonly timeline: Timeline;
  readonly possession: readonly Possession[];
}

/** The phases; without any, how everyone stands when the game begins. */
export function passagesOf({ drill, timeline, phases }: DrillAnalysis): readonly Passage[] {
  if (phases.length > 0) return phases;
  if (drill.teams.length === 0 || timeline.end > 0) return [];
  return [{ phase: null, timeline, possession: possessionOf(drill, timeline) }];
}

/** The breaches of one kind as problems, each place told once; the message ends without its full stop. */
export function breached(check: Check, kind: Breach['kind'], analysis: DrillAnalysis, words: (breach: Breach) => { readonly message: string; readonly help: string }): Problem[] {
  const { drill } = analysis;
  const told = new Set<number>();
  return passagesOf(analysis).flatMap(({ phase, timeline, possession }) =>
    breachesOf(kind, drill, timeline, possession).flatMap((breach) => {
      const span = placeOf(analysis, breach);
      if (told.has(span.from)) return [];
      told.add(span.from);
      const { message, help } = words(breach);
      const when = phase === null || breach.start === 0 ? '' : `, ${seconds(breach.start)} into ${phase.name === null ? 'the phase' : `“${phase.name}”`}`;
      const related = span === breach.rule.span ? [] : [{ span: breach.rule.span, message: 'This is the rule.' }];
      return problem(check, span, `${message}${when}.`, { help, related });
    }),
  );
}

/** The movement that breaks the rule; who stands there from the start; the rule itself where somebody is missing. */
function placeOf({ drill }: DrillAnalysis, { kind, stay, rule }: Breach): Span {
  const move = kind === 'short' ? stay?.leftBy : stay?.cameBy;
  if (move) return move.action.targetSpan ?? move.action.span;
  const standing = kind === 'short' ? undefined : drill.actors.find((actor) => actor.id === stay?.actor);
  return standing?.span ?? rule.span;
}

/** `defenders`, `Blues`, as the rule has it. */
export function whoOf({ rule }: Breach): string {
  return rule.who === 'attackers' || rule.who === 'defenders' || rule.who === 'floaters' ? rule.who : `\`${rule.who}\``;
}

/** Who breaks it, at the start of a sentence. */
export function culprit({ stay }: Breach): string {
  return stay ? Who(stay.actor) : 'Somebody';
}
