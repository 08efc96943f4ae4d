import type { SessionNode } from '../../grammar/tree.ts';
import { analyseDrill, type Analysis, type DrillAnalysis } from '../analyse.ts';
import { alike, best, featuresOf } from './alike.ts';
import type { Comparison, Fact, Mark, Subject, Version } from './comparison.ts';
import { differencesOf } from './differences.ts';
import { factsOf } from './facts.ts';
import { groundOf, tokens } from './ground.ts';
import { type Pair, pairsOf, type Renames } from './match.ts';
import { changeSpans, fileThings, problemsIn, progressionsOf, sessionThings } from './other-things.ts';
import { numbersOf, playOf } from './play.ts';
import { distinct, type Thing } from './thing.ts';

export { apply, isSame, type Comparison, type Fact, type Subject } from './comparison.ts';

/**
 * What changed between two versions of a file; null stands for a file that is not there. Total. The two ways round mirror each
 * other: what is added one way is removed the other, by the same pairs of things.
 */
export function compare(before: Analysis | null, after: Analysis | null): Comparison {
  const [old, now] = [before ?? nothing, after ?? nothing];
  // Of several pairings as good as each other, the same one whichever way round is asked.
  const turned = old.text > now.text;
  const ways = pairing(turned);
  return {
    subjects: [
      subjectOf(ways, 'file', before && side('the file', fileThings(before)), after && side('the file', fileThings(after))),
      ...ways.likely(old.drills, now.drills, ({ drill }) => drill.name, likeness(old, now)).flatMap(([a, b]) => drillSubjects(ways, old, now, a, b)),
      ...ways.likely(sessionsOf(old), sessionsOf(now), ({ name }) => name.text, (one, other) => alikeWords(one.name.text, other.name.text))
        .map(([a, b]) => subjectOf(ways, 'session', a && side(a.name.text, sessionThings(a, old)), b && side(b.name.text, sessionThings(b, now)))),
    ].filter((subject) => subject.kind !== 'file' || subject.facts.length > 0),
  };
}

const nothing: Analysis = { text: '', file: { kind: 'file', span: { from: 0, to: 0 }, items: [], end: [] }, drills: [], sessions: [], problems: [], names: [] };

interface Pairing {
  readonly pairs: (before: readonly Thing[], after: readonly Thing[]) => { readonly pairs: readonly Pair[]; readonly renames: Renames };
  /** By name, then the most alike; in the order of the newer version, what is gone last. */
  readonly likely: <T>(before: readonly T[], after: readonly T[], nameOf: (one: T) => string, score: (one: T, other: T) => number) => (readonly [T | null, T | null])[];
}

/** How alike two drills must be, of other names, to be two versions of one. */
const leastAlike = 0.35;

function pairing(turned: boolean): Pairing {
  return {
    pairs: (before, after) => {
      if (!turned) return pairsOf(before, after);
      const { pairs, renames } = pairsOf(after, before);
      return { pairs: pairs.map((pair) => ({ ...pair, before: pair.after, after: pair.before })), renames: new Map([...renames].map(([from, to]) => [to, from])) };
    },
    likely: (before, after, nameOf, score) => {
      const partner = new Map<number, number>();
      for (const [row, one] of before.entries()) {
        const column = after.findIndex((other, index) => nameOf(other) === nameOf(one) && ![...partner.values()].includes(index));
        if (column >= 0) partner.set(row, column);
      }
      const rows = [...before.keys()].filter((row) => !partner.has(row));
      const columns = [...after.keys()].filter((column) => ![...partner.values()].includes(column));
      const found = turned
        ? best(columns.length, rows.length, (column, row) => score(before[rows[row]!]!, after[columns[column]!]!), leastAlike).map(([column, row]) => [row, column] as const)
        : best(rows.length, columns.length, (row, column) => score(before[rows[row]!]!, after[columns[column]!]!), leastAlike);
      for (const [row, column] of found) partner.set(rows[row]!, columns[column]!);
      const rowOf = new Map([...partner].map(([row, column]) => [column, row]));
      return [
        ...after.map((other, column) => [before[rowOf.get(column) ?? -1] ?? null, other] as const),
        ...before.filter((_, row) => !partner.has(row)).map((one) => [one, null] as const),
      ];
    },
  };
}

function likeness(old: Analysis, now: Analysis): (one: DrillAnalysis, other: DrillAnalysis) => number {
  const features = new Map([...old.drills.map((each) => [each, old.text] as const), ...now.drills.map((each) => [each, now.text] as const)]
    .map(([each, text]) => [each, featuresOf(tokens(text.slice(each.drill.span.from, each.drill.span.to)))]));
  return (one, other) => alike(features.get(one)!, features.get(other)!);
}

function alikeWords(one: string, other: string): number {
  return alike(featuresOf(tokens(one)), featuresOf(tokens(other)));
}

function sessionsOf({ file }: Analysis): SessionNode[] {
  return file.items.flatMap((item) => (item.kind === 'session' ? [item] : []));
}

