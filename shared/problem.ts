import type { Span } from '../grammar/tree.ts';

/** Ordered from the worst to the mildest. */
export const severities = ['error', 'warning', 'info', 'hint'] as const;
export type Severity = (typeof severities)[number];

export interface Edit {
  readonly span: Span;
  readonly text: string;
}

/** A change that cures a problem: offered in the editor and taken by `check --fix`. */
export interface Fix {
  readonly title: string;
  readonly edits: readonly Edit[];
}

export interface Related {
  readonly span: Span;
  readonly message: string;
}

/** A fault found in a file: what, why and what to do, at the place of the fault. */
export interface Problem {
  /** Kebab-case, one of the codes in `shared/checks`. */
  readonly code: string;
  readonly severity: Severity;
  /** One sentence with the numbers, in coaching words. */
  readonly message: string;
  /** What to do about it, when that is more than the message says. */
  readonly help: string | null;
  readonly span: Span;
  readonly related: readonly Related[];
  readonly fixes: readonly Fix[];
}
