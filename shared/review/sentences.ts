/** The sentences of facts, by what they are about. */
import { lateFrom } from '../timeline/timeline.ts';
import type { Change, FactKind, ThingKind } from './comparison.ts';
import type { Difference } from './differences.ts';
import { renamed, type Renames } from './match.ts';
import { following, type Followers, moved, spotsOf } from './moves.ts';
import { apart, capital, counted, isWas, listed, moreOrFewer, noticed, place, said, type Speech, way } from './say.ts';
import type { Thing } from './thing.ts';

export interface Told {
  readonly kind: FactKind;
  /** Empty: nobody would notice. */
  readonly sentence: string;
  readonly grade: 'matters' | 'detail';
  /** The properties it tells of; null: all that are left. */
  readonly properties: readonly string[] | null;
  /** Also tells of what follows from it, and of its parts. */
  readonly leads: boolean;
  /** Differences of other things that say the same. */
  readonly also: readonly Difference[];
}

export interface Telling {
  readonly difference: Difference;
  /** Not told yet. */
  readonly free: (change: Change) => boolean;
  /** What follows from it. */
  readonly follow: Followers;
  readonly renames: Renames;
  readonly speech: Speech;
  readonly all: readonly Difference[];
}

export function sentenceOf(telling: Telling): readonly Told[] {
  const { difference: { pair: { before, after }, changes }, free } = telling;
  if (![...changes.values()].some(free) && telling.follow.length === 0) return [];
  if (before && after) return changed(telling, before, after);
  return after ? [came(telling, after)] : [went(telling, before!)];
}

function told(kind: FactKind, sentence: string, more: Partial<Told> = {}): Told {
  return { kind, sentence, grade: 'matters', properties: null, leads: true, also: [], ...more };
}

// ---------------------------------------------------------------- came and went

function came(telling: Telling, after: Thing): Told {
  const { speech, follow } = telling;
  const { also, words } = kitOf(telling);
  const others = likeIt(telling);
  if (others.length > 0) {
    const places = [after, ...others.map(({ pair }) => pair.after!)].map(({ at }) => place(at!, speech));
    return told('added', `${many(others.length + 1, after)} at ${listed(places)} are new${words}.`, { also: [...also, ...others] });
  }
  const at = after.at && standing.has(after.kind) ? ` at ${place(after.at, speech)}` : '';
  return told('added', `${capital(newWords(after, at, speech))}${words}${following(follow)}.`, { also, grade: gradeOf(after) });
}

function newWords(after: Thing, at: string, speech: Speech): string {
  const { title, kind, values } = after;
  switch (kind) {
    case 'rule': return `new rule: ${title}`;
    case 'point': return `new coaching point: ${title}`;
    case 'question': return `new question: ${title}`;
    case 'safety': return `new for safety: ${title}`;
    case 'note': return `new note: ${title}`;
    case 'problem': return `new problem: ${title}`;
    case 'beat': return `${title} is new: ${after.words}`;
    case 'kit': return `${counted(Number(values['count']?.value), title)} to carry, none before`;
    case 'let': return `${title} is new: ${after.words}`;
    case 'station': return `${title} is new${at}, ${values['holds']?.value === 1 ? 'for 1 player' : `for ${values['holds']?.value} players`}`;
    case 'furniture': return `${title} is new${title.includes(' at ') ? '' : at}`;
    case 'area': return `the area is new: ${said(values['width']?.value ?? 0, 'm', speech)} wide, ${said(values['length']?.value ?? 0, 'm', speech)} long`;
    case 'part': return `new part: ${title}`;
    case 'import': return `new import: ${title}`;
    case 'progression': return `new ${title}`;
    case 'role': return `${title} has a part now`;
    case 'drill': case 'zone': case 'balls': case 'team': case 'player': case 'sequence': case 'action': case 'rotation': case 'pass': case 'repetition':
      return `${title} is new${title.includes(' at ') ? '' : at}`;
  }
}

function went(telling: Telling, before: Thing): Told {
  const { speech, follow } = telling;
  const { also, words } = kitOf(telling);
  const others = likeIt(telling);
  if (others.length > 0) {
    const places = [before, ...others.map(({ pair }) => pair.before!)].map(({ at }) => place(at!, speech));
    return told('removed', `${many(others.length + 1, before)} at ${listed(places)} are gone${words}.`, { also: [...also, ...others] });
  }
  return told('removed', `${capital(goneWords(before))}${words}${following(follow)}.`, { also, grade: gradeOf(before) });
}

