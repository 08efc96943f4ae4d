import type { Span } from '../../grammar/tree.ts';
import type { DrillAnalysis } from '../analyse.ts';
import type { Edit, Problem, Severity } from '../problem.ts';
import type { SessionAnalysis } from '../session/analysis.ts';

export const groups = ['writing', 'ground', 'ball', 'time', 'rotation', 'games', 'session', 'care'] as const;
export type Group = (typeof groups)[number];

/** One thing that can be wrong with a drill. Each lives in its own file with its words, its reason and its examples. */
export interface Check {
  /** Names the fault in kebab-case; never changes. */
  readonly code: string;
  readonly group: Group;
  /** The usual level; a problem may be milder or graver than it. */
  readonly severity: Severity;
  /** What is wrong, in a few words: `The receiver is late`. */
  readonly title: string;
  /** Why it matters on the grass, and how it is worked out. */
  readonly why: string;
  /** The published source it rests on, or null. */
  readonly source: string | null;
  /**
   * Whole files, run as tests: a bad one gets this code once, at the place between ⟦ and ⟧ (which are taken out first), and
   * nothing else; a good one, its sound twin, gets nothing at all.
   */
  readonly bad: readonly string[];
  readonly good: readonly string[];
  /** Null where the parser or the resolver finds it on the way. */
  readonly find: ((analysis: DrillAnalysis) => readonly Problem[]) | null;
  /** Asked of a session, once its file has no mistakes of writing. */
  readonly findInSession?: (session: SessionAnalysis) => readonly Problem[];
  /** Also asked of every phase of a game, as if it were the repetition. */
  readonly inPhases?: true;
  /**
   * Changes that may cure a problem of this check, best first. Whoever offers them tries each on the text first and keeps
   * those that make the problem go away without making a new one, so a candidate may be a guess.
   */
  readonly cures?: (problem: Problem, analysis: DrillAnalysis, text: string) => readonly Cure[];
  /** The same for a problem of a session. */
  readonly curesInSession?: (problem: Problem, session: SessionAnalysis, text: string) => readonly Cure[];
}

export interface Cure {
  readonly title: string;
  readonly edits: readonly Edit[];
  /** Of several tries at the same thing (another value for one number) only the first that works is offered. */
  readonly about: string;
}

/** A problem of a check, at its usual level unless said otherwise. */
export function problem(
  check: Pick<Check, 'code' | 'severity'>,
  span: Span,
  message: string,
  more: Partial<Pick<Problem, 'help' | 'related' | 'fixes' | 'severity'>> = {},
): Problem {
  return { code: check.code, severity: check.severity, message, help: null, span, related: [], fixes: [], ...more };
}
