/** From what differs to what a coach is told: what one cause moved is told once, and every difference is in exactly one fact. */
import { causesOf } from './causes.ts';
import { type Change, type Fact, type FactKind, isNewProblem, thingKinds } from './comparison.ts';
import type { Difference } from './differences.ts';
import { called, renamed, type Renames } from './match.ts';
import { moved, type Followers } from './moves.ts';
import { capital, noticed, type Speech } from './say.ts';
import { sentenceOf } from './sentences.ts';
import type { Thing } from './thing.ts';
import type { Told } from './told.ts';

/** Takes what nobody has told yet, so that it is told once. */
type Claim = (difference: Difference, wanted?: (property: string, change: Change) => boolean) => Change[];

export function factsOf(differences: readonly Difference[], renames: Renames, speech: Speech): Fact[] {
  const changed = differences.filter(({ changes }) => changes.size > 0);
  const claimed = new Set<Change>();
  const claim: Claim = (difference, wanted = () => true) => {
    const own = [...difference.changes].filter(([property, change]) => !claimed.has(change) && wanted(property, change)).map(([, change]) => change);
    for (const change of own) claimed.add(change);
    return own;
  };
  // A team that is renamed takes its players with it.
  const facts: Fact[] = changed.filter(isRenamed).map((difference) => renaming(difference, changed, renames, claim)).filter(({ changes }) => changes.length > 0);

  const followers = followersOf(changed, causesOf(differences, renames));
  const parts = partsOf(changed);
  const unseen: Change[] = [];
  const tell = (difference: Difference, { kind, sentence, grade }: Told, changes: readonly Change[]): void => {
    // What ends in a question needs no full stop.
    if (changes.length > 0) facts.push({ ...factAbout(difference, kind), sentence: sentence.replace(/\?\.$/, '?'), grade, changes });
  };

  for (const difference of changed) {
    // Whoever only follows is told with its cause.
    if (followers.caused.has(difference)) continue;
    const follow = followers.behind.get(difference) ?? [];
    for (const told of sentenceOf({ difference, free: (change) => !claimed.has(change), follow, renames, speech, all: differences })) {
      const own = claim(difference, (property) => told.properties === null || told.properties.includes(property));
      const rest = told.leads ? [...follow, ...(parts.get(difference) ?? []), ...told.also].flatMap((each) => claim(each)) : [];
      if (told.sentence === '') unseen.push(...own, ...rest);
      else tell(difference, told, [...own, ...rest]);
    }
  }
  for (const { causes, behind } of followers.together) {
    const [first] = behind;
    const told = moved(behind, causes, speech, differences);
    const changes = behind.flatMap((each) => claim(each));
    if (told === null) unseen.push(...changes);
    else if (first) tell(first, { kind: 'moved', sentence: told, grade: 'matters', properties: null, leads: true, also: [] }, changes);
  }
  const left = [...unseen, ...changed.flatMap((each) => claim(each))];
  const first = changed[0];
  if (left.length > 0 && first) {
    const sentence = left.some(noticed) ? 'Some numbers changed as a consequence of the rest.' : 'Some numbers differ by less than a tape or a watch shows.';
    facts.push({ ...factAbout(differences.find(({ pair }) => (pair.after ?? pair.before)!.kind === 'drill') ?? first, 'changed'), sentence, grade: 'detail', changes: left });
  }
  // What does not work now is what a reviewer has to see first.
  const rank = (fact: Fact): number => (isNewProblem(fact) ? -1 : (fact.grade === 'detail' ? thingKinds.length : 0) + thingKinds.indexOf(fact.about.kind));
  return facts.sort((a, b) => rank(a) - rank(b));
}

function factAbout({ pair: { before, after } }: Difference, kind: FactKind): Omit<Fact, 'sentence' | 'grade' | 'changes'> {
  return {
    kind, about: { kind: (after ?? before)!.kind, before: before?.title ?? null, after: after?.title ?? null },
    spans: { before: before?.span ?? null, after: after?.span ?? null }, shared: false,
  };
}

// ---------------------------------------------------------------- new names

function isRenamed({ pair: { before, after }, changes }: Difference): boolean {
  return before !== null && after !== null && (called.has(after.kind) || after.kind === 'drill') && changes.has('name');
}

