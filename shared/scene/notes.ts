/** What a sheet says in words beside the play: who goes where, the rules, what to coach. */
import type { Corner, Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import type { Drill, Rule, TouchRule } from '../model/drill.ts';
import { surplus } from '../rotation/rotate.ts';
import { figure } from './units.ts';

export interface Note {
  readonly id: string;
  readonly title: string;
  readonly entries: readonly NoteEntry[];
}

export interface NoteEntry {
  /** What the entry is about; null where the title says it. */
  readonly about: string | null;
  readonly text: string;
  readonly span: Span | null;
}

/** Only those that say something. */
export function notesOf(analysis: DrillAnalysis, phase: PhaseAnalysis | null): Note[] {
  const { drill } = analysis;
  const plain = (texts: readonly string[]) => texts.map((text): NoteEntry => ({ about: null, text, span: null }));
  return [
    { id: 'rotation', title: 'Rotation', entries: plain(rotationWords(analysis)) },
    { id: 'standing', title: 'In this phase', entries: plain(phase && phase.standing.length > 0 ? [`${listed(phase.standing)} ${phase.standing.length === 1 ? 'keeps' : 'keep'} their place.`] : []) },
    { id: 'rules', title: 'Rules', entries: ruleEntries(drill) },
    { id: 'coaching', title: 'Coaching points', entries: drill.points.map(({ corner, text, span }) => ({ about: corners[corner], text, span })) },
    { id: 'questions', title: 'Questions', entries: plain(drill.questions) },
    { id: 'safety', title: 'Safety', entries: plain(drill.safety) },
    { id: 'notes', title: 'Notes', entries: plain(drill.notes) },
  ].filter(({ entries }) => entries.length > 0);
}

const corners: Readonly<Record<Corner, string>> = { technical: 'Technical', physical: 'Physical', psychological: 'Psychological', social: 'Social' };

// ---------------------------------------------------------------- rotation

/** A line for every circle, who stays, and when everyone is home again or why they never are. */
export function rotationWords({ drill, rotation }: DrillAnalysis): string[] {
  if (!rotation) return [];
  const names = new Map(drill.stations.map(({ id, name }) => [id, name]));
  const nameOf = (id: string) => names.get(id) ?? id;
  const { moves, places, image } = rotation;
  const turnsInQueue = (station: string) => {
    const front = places.findIndex((place) => place.station === station && place.number === 1);
    return image !== null && image[front] !== front;
  };
  const leaving = moves.filter(({ from, to }) => to !== from);
  const staying = moves.filter(({ from, to }) => to === from);
  const queuing = staying.filter(({ from }) => turnsInQueue(from)).map(({ from }) => `${nameOf(from)} → end of the queue at ${nameOf(from)}`);
  const still = staying.filter(({ from }) => !turnsInQueue(from)).map(({ from }) => nameOf(from));
  if (leaving.length + queuing.length === 0) return ['Nobody moves on: everyone keeps their place.'];

  const next = new Map(leaving.map(({ from, to }) => [from, to]));
  const reached = new Set(leaving.map(({ to }) => to));
  const told = new Set<string>();
  // Where nobody arrives a way begins; what is left are circles.
  const starts = [...leaving.filter(({ from }) => !reached.has(from)), ...leaving].map(({ from }) => from);
  const ways = starts.flatMap((start) => (told.has(start) ? [] : [wayFrom(start, next, told).map((to) => (to === null ? 'no station' : nameOf(to))).join(' → ')]));
  const ending = rotation.closed ? [`Everyone is home after ${rotation.order} repetitions.`] : [`Open: ${openWords(drill, moves, nameOf)}.`];
  return [...ways, ...queuing, ...(still.length > 0 ? [`${listed(still)} ${still.length === 1 ? 'stays' : 'stay'}.`] : []), ...ending];
}

/** From station to station until nobody moves on, or the way comes to one already told. */
function wayFrom(start: string, next: ReadonlyMap<string, string | null>, told: Set<string>): (string | null)[] {
  const way: (string | null)[] = [start];
  let at: string | null | undefined = start;
  while (typeof at === 'string' && !told.has(at)) {
    told.add(at);
    at = next.get(at);
    if (at !== undefined) way.push(at);
  }
  return way;
}

function openWords(drill: Drill, moves: NonNullable<DrillAnalysis['rotation']>['moves'], nameOf: (id: string) => string): string {
  const balance = drill.stations.map(({ id }) => ({ name: nameOf(id), more: surplus(moves, id) }));
  const short = balance.filter(({ more }) => more < 0).map(({ name }) => name);
  const over = balance.filter(({ more }) => more > 0).map(({ name }) => name);
  const words = [...(short.length > 0 ? [`nobody comes to ${listed(short)}`] : []), ...(over.length > 0 ? [`one too many at ${listed(over)}`] : [])];
  return words.join(', ') || 'not everyone has a place for the next repetition';
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
}

// ---------------------------------------------------------------- rules

function ruleEntries(drill: Drill): NoteEntry[] {
  const zones = new Map(drill.zones.map(({ id, name }) => [id, name]));
  const things = new Map(drill.furniture.map(({ id, name, kind }) => [id, name ?? kind]));
  const where = (id: string) => zones.get(id) ?? things.get(id) ?? id;
  const entry = (text: string, span: Span): NoteEntry => ({ about: null, text, span });
  return [
    ...drill.touchRules.map((rule) => entry(touchWords(rule, where), rule.span)),
    ...drill.rules.map((rule) => entry(ruleWords(rule, where), rule.span)),
    ...(drill.bouts ? [entry(boutWords(drill.bouts), drill.bouts.span)] : []),
  ];
}

function boutWords({ count, length, rest }: NonNullable<Drill['bouts']>): string {
  return `${counted(count, 'bout', 'bouts')} of ${timeWords(length)}${rest > 0 ? `, ${timeWords(rest)} rest` : ''}`;
}

/** `3 min`, `90 s`, `2 min 30 s`: as a coach says it. */
function timeWords(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  const left = seconds - minutes * 60;
  if (minutes === 0 || (minutes === 1 && left > 0)) return `${figure(seconds)} s`;
  return left > 0 ? `${minutes} min ${figure(left)} s` : `${minutes} min`;
}

function touchWords({ most, who, zone }: TouchRule, where: (id: string) => string): string {
  return `${who ?? 'Everyone'}: at most ${counted(most, 'touch', 'touches')}${zone === null ? '' : ` in ${where(zone)}`}`;
}

function ruleWords(rule: Rule, where: (id: string) => string): string {
  switch (rule.kind) {
    case 'text':
      return rule.text;
    case 'numbers':
      return rule.bound === 'no' ? `${where(rule.zone)}: no ${rule.who}` : `${where(rule.zone)}: ${rule.bound} ${rule.count} ${rule.count === 1 ? (one.get(rule.who) ?? rule.who) : rule.who}`;
    case 'expect':
      return `${rule.ours} v ${rule.theirs} in ${where(rule.zone)}`;
    case 'score': {
      const { by, from, into, through } = rule;
      const what = by === 'passes' ? counted(rule.count ?? 1, 'pass', 'passes') : by === 'win' ? 'winning the ball' : `a ${by}`;
      const way = [from === null ? '' : ` from ${where(from)}`, into === null ? '' : ` ${ends[by]} ${where(into)}`, through === null ? '' : ` through ${where(through)}`].join('');
      return `${counted(rule.points, 'point', 'points')}${rule.team === null ? '' : ` for ${rule.team}`} for ${what}${way}`;
    }
  }
}

/** Roles; names of teams stay as they are. */
const one: ReadonlyMap<string, string> = new Map([['attackers', 'attacker'], ['defenders', 'defender'], ['floaters', 'floater']]);

/** `a pass into Box`, `a goal in North`. */
const ends = { passes: 'in', pass: 'into', dribble: 'into', win: 'in', goal: 'in' } as const;

function counted(count: number, one: string, many: string): string {
  return `${figure(count)} ${count === 1 ? one : many}`;
}
