import type { IToken } from 'chevrotain';
import { fault } from './fault.ts';
import type { Fault } from './fault.ts';
import type { Context, StatementForm } from './form.ts';
import { shown, spanOf } from './span.ts';
import { nearest } from './spelling.ts';
import { statementForms } from './statements/index.ts';
import { isWord } from './tokens.ts';
import { verbStarts } from './verbs.ts';

export function openText(token: IToken): Fault {
  return fault(spanOf(token), 'This text has no closing quote.', 'Close it', `${token.image}"`);
}

/** A line of a drill that reads like a beat. */
export function beatOutside(tokens: readonly IToken[]): Fault | null {
  const [first, second, third] = tokens;
  const verb = first!.image === 'next' ? third : second;
  if (!verbStarts.has(verb?.image ?? '')) return null;
  return fault(spanOf(first!, verb), 'What players do stands in a sequence: put it between `sequence {` and its `}`.');
}

export function unknownStart(token: IToken, context: Context): { fault: Fault; meant: string | null } {
  if (token.image === 'while' || token.image === 'then') {
    const message = `${shown(token)} goes on with an action, and there is none before it.`;
    return { fault: fault(spanOf(token), message), meant: null };
  }
  if (verbStarts.has(token.image) && context === 'beats') {
    return { fault: fault(spanOf(token), `Say first who does it: \`Base ${token.image}\`.`), meant: null };
  }
  const here = statementForms.filter((form) => form.stands.includes(context));
  const meant = isWord(token) ? nearest(token.image, here.map((form) => form.keyword)) : null;
  if (meant !== null) {
    const message = `${shown(token)}: did you mean \`${meant}\`?`;
    return { fault: fault(spanOf(token), message, `Write \`${meant}\``, meant), meant };
  }
  const message = `No line ${places[context].where} begins with ${shown(token)}. ${places[context].begins}`;
  return { fault: fault(spanOf(token), message), meant: null };
}

export function misplaced(token: IToken, form: StatementForm, context: Context): Fault {
  const belongs = form.stands.map((stands) => places[stands].belongs).join(', or ');
  return fault(spanOf(token), `\`${form.keyword}\` cannot stand ${places[context].where}: it belongs ${belongs}.`);
}

export function missingBlock(tokens: readonly IToken[], form: StatementForm): Fault {
  const message = `\`${form.keyword}\` needs what belongs to it in braces, beginning with \`{\` on this line.`;
  return fault(spanOf(tokens[0]!, tokens.at(-1)), message);
}

export function needlessBlock(brace: IToken, form: StatementForm | null): Fault {
  const message = form === null ? '`{` opens nothing here.' : `\`${form.keyword}\` takes nothing in braces here: leave out \`{\`.`;
  return fault(spanOf(brace), message);
}

export function tooMany(token: IToken, count: number): Fault {
  return fault(spanOf(token), `There are ${count} mistakes above: what follows is read once they are cured.`);
}

const places: Readonly<Record<Context, { where: string; belongs: string; begins: string }>> = {
  file: {
    where: 'outside a drill', belongs: 'outside every drill and session',
    begins: 'A file holds `drill "…" {` and `session "…" {`.',
  },
  drill: {
    where: 'in a drill', belongs: 'in a drill, between `drill "…" {` and its `}`',
    begins: 'Lines of a drill begin with words such as `area`, `station`, `ball` or `sequence`.',
  },
  session: {
    where: 'in a session', belongs: 'in a session, between `session "…" {` and its `}`',
    begins: 'Lines of a session begin with words such as `length`, `pitch`, `part` or `pause`.',
  },
  beats: {
    where: 'in a sequence', belongs: 'in a sequence',
    begins: 'Lines of a sequence begin with a player: `Base passes to Left`.',
  },
};
