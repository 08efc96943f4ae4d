/** Who does what in a beat. */
import type { Action as ActionNode, Beat as BeatNode, Part as PartNode, Place, Subject, Verb } from '../../grammar/tree.ts';
import { straightOnly, wrongKind } from '../checks/wrong-kind.ts';
import type { Action, Beat, Part } from './drill.ts';
import { modifiersOf } from './modifiers.ts';
import type { NameKind } from './names.ts';
import { personOf } from './people.ts';
import { located } from './places.ts';
import type { Scope } from './scope.ts';
import { goneAround, personNamed } from './subjects.ts';
import { called, kindOf, spotOf, type Thing } from './things.ts';

/** A beat whose lead cannot be worked out is left out, and so is every action that cannot. */
export function beatsOf(beats: readonly BeatNode[], scope: Scope): readonly Beat[] {
  return beats.flatMap((beat, index): Beat[] => {
    const lead = partOf(beat.lead, scope);
    const meanwhile = beat.meanwhile.map((part) => partOf(part, scope)).filter((part) => part !== null);
    return lead ? [{ index, span: beat.span, lead, meanwhile }] : [];
  });
}

function partOf(part: PartNode, scope: Scope): Part | null {
  const verb = part.chain[0]?.verb;
  const actor = personNamed(part.subject, `only players can ${verb ? plain[verb] : 'do that'}`, scope);
  const chain = part.chain.map((action) => actionOf(action, scope)).filter((action) => action !== null);
  return actor && chain.length > 0 ? { actor: actor.id, subjectSpan: part.subject.span, span: part.span, chain } : null;
}

function actionOf(action: ActionNode, scope: Scope): Action | null {
  const target = targetOf(action, scope);
  const receiver = action.receiver && personNamed(action.receiver, 'only players can be played to', scope);
  const about = action.about && aboutOf(action.about, action.verb, scope);
  const modifiers = modifiersOf(action.modifiers, about, scope);
  if (straight.has(action.verb)) {
    for (const { kind, span } of action.modifiers) if (kind === 'via' || kind === 'around') scope.report(straightOnly(span, kind));
  }
  if (target === null || (action.receiver && !receiver) || (action.about && !about) || modifiers === null) return null;
  return {
    verb: action.verb,
    span: action.span,
    verbSpan: action.verbSpan,
    ...target,
    targetSpan: action.target?.span ?? null,
    receiver: receiver?.id ?? null,
    receiverSpan: action.receiver?.span ?? null,
    ...modifiers,
    firstTime: modifiers.firstTime || action.verb === 'sets to' || action.verb === 'sets into',
  };
}

type Target = Pick<Action, 'at' | 'to' | 'station' | 'thing'>;
const nowhere: Target = { at: null, to: null, station: null, thing: null };

function targetOf(action: ActionNode, scope: Scope): Target | null {
  const { target, verb } = action;
  if (target === null) return nowhere;
  if (target.kind !== 'name') {
    const at = located(target, scope);
    return at && { ...nowhere, at };
  }
  const wanted = verb === 'shoots at' ? goals : playedToPerson(verb) ? receivers : undefined;
  const thing = scope.thing(target.name, nounFor(verb), wanted);
  return thing && targetNamed(thing, target, verb, scope);
}

/** What a name means as a target depends on the verb: a ball goes to people, a run to where they stand, a shot at goals. */
function targetNamed(thing: Thing, target: Extract<Place, { kind: 'name' }>, verb: Verb, scope: Scope): Target | null {
  const kind = kindOf(thing);
  const person = personOf(thing, target.next);
  const refuse = (because: string) => {
    scope.report(wrongKind(target.span, target.name.text, called(kind), because));
    return null;
  };
  if (target.next && !person) return refuse('only a station has a next player');
  if (target.next && thing.kind === 'station') scope.queued.add(thing.station.id);
  const spot = spotOf(thing);
  if (spot === null) return refuse(spotless[thing.kind] ?? 'it is not a place');
  const at = { x: spot.x, y: spot.y, span: target.span };
  const id = thing.kind === 'zone' || thing.kind === 'furniture' ? target.name.text : null;
  if (verb === 'shoots at') return goals.has(kind) ? { ...nowhere, at, thing: id } : refuse('only a goal or a gate can be shot at');
  if (!playedToPerson(verb)) {
    return { at, to: person?.id ?? null, station: person?.station ?? null, thing: person ? null : id };
  }
  if (person) return { ...nowhere, to: person.id, station: person.station };
  return receivers.has(kind) ? { ...nowhere, at, thing: id } : refuse('a pass goes to a player, a place, a zone or a goal');
}

function aboutOf(subject: Subject, verb: Verb, scope: Scope): Action['about'] {
  if (verb === 'presses' || verb === 'marks' || verb === 'wins the ball from') {
    const done = verb === 'presses' ? 'pressed' : verb === 'marks' ? 'marked' : 'tackled';
    const person = personNamed(subject, `only players can be ${done}`, scope);
    return person && { at: person.at, who: person.id, thing: null, span: subject.span };
  }
  return goneAround(subject, scope);
}

/** What sends a ball on its way, which is straight. */
const straight: ReadonlySet<Verb> = new Set<Verb>(['passes to', 'passes into', 'sets to', 'sets into', 'crosses to', 'shoots at']);

function playedToPerson(verb: Verb): boolean {
  return verb === 'passes to' || verb === 'sets to' || verb === 'crosses to';
}

function nounFor(verb: Verb): string {
  if (verb === 'shoots at') return 'goal';
  return playedToPerson(verb) ? 'station or player' : 'place';
}

/** What to say of a thing that has no place of its own. */
const spotless: Readonly<Partial<Record<Thing['kind'], string>>> = { zones: 'say which of them', team: 'say which player' };

const goals: ReadonlySet<NameKind> = new Set<NameKind>(['goal', 'minigoal', 'gate']);
const receivers: ReadonlySet<NameKind> = new Set<NameKind>(['station', 'player', 'keeper', 'coach', ...goals, 'zone']);

/** For `only players can run`. */
const plain: Readonly<Record<Verb, string>> = {
  'passes to': 'pass', 'passes into': 'pass', 'sets to': 'pass', 'sets into': 'pass', 'touches to': 'play the ball', 'dribbles to': 'dribble',
  'crosses to': 'cross', 'shoots at': 'shoot', turns: 'turn', 'runs to': 'run', 'shows to': 'run', 'drops to': 'run',
  'spins around': 'run', follows: 'run', overlaps: 'run', underlaps: 'run', presses: 'press', marks: 'mark',
  'wins the ball from': 'win the ball', holds: 'hold', waits: 'wait',
};
