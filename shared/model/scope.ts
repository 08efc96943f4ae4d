/** The names of one drill: what each stands for, and what to say when it stands for nothing or for the wrong thing. */
import type { LengthUnit, Span, Word } from '../../grammar/tree.ts';
import { noArea, noSuchPlayer, notPlaced, unknownName } from '../checks/unknown-name.ts';
import { wrongKind } from '../checks/wrong-kind.ts';
import type { Problem } from '../problem.ts';
import type { Declarations } from './declarations.ts';
import type { Id } from './drill.ts';
import type { Quantity, Values } from './expressions.ts';
import type { FileValues } from './lets.ts';
import type { NameBook, NameKind } from './names.ts';
import { boundsOf, boundsOfArea, called, kindOf, type Bounds, type Thing } from './things.ts';

export interface Scope extends Values {
  readonly drill: Id;
  readonly declarations: Declarations;
  /** By name; null: it could not be worked out. Filled as the drill is read. */
  readonly things: Map<string, Thing | null>;
  /** What a name stands for; null when that is nothing, or nothing sound, which has then been reported. */
  readonly thing: (word: Word, wanted: string, kinds?: ReadonlySet<NameKind>) => Thing | null;
  /** The stations whose next player is spoken of. */
  readonly queued: Set<Id>;
  readonly used: (kind: 'word' | 'quote', name: string, span: Span) => void;
}

/** Looking for the nearest name takes as long as there are names: a text with more slips than this is not helped by guesses. */
const mostGuesses = 50;

export function scopeOf(
  drill: Id,
  units: LengthUnit,
  declarations: Declarations,
  file: FileValues,
  names: NameBook,
  report: (problem: Problem) => void,
): Scope {
  const things = new Map<string, Thing | null>();
  const used: Scope['used'] = (kind, name, span) => names.use(drill, kind, name, span);
  let unknown = 0;

  function thing(word: Word, wanted: string, kinds?: ReadonlySet<NameKind>): Thing | null {
    const member = declarations.memberOf(word.text);
    if (member) names.declare(drill, 'player', word.text, declarations.byName.get(member.team)!.word);
    used('word', word.text, word);
    if (member) return memberNamed(word, member.team, member.number);
    if (declarations.byName.has(word.text)) return things.get(word.text) ?? null;
    const quantity = file.quantity(word, report);
    if (quantity !== undefined) return quantity && { kind: 'let', quantity };
    if (word.text === 'area') report(noArea(word));
    else report(unknownName(word, wanted, candidates(kinds)));
    return null;
  }

  function memberNamed(word: Word, teamName: string, number: number): Thing | null {
    const team = things.get(teamName);
    if (things.has(word.text) || team?.kind !== 'team') return things.get(word.text) ?? null;
    report(number > team.team.size ? noSuchPlayer(word, teamName, team.team.size) : notPlaced(word, teamName));
    return null;
  }

  function* candidates(kinds: ReadonlySet<NameKind> | undefined): Iterable<string> {
    if (++unknown > mostGuesses) return;
    for (const [name, { kind }] of declarations.byName) if (!kinds || kinds.has(kind)) yield name;
    if (!kinds || kinds.has('let')) yield* file.names();
  }

  function quantity(word: Word): Quantity | null {
    const found = thing(word, 'number', numbers);
    if (found === null || found.kind === 'let') return found?.quantity ?? null;
    report(wrongKind(word, word.text, called(kindOf(found)), 'only a `let`, or a measure such as `area.width`, stands for a number'));
    return null;
  }

  function side(of: Word, name: Word): Quantity | null {
    const bounds = boundsNamed(of, scope);
    if (bounds === null) return null;
    if (name.text === 'width') return { value: bounds.right - bounds.left, length: 1, time: 0 };
    if (name.text === 'length') return { value: bounds.top - bounds.bottom, length: 1, time: 0 };
    report(unknownName(name, `measure of ${of.text}`, ['width', 'length']));
    return null;
  }

  const scope: Scope = { drill, units, declarations, things, queued: new Set(), report, thing, quantity, side, used };
  return scope;
}

/** The box around the area or a zone. */
export function boundsNamed(word: Word, scope: Scope): Bounds | null {
  const thing = scope.thing(word, 'zone', grounds);
  if (thing === null) return null;
  if (thing.kind === 'area') return boundsOfArea(thing.area);
  if (thing.kind === 'zone') return boundsOf(thing.zone.shape);
  const because = thing.kind === 'zones' ? `say which: \`${word.text}TopLeft\`` : 'only the area and zones have sides and corners';
  scope.report(wrongKind(word, word.text, called(kindOf(thing)), because));
  return null;
}

/** The area, for a statement that measures by it without naming it. */
export function areaBounds(span: Span, scope: Scope): Bounds | null {
  const area = scope.things.get('area');
  if (area?.kind === 'area') return boundsOfArea(area.area);
  if (!scope.declarations.byName.has('area')) scope.report(noArea(span));
  return null;
}

const numbers: ReadonlySet<NameKind> = new Set(['let']);
const grounds: ReadonlySet<NameKind> = new Set(['area', 'zone']);