function goneWords({ title, kind, words, values }: Thing): string {
  switch (kind) {
    case 'rule': return `rule gone: ${title}`;
    case 'point': return `coaching point gone: ${title}`;
    case 'question': return `question gone: ${title}`;
    case 'safety': return `safety word gone: ${title}`;
    case 'note': return `note gone: ${title}`;
    case 'problem': return `mended: ${title}`;
    case 'beat': return `${title} is gone: ${words}`;
    case 'kit': return `no ${title} to carry any more, ${values['count']?.value === 1 ? 'was 1' : `were ${values['count']?.value}`}`;
    case 'part': return `part gone: ${title}`;
    case 'import': return `import gone: ${title}`;
    case 'progression': return `gone: ${title}`;
    case 'role': return `${title} has no part any more`;
    case 'drill': case 'let': case 'area': case 'zone': case 'furniture': case 'balls': case 'team': case 'station': case 'player': case 'sequence': case 'action':
    case 'rotation': case 'pass': case 'repetition':
      return `${title} ${/^the \d+ /.test(title) ? 'are' : 'is'} gone`;
  }
}

const standing: ReadonlySet<ThingKind> = new Set(['zone', 'furniture', 'balls', 'station', 'player']);
const small: ReadonlySet<ThingKind> = new Set(['let', 'note', 'role', 'action', 'import', 'question']);

function gradeOf({ kind, values }: Thing): 'matters' | 'detail' {
  if (kind === 'problem') return values['severity']?.value === 'error' || values['severity']?.value === 'warning' ? 'matters' : 'detail';
  return small.has(kind) ? 'detail' : 'matters';
}

/** Other things without a name that came or went as this one did. */
function likeIt({ difference: { pair }, free, all }: Telling): readonly Difference[] {
  const one = (pair.after ?? pair.before)!;
  if (one.kind !== 'furniture' || one.traits[1] !== 'unnamed') return [];
  return all.filter((each) => {
    const other = (each.pair.after ?? each.pair.before)!;
    const alike = other !== one && other.kind === 'furniture' && other.traits.join() === one.traits.join();
    return alike && (each.pair.before === null) === (pair.before === null) && (each.pair.after === null) === (pair.after === null) && [...each.changes.values()].every(free);
  });
}

function many(number: number, { values }: Thing): string {
  return `${number} ${values['what']?.value}s`;
}

/** A pole more on the ground is a pole more to carry: told once. */
function kitOf({ difference, free, speech, all }: Telling): { readonly also: readonly Difference[]; readonly words: string } {
  const { before, after } = difference.pair;
  const what = (after ?? before)!.values['what']?.value;
  if ((after ?? before)!.kind !== 'furniture' || what === undefined) return { also: [], words: '' };
  const kit = all.find(({ pair }) => (pair.after ?? pair.before)!.kind === 'kit' && (pair.after ?? pair.before)!.id === `${what}s`);
  const change = kit?.changes.get('count');
  const by = Number(change?.after ?? 0) - Number(change?.before ?? 0);
  if (!kit || !change || !free(change) || (by > 0) !== (after !== null)) return { also: [], words: '' };
  return { also: [kit], words: ` (${moreOrFewer(by, kit.pair.after?.title ?? kit.pair.before!.title).toLowerCase()}: ${said(change.after ?? 0, '', speech)}, ${Number(change.before ?? 0) === 1 ? 'was' : 'were'} ${said(change.before ?? 0, '', speech)})` };
}

// ---------------------------------------------------------------- changed

