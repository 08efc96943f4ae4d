/** What could be written at a place, with what it means. */
import { syntaxOf, type Context } from '../../grammar/form.ts';
import { statementForms } from '../../grammar/statements/index.ts';
import { anchors, type Span, type Unit } from '../../grammar/tree.ts';
import { unitDocs } from '../../grammar/units.ts';
import { words, type WordEntry, type WordGroup } from '../../grammar/words.ts';
import type { NameEntry, NameKind } from '../model/names.ts';
import { grounds, tempos } from '../model/drill.ts';
import { kitKinds } from '../model/session.ts';
import { bibNames } from './colours.ts';
import { changesOf, importedDrills, partNames } from './evening.ts';
import { expectedAfter, type Expected } from './expect.ts';
import { kindWords } from './kinds.ts';
import { namesAt, type Open } from './open.ts';
import { sentenceAt, type Sentence } from './sentence.ts';
import { snippets } from './snippets.ts';

export type CompletionKind = 'keyword' | 'verb' | 'value' | 'unit' | 'anchor' | 'snippet' | NameKind;

export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  /** One line: the form of a statement, or what a name stands for. */
  readonly detail: string;
  /** Markdown. */
  readonly doc: string;
  /** What is written; with `$1` and `${1:name}` where `kind` is `snippet`. */
  readonly insert: string;
  /** Lower comes first. */
  readonly rank: number;
  readonly replaces: Span;
}

export function complete(open: Open, offset: number): readonly Completion[] {
  const sentence = sentenceAt(open.text, offset);
  if (!sentence) return [];
  const names = [...namesAt(open, offset), ...(sentence.context === 'session' ? sessionNames(open, offset, sentence) : [])];
  const values = new Set(names.filter(({ kind }) => kind === 'let').map(({ name }) => name));
  const expected = (words: Sentence['before']): readonly Expected[] => expectedAfter(sentence.context, words, values);
  const goingOn = sentence.before.length > 0 ? [] : expected(sentence.above).filter(isJoint);
  const found = [...expected(sentence.before), ...goingOn].flatMap((each) => items(each, sentence, names));
  const labels = new Set<string>();
  return found
    .sort((a, b) => a.rank - b.rank)
    .filter(({ label }) => !labels.has(label) && labels.add(label))
    .map((item) => ({ ...item, replaces: sentence.word }));
}

/** What only a part of a session can name: drills of other files, progressions of the drill it plays, and other parts. */
function sessionNames(open: Open, offset: number, { before }: Sentence): NameEntry[] {
  const entry = (name: string, kind: NameEntry['kind'], path: string | null): NameEntry =>
    ({ name, kind, drill: null, path, span: { from: 0, to: 0 }, again: [], uses: [] });
  const played = before.findIndex(({ image }) => image === 'of');
  const drill = played < 0 ? undefined : before[played + 1]?.image.slice(1, -1);
  return [
    ...importedDrills(open).map(({ node, path }) => entry(node.name.text, 'drill', path)),
    ...(drill === undefined ? [] : changesOf(open, drill).map((name) => entry(name, 'change', null))),
    ...partNames(open, offset).map((name) => entry(name, 'session', null)),
  ];
}

/** Words that go on with the line above. */
function isJoint(expected: Expected): boolean {
  return expected.kind === 'word' && (expected.word === 'while' || expected.word === 'then');
}

type Item = Omit<Completion, 'replaces'>;

/** After `facing`. */
const ways: ReadonlySet<string> = new Set(['up', 'down', 'left', 'right']);

/** What is most likely meant first: the thing that the sentence asks for, then other ways to say it, then going on. */
const first = 0;
const second = 1;
const third = 2;
const last = 3;

function items(expected: Expected, sentence: Sentence, names: readonly NameEntry[]): readonly Item[] {
  if (sentence.quoted) return quoted(expected, names);
  switch (expected.kind) {
    case 'statement':
      return [...snippetItems(sentence.context), ...statements(sentence.context)];
    case 'word':
      return [wordItem(expected.word, ['modifier', 'joining', 'place', 'value', 'side'], ways.has(expected.word) ? first : third)];
    case 'verb':
      return [wordItem(expected.verb, ['verb'], first)];
    case 'noun':
      return nouns(expected, names);
    case 'word of':
      return [...wordValues(expected), ...(expected.field === 'steps' ? texts(expected, names) : [])];
    case 'text':
      return texts(expected, names);
    case 'subject':
      return subjects(expected.verb, names, sentence);
    case 'place':
      return places(expected.verb, names);
    case 'value':
      return [...pick(names, lets, last), ...pick(names, sides, last)];
    case 'unit':
      return units(expected);
    case 'anchor':
      return anchors.map((anchor) => wordItem(anchor, ['anchor'], first));
    case 'measure':
      return ['width', 'length'].map((side) => wordItem(side, ['side'], second));
  }
}

