/** Comparisons of files as words, for a terminal, a pull request and git. */
import type { Span } from '../../grammar/tree.ts';
import { analyseDrill, type Analysis, type DrillAnalysis } from '../analyse.ts';
import { problemsOn } from '../checks/on-sheet.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import { within } from '../model/span.ts';
import type { Flagged } from '../scene/flagged.ts';
import type { SessionAnalysis } from '../session/analysis.ts';
import { compare } from './compare.ts';
import { type Comparison, type Fact, isNewProblem, type Subject, type ThingKind, type Version } from './comparison.ts';
import { eveningPictures } from './evening.ts';
import type { Compared } from './page.ts';
import { flagOf, type PictureOptions, picturesOf } from './picture.ts';
import { listed } from './say.ts';

/** A file in both versions; null where it is not there. */
export interface FilePair {
  /** As the newer version has it. */
  readonly name: string;
  readonly before: Analysis | null;
  readonly after: Analysis | null;
}

export interface ComparedFile extends FilePair {
  readonly comparison: Comparison;
}

export function comparedFiles(pairs: readonly FilePair[]): ComparedFile[] {
  return pairs.map((pair) => ({ ...pair, comparison: compare(pair.before, pair.after) }));
}

/** Only what changed. */
export function changedFiles(files: readonly ComparedFile[]): ComparedFile[] {
  return withSubjects(files, (subject) => ownFacts(subject).length > 0);
}

/** Those that have such subjects, with these alone. */
export function withSubjects(files: readonly ComparedFile[], wanted: (subject: Subject) => boolean): ComparedFile[] {
  return files
    .map((file) => ({ ...file, comparison: { subjects: file.comparison.subjects.filter(wanted) } }))
    .filter(({ comparison }) => comparison.subjects.length > 0);
}

export interface PicturedSubject extends Compared {
  readonly file: string;
  /** Of a game: the phases, by name, in which something changed and which its pictures do not show. */
  readonly otherPhases: readonly string[];
}

/** Every drill, progression and session, with its pictures; on a page (`bare`) a game has each phase in which something changed. */
export function pictured(files: readonly ComparedFile[], options: PictureOptions): PicturedSubject[] {
  return files.flatMap(({ name, before, after, comparison }) => comparison.subjects.flatMap((subject): PicturedSubject[] => {
    const title = titleOf(subject, files.length > 1 ? name : null);
    const [was, is] = [drillIn(before, subject.before), drillIn(after, subject.after)];
    const phases = phasesOf(subject, is);
    const [first, ...others] = playsOutside(subject, was, is) ? [undefined, ...phases] : phases;
    const problems = newProblems(subject, is, after);
    const show = (shown: Subject, words: string, phase: PhaseAnalysis['phase'] | undefined, further: boolean): PicturedSubject => {
      const pictures = subject.kind === 'session' ? eveningPictures(sessionIn(before, subject.before), sessionIn(after, subject.after), options)
        : picturesOf(was, is, subject, problems, { ...(phase ? { phase: phase.id } : {}), ...options });
      return { file: name, subject: shown, title: words, pictures, further, otherPhases: phases.flatMap((each) => (each.name === null || each.name === pictures?.phase ? [] : [each.name])) };
    };
    const more = options.bare === true && options.phase === undefined ? others : [];
    return [
      show(subject, title, first, false),
      ...more.flatMap((phase) => (phase ? [show({ ...subject, facts: subject.facts.filter((fact) => isIn(phase, fact)) }, `${title}: ${phase.name ?? ''}`, phase, true)] : [])),
    ];
  }));
}

/** `the phase “Round the outside”; “Won” changed too`; empty for a drill that is no game. */
export function phaseNote({ pictures, otherPhases }: PicturedSubject): string {
  const others = listed(otherPhases.map((name) => `“${name}”`));
  if (!pictures || (pictures.phase === null && others === '')) return '';
  return `${pictures.phase === null ? 'the play outside the phases' : `the phase “${pictures.phase}”`}${others === '' ? '' : `; ${others} changed too`}`;
}

/** What is not told of the drill around a progression already. */
export function ownFacts({ facts }: Subject): readonly Fact[] {
  return facts.filter(({ shared }) => !shared);
}

function titleOf(subject: Subject, file: string | null): string {
  const name = nameOf(subject);
  switch (subject.kind) {
    case 'file': return file ?? 'The file';
    case 'drill': return file === null ? name : `${name} (${file})`;
    case 'progression': return `${name}${file === null ? '' : ` (${file})`}, a variation`;
    case 'session': return `${name}, the session${file === null ? '' : ` (${file})`}`;
  }
}

function nameOf({ before, after }: Subject): string {
  return (after ?? before)?.name ?? '';
}

function drillIn(analysis: Analysis | null, version: Version | null): DrillAnalysis | null {
  const drill = analysis?.drills[version?.drill ?? -1] ?? null;
  const change = drill?.drill.changes.find(({ id }) => id === version?.change);
  return change ? analyseDrill(change.drill) : drill;
}

