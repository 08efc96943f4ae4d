import type { IToken } from 'chevrotain';
import type { Fault } from './fault.ts';
import { wordsOf } from './form.ts';
import type { StatementForm } from './form.ts';
import { shown, spanOf } from './span.ts';
import { verbForms } from './verbs.ts';

/** A line that cannot be read, and where reading it stopped. */
export interface Scene {
  /** The token that cannot stand there; undefined when the line ends too early. */
  readonly token: IToken | undefined;
  /** Its index, or the number of tokens. */
  readonly at: number;
  /** The tokens that could have stood there, by name; empty when the line should have ended. */
  readonly expected: readonly string[];
  readonly tokens: readonly IToken[];
  readonly form: StatementForm | null;
}

/** What could have stood there, when no better guess can be made. */
export function plain({ token, expected, tokens, form, at }: Scene): Fault {
  const help = form === null ? null : `It is written like this: \`${form.example.split('\n')[0]!.replace(/ \{$/, '')}\`.`;
  const verb = form === null ? verbBefore(tokens, at) : null;
  const span = token !== undefined ? spanOf(token) : spanOf(tokens[at - (verb?.length ?? 1)]!, tokens[at - 1]);
  const cannot = token === undefined ? '' : `${shown(token)} cannot stand here. `;
  const tell = (message: string): Fault => ({ span, message: cannot + message, help, fix: null });

  if (token !== undefined && expected.includes(token.image)) return tell('It stands in this line already.');
  if (at === 0) return tell('A line of a sequence begins with a player: `Base passes to Left`.');
  if (expected.length === 0) {
    const options = form === null ? [] : optionsOf(form).filter((word) => tokens.every((each) => each.image !== word));
    return tell(options.length === 0 ? 'Before it the line is complete.' : `The line may go on with ${either(options)}.`);
  }
  if (verb !== null && expected.includes('between')) {
    const words = verb.join(' ');
    return tell(`\`${words}\` needs someone or somewhere: \`${words} Left\` or \`${words} (6, 14)\`.`);
  }
  if (verb !== null && expected.includes('noun') && !expected.includes('number')) {
    return tell(`\`${verb.join(' ')}\` needs someone: \`${verb.join(' ')} Left\`.`);
  }
  return tell(`After ${said(tokens, at)} comes ${wanted(expected, form)}.`);
}

/** The verb that ends before this token, word by word. */
function verbBefore(tokens: readonly IToken[], at: number): string[] | null {
  for (const { verb } of verbForms) {
    const words = verb.split(' ');
    if (words.length <= at && words.every((word, index) => tokens[at - words.length + index]!.image === word)) return words;
  }
  return null;
}

function wanted(expected: readonly string[], form: StatementForm | null): string {
  if (expected.includes('turns')) return 'what they do, such as `passes to`, `runs to` or `shows to`';
  if (expected.includes('between')) return 'a place, such as `(6, 14)`, `Left` or `2 above Near`';
  if (expected.includes('number')) return 'a number, such as `2`';
  const [first] = form?.pieces ?? [];
  const choice = typeof first === 'object' && 'as' in first && typeof first.as !== 'string' ? first.as : null;
  return expected.length === 1 && expected[0] === 'any word' && choice !== null ? either(choice) : either(expected);
}

const descriptions: ReadonlyMap<string, string> = new Map([
  ['name', 'a name that you choose'],
  ['noun', 'a name'],
  ['any word', 'a word'],
  ['text', 'a text in double quotes'],
]);

function either(names: readonly string[]): string {
  const all = names.map((name) => descriptions.get(name) ?? `\`${name}\``);
  return all.length === 1 ? all[0]! : `${all.slice(0, -1).join(', ')} or ${all.at(-1)!}`;
}

/** The words that begin what may be left out. */
function optionsOf(form: StatementForm): string[] {
  return form.pieces.flatMap((piece) => (
    typeof piece === 'object' && 'maybe' in piece ? wordsOf(piece.maybe).slice(0, 1) : []
  ));
}

/** The words or signs before a token that belong together, in backquotes. */
export function said(tokens: readonly IToken[], at: number): string {
  if (at === 0) return 'the beginning';
  const count = verbBefore(tokens, at)?.length ?? 1;
  return count === 1 ? shown(tokens[at - 1]!) : `\`${tokens.slice(at - count, at).map((token) => token.image).join(' ')}\``;
}
