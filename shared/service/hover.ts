/** What a coach wants to know about the thing under the pointer. */
import type { Span } from '../../grammar/tree.ts';
import { checks } from '../checks/index.ts';
import { partFacts } from './evening.ts';
import { factsOf } from './facts.ts';
import { kindWords } from './kinds.ts';
import { actionAt } from './lookup.ts';
import { meaningAt, meaningOf } from './meanings.ts';
import { symbolAt } from './occurrences.ts';
import { drillAt, touches, type Open } from './open.ts';
import { storyOf } from './story.ts';

export interface Hover {
  readonly span: Span;
  /** Markdown. */
  readonly text: string;
}

/** Why the problem here matters, then the thing itself: a part of a session, a name, a pass or a run, a word of the language. */
export function hover(open: Open, offset: number): Hover | null {
  const subject = partFacts(open, offset) ?? nameHover(open, offset) ?? playHover(open, offset) ?? meaningAt(open.text, offset);
  const problems = open.analysis.problems.filter(({ span }) => touches(span, offset));
  const reasons = [...new Set(problems.map(({ code }) => code))].flatMap(reasonOf);
  const span = subject?.span ?? problems[0]?.span;
  return span ? { span, text: [...reasons, ...(subject ? [subject.text] : [])].join('\n\n---\n\n') } : null;
}

/** The message itself is the editor's to show. */
function reasonOf(code: string): string[] {
  const check = checks.find((each) => each.code === code);
  if (!check) return [];
  const source = check.source === null ? '' : `\n\nSource: ${check.source}`;
  return [`**${check.title}** (\`${code}\`)\n\n${check.why}${source}`];
}

function nameHover(open: Open, offset: number): Hover | null {
  const found = symbolAt(open, offset);
  if (!found) return null;
  const { symbol, span } = found;
  return { span, text: [`**${symbol.name}**: ${kindWords[symbol.kind]}`, ...factsOf(symbol, open, offset)].join('\n\n') };
}

/** A pass or a run, at its verb. */
function playHover(open: Open, offset: number): Hover | null {
  const analysis = drillAt(open, offset);
  const found = analysis && actionAt(analysis, offset);
  if (!found || !touches(found.action.verbSpan, offset)) return null;
  return { span: found.action.verbSpan, text: [...storyOf(found, analysis), ...meaningOf('verb', found.action.verb)].join('\n\n') };
}
