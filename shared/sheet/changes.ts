/** What a progression or a regression changes in its drill: what is set out, said and played otherwise, then the numbers it moves. */
import { analyseDrill, type Analysis, type DrillAnalysis } from '../analyse.ts';
import type { ChangedDrill } from '../model/drill.ts';
import type { Fact } from '../review/comparison.ts';
import { compare } from '../review/compare.ts';
import { asDrill } from '../scene/phase.ts';
import { beatWords } from '../scene/words.ts';
import { bullets, minor, titled, type Block } from './blocks.ts';

export function changes(analysis: DrillAnalysis): Block[] {
  const of = (kind: ChangedDrill['kind']) => analysis.drill.changes.filter((change) => change.kind === kind).flatMap((change): Block[] => [
    minor(`${change.name} (${change.lever})`), ...bullets(differences(analysis, analyseDrill(change.drill))),
  ]);
  return [...titled('Make it harder', of('progress')), ...titled('Make it easier', of('regress'))];
}

/** What a coach sees to; how long passes and runs become the numbers tell. */
const setOutOrSaid: ReadonlySet<Fact['about']['kind']> = new Set([
  'drill', 'area', 'zone', 'furniture', 'balls', 'team', 'station', 'player', 'rotation', 'rule', 'point', 'question', 'safety', 'note',
]);

function differences(before: DrillAnalysis, after: DrillAnalysis): string[] {
  const facts = compare(byItself(before), byItself(after)).subjects.flatMap((subject) => subject.facts);
  // On another area or with other numbers everyone spreads out anew, and the team has told who is gone.
  const spread = facts.some(({ about }) => about.kind === 'area' || about.kind === 'team');
  const told = facts.filter(({ about, grade, kind }) => setOutOrSaid.has(about.kind) && (grade === 'matters' || kind !== 'changed')
    && !(spread && kind !== 'changed' && (about.kind === 'player' || about.kind === 'balls')));
  const found = [...told.map(({ sentence }) => sentence), ...replayed(before, after), ...numbers(before, after)];
  return found.length > 0 ? found : ['Nothing else to set out, and the same numbers.'];
}

/** The drill without its progressions, which are told one by one. */
function byItself(analysis: DrillAnalysis): Analysis {
  return {
    text: '', file: { kind: 'file', span: { from: 0, to: 0 }, items: [], end: [] }, sessions: [], problems: [], names: [],
    drills: [{ ...analysis, drill: { ...analysis.drill, changes: [] } }],
  };
}

// ---------------------------------------------------------------- play

function replayed(before: DrillAnalysis, after: DrillAnalysis): string[] {
  const [old, now] = [playOf(before), playOf(after)];
  const known = new Set(old.map(withoutPlaces));
  const kept = new Set(now.map(withoutPlaces));
  return [
    ...now.filter((line) => !known.has(withoutPlaces(line))).map((line) => `Now ${line}.`),
    ...old.filter((line) => !kept.has(withoutPlaces(line))).map((line) => `No longer ${line}.`),
  ];
}

/** `2: Left passes to Top`, of all that is played. */
function playOf(analysis: DrillAnalysis): string[] {
  const plays = [analysis, ...analysis.phases.map((phase) => asDrill(analysis, phase))];
  return plays.flatMap(({ drill, timeline }) => beatWords(drill, timeline).map(({ label, text }) => `${label}: ${text}`));
}

/** Runs that end elsewhere because something moved are the same play. */
function withoutPlaces(line: string): string {
  return line.replace(/\([^)]*\)/g, '');
}

// ---------------------------------------------------------------- numbers

function numbers(before: DrillAnalysis, after: DrillAnalysis): string[] {
  const now = measured(after);
  const found = measured(before).flatMap(([what, old], index) => {
    const other = now[index]?.[1] ?? '–';
    return old === other ? [] : [`${what} ${other}, was ${old}`];
  });
  const words = found.join('; ');
  return words === '' ? [] : [`${words[0]?.toUpperCase()}${words.slice(1)}.`];
}

function measured({ measures: { spacePerPlayer, duration, interval, perMinute } }: DrillAnalysis): (readonly [string, string])[] {
  return [
    ['space a player', spacePerPlayer ? `${Math.round(spacePerPlayer.outfield)} m²` : '–'],
    ['one repetition', `${duration.toFixed(1)} s`],
    ['a start every', interval ? `${interval.seconds.toFixed(1)} s` : '–'],
    ['touches a minute each', perMinute ? perMinute.touches.toFixed(1) : '–'],
    ['metres a minute each', perMinute ? `${Math.round(perMinute.metres)}` : '–'],
  ];
}
