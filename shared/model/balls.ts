/** The balls, and who has them when a repetition starts. */
import type { Place, Statement } from '../../grammar/tree.ts';
import { distance } from '../geometry/point.ts';
import type { Actor, ActorId, BallSupply, Located } from './drill.ts';
import { countOf } from './expressions.ts';
import { personOf } from './people.ts';
import { located } from './places.ts';
import type { Scope } from './scope.ts';

/** Whoever stands this near to a ball, in metres, has it. */
const reach = 1.5;

export function ballsOf(statements: readonly Statement[], people: readonly Actor[], scope: Scope): readonly BallSupply[] {
  return statements.flatMap((statement): BallSupply[] => {
    if (statement.kind !== 'ball' && statement.kind !== 'balls') return [];
    const at = located(statement.at, scope);
    const count = statement.kind === 'ball' ? 1 : countOf(statement.count, scope, { what: 'The number of balls' });
    return at === null || count === null ? [] : [{ at, count, holder: holderOf(statement.at, at, people, scope), span: statement.span }];
  });
}

function holderOf(place: Place, at: Located, people: readonly Actor[], scope: Scope): ActorId | null {
  const thing = place.kind === 'name' ? scope.things.get(place.name.text) : null;
  const named = thing && personOf(thing, place.kind === 'name' && place.next);
  if (named) return named.id;
  const [nearest] = people
    .filter((actor) => actor.kind !== 'next')
    .map((actor) => ({ id: actor.id, away: distance(actor.home, at) }))
    .sort((a, b) => a.away - b.away);
  return nearest && nearest.away <= reach ? nearest.id : null;
}
