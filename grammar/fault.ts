import type { Span } from './tree.ts';

/** A place where the text cannot be read: one to a statement. */
export interface Fault {
  readonly span: Span;
  readonly message: string;
  /** What to do, when that is more than the message says. */
  readonly help: string | null;
  /** Text that replaces the span and cures the fault. */
  readonly fix: { readonly title: string; readonly text: string } | null;
}

export function fault(span: Span, message: string, title: string | null = null, text = ''): Fault {
  return { span, message, help: null, fix: title === null ? null : { title, text } };
}
