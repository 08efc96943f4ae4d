/** A session worked out from its parts and the drills they play. */
import type { DrillAnalysis } from '../analyse.ts';
import { plus, type Point } from '../geometry/point.ts';
import type { Part, Session } from '../model/session.ts';
import type { Bounds } from '../model/things.ts';
import type { Changeover, Group, PartSlot, Proposal, Registered, SessionAnalysis, SetUp, Slot, Thing } from './analysis.ts';
import { changeoverOf } from './changeover.ts';
import { figuresOf } from './figures.ts';
import { extentOf, placesOf } from './ground.ts';
import { groupedFor, type Grouped } from './groups.ts';
import { kitLines } from './kit.ts';
import { needOf } from './need.ts';
import { shorter } from './proposal.ts';
import { presentAt, registerOf } from './register.ts';
import { tapesOf } from './tapes.ts';
import { mostThings, thingsOf, together } from './things.ts';

/** What a part plays, and the file it is from, null for this one. */
export interface Played {
  readonly analysis: DrillAnalysis;
  readonly file: string | null;
}

/** `played`: the drill of a part, with the progression it names; null where there is none, or none that could be read. */
export function analyseSession(session: Session, played: (part: Part) => Played | null): SessionAnalysis {
  const register = registerOf(session);
  const timetable = timetableOf(session, register, played);
  return {
    session,
    register,
    timetable,
    changeovers: changeoversOf(timetable, session.hands.value),
    kit: kitLines(timetable, session.kit),
    figures: figuresOf(timetable),
    proposal: proposalOf(timetable, session),
  };
}

function timetableOf(session: Session, register: readonly Registered[], played: (part: Part) => Played | null): readonly Slot[] {
  const slots: Slot[] = [];
  const rested = new Map<number, number>();
  const ground = groundBook();
  let before: Grouped | null = null;
  let start = 0;
  for (const part of session.parts) {
    const time = { start, end: start + part.length };
    start = time.end;
    if (part.kind === 'pause') {
      slots.push({ kind: 'pause', pause: part, ...time });
      continue;
    }
    const found = played(part);
    const { able, aside, away } = presentAt(part, register, session);
    const need = found ? needOf(found.analysis) : { least: 0, most: Infinity, usual: 0, keepers: 0 };
    const grouped = groupedFor(part, able, need, before, rested);
    for (const number of grouped.resting) rested.set(number, (rested.get(number) ?? 0) + 1);
    if (found) before = grouped;
    slots.push({ kind: 'part', part, drill: found?.analysis ?? null, file: found?.file ?? null, resting: grouped.resting, aside, away, ...placed(part, grouped, found && { ...found, ...ground(found.analysis) }, session), ...time });
  }
  return slots;
}

/** What is the same in every part that plays a drill. */
type Ground = { readonly things: readonly Thing[]; readonly tapes: SetUp['tapes']; readonly extent: Bounds };

function groundBook(): (analysis: DrillAnalysis) => Ground {
  const known = new Map<DrillAnalysis, Ground>();
  return (analysis) => {
    const ground = known.get(analysis) ?? { things: thingsOf(analysis.drill), tapes: tapesOf(analysis.drill), extent: extentOf(analysis.drill) };
    known.set(analysis, ground);
    return ground;
  };
}

function placed(
  part: Part,
  { groups }: Grouped,
  found: (Played & Ground) | null,
  session: Session,
): { readonly groups: readonly Group[]; readonly setUp: SetUp } {
  if (!found) return { groups: groups.map((group, index) => ({ number: index + 1, ...group, at: null, assumed: true })), setUp: nothing };
  const { things, tapes, extent, analysis: { drill } } = found;
  const places = placesOf(part, extent, session.pitch);
  return {
    groups: groups.map((group, index) => ({ number: index + 1, ...group, ...places[index]! })),
    setUp: {
      things: things.length * places.length > mostThings ? [] : together(things, places.map(({ at }) => at)),
      tapes,
      bibs: drill.teams.flatMap(({ bib, size }) => (bib === null ? [] : [{ colour: bib, count: size * groups.length }])),
      balls: groups.length * drill.balls.reduce((sum, { count }) => sum + count, 0),
    },
  };
}

const nothing: SetUp = { things: [], tapes: [], bibs: [], balls: 0 };

/** The slots that lay something on the ground, with their index in the timetable. */
function laidOf(timetable: readonly Slot[]): readonly { readonly slot: PartSlot & Slot; readonly index: number }[] {
  return timetable.flatMap((slot, index) => (slot.kind === 'part' && slot.drill !== null ? [{ slot, index }] : []));
}

function changeoversOf(timetable: readonly Slot[], hands: number): readonly Changeover[] {
  const laid = laidOf(timetable);
  if (laid.length === 0) return [];
  return [null, ...laid].map((from, index): Changeover => {
    const to = laid[index] ?? null;
    const work = changeoverOf(from?.slot.setUp.things ?? [], to?.slot.setUp.things ?? [], hands);
    const pauses = from && to ? timetable.slice(from.index + 1, to.index) : [];
    const available = pauses.reduce((sum, { start, end }) => sum + end - start, 0);
    return { from: from?.index ?? null, to: to?.index ?? null, ...work, available: pauses.length > 0 ? available : null };
  });
}

function proposalOf(timetable: readonly Slot[], { pitch, units, hands }: Session): Proposal | null {
  const laid = laidOf(timetable);
  const places = (slot: PartSlot): readonly Point[] => slot.groups.flatMap(({ at }) => at ?? []);
  const found = shorter(laid.map(({ slot }) => ({ at: places(slot), extent: extentOf(slot.drill!.drill), things: slot.setUp.things })), pitch, units, hands.value);
  if (!found) return null;
  const shifts = new Map(laid.map(({ slot }, index) => [slot, found.shifts[index]!]));
  return {
    at: timetable.filter((slot) => slot.kind === 'part').map((slot) => places(slot).map((at) => plus(at, shifts.get(slot)?.x ?? 0, shifts.get(slot)?.y ?? 0))),
    written: found.written,
    proposed: found.proposed,
  };
}