function sessionIn(analysis: Analysis | null, version: Version | null): SessionAnalysis | null {
  return analysis?.sessions.find(({ session }) => session.name === version?.name) ?? null;
}

/** What breaks now and did not before; of a drill that is new, all that breaks. */
function newProblems({ facts, before }: Subject, drill: DrillAnalysis | null, after: Analysis | null): readonly Flagged[] {
  if (before === null && drill && after) return problemsOn(after, drill).filter(({ severity }) => severity === 'error' || severity === 'warning');
  return facts.filter(isNewProblem).flatMap(({ about, spans }) => (about.after !== null && spans.after ? [{ message: `${about.after}.`.replace('?.', '?'), span: spans.after }] : []));
}

/** Those in which something changed. */
function phasesOf({ facts }: Subject, drill: DrillAnalysis | null): PhaseAnalysis['phase'][] {
  return (drill?.phases ?? []).map(({ phase }) => phase).filter((phase) => facts.some((fact) => isIn(phase, fact)));
}

/** Whether a drill that has phases also plays by itself, and something changed in that. */
function playsOutside({ facts }: Subject, was: DrillAnalysis | null, is: DrillAnalysis | null): boolean {
  const inPhase = (drill: DrillAnalysis | null, span: Span | null) => (drill?.phases ?? []).some(({ phase }) => span !== null && within(phase.span, span));
  const plays = is?.drill.sequences.some(({ kind }) => kind === 'sequence') ?? false;
  return plays && facts.some(({ about, spans }) => played.has(about.kind) && !inPhase(is, spans.after) && !inPhase(was, spans.before));
}

const played: ReadonlySet<ThingKind> = new Set(['sequence', 'beat', 'action', 'pass']);

function isIn({ span }: PhaseAnalysis['phase'], { spans: { after } }: Fact): boolean {
  return after !== null && within(span, after);
}

// ---------------------------------------------------------------- plain text

/** For a terminal; empty when nothing changed. */
export function toText(files: readonly ComparedFile[]): string {
  return files.flatMap(({ name, comparison }) => [name, ...comparison.subjects.flatMap((subject) => {
    const facts = ownFacts(subject);
    if (facts.length === 0) return [];
    const lines = (grade: Fact['grade']) => facts.filter((fact) => fact.grade === grade).map(({ kind, sentence }) => `    ${signs[kind]} ${sentence}`);
    const details = lines('detail');
    return [`  ${titleOf(subject, null)}`, ...lines('matters'), ...(details.length > 0 ? ['    in detail:', ...details] : [])];
  }), '']).join('\n');
}

const signs: Readonly<Record<Fact['kind'], string>> = { added: '+', removed: '-', moved: '>', renamed: '=', changed: '~' };

// ---------------------------------------------------------------- pull request

/** A comment for a pull request. `pictures`: by the subject, where its picture lies, relative to the text. */
export function toMarkdown(title: string, changed: readonly PicturedSubject[], pictures: ReadonlyMap<PicturedSubject, string>): string {
  const parts = changed.map((each) => {
    const facts = ownFacts(each.subject);
    const picture = pictures.get(each);
    const sign = (fact: Fact) => {
      const number = picture === undefined ? null : flagOf(fact, each.pictures?.flagged ?? []);
      return isNewProblem(fact) ? `⚠️ ${number === null ? '' : `${number}: `}` : names[fact.kind];
    };
    const list = (grade: Fact['grade']) => facts.filter((fact) => fact.grade === grade).map((fact) => `- ${sign(fact)}${marked(fact.sentence)}`);
    const [matter, detail] = [list('matters'), list('detail')];
    return [
      `### ${marked(each.title)}`, '',
      ...(matter.length > 0 ? matter : ['Nothing that matters on the grass.']), '',
      ...(picture === undefined ? [] : [`![${marked(`${nameOf(each.subject)}: ${shownOf(each.subject)}`)}](${picture})`, '']),
      ...(picture === undefined || phaseNote(each) === '' ? [] : [`The picture shows ${marked(phaseNote(each))}.`, '']),
      ...(detail.length > 0 ? ['<details>', `<summary>${detail.length === 1 ? '1 detail' : `${detail.length} details`}</summary>`, '', ...detail, '', '</details>', ''] : []),
    ].join('\n');
  });
  return `## ${marked(title)}\n\n${parts.length === 0 ? 'Nothing changed.\n' : parts.join('\n')}`;
}

function shownOf({ kind, before, after }: Subject): string {
  if (kind === 'session') return 'where the groups stand';
  return before && after ? 'the new version over the old one' : after ? 'as it is now' : 'as it was';
}

const names: Readonly<Record<Fact['kind'], string>> = { added: '➕ ', removed: '➖ ', moved: '➡️ ', renamed: '🏷️ ', changed: '' };

/** Words of a drill as words, whatever is in them: no mark-up, nobody called upon. */
function marked(words: string): string {
  return words.replace(/\s+/g, ' ').replace(/[\\`*_{}[\]<>#|~&!]/g, '\\$&').replaceAll('@', '@\u200b');
}
