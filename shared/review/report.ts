/** Comparisons of files as words, for a terminal, a pull request and git. */
import { analyseDrill, type Analysis, type DrillAnalysis } from '../analyse.ts';
import type { PhaseAnalysis } from '../games/phases.ts';
import { compare } from './compare.ts';
import type { Comparison, Fact, Subject, Version } from './comparison.ts';
import type { Compared } from './page.ts';
import { type PictureOptions, picturesOf } from './picture.ts';

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
}

/** Every drill, progression and session, with its pictures; on a page (`bare`) a game has each phase in which something changed. */
export function pictured(files: readonly ComparedFile[], options: PictureOptions): PicturedSubject[] {
  return files.flatMap(({ name, before, after, comparison }) => comparison.subjects.flatMap((subject): PicturedSubject[] => {
    const title = titleOf(subject, files.length > 1 ? name : null);
    const [was, is] = [drillIn(before, subject.before), drillIn(after, subject.after)];
    const [first, ...others] = phasesOf(subject, is);
    const show = (shown: Subject, words: string, phase: PhaseAnalysis['phase'] | undefined): PicturedSubject => ({
      file: name, subject: shown, title: words, pictures: picturesOf(was, is, subject, { ...(phase ? { phase: phase.id } : {}), ...options }),
    });
    const more = options.bare === true && options.phase === undefined ? others : [];
    return [
      show(subject, title, first),
      ...more.map((phase) => show({ ...subject, facts: subject.facts.filter((fact) => isIn(phase, fact)) }, `${title}: ${phase.name ?? ''}`, phase)),
    ];
  }));
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

/** Those in which something changed. */
function phasesOf({ facts }: Subject, drill: DrillAnalysis | null): PhaseAnalysis['phase'][] {
  return (drill?.phases ?? []).map(({ phase }) => phase).filter((phase) => facts.some((fact) => isIn(phase, fact)));
}

function isIn({ span }: PhaseAnalysis['phase'], { spans: { after } }: Fact): boolean {
  return after !== null && span.from <= after.from && after.to <= span.to;
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
    const list = (grade: Fact['grade']) => facts.filter((fact) => fact.grade === grade).map(({ kind, sentence }) => `- ${names[kind]}${marked(sentence)}`);
    const [matter, detail] = [list('matters'), list('detail')];
    const picture = pictures.get(each);
    return [
      `### ${marked(each.title)}`, '',
      ...(matter.length > 0 ? matter : ['Nothing that matters on the grass.']), '',
      ...(picture === undefined ? [] : [`![${marked(`${nameOf(each.subject)}: the new version over the old one`)}](${picture})`, '']),
      ...(detail.length > 0 ? ['<details>', `<summary>${detail.length === 1 ? '1 detail' : `${detail.length} details`}</summary>`, '', ...detail, '', '</details>', ''] : []),
    ].join('\n');
  });
  return `## ${marked(title)}\n\n${parts.length === 0 ? 'Nothing changed.\n' : parts.join('\n')}`;
}

const names: Readonly<Record<Fact['kind'], string>> = { added: '➕ ', removed: '➖ ', moved: '➡️ ', renamed: '🏷️ ', changed: '' };

/** Words of a drill as words, whatever is in them: no mark-up, nobody called upon. */
function marked(words: string): string {
  return words.replace(/\s+/g, ' ').replace(/[\\`*_{}[\]<>#|~&!]/g, '\\$&').replaceAll('@', '@\u200b');
}
