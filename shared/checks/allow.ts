import type { Problem } from '../problem.ts';
import { lineAt, lineStart } from './lines.ts';
import { unusedAllowance } from './unused-name.ts';

/**
 * What is left of some problems without those that a remark lets through: `// allow late-receiver: walk-through first`, at the
 * end of the problem's line or alone on the line above; the reason must be there. A remark that lets nothing through is told,
 * unless lines could not be read (`unread`): then it may speak of what was never looked at.
 */
export function withoutAllowed(text: string, problems: readonly Problem[], unread: boolean): Problem[] {
  const used = new Set<number>();
  const left = problems.filter((problem) => {
    const allowance = allowanceFor(text, problem);
    if (allowance) used.add(allowance.from);
    return !allowance;
  });
  const idle = unread ? [] : allowancesIn(text).filter(({ from }) => !used.has(from));
  return [...left, ...idle.map(({ from, to, code }) => unusedAllowance({ from, to }, code))];
}

interface Allowance {
  readonly from: number;
  readonly to: number;
  readonly code: string;
}

/** A remark, behind anything but an open text. */
const remark = /^((?:[^"/]|"[^"]*"|\/(?!\/))*)(\/\/\s*allow\s+([a-z-]+)\s*:\s*\S.*)$/;

function allowanceFor(text: string, problem: Problem): Allowance | null {
  const start = lineStart(text, problem.span.from);
  const [own, above] = [allowanceAt(text, start), start === 0 ? null : allowanceAt(text, lineStart(text, start - 1))];
  const alone = above && text.slice(lineStart(text, above.from), above.from).trim() === '' ? above : null;
  return [own, alone].find((each) => each?.code === problem.code) ?? null;
}

function allowancesIn(text: string): Allowance[] {
  if (!text.includes('allow')) return [];
  const found: Allowance[] = [];
  for (let at = 0; at < text.length; at += lineAt(text, at).length + 1) {
    const allowance = allowanceAt(text, at);
    if (allowance) found.push(allowance);
  }
  return found;
}

function allowanceAt(text: string, start: number): Allowance | null {
  const found = remark.exec(lineAt(text, start).trimEnd());
  if (!found) return null;
  const from = start + found[1]!.length;
  return { from, to: from + found[2]!.length, code: found[3]! };
}
