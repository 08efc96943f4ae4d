/** The sentences of facts, by what they are about. */
import type { Change, ThingKind } from './comparison.ts';
import type { Difference } from './differences.ts';
import { following, moved, spotsOf } from './moves.ts';
import { beatWords, passWords, repetitionWords, rotationWords } from './play-sentences.ts';
import { capital, counted, isWas, listed, moreOrFewer, noticed, pieces, place, said, type Speech, way } from './say.ts';
import type { Thing } from './thing.ts';
import { told, type Telling, type Told } from './told.ts';

export function sentenceOf(telling: Telling): readonly Told[] {
  const { difference: { pair: { before, after }, changes }, free } = telling;
  if (![...changes.values()].some(free) && telling.follow.length === 0) return [];
  if (before && after) return changed(telling, before, after);
  return after ? [came(telling, after)] : [went(telling, before!)];
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
    case 'rule': return ruleWords('new rule', title);
    case 'point': return `new coaching point: ${title}`;
    case 'question': return `new question: ${title}`;
    case 'safety': return `new for safety: ${title}`;
    case 'note': return `new note: ${title}`;
    case 'problem': return `new ${severityWords(values)}: ${title}`;
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
    case 'sequence': return `${sequenceName(after)} is new${deedWords(after)}`;
    case 'drill': case 'zone': case 'balls': case 'team': case 'player': case 'action': case 'rotation': case 'pass': case 'repetition':
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

function goneWords(before: Thing): string {
  const { title, kind, words, values } = before;
  switch (kind) {
    case 'sequence': return `${sequenceName(before)} is gone${deedWords(before)}`;
    case 'rule': return ruleWords('rule', title, ' gone');
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
    case 'drill': case 'let': case 'area': case 'zone': case 'furniture': case 'balls': case 'team': case 'station': case 'player': case 'action':
    case 'rotation': case 'pass': case 'repetition':
      return `${title} ${/^the \d+ /.test(title) ? 'are' : 'is'} gone`;
  }
}

function sequenceName({ title, values }: Thing): string {
  return `${title}${values['mirrors'] ? `, which mirrors “${values['mirrors'].value}”,` : ''}`;
}

function deedWords({ parts }: Thing): string {
  return parts.length === 0 ? '' : `: ${parts.join(', ')}`;
}

function severityWords(values: Thing['values']): string {
  const severity = values['severity']?.value;
  return severity === 'error' || severity === 'warning' ? severity : 'remark';
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
function kitOf({ difference, free, all }: Telling): { readonly also: readonly Difference[]; readonly words: string } {
  const { before, after } = difference.pair;
  const one = (after ?? before)!;
  const what = `${one.values['what']?.value}s`;
  const kit = one.kind === 'furniture' ? all.find(({ pair }) => (pair.after ?? pair.before)!.kind === 'kit' && (pair.after ?? pair.before)!.id === what) : undefined;
  const change = kit?.changes.get('count');
  if (!kit || !change || !free(change)) return { also: [], words: '' };
  const [was, is] = [Number(change.before ?? 0), Number(change.after ?? 0)];
  if (is > was !== (after !== null)) return { also: [], words: '' };
  return { also: [kit], words: ` (${moreOrFewer(is - was, what).toLowerCase()}: ${is}, ${was === 1 ? 'was' : 'were'} ${was})` };
}

// ---------------------------------------------------------------- changed

function changed(telling: Telling, before: Thing, after: Thing): readonly Told[] {
  const { difference, free, speech, follow } = telling;
  const open = new Map([...difference.changes].filter(([, change]) => free(change)));
  switch (after.kind) {
    case 'drill':
      return headerLines(telling, open);
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
    case 'problem':
      return [open.has('severity') ? told('changed', `Still, now as ${after.values['severity']?.value}: ${after.title}.`, { grade: gradeOf(after) }) : told('changed', `Still: ${after.title}.`, { grade: 'detail' })];
    case 'rule':
      return [told('changed', `${changedRule(before.title, after.title)}.`)];
    case 'point':
    case 'question':
    case 'safety':
    case 'note':
      return [told('changed', `${capital(textNames[after.kind] ?? after.kind)}: ${after.title}, was: ${before.title}.`, { grade: small.has(after.kind) ? 'detail' : 'matters' })];
    case 'part':
    case 'progression':
    case 'import': {
      const name = open.get('name');
      const sizes = open.get('sizes');
      const rest = new Map([...open].filter(([property]) => property !== 'name' && property !== 'number' && property !== 'sizes'));
      const words = [...(rest.size > 0 ? [pieces(rest, partNames, speech)] : []), ...(sizes ? [groupWords(sizes)] : [])];
      return [
        ...(name ? [told('renamed', `${capital(before.title)} is called “${name.after}” now.`, { properties: ['name'] })] : []),
        told('changed', words.length === 0 ? '' : `${capital(after.title)}: ${words.join('; ')}.`),
      ];
    }
  }
}

/** `groups of 4 + 4, was 5 + 4`, `all 8 together, was groups of 4 + 4` */
function groupWords({ before, after }: Change): string {
  const inWords = (sizes: Change['after']) => (sizes === null ? 'no groups' : `${sizes}`.includes('+') ? `groups of ${sizes}` : `all ${sizes} together`);
  const [now, old] = [inWords(after), inWords(before)];
  const alike = now.replaceAll(/\d.*?(?= together|$)/g, '') === old.replaceAll(/\d.*?(?= together|$)/g, '');
  return `${now}, was ${alike ? before : old}`;
}

/** `new rule for Joker: at most 1 touch`, `rule for Joker gone: at most 1 touch` */
function ruleWords(what: string, title: string, gone = ''): string {
  const { who, rule } = ruleOf(title);
  return `${what}${who === null ? '' : ` for ${who}`}${gone}: ${rule}`;
}

/** `Rule for Joker: at most 1 touch, was at most 2 touches` */
function changedRule(before: string, after: string): string {
  const [old, now] = [ruleOf(before), ruleOf(after)];
  const was = old.who === now.who ? old.rule : before;
  return `${capital(ruleWords('rule', after))}${`${now.rule}${was}`.includes(',') ? ';' : ','} was ${was}`;
}

/** Whom or what it is for, and the rest; the coach's own words stay whole. */
function ruleOf(title: string): { readonly who: string | null; readonly rule: string } {
  const [, who = null, rule = title] = /^(?!“)([^:]+): (.*)$/s.exec(title) ?? [];
  return { who: who === 'Everyone' ? 'everyone' : who, rule };
}

function headerLines(telling: Telling, open: ReadonlyMap<string, Change>): Told[] {
  const { speech, follow } = telling;
  return [...open].filter(([property]) => property !== 'players' || !countedToo(telling)).map(([property, change]) => {
    const words = property === 'units' ? `${isWas(change, speech, 'were in')}${following(follow)}` : isWas(change, speech);
    return told('changed', `${headerWords[property] ?? property} ${words}.`, {
      properties: property === 'age' || property === 'years' ? ['age', 'years'] : [property],
      grade: headerDetails.has(property) ? 'detail' : 'matters', leads: property === 'units',
    });
  });
}

/** The count of the header is told with that of the play. */
function countedToo({ difference, all }: Telling): boolean {
  const written = difference.changes.get('players');
  const counted = all.find(({ pair }) => pair.after?.kind === 'repetition' && pair.after.id === '')?.changes.get('players');
  return written?.after === counted?.after && written?.before === counted?.before;
}

const textNames: Readonly<Partial<Record<ThingKind, string>>> = { point: 'coaching point', question: 'question', safety: 'safety', note: 'note' };
const headerWords: Readonly<Record<string, string>> = {
  age: 'It is for', years: 'It is for', players: 'Players written in the header:', units: 'Lengths are in', tempo: 'The tempo is', ground: 'The ground is', roll: 'The ball rolls', passPace: 'Passes arrive at',
  runPace: 'Runs reach', theme: 'The theme is', time: 'It lasts', level: 'The level is', tags: 'Tags:', order: 'The order is', pitch: 'The pitch is', kit: 'The kit:', hands: 'Pairs of hands:', changeovers: 'Setting out and changing over take',
};
const headerDetails: ReadonlySet<string> = new Set(['level', 'tags', 'theme']);
const partNames: Readonly<Record<string, string>> = { lasts: 'lasts', groups: 'groups:', drill: 'plays', progression: 'with', resting: 'resting', at: 'at', lever: 'changes', kind: 'is a' };
const teamWords: Readonly<Record<string, string>> = { size: 'players', bib: 'bibs', kind: 'a' };
const roleWords: Readonly<Record<string, string>> = { touches: 'touches', distance: 'runs', working: 'works', waiting: 'waits' };

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
  // The place in the name of what has no other is told anyway.
  const title = after!.kind === 'furniture' || after!.kind === 'balls' ? (after!.title.split(' at ')[0] ?? '') : after!.title;
  const moves = path ? [`${stands} at ${place(after!.at!, speech)}, was at ${place(before!.at!, speech)}: ${path}`] : [];
  const words = [...moves, ...(rest.size > 0 ? [pieces(rest, standingNames, speech)] : [])];
  if (words.length === 0) return told('changed', '');
  const resized = after!.kind === 'zone' ? sizes(difference, speech) : null;
  if (resized !== null) {
    // Those of one line: the corners of an area.
    const alike = all.filter((each) => {
      const zone = each.pair.after;
      return each !== difference && zone?.kind === 'zone' && zone.span?.from === after!.span?.from && sizes(each, speech) === resized;
    });
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
  holds: 'holds', team: 'plays for', as: 'is a', width: 'is wide', length: 'is long', height: 'is high', radius: 'has a radius of', facing: 'faces',
  shape: 'is a', outline: 'has corners at', count: 'are', holder: 'belongs to', what: 'is a', name: 'is called',
};

function sequenceWords(open: ReadonlyMap<string, Change>, { title }: Thing, speech: Speech): Told[] {
  const beats = open.get('beats');
  const rest = new Map([...open].filter(([property]) => property !== 'beats'));
  return [
    ...(beats ? [told('changed', `${capital(title)} has ${beats.after} beats, had ${beats.before}.`, { grade: 'detail', properties: ['beats'] })] : []),
    ...(rest.size > 0 ? [told('changed', `${capital(title)}: ${pieces(rest, { name: 'is called', after: 'goes on from', mirrors: 'mirrors', kind: 'is a' }, speech)}.`)] : []),
  ];
}