/** With every line that has changed in nothing but this name. */
function renaming(difference: Difference, all: readonly Difference[], renames: Renames, claim: Claim): Fact {
  const { before, after } = difference.pair;
  const change = difference.changes.get('name')!;
  const [old, now] = [`${change.before ?? ''}`, `${change.after ?? ''}`];
  // Players of a team go by its name.
  const isOurs = ({ pair }: Difference): boolean => {
    const number = pair.before?.kind === 'player' && pair.before.id.startsWith(old) ? pair.before.id.slice(old.length) : '';
    return /^\d+$/.test(number) && pair.after?.id === `${now}${number}`;
  };
  const players = after!.kind === 'team' ? all.filter(isOurs) : [];
  const own = [difference, ...players].flatMap((each) => claim(each, (property) => property === 'name'));
  const names = [old, ...players.map(({ pair }) => pair.before!.id)];
  const mentions = all.flatMap((each) => claim(each, (_, { before: was, after: is }) => {
    if (typeof was !== 'string' || typeof is !== 'string' || renamed(was, renames) !== is) return false;
    return was === old || wordsOf(was).some((word) => names.includes(word));
  }));
  const quoted = after!.kind === 'drill' || after!.kind === 'sequence';
  const what = after!.kind === 'drill' ? 'The drill' : quoted ? `The ${after!.title.split(' ')[1]}` : old === '' ? capital(before!.title) : old;
  const name = quoted ? `“${now}” now${old === '' ? '' : `, was “${old}”`}` : `${now} now`;
  const sentence = now === '' ? `${what}${quoted ? ` “${old}”` : ''} has no name now.`
    : `${what} is called ${name}${players.length > 0 ? ', and its players with it' : ''}.`;
  return { ...factAbout(difference, 'renamed'), sentence, grade: after!.kind === 'let' ? 'detail' : 'matters', changes: [...own, ...mentions] };
}

function wordsOf(text: string): readonly string[] {
  return text.match(/[\p{L}\p{N}_]+/gu) ?? [];
}

// ---------------------------------------------------------------- what goes with what

interface Following {
  readonly caused: ReadonlySet<Difference>;
  /** Those that follow from one cause, by it. */
  readonly behind: ReadonlyMap<Difference, Followers>;
  /** Those that follow from several at once. */
  readonly together: readonly { readonly causes: readonly Difference[]; readonly behind: Followers }[];
}

function followersOf(changed: readonly Difference[], causes: ReturnType<typeof causesOf>): Following {
  const ranks = new Map(changed.map((each, index) => [each, index]));
  const groups = new Map<string, { causes: Difference[]; behind: Difference[] }>();
  const caused = new Set<Difference>();
  for (const difference of changed) {
    const roots = [...causes(difference)].sort((a, b) => (ranks.get(a) ?? 0) - (ranks.get(b) ?? 0));
    if (roots.length === 0 || difference.pair.after?.kind === 'beat') continue;
    caused.add(difference);
    const key = roots.map((root) => ranks.get(root)).join(' ');
    const group = groups.get(key) ?? { causes: roots, behind: [] };
    group.behind.push(difference);
    groups.set(key, group);
  }
  const all = [...groups.values()];
  const single = all.filter((group) => group.causes.length === 1);
  return { caused, behind: new Map(single.map((group) => [group.causes[0]!, group.behind])), together: all.filter((group) => group.causes.length > 1) };
}

/**
 * Of sequences that came or went: all that is in them. Of beats that came, went or say something else: their movements, and the
 * passes that came or went with them.
 */
function partsOf(changed: readonly Difference[]): ReadonlyMap<Difference, readonly Difference[]> {
  const whole = new Map<string, Difference>();
  for (const each of changed) {
    const { before, after } = each.pair;
    const { kind } = (after ?? before)!;
    if (kind !== 'beat' && !(kind === 'sequence' && isOneSided(each))) continue;
    if (before) whole.set(`before ${kind} ${before.id}`, each);
    if (after) whole.set(`after ${kind} ${after.id}`, each);
  }
  const holding = (side: 'before' | 'after', thing: Thing | null, alone: boolean): Difference | undefined => {
    if (!thing) return undefined;
    const sequence = alone ? whole.get(`${side} sequence ${sequenceOf(thing)}`) : undefined;
    return sequence ?? (thing.kind === 'action' || (thing.kind === 'pass' && alone) ? whole.get(`${side} beat ${thing.parent}`) : undefined);
  };
  const parts = new Map<Difference, Difference[]>();
  for (const each of changed) {
    const { before, after } = each.pair;
    const holder = holding('after', after, isOneSided(each)) ?? holding('before', before, isOneSided(each));
    if (holder) parts.set(holder, [...(parts.get(holder) ?? []), each]);
  }
  return parts;
}

function isOneSided({ pair: { before, after } }: Difference): boolean {
  return before === null || after === null;
}

/** The sequence or phase that something is a part of; null for what stands by itself. */
function sequenceOf({ kind, parent, traits }: Thing): string | null {
  switch (kind) {
    case 'beat': case 'repetition': return parent;
    case 'action': return parent?.replace(/ \d+$/, '') ?? null;
    case 'pass': return traits[0] ?? null;
    default: return null;
  }
}