interface Side {
  readonly version: Version;
  readonly things: readonly Thing[];
  readonly drill?: DrillAnalysis;
}

/** Of what is no drill. */
function side(name: string, things: readonly Thing[]): Side {
  return { version: { name, drill: -1, change: null }, things };
}

/** A drill, then its progressions and regressions. */
function drillSubjects(ways: Pairing, old: Analysis, now: Analysis, before: DrillAnalysis | null, after: DrillAnalysis | null): Subject[] {
  const subject = subjectOf(ways, 'drill', before && drillSide(old, before), after && drillSide(now, after));
  const changes = ways.likely(before?.drill.changes ?? [], after?.drill.changes ?? [], ({ name }) => name, (one, other) => alikeWords(one.name, other.name));
  const told = new Set(subject.facts.flatMap((fact) => fact.changes.map(({ key }) => key)));
  const progressions = changes.flatMap(([a, b]): Subject[] => {
    // What is new as a whole, or gone, the drill around it has told.
    if (!a || !b || !before || !after) return [];
    const found = subjectOf(ways, 'progression', changeSide(old, before, a), changeSide(now, after, b));
    const isShared = ({ about, changes: own }: Fact): boolean => about.kind !== 'problem' && own.every(({ key }) => told.has(key));
    return [{ ...found, facts: found.facts.map((fact) => ({ ...fact, shared: isShared(fact) })) }];
  });
  return [subject, ...progressions];
}

function drillSide(analysis: Analysis, each: DrillAnalysis): Side {
  return {
    version: { name: each.drill.name, drill: analysis.drills.indexOf(each), change: null }, drill: each,
    things: [...thingsOf(analysis, each), ...progressionsOf(each), ...problemsIn(analysis, each.drill.span, changeSpans(each.drill))],
  };
}

function changeSide(analysis: Analysis, around: DrillAnalysis, { id, name, span, drill }: DrillAnalysis['drill']['changes'][number]): Side {
  const each = analyseDrill(drill);
  const version = { name, drill: analysis.drills.indexOf(around), change: id };
  return { version, drill: each, things: [...thingsOf(analysis, each), ...problemsIn(analysis, span, [])] };
}

function thingsOf({ text }: Analysis, each: DrillAnalysis): Thing[] {
  return [...groundOf(each, text), ...playOf(each, text), ...numbersOf(each)];
}

function subjectOf(ways: Pairing, kind: Subject['kind'], before: Side | null, after: Side | null): Subject {
  const { pairs, renames } = ways.pairs(distinct(before?.things ?? []), distinct(after?.things ?? []));
  const { values, differences } = differencesOf(pairs);
  const units = (after?.drill ?? before?.drill)?.drill.units ?? 'm';
  const facts = before && after ? factsOf(differences, renames, { units }) : whole(kind, before, after, differences.flatMap(({ changes }) => [...changes.values()]));
  return { kind, before: before?.version ?? null, after: after?.version ?? null, values, facts, marks: pairs.flatMap(markOf) };
}

/** Of a drill or a session that came or went there is one thing to tell. */
function whole(kind: Subject['kind'], before: Side | null, after: Side | null, changes: Fact['changes']): Fact[] {
  const [side] = [after ?? before];
  if (!side || changes.length === 0) return [];
  const span = side.things.find((thing) => thing.kind === 'drill')?.span ?? null;
  const name = side.version.name;
  const what = kind === 'file' ? 'The file' : `The ${kind} “${name}”`;
  return [{
    kind: after ? 'added' : 'removed', about: { kind: 'drill', before: before ? name : null, after: after ? name : null },
    sentence: `${what} is ${after ? `new${faultsOf(after)}` : 'gone'}.`, grade: 'matters', spans: { before: before && span, after: after && span }, changes, shared: false,
  }];
}

/** `, with 2 errors and 1 warning: …`, the gravest said; nothing where it is sound. */
function faultsOf({ things }: Side): string {
  const faults = (severity: string) => things.filter(({ kind, values }) => kind === 'problem' && values['severity']?.value === severity);
  const [errors, warnings] = [faults('error'), faults('warning')];
  const first = errors[0] ?? warnings[0];
  if (!first) return '';
  const counts = [[errors.length, 'error'], [warnings.length, 'warning']] as const;
  return `, with ${counts.filter(([many]) => many > 0).map(([many, what]) => `${many} ${what}${many === 1 ? '' : 's'}`).join(' and ')}, such as: ${first.title}`;
}

/** A zone is seen by its outline. */
const onTheGround: ReadonlySet<Thing['kind']> = new Set(['furniture', 'station', 'player']);

function markOf({ before, after }: Pair): Mark[] {
  const thing = (after ?? before)!;
  return onTheGround.has(thing.kind) ? [{ name: thing.title, before: spotOf(before), after: spotOf(after) }] : [];
}

function spotOf(thing: Thing | null): Mark['before'] {
  return thing?.at ? { x: thing.at.x, y: thing.at.y } : null;
}
