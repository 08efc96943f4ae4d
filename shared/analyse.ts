import { parse, type Fault } from '../grammar/parse.ts';
import type { File, Span } from '../grammar/tree.ts';
import { checks } from './checks/index.ts';
import { syntax } from './checks/syntax.ts';
import { measure } from './measure/measures.ts';
import type { Measures } from './measure/measure.ts';
import { blameOnChange } from './model/changes.ts';
import type { Drill } from './model/drill.ts';
import { resolve, type Workspace } from './model/resolve.ts';
import type { Problem } from './problem.ts';
import { rotationOf } from './rotation/rotate.ts';
import type { Rotation } from './rotation/rotation.ts';
import { withWalks } from './rotation/walk.ts';
import { simulate } from './timeline/simulate.ts';
import type { Timeline } from './timeline/timeline.ts';

/** Everything known about one drill: what the checks judge, the drawing draws and the commands print. */
export interface DrillAnalysis {
  readonly drill: Drill;
  readonly timeline: Timeline;
  /** Null without stations and sequences. */
  readonly rotation: Rotation | null;
  readonly measures: Measures;
}

export interface Analysis {
  readonly text: string;
  readonly file: File;
  readonly drills: readonly DrillAnalysis[];
  /** In order of place. */
  readonly problems: readonly Problem[];
}

/** A text that belongs to no folder: its imports find nothing. */
export const alone: Workspace = { path: null, read: () => null };

/** The whole way from text to judgement. Total: any text gives an analysis, nothing throws. */
export function analyse(text: string, workspace: Workspace = alone): Analysis {
  const { file, faults } = parse(text);
  const resolved = resolve(file, workspace);
  const writing = [...faults.map(syntax), ...resolved.problems.filter((problem) => !comesOfFault(text, problem, faults))];
  const drills = resolved.drills.map(analyseDrill);
  const found = drills.flatMap((each) => judgeWithChanges(each, writing));
  const problems = [...writing, ...found].filter((problem) => !isAllowed(text, problem));
  return { text, file, drills, problems: problems.sort((a, b) => a.span.from - b.span.from || a.span.to - b.span.to) };
}

/** A name that a line which cannot be read may declare or use: told by that line's own fault. */
function comesOfFault(text: string, problem: Problem, faults: readonly Fault[]): boolean {
  if (problem.code !== 'unknown-name' && problem.code !== 'unused-name') return false;
  const name = text.slice(problem.span.from, problem.span.to);
  return faults.some((fault) => lineAt(text, fault.span.from).split(/[^\p{L}\p{N}_]+/u).includes(name));
}

/** One drill played through once, with its rotation and its numbers. */
export function analyseDrill(drill: Drill): DrillAnalysis {
  const played = simulate(drill);
  const rotation = rotationOf(drill, played);
  const timeline = withWalks(drill, played, rotation);
  return { drill, timeline, rotation, measures: measure(drill, timeline, rotation) };
}

/** The drill's own problems, and those that only one of its progressions or regressions has, told at that change. */
function judgeWithChanges(analysis: DrillAnalysis, writing: readonly Problem[]): Problem[] {
  const own = judge(analysis, writing);
  const ofChanges = analysis.drill.changes.flatMap((change) => {
    const name = { text: change.name, ...change.nameSpan };
    return firstOfEach(blameOnChange(own, judge(analyseDrill(change.drill), writing), { name, span: change.span }));
  });
  return [...own, ...ofChanges];
}

/** One change mostly breaks several lines in the same way: the first is told. */
function firstOfEach(problems: readonly Problem[]): Problem[] {
  return problems.filter((problem, index) => problems.findIndex((other) => other.code === problem.code && other.span.from === problem.span.from) === index);
}

/**
 * What the checks find. Where a line of the drill could not be understood, only its ground is judged: who has the ball and
 * who is where hangs on every line, and one mistake should give one problem.
 */
function judge(analysis: DrillAnalysis, writing: readonly Problem[]): Problem[] {
  const broken = writing.some((problem) => problem.severity === 'error' && within(analysis.drill.span, problem.span));
  const found = checks.flatMap((check) => (check.find && !(broken && check.group !== 'ground') ? check.find(analysis) : []));
  return withoutReflections(analysis.drill, found);
}

/** A mirrored sequence has the faults of its original once more: they are told there only. */
function withoutReflections(drill: Drill, problems: readonly Problem[]): Problem[] {
  const mirrored = drill.sequences.filter((sequence) => sequence.mirrorOf !== null);
  const originals = drill.sequences.filter((sequence) => sequence.mirrorOf === null);
  return problems.filter((problem) => {
    if (!mirrored.some((sequence) => within(sequence.span, problem.span))) return true;
    return !problems.some((other) => other.code === problem.code && originals.some((sequence) => within(sequence.span, other.span)));
  });
}

function within(outer: Span, inner: Span): boolean {
  return outer.from <= inner.from && inner.to <= outer.to;
}

/** `// allow late-receiver: walk-through first`, at the end of the problem's line or alone on the line above; the reason must be there. */
function isAllowed(text: string, problem: Problem): boolean {
  const start = lineStart(text, problem.span.from);
  const above = start === 0 ? '' : lineAt(text, start - 1);
  return allows(lineAt(text, problem.span.from), problem.code) || (/^\s*\/\//.test(above) && allows(above, problem.code));
}

function allows(line: string, code: string): boolean {
  const found = /\/\/\s*allow\s+([a-z-]+)\s*:\s*\S/.exec(line);
  return found?.[1] === code;
}

/** The line that an offset lies in, without its end. */
function lineAt(text: string, offset: number): string {
  const end = text.indexOf('\n', offset);
  return text.slice(lineStart(text, offset), end === -1 ? text.length : end);
}

function lineStart(text: string, offset: number): number {
  return offset === 0 ? 0 : text.lastIndexOf('\n', offset - 1) + 1;
}
