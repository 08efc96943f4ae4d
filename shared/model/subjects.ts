/** Who or what an action speaks of: the one who acts, who is played to, what is gone around. */
import type { Subject } from '../../grammar/tree.ts';
import { wrongKind } from '../checks/wrong-kind.ts';
import type { Action } from './drill.ts';
import type { NameKind } from './names.ts';
import { personOf, type Person } from './people.ts';
import type { Scope } from './scope.ts';
import { called, kindOf } from './things.ts';

/** `because` says why only people will do: `only players can run`. */
export function personNamed(subject: Subject, because: string, scope: Scope): Person | null {
  const thing = scope.thing(subject.name, 'station or player', people);
  if (thing === null) return null;
  const person = personOf(thing, subject.next);
  if (person) {
    if (subject.next && person.station !== null) scope.queued.add(person.station);
    return person;
  }
  const what = called(kindOf(thing));
  if (subject.next) scope.report(wrongKind(subject.span, subject.name.text, what, 'only a station has a next player'));
  else scope.report(wrongKind(subject.span, subject.name.text, what, thing.kind === 'team' ? 'say which of its players' : because));
  return null;
}

/** What a path goes around: a person or a thing that stands somewhere. */
export function goneAround(subject: Subject, scope: Scope): Action['about'] {
  const thing = scope.thing(subject.name, 'player or thing', standing);
  if (thing === null) return null;
  const person = personOf(thing, subject.next);
  if (person) {
    if (subject.next && person.station !== null) scope.queued.add(person.station);
    return { at: person.at, who: person.id, thing: null, span: subject.span };
  }
  if (thing.kind === 'furniture' && !subject.next) {
    const { x, y } = thing.furniture.at;
    return { at: { x, y }, who: null, thing: thing.furniture.id, span: subject.span };
  }
  const because = subject.next ? 'only a station has a next player' : 'one can only go around players and things that stand on the grass';
  scope.report(wrongKind(subject.span, subject.name.text, called(kindOf(thing)), because));
  return null;
}

const people: ReadonlySet<NameKind> = new Set<NameKind>(['station', 'player', 'keeper', 'coach']);
const standing: ReadonlySet<NameKind> = new Set<NameKind>([
  ...people, 'cone', 'disc', 'pole', 'mannequin', 'gate', 'goal', 'minigoal', 'hurdle', 'ladder',
]);