function changed(telling: Telling, before: Thing, after: Thing): readonly Told[] {
  const { difference, free, speech, follow } = telling;
  const open = new Map([...difference.changes].filter(([, change]) => free(change)));
  switch (after.kind) {
    case 'drill':
      return [...open].filter(([property]) => property !== 'players' || !countedToo(telling)).map(([property, change]) => told('changed', `${headerWords[property] ?? property} ${isWas(change, speech, property === 'units' ? 'were in' : 'was')}${property === 'units' ? following(follow) : ''}.`, {
        properties: property === 'age' || property === 'years' ? ['age', 'years'] : [property], grade: headerDetails.has(property) ? 'detail' : 'matters', leads: property === 'units',
      }));
    case 'let': {
      const main = follow.length === 0 ? null : moved(follow, [difference], speech, telling.all);
      return [told('changed', main ?? `${after.title} is ${after.words}, was ${before.words}.`, { grade: main === null ? 'detail' : 'matters' })];
    }
    case 'area':
      return [told('changed', `The area is ${size(after, speech)}, was ${size(before, speech)}${following(follow)}.`)];
    case 'zone':
    case 'furniture':
    case 'balls':
    case 'station':
    case 'player':
      return [standingWords(telling, open)];
    case 'team':
      return [told('changed', `${after.title}: ${pieces(open, teamWords, speech)}.`)];
    case 'sequence':
      return sequenceWords(open, after, speech);
    case 'beat':
      return beatWords(telling, before, after, open);
    case 'action': {
      const [spot] = spotsOf(difference);
      const path = spot && way(spot.from, spot.to, speech);
      const rest = pieces(new Map([...open].filter(([property]) => property !== 'across' && property !== 'up')), {}, speech);
      const words = [path ? `ends ${path} of where it did` : '', rest].filter((each) => each !== '').join('; ');
      return [told('changed', words === '' ? '' : `${after.title}: ${words}.`, { grade: path ? 'matters' : 'detail' })];
    }
    case 'pass':
      return passWords(after, open, speech);
    case 'repetition':
      return repetitionWords(after, open, speech);
    case 'rotation':
      return [rotationWords(telling, before, after, open)];
    case 'role':
      return [told('changed', [...open.values()].some(noticed) ? `${after.title}, in a repetition: ${pieces(open, roleWords, speech)}.` : '', { grade: 'detail' })];
    case 'kit': {
      const { by, after: now, before: was } = open.get('count')!;
      return [told('changed', `${moreOrFewer(by ?? 0, after.title)}: ${now}, ${was === 1 ? 'was' : 'were'} ${was}.`)];
    }
    case 'problem': {
      const graver = open.has('severity');
      return [told('changed', `Still${graver ? `, now as ${after.values['severity']?.value}` : ''}: ${after.title}.`.replace(/\.\.$/, '.'), { grade: graver ? gradeOf(after) : 'detail' })];
    }
    case 'rule':
    case 'point':
    case 'question':
    case 'safety':
    case 'note':
      return [told('changed', `${capital(textNames[after.kind] ?? after.kind)}: ${after.title}, was: ${before.title}.`, { grade: small.has(after.kind) ? 'detail' : 'matters' })];
    case 'part':
    case 'progression':
    case 'import': {
      const name = open.get('name');
      const rest = new Map([...open].filter(([property]) => property !== 'name' && property !== 'number'));
      return [
        ...(name ? [told('renamed', `${capital(before.title)} is called “${name.after}” now.`, { properties: ['name'] })] : []),
        told('changed', rest.size === 0 ? '' : `${capital(after.title)}: ${pieces(rest, partNames, speech)}.`),
      ];
    }
  }
}

/** The count of the header is told with that of the play. */
function countedToo({ difference, all }: Telling): boolean {
  const written = difference.changes.get('players');
  const counted = all.find(({ pair }) => pair.after?.kind === 'repetition' && pair.after.id === '')?.changes.get('players');
  return written?.after === counted?.after && written?.before === counted?.before;
}

const textNames: Readonly<Partial<Record<ThingKind, string>>> = { rule: 'rule', point: 'coaching point', question: 'question', safety: 'safety', note: 'note' };
const headerWords: Readonly<Record<string, string>> = {
  age: 'It is for', years: 'It is for', players: 'Players written in the header:', units: 'Lengths are in', tempo: 'The tempo is', ground: 'The ground is', roll: 'The ball rolls', passPace: 'Passes arrive at',
  runPace: 'Runs reach', theme: 'The theme is', time: 'It lasts', level: 'The level is', tags: 'Tags:', order: 'The order is', pitch: 'The pitch is', kit: 'The kit:',
};
const headerDetails: ReadonlySet<string> = new Set(['level', 'tags', 'theme']);
const partNames: Readonly<Record<string, string>> = { lasts: 'lasts', groups: 'groups:', drill: 'plays', at: 'at', lever: 'changes', kind: 'is a' };
const teamWords: Readonly<Record<string, string>> = { size: 'players', bib: 'bibs', kind: 'a' };
const roleWords: Readonly<Record<string, string>> = { touches: 'touches', distance: 'runs', working: 'works', waiting: 'waits' };

