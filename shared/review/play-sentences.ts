/** The sentences of facts about beats, passes, the repetition and the rotation. */
import { lateFrom } from '../timeline/timeline.ts';
import type { Change } from './comparison.ts';
import { renamed, type Renames } from './match.ts';
import { apart, capital, counted, isWas, listed, noticed, pieces, said, type Speech } from './say.ts';
import type { Thing } from './thing.ts';
import { told, type Telling, type Told } from './told.ts';

export function beatWords({ difference: { pair }, renames }: Telling, before: Thing, after: Thing, open: ReadonlyMap<string, Change>): readonly Told[] {
  const title = capital(after.title);
  const place = { properties: ['number', 'sequence'], leads: false };
  const parts = partWords(before.parts.map((part) => renamed(part, renames)), after.parts);
  const text = open.has('text') ? [told('changed', `${title}: ${parts}.`, { properties: ['text'] })] : [];
  if (pair.outOfOrder) return [told('moved', `${title} was ${before.title}: ${after.words}.`, place), ...text];
  // Where the others stand now follows from what came and went.
  return open.has('number') || open.has('sequence') ? [...text, told('changed', '', place)] : text;
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

export function passWords(after: Thing, open: ReadonlyMap<string, Change>, speech: Speech): Told[] {
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
    words.push(rivalWords(after, margin, open.get('rival'), speech));
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

/** Of the opponent who is nearest to cutting out the ball: `Navy is first to the ball by 0.4 s, was 0.2 s too late`. */
function rivalWords(after: Thing, margin: Change, rival: Change | undefined, speech: Speech): string {
  const by = (value: number, toTheBall: string): string => {
    if (Math.abs(value) < 0.05) return `${value < 0 ? 'just first' : 'just too late'}${toTheBall}`;
    return value < 0 ? `first${toTheBall} by ${said(-value, 's', speech)}` : `${said(value, 's', speech)} too late${toTheBall}`;
  };
  const [is, was] = [margin.after, margin.before];
  const who = rival && typeof rival.before === 'string' ? rival.before : null;
  if (typeof is !== 'number') return `no opponent is near now${typeof was === 'number' ? `, ${who ?? 'one'} was ${by(was, '')}` : ''}`;
  const now = `${after.values['rival']?.value ?? 'an opponent'} is ${by(is, is < 0 ? ' to the ball' : ' for the ball')}`;
  return typeof was === 'number' ? `${now}, ${who === null ? '' : `${who} `}was ${by(was, '')}` : `${now}, no opponent was near`;
}

export function repetitionWords({ title, parent }: Thing, open: ReadonlyMap<string, Change>, speech: Speech): Told[] {
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
    ...say(['players'], (change) => `${counted(Number(change.after), 'players')}, ${change.before === 1 ? 'was' : 'were'} ${change.before}.`),
    ...say(['spaceEach', 'spaceOutfield'], () => `Space a player: ${isWas(open.get('spaceEach') ?? open.get('spaceOutfield')!, speech)}${open.has('spaceEach') ? '' : ' (without goalkeepers)'}.`),
    ...say(['touchesEach', 'metresEach'], () => {
      const each = new Map([...open].filter(([property]) => property === 'touchesEach' || property === 'metresEach'));
      return `A minute a player: ${pieces(each, { touchesEach: 'touches', metresEach: 'runs' }, speech)}.`;
    }, 'detail'),
  ];
}

function startWords(interval: Change | undefined, because: Change | undefined, speech: Speech): string {
  const why = because && because.after !== null ? `; what decides it now: ${because.after}` : '';
  if (interval?.after === null) return 'There is no next start any more.';
  if (interval?.before === null) return `A new start every ${said(interval.after, 's', speech)}${why}.`;
  return interval && noticed(interval) ? `A new start every ${isWas(interval, speech)}${why}.` : `What decides the next start: ${because?.after}, was: ${because?.before}.`;
}

export function rotationWords({ renames }: Telling, before: Thing, after: Thing, open: ReadonlyMap<string, Change>): Told {
  const words: string[] = [];
  const closes = open.get('closes');
  const order = open.get('order');
  if (closes?.after === 'yes') words.push(`the rotation closes now: everyone is home after ${after.values['order']?.value} repetitions`);
  else if (closes) words.push('the rotation does not close any more: a place is left empty or gets two');
  else if (order) words.push(`everyone is home after ${order.after} repetitions, was ${order.before}`);
  const [was, is] = [goesOf(before, renames), goesOf(after, new Map())];
  const ways = [...is].filter(([from, to]) => was.get(from) !== to).map(([from, to]) => {
    const old = was.get(from);
    return `${to === from ? `${from} stays` : `${from} goes to ${to}`}${old === undefined ? '' : old === from ? ' (stayed)' : ` (was ${old})`}`;
  });
  if (ways.length > 0) words.push(`now ${listed(ways)}`);
  if (words.length === 0 && open.has('cycles')) words.push(`the places are taken in another order: ${after.values['cycles']?.value ?? 'none'}`);
  if (words.length === 0) words.push(`the rotation is ${rotationKinds[`${after.values['written']?.value}`] ?? 'the same'} now, with the same ways`);
  return told('changed', `${capital(words.join('; '))}.`, { grade: closes || order || ways.length > 0 ? 'matters' : 'detail' });
}

/** From which station to which the one who played there goes. */
function goesOf({ values }: Thing, names: Renames): ReadonlyMap<string, string> {
  const ways = renamed(`${values['ways']?.value ?? ''}`, names).split(', ');
  return new Map(ways.map((way) => way.split(' → ') as [string, string]));
}

const rotationKinds: Readonly<Record<string, string>> = { arrows: 'written as arrows', follow: 'written as “follow”', read: 'read from where players end' };
