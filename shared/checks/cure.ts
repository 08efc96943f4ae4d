import type { Span } from '../../grammar/tree.ts';
import { analyse, type Analysis } from '../analyse.ts';
import type { Workspace } from '../model/resolve.ts';
import type { Fix, Problem } from '../problem.ts';
import type { Cure, Group } from './check.ts';
import { viewAt } from '../games/view.ts';
import { applyEdits } from './edits.ts';
import { checks } from './index.ts';

/** So many candidates are tried for one problem at most: each is an analysis of the whole text. */
const mostTries = 200;
/** So many fixes are offered for one problem. */
const mostFixes = 5;

/**
 * The problems with the quick fixes that can be computed. Every candidate is made in the text and the text analysed again:
 * offered is what makes the problem go away and brings no new one. Slower than `analyse`; for whoever asks for fixes.
 */
export function withFixes(analysis: Analysis, workspace: Workspace): Problem[] {
  return analysis.problems.map((problem) => withCures(problem, analysis, workspace));
}

/**
 * The same for a program that mends by itself: how the play is mended (wait, play over, go another way) is a coach's choice,
 * so problems of ball and time keep only the fixes they came with, and so do those of sessions.
 */
export function withSureFixes(analysis: Analysis, workspace: Workspace): Problem[] {
  const choices = new Set(checks.filter((check) => chosen.has(check.group)).map((check) => check.code));
  return analysis.problems.map((problem) => (choices.has(problem.code) ? problem : withCures(problem, analysis, workspace)));
}

const chosen: ReadonlySet<Group> = new Set<Group>(['ball', 'time', 'session', 'care']);

function withCures(problem: Problem, analysis: Analysis, workspace: Workspace): Problem {
  return { ...problem, fixes: [...problem.fixes, ...curesOf(problem, analysis, workspace)].slice(0, mostFixes) };
}

/** The verified cures of one problem. */
export function curesOf(problem: Problem, analysis: Analysis, workspace: Workspace): Fix[] {
  const before = tally(analysis.problems);
  const done = new Set<string>();
  const fixes: Fix[] = [];
  for (const cure of candidates(problem, analysis).slice(0, mostTries)) {
    if (done.has(cure.about) || fixes.length >= mostFixes) continue;
    const after = tally(analyse(applyEdits(analysis.text, cure.edits), workspace).problems);
    if (!cures(problem.code, before, after)) continue;
    done.add(cure.about);
    fixes.push({ title: cure.title, edits: cure.edits });
  }
  return fixes;
}

function candidates(problem: Problem, { drills, sessions, text }: Analysis): readonly Cure[] {
  const check = checks.find((each) => each.code === problem.code);
  const around = ({ span }: { readonly span: Span }): boolean => span.from <= problem.span.from && problem.span.to <= span.to;
  const drill = check?.cures && drills.find((each) => around(each.drill));
  if (drill) return check.cures(problem, viewAt(drill, problem.span), text);
  const session = check?.curesInSession && sessions.find((each) => around(each.session));
  return session ? check.curesInSession(problem, session, text) : [];
}

/** One problem of the code fewer, and no more of any other. */
function cures(code: string, before: ReadonlyMap<string, number>, after: ReadonlyMap<string, number>): boolean {
  if ((after.get(code) ?? 0) >= (before.get(code) ?? 0)) return false;
  return [...after].every(([other, count]) => count <= (before.get(other) ?? 0));
}

function tally(problems: readonly Problem[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { code } of problems) counts.set(code, (counts.get(code) ?? 0) + 1);
  return counts;
}