/** `runs 34 m, was 30; waits 4 s, was 5`: what somebody notices, or all when nobody would. */
function pieces(changes: ReadonlyMap<string, Change>, names: Readonly<Record<string, string>>, speech: Speech): string {
  const shown = [...changes].filter(([, change]) => noticed(change));
  return (shown.length > 0 ? shown : [...changes]).map(([property, change]) => `${names[property] ?? property} ${isWas(change, speech)}`).join('; ');
}

function size({ values }: Thing, speech: Speech): string {
  const marked = values['marked'] ? `, marked every ${said(values['marked'].value, 'm', speech)}` : '';
  return `${said(values['width']?.value ?? 0, 'm', speech).replace(/ \D+$/, '')} x ${said(values['length']?.value ?? 0, 'm', speech)}${marked}`;
}

function standingWords({ difference, speech, follow, all }: Telling, open: ReadonlyMap<string, Change>): Told {
  const { before, after } = difference.pair;
  const [spot] = spotsOf(difference);
  const path = spot && way(spot.from, spot.to, speech);
  const rest = new Map([...open].filter(([property, change]) => property !== 'across' && property !== 'up' && noticed(change)));
  const stands = after!.kind === 'station' || after!.kind === 'player' ? 'stands' : 'is';
  const title = after!.kind === 'furniture' && before!.title.includes(' at ') ? `the ${after!.values['what']?.value}` : after!.kind === 'balls' ? (after!.title.split(' at ')[0] ?? '') : after!.title;
  const place_ = path ? [`${stands} at ${place(after!.at!, speech)}, was at ${place(before!.at!, speech)}: ${path}`] : [];
  const words = [...place_, ...(rest.size > 0 ? [pieces(rest, standingNames, speech)] : [])];
  if (words.length === 0) return told('changed', '');
  const resized = after!.kind === 'zone' ? sizes(difference, speech) : null;
  if (resized !== null) {
    const alike = all.filter((each) => each.pair.after?.kind === 'zone' && each.pair.after.span?.from === after!.span?.from && sizes(each, speech) === resized && each !== difference);
    const named = listed([title, ...alike.map(({ pair }) => pair.after!.title)]);
    return told('changed', `${named} ${alike.length > 0 ? resized.replace(/^is/, 'are').replace(', was', ', were') : resized}${following(follow)}.`, { also: alike });
  }
  return told(path ? 'moved' : 'changed', `${capital(title)} ${words.join('; ')}${following(follow)}.`);
}

/** `is 6 x 6 m, was 5 x 5`; null for a zone of the same size. */
function sizes({ pair: { before, after }, changes }: Difference, speech: Speech): string | null {
  if (!before || !after || !(changes.has('width') || changes.has('length')) || !after.values['width'] || !before.values['width']) return null;
  return `is ${size(after, speech)}, was ${size(before, speech).replace(/ \D+$/, '')}`;
}

const standingNames: Readonly<Record<string, string>> = {
  holds: 'holds', team: 'plays for', as: 'is a', width: 'is wide', length: 'is long', height: 'is high', radius: 'has a radius of', facing: 'faces', shape: 'is a', outline: 'has corners at', count: 'are', holder: 'belongs to', what: 'is a', name: 'is called',
};

function sequenceWords(open: ReadonlyMap<string, Change>, { title }: Thing, speech: Speech): Told[] {
  const beats = open.get('beats');
  const rest = new Map([...open].filter(([property]) => property !== 'beats'));
  return [
    ...(beats ? [told('changed', `${capital(title)} has ${beats.after} beats, had ${beats.before}.`, { grade: 'detail', properties: ['beats'] })] : []),
    ...(rest.size > 0 ? [told('changed', `${capital(title)}: ${pieces(rest, { name: 'is called', after: 'goes on from', mirrors: 'mirrors', kind: 'is a' }, speech)}.`)] : []),
  ];
}

// ---------------------------------------------------------------- play

function beatWords({ difference: { pair }, renames }: Telling, before: Thing, after: Thing, open: ReadonlyMap<string, Change>): readonly Told[] {
  const number = pair.outOfOrder ? [told('moved', `${capital(after.title)} was ${before.title}: ${after.words}.`, { properties: ['number', 'sequence'], leads: false })] : [];
  const text = open.has('text') ? [told('changed', `${capital(after.title)}: ${partWords(before.parts.map((part) => renamed(part, renames)), after.parts)}.`, { properties: ['text'] })] : [];
  // Where the others stand now follows from what came and went.
  const shifted = !pair.outOfOrder && (open.has('number') || open.has('sequence')) ? [told('changed', '', { properties: ['number', 'sequence'], leads: false })] : [];
  return [...number, ...text, ...shifted];
}