/** Between quotation marks that stand there already. */
function quoted(expected: Expected, names: readonly NameEntry[]): readonly Item[] {
  if (expected.kind === 'word of' && expected.field === 'bib') return wordValues(expected);
  return expected.kind === 'text' || expected.kind === 'word of' ? texts(expected, names).map((item) => ({ ...item, insert: item.label })) : [];
}

function statements(context: Context): Item[] {
  return statementForms
    .filter(({ stands }) => stands.includes(context))
    .map(({ keyword, pieces, doc, example }) => ({
      label: keyword,
      kind: 'keyword',
      detail: `${keyword} ${syntaxOf(pieces)}`.trim(),
      doc: withExample(doc, example),
      insert: keyword,
      rank: second,
    }));
}

function snippetItems(context: Context): Item[] {
  return snippets
    .filter((snippet) => snippet.stands === context)
    .map(({ label, doc, body }) => {
      const example = body.replaceAll(/\$\{\d+:([^}]*)\}/g, '$1');
      return { label, kind: 'snippet', detail: doc, doc: withExample(doc, example), insert: body, rank: first };
    });
}

function wordItem(word: string, groups: readonly WordGroup[], rank: number): Item {
  const isIn = (entry: WordEntry, group: WordGroup): boolean => entry.group === group && `${entry.word} `.startsWith(`${word} `);
  const entry = groups.flatMap((group) => words.filter((each) => isIn(each, group)))[0]
    ?? words.find((each) => each.word.split(' ').includes(word.split(' ')[0]!));
  const kind = groups[0] === 'verb' ? 'verb' : groups[0] === 'anchor' ? 'anchor' : entry?.group === 'value' ? 'value' : 'keyword';
  return { label: word, kind, detail: entry?.doc ?? '', doc: entry ? withExample(entry.doc, entry.example) : '', insert: word, rank };
}

function withExample(doc: string, example: string): string {
  return `${doc}\n\n\`\`\`drill\n${example}\n\`\`\``;
}

// ---------------------------------------------------------------- names

const people: ReadonlySet<NameKind> = new Set<NameKind>(['station', 'player', 'keeper', 'coach']);
const stations: ReadonlySet<NameKind> = new Set<NameKind>(['station']);
const players: ReadonlySet<NameKind> = new Set<NameKind>(['team', 'floaters', 'station', 'player', 'keeper']);
const obstacles: ReadonlySet<NameKind> = new Set<NameKind>(['pole', 'mannequin', 'cone', 'disc']);
const goals: ReadonlySet<NameKind> = new Set<NameKind>(['goal', 'minigoal', 'gate']);
const teams: ReadonlySet<NameKind> = new Set<NameKind>(['team', 'floaters']);
const zones: ReadonlySet<NameKind> = new Set<NameKind>(['zone', 'zones', 'area']);
const sides: ReadonlySet<NameKind> = new Set<NameKind>(['zone', 'area']);
const lets: ReadonlySet<NameKind> = new Set<NameKind>(['let']);
const spots: ReadonlySet<NameKind> = new Set<NameKind>([
  ...people, ...obstacles, ...goals, ...sides, 'hurdle', 'ladder',
]);

function pick(names: readonly NameEntry[], kinds: ReadonlySet<NameKind>, rank: number): Item[] {
  return names.filter(({ kind }) => kinds.has(kind)).map((entry) => nameItem(entry, rank));
}

function nameItem({ name, kind, path }: NameEntry, rank: number): Item {
  const from = path === null ? '' : ` from ${path}`;
  return { label: name, kind, detail: `${kindWords[kind]}${from}`, doc: '', insert: name, rank };
}

/** What is wanted is told by the field of a statement. */
type Field = Extract<Expected, { kind: 'noun' | 'word of' | 'text' }>;