/** What of a beat is new, another, or gone; who does it tells which is which. */
function partWords(before: readonly string[], after: readonly string[]): string {
  const gone = before.filter((part) => !after.includes(part));
  const come = after.filter((part) => !before.includes(part));
  if (gone.length === 0 && come.length === 0) return `${listed(after.map((part) => `“${part}”`))} in another order`;
  const told: string[] = [];
  const others: string[] = [];
  for (const part of come) {
    const subject = subjectOf(part);
    const at = gone.findIndex((old) => subjectOf(old) === subject);
    const [old] = at < 0 ? [] : gone.splice(at, 1);
    if (old === undefined) others.push(part);
    else told.push(`“${part}”, was “${old}”`);
  }
  // Somebody else does it, or something else.
  for (const part of others) told.push(gone.length > 0 ? `“${part}”, was “${gone.shift()}”` : `now also “${part}”`);
  return [...told, ...gone.map((part) => `no longer “${part}”`)].join('; ');
}

function subjectOf(part: string): string {
  return /^(?:next )?\S+/.exec(part)?.[0] ?? part;
}

function passWords(after: Thing, open: ReadonlyMap<string, Change>, speech: Speech): Told[] {
  const { title, values } = after;
  const words: string[] = [];
  let matters = false;
  const to = open.get('to');
  const from = open.get('from');
  if (from && noticed(from)) words.push(`played by ${from.after}, was by ${from.before}`);
  if (to && noticed(to)) words.push(`to ${to.after}, was to ${to.before}`);
  matters ||= words.length > 0;
  const length = open.get('length');
  if (length?.by && noticed(length)) {
    words.push(`${apart(length, speech)} ${length.by < 0 ? 'shorter' : 'longer'} (${isWas(length, speech)})`);
    matters ||= Math.abs(length.by) >= 0.5;
  }
  const slack = open.get('slack');
  if (slack && noticed(slack)) {
    words.push(slackWords(`${values['to']?.value ?? 'the receiver'}`, slack, speech));
    // Who stands ready for seconds on end does not notice some more of them.
    matters ||= isLate(slack.before) !== isLate(slack.after) || (Math.abs(slack.by ?? 1) >= 0.3 && Math.min(Number(slack.before ?? 0), Number(slack.after ?? 0)) < 1);
  }
  const margin = open.get('margin');
  if (margin && noticed(margin)) {
    words.push(rivalWords(`${values['rival']?.value ?? 'nobody'}`, margin, speech));
    matters ||= Number(margin.before ?? 1) < 0 !== Number(margin.after ?? 1) < 0;
  }
  const lanes = open.get('openLanes');
  if (lanes) words.push(`open lanes: ${isWas(lanes, speech)}`);
  if (words.length === 0) {
    const rest = new Map([...open].filter(([, change]) => noticed(change)));
    if (rest.size === 0) return [told('changed', '')];
    words.push(pieces(rest, { start: 'leaves after', flight: 'is under way', launch: 'leaves at', arrival: 'arrives at', rival: 'nearest opponent' }, speech));
  }
  return [told('changed', `${capital(title)}: ${words.join('; ')}.`, { grade: matters ? 'matters' : 'detail' })];
}

function isLate(slack: Change['before']): boolean {
  return typeof slack === 'number' && slack <= -lateFrom;
}

function slackWords(who: string, { before, after }: Change, speech: Speech): string {
  const had = (value: Change['before'], verb: string, was: string) => (
    typeof value !== 'number' ? 'nobody was there' : value < 0 ? `${was} ${said(-value, 's', speech)} late` : `${verb} ${said(value, 's', speech)} in hand`
  );
  if (typeof after !== 'number') return `nobody is there now, ${who} ${had(before, 'had', 'was')}`;
  const now = after < 0 ? `is${isLate(after) === isLate(before) ? '' : ' now'} ${said(-after, 's', speech)} late` : had(after, isLate(before) ? 'is on time with' : 'has', 'is');
  const sides = typeof before === 'number' && before >= 0 === after >= 0;
  return `${who} ${now}, ${sides ? `${after < 0 ? 'was' : 'had'} ${said(Math.abs(before), 's', speech)}` : had(before, 'had', 'was')}`;
}

function rivalWords(who: string, { before, after }: Change, speech: Speech): string {
  const by = (value: Change['before'], comes: string) => (typeof value !== 'number' ? 'no opponent was near' : value < 0 ? `${comes} ${said(-value, 's', speech)} before it` : `${comes} ${said(value, 's', speech)} too late for it`);
  return typeof after !== 'number' ? `no opponent is near now, ${by(before, 'one came')}` : `${who} ${by(after, 'comes')}, ${by(before, 'came')}`;
}

function repetitionWords({ title, parent }: Thing, open: ReadonlyMap<string, Change>, speech: Speech): Told[] {
  const say = (properties: readonly string[], words: (change: Change) => string, grade: Told['grade'] = 'matters'): Told[] => {
    const own = properties.map((property) => open.get(property)).filter((change) => change !== undefined);
    const [first] = own;
    return first ? [told('changed', own.some(noticed) ? words(first) : '', { properties, grade })] : [];
  };
  return [
    ...say(['duration'], (change) => (
      change.after === null ? 'Nothing is played any more.' : change.before === null ? `A repetition takes ${said(change.after, 's', speech)}.`
        : `${parent === null ? 'A repetition' : capital(title)} takes ${isWas(change, speech)}.`
    )),
    ...say(['interval', 'because'], () => startWords(open.get('interval'), open.get('because'), speech)),
    ...say(['players'], (change) => `${change.after} players, ${change.before === 1 ? 'was' : 'were'} ${change.before}.`),
    ...say(['spaceEach', 'spaceOutfield'], () => `Space a player: ${isWas(open.get('spaceEach') ?? open.get('spaceOutfield')!, speech)}${open.has('spaceEach') ? '' : ' (without goalkeepers)'}.`),
    ...say(['touchesEach', 'metresEach'], () => `A minute a player: ${pieces(open, { touchesEach: 'touches', metresEach: 'runs' }, speech)}.`, 'detail')
      .map((each) => (each.sentence === '' ? each : { ...each, sentence: `A minute a player: ${pieces(new Map([...open].filter(([property]) => property.endsWith('sEach'))), { touchesEach: 'touches', metresEach: 'runs' }, speech)}.` })),
  ];
}

function startWords(interval: Change | undefined, because: Change | undefined, speech: Speech): string {
  const why = because && because.after !== null ? `; what decides it now: ${because.after}` : '';
  if (interval?.after === null) return 'There is no next start any more.';
  if (interval?.before === null) return `A new start every ${said(interval.after, 's', speech)}${why}.`;
  return interval && noticed(interval) ? `A new start every ${isWas(interval, speech)}${why}.` : `What decides the next start: ${because?.after}, was: ${because?.before}.`;
}

function rotationWords({ renames }: Telling, before: Thing, after: Thing, open: ReadonlyMap<string, Change>): Told {
  const words: string[] = [];
  const closes = open.get('closes');
  const order = open.get('order');
  if (closes) words.push(closes.after === 'yes' ? `the rotation closes now: everyone is home after ${after.values['order']?.value} repetitions` : 'the rotation does not close any more: a place is left empty or gets two');
  else if (order) words.push(`everyone is home after ${order.after} repetitions, was ${order.before}`);
  const goesOf = (thing: Thing, names: Renames) => new Map(renamed(`${thing.values['ways']?.value ?? ''}`, names).split(', ').map((way) => way.split(' → ') as [string, string]));
  const [was, is] = [goesOf(before, renames), goesOf(after, new Map())];
  const ways = [...is].filter(([from, to]) => was.get(from) !== to).map(([from, to]) => (to === from ? `${from} stays` : `${from} goes to ${to}`) + (was.has(from) ? ` (was ${was.get(from)})` : ''));
  if (ways.length > 0) words.push(`now ${listed(ways)}`);
  if (words.length === 0 && open.has('cycles')) words.push(`the places are taken in another order: ${after.values['cycles']?.value ?? 'none'}`);
  if (words.length === 0) words.push(`the rotation is ${rotationKinds[`${after.values['written']?.value}`] ?? 'the same'} now, with the same ways`);
  return told('changed', `${capital(words.join('; '))}.`, { grade: closes || order || ways.length > 0 ? 'matters' : 'detail' });
}

const rotationKinds: Readonly<Record<string, string>> = { arrows: 'written as arrows', follow: 'written as “follow”', read: 'read from where players end' };