/** Which kinds of things the field of a statement holds. */
const kindsOfField: Readonly<Record<string, ReadonlySet<NameKind>>> = {
  zone: zones, into: zones, from: zones, who: players, goal: goals, chains: stations, next: stations,
};
const kindsOfStatement: Readonly<Record<string, ReadonlySet<NameKind>>> = {
  station: teams, player: teams, keeper: teams, place: teams, split: sides, zone: sides, zones: sides,
};

function nouns({ field, statement }: Field, names: readonly NameEntry[]): Item[] {
  const kinds = field === 'of' ? kindsOfStatement[statement] : kindsOfField[field];
  const sides = field === 'who' ? ['attackers', 'defenders'].map((word) => wordItem(word, ['value'], first)) : [];
  const floaters = field === 'who' && names.some(({ kind }) => kind === 'floaters') ? [wordItem('floaters', ['statement'], first)] : [];
  return [...pick(names, kinds ?? spots, first), ...sides, ...floaters];
}

/** Who acts; or, after a verb that goes around or at someone, who or what is gone around. */
function subjects(verb: string | null, names: readonly NameEntry[], { before }: Sentence): Item[] {
  return [
    ...pick(names, people, first),
    ...(verb === null ? [] : pick(names, obstacles, second)),
    wordItem('next', ['place'], second),
    ...(before.length === 0 ? snippetItems('beats') : []),
  ];
}

function places(verb: string | null, names: readonly NameEntry[]): Item[] {
  if (verb === 'shoots at') return pick(names, goals, first);
  const words = ['next', 'between', 'mirror of'].map((word) => wordItem(word, ['place'], third));
  return [...pick(names, verb === null ? sides : people, first), ...pick(names, spots, second), ...words, ...pick(names, lets, last)];
}

/** Texts that stand elsewhere already: drills, sequences. */
function texts({ field, statement }: Field, names: readonly NameEntry[]): Item[] {
  const kinds = textKinds[`${statement} ${field}`];
  return kinds ? pick(names, kinds, first).map((item) => ({ ...item, insert: `"${item.label}"` })) : [];
}

const passages: ReadonlySet<NameKind> = new Set<NameKind>(['sequence', 'phase']);
/** By the statement and its field. */
const textKinds: Readonly<Record<string, ReadonlySet<NameKind>>> = {
  'part of': new Set<NameKind>(['drill']),
  'part change': new Set<NameKind>(['change']),
  'joins part': new Set<NameKind>(['session']),
  'without parts': new Set<NameKind>(['session']),
  'sequence of': passages,
  'order steps': passages,
  'phase after': new Set<NameKind>(['phase']),
};

// ---------------------------------------------------------------- values

const lengthUnits: readonly Unit[] = ['m', 'yd', 'ft', 'cm'];
const ages = [...Array.from({ length: 16 }, (_, index) => `U${index + 6}`), 'adult'];

const valuesOf: Readonly<Record<string, readonly string[]>> = { age: ages, tempo: tempos, ground: grounds, units: lengthUnits };

function wordValues({ field, statement }: Field): Item[] {
  if (field === 'anchor') return anchors.map((anchor) => wordItem(anchor, ['anchor'], first));
  if (field === 'bib') return bibNames.map((name) => valueItem(name, 'The colour of the bibs.'));
  if (statement === 'kit') return kitKinds.map((kind) => valueItem(`${kind}s`, 'What there is for the session.'));
  return (valuesOf[statement] ?? []).map((value) => wordItem(value, ['value', 'unit'], first)).map((item) => ({ ...item, kind: 'value' }));
}

function valueItem(value: string, doc: string): Item {
  return { label: value, kind: 'value', detail: doc, doc, insert: value, rank: first };
}

/** The printed spellings of the units that fit. */
function units({ field, statement }: Extract<Expected, { kind: 'unit' }>): Item[] {
  const inBeat = statement === '' && (field === 'delay' || field === 'length');
  const long = ['time', 'bouts', 'pause', 'part', 'length'].includes(statement);
  const fitting: readonly Unit[] = field === 'speed' ? ['m/s', 'km/h'] : inBeat ? ['s'] : long ? ['min', 's'] : lengthUnits;
  return fitting.map((unit) => ({ label: unit, kind: 'unit', detail: unitDocs[unit], doc: unitDocs[unit], insert: unit, rank: first }));
}
