import type { IToken, TokenType } from 'chevrotain';
import type { Fault } from './fault.ts';
import { wordsOf } from './form.ts';
import type { Context, StatementForm } from './form.ts';
import { isStop, readLine } from './line-parser.ts';
import type { Draft, Stop } from './line-parser.ts';
import { modifierPiece } from './modifiers.ts';
import { endOf, spanOf } from './span.ts';
import { nearest } from './spelling.ts';
import { statementForms } from './statements/index.ts';
import { Close, Comma, Dot, keyword, keywords, Minus, Name, NumberToken, Open, Plus, signs, Stray, Text } from './tokens.ts';
import { unitSpellings } from './units.ts';
import { verbForms } from './verbs.ts';

/** A fault with what the line says once it is cured; null when that cannot be told. */
export interface Explanation {
  readonly fault: Fault;
  readonly draft: Draft | null;
}

/** Says in a coach's words why a line cannot be read, and what it was probably meant to say. */
export function explain(stop: Stop, tokens: readonly IToken[], form: StatementForm | null): Explanation {
  if (stop.refusal !== null) return { fault: stop.refusal, draft: null };
  const index = tokens.indexOf(stop.token);
  const at = index === -1 ? tokens.length : index;
  // A word after a number was taken for a unit, and what it was meant to be is missed only now.
  const blamed = at > 1 && isNoUnit(tokens[at - 1]!, tokens[at - 2]!) ? at - 1 : at;
  const scene: Scene = { token: tokens[blamed], expected: stop.expected, tokens, form, at: blamed };
  for (const look of looks) {
    const explanation = look(scene);
    if (explanation !== null) return explanation;
  }
  return { fault: plain(scene), draft: null };
}

interface Scene {
  /** The token that cannot stand there; undefined when the line ends too early. */
  readonly token: IToken | undefined;
  /** Its index, or the number of tokens. */
  readonly at: number;
  /** The tokens that could have stood there, by name; empty when the line should have ended. */
  readonly expected: readonly string[];
  readonly tokens: readonly IToken[];
  readonly form: StatementForm | null;
}

/** Each knows one kind of mistake. The first that recognises its own speaks. */
const looks: readonly ((scene: Scene) => Explanation | null)[] = [
  decimalComma, bareNumbers, runTogether, meanwhile, misspelt, otherWord, unquoted, surplus, noDistance, reservedName,
  minusShift, halfShift, leftOut, instead, strayCharacter,
];

const verbStarts: ReadonlySet<string> = new Set(verbForms.map(({ verb }) => verb.split(' ')[0]!));
const beatWords: readonly string[] = ['while', 'then', 'for', 'to', ...wordsOf([modifierPiece])];
const placeWords: readonly string[] = ['left', 'right', 'above', 'below', 'of', 'between', 'and', 'mirror', 'across', 'next'];
const sides: ReadonlySet<string> = new Set(['left', 'right', 'above', 'below']);

/** What coaches also say, and the words of the language for it. */
const otherWords: ReadonlyMap<string, string> = new Map([
  ['over', 'above'], ['under', 'below'], ['by', 'x'], ['times', 'x'], ['vs', 'v'], ['against', 'v'], ['versus', 'v'],
  ['max', 'at most'], ['maximum', 'at most'], ['min', 'at least'], ['minimum', 'at least'],
  ['kicks', 'passes'], ['plays', 'passes'], ['moves', 'runs'], ['goes', 'runs'], ['sprints', 'runs'], ['lays', 'sets'], ['carries', 'dribbles'],
  ['finishes', 'shoots'], ['checks', 'shows'], ['meanwhile', 'while'], ['during', 'while'],
]);

/** `6,5` */
function decimalComma({ tokens, at }: Scene): Explanation | null {
  const [before, comma, after] = [tokens[at - 1], tokens[at], tokens[at + 1]];
  if (comma?.tokenType !== Comma || before?.tokenType !== NumberToken || after?.tokenType !== NumberToken) return null;
  if (endOf(before) !== comma.startOffset || endOf(comma) !== after.startOffset) return null;
  return cure(before, after, (number) => `Decimals are written with a point: \`${number}\`.`, `${before.image}.${after.image}`);
}

/** `passes to 6, 14` */
function bareNumbers({ tokens, at, expected }: Scene): Explanation | null {
  const [before, comma, after] = [tokens[at - 1], tokens[at], tokens[at + 1]];
  if (!expected.includes('above') || comma?.tokenType !== Comma || before?.tokenType !== NumberToken || after?.tokenType !== NumberToken) return null;
  return cure(before, after, (point) => `A point stands in brackets: \`${point}\`.`, `(${before.image}, ${after.image})`);
}

/** `18 x24` */
function runTogether({ token, expected }: Scene): Explanation | null {
  const [, sign, number] = /^([xv])(\d+)$/.exec(token?.image ?? '') ?? [];
  if (token === undefined || sign === undefined || !expected.includes(sign)) return null;
  return cure(token, token, (apart) => `\`${token.image}\` is a name: write \`${apart}\`.`, `${sign} ${number!}`);
}

/** `A passes to B, C runs to D`, and the same with `and` or with nothing. */
function meanwhile({ token, expected, tokens, form, at }: Scene): Explanation | null {
  if (form !== null || expected.length > 0 || token === undefined) return null;
  const joined = token.tokenType === Comma || token.image === 'and';
  const after = joined ? at + 1 : at;
  const next = tokens[after];
  if (next === undefined) return null;
  const word = verbStarts.has(next.image) ? 'then' : verbStarts.has(tokens[after + 1]?.image ?? '') ? 'while' : null;
  if (word === null) return null;
  const message = word === 'while'
    ? `Write \`while\` before \`${next.image}\`, who does this at the same time.`
    : `Write \`then\` before \`${next.image}\`, which the same player does next.`;
  const text = token.tokenType === Comma ? ` ${word}` : joined ? word : `${word} ${token.image}`;
  const made = joined ? replacement(keyword(word), word, token, token) : insertion(keyword(word), word, token.startOffset);
  return {
    fault: fault(spanOf(token), message, `Write \`${word}\``, text),
    draft: draftOf(form, spliced(tokens, at, joined ? 1 : 0, made)),
  };
}

function misspelt({ token, expected, tokens, form, at }: Scene): Explanation | null {
  if (token === undefined || !isWord(token)) return null;
  const possible = expected.length > 0 ? expected : furtherWords(form);
  // `pass` for `passes`: more slips than are allowed in a short word.
  const meant = possible.find((word) => word === `${token.image}s` || word === `${token.image}es`)
    ?? nearest(token.image, possible.filter((word) => keywords.has(word)));
  if (meant === null || meant === token.image) return null;
  return {
    ...cure(token, token, () => `\`${token.image}\`: did you mean \`${meant}\`?`, meant),
    draft: draftOf(form, spliced(tokens, at, 1, replacement(keyword(meant), meant, token, token))),
  };
}

function otherWord({ token, expected, tokens, form, at }: Scene): Explanation | null {
  const meant = otherWords.get(token?.image ?? '');
  if (token === undefined || meant === undefined) return null;
  const made = meant.split(' ').map((word) => replacement(keyword(word), word, token, token));
  if (!(expected.length > 0 ? expected : furtherWords(form)).includes(made[0]!.image)) return null;
  return {
    ...cure(token, token, () => `Instead of \`${token.image}\` write \`${meant}\`.`, meant),
    draft: draftOf(form, spliced(tokens, at, 1, ...made)),
  };
}

/** `drill Kite`, `theme 'Pass and go'` */
function unquoted({ token, expected, tokens, form, at }: Scene): Explanation | null {
  if (token === undefined || !expected.includes('text')) return null;
  const single = token.image === '\'';
  if (!single && !isWord(token)) return null;
  const wordsEnd = tokens.findIndex((each, index) => index > at && !isWord(each));
  const tries = single
    ? [tokens.findLastIndex((each) => each.image === '\'')]
    : [tokens.length - 1, wordsEnd === -1 ? tokens.length - 1 : wordsEnd - 1, at];
  const found = tries.map((last): Explanation => {
    const words = `"${spaced(single ? tokens.slice(at + 1, last) : tokens.slice(at, last + 1))}"`;
    return {
      ...cure(token, tokens[last]!, () => `Words of your own stand in double quotes: \`${words}\`.`, words),
      draft: draftOf(form, spliced(tokens, at, last + 1 - at, replacement(Text, words, token, tokens[last]!))),
    };
  });
  return found.find(({ draft }) => draft !== null) ?? found.at(-1)!;
}

/** `passes to the Left`, `passes to Left.` */
function surplus({ token, tokens, form, at }: Scene): Explanation | null {
  const index = token === undefined ? at - 1 : at;
  const extra = tokens[index]!;
  if (extra.image !== 'the' && ![Dot, Comma, Close].includes(extra.tokenType)) return null;
  const draft = draftOf(form, spliced(tokens, index, 1));
  return draft && { fault: fault(spanOf(extra), `Leave out \`${extra.image}\`.`, `Leave out \`${extra.image}\``, ''), draft };
}

/** `station A at above Near` */
function noDistance({ token, expected, tokens, at }: Scene): Explanation | null {
  if (token === undefined || !expected.includes('between') || !sides.has(token.image)) return null;
  const side = token.image === 'left' || token.image === 'right' ? `${token.image} of` : token.image;
  if (side !== token.image && tokens[at + 1]?.image !== 'of') return null;
  return { fault: fault(spanOf(token), `How far \`${side}\`? Write the distance before it: \`2 ${side} Near\`.`), draft: null };
}

function reservedName({ token, expected, tokens, form, at }: Scene): Explanation | null {
  if (token === undefined || !expected.some((name) => name === 'name' || name === 'noun') || !keywords.has(token.image)) return null;
  if ((form === null ? beatWords : wordsOf(form.pieces)).includes(token.image)) return null;
  const name = token.image[0]!.toUpperCase() + token.image.slice(1);
  return {
    ...cure(token, token, () => `\`${token.image}\` is a word of the language; as a name write \`${name}\`.`, name),
    draft: draftOf(form, spliced(tokens, at, 1, replacement(Name, token.image, token, token))),
  };
}

/** `area.top - (0, 3)`; after a name the sign is first taken for a subtraction, and fails at the comma. */
function minusShift({ token, tokens, at }: Scene): Explanation | null {
  const open = token?.tokenType === Comma ? tokens.findLastIndex((each, index) => index < at && each.tokenType === Open) : at + 1;
  const sign = tokens[open - 1];
  if (sign?.tokenType !== Minus || tokens[open]?.tokenType !== Open) return null;
  return { fault: fault(spanOf(sign), 'A place is moved with `+`; to the left or down the numbers are negative: `+ (-3, 0)`.'), draft: null };
}

/** `Near + 3` */
function halfShift({ expected, tokens, at }: Scene): Explanation | null {
  if (!expected.includes('above')) return null;
  const plus = tokens.findLastIndex((each, index) => index < at && each.tokenType === Plus);
  const sign = tokens[plus];
  if (sign === undefined || tokens[plus - 1]?.tokenType !== Name) return null;
  return { fault: fault(spanOf(sign), 'A place is moved to the right and up by two numbers in brackets: `+ (3, 0)`.'), draft: null };
}

/** A word or sign was left out: `pole Near 6 above area.bottom`. */
function leftOut({ token, expected, tokens, form, at }: Scene): Explanation | null {
  const marked = token ?? tokens[at - 1]!;
  const offset = token === undefined ? endOf(marked) : marked.startOffset;
  const found = onlyOne(expected, (type, word) => draftOf(form, spliced(tokens, at, 0, insertion(type, word, offset))));
  if (found === null) return null;
  const { word, draft } = found;
  const before = word === ')' || word === ',' || word === '.' ? '' : ' ';
  const after = word === '.' ? '' : ' ';
  const text = token === undefined ? marked.image + before + word : word + after + marked.image;
  return { ...cure(marked, marked, () => `After ${said(tokens, at)} comes \`${word}\`.`, text), draft };
}

/** Another word or sign stands in its place: `rotate A > B`. */
function instead({ token, expected, tokens, form, at }: Scene): Explanation | null {
  if (token === undefined) return null;
  const found = onlyOne(expected, (type, word) => draftOf(form, spliced(tokens, at, 1, replacement(type, word, token, token))));
  if (found === null) return null;
  const { word, draft } = found;
  return { ...cure(token, token, () => `After ${said(tokens, at)} comes \`${word}\`, not \`${token.image}\`.`, word), draft };
}

function strayCharacter({ token, tokens, form, at }: Scene): Explanation | null {
  if (token?.tokenType !== Stray) return null;
  const message = token.image === ';' ? 'A statement ends with its line: leave out `;`.' : `\`${token.image}\` means nothing here: leave it out.`;
  return {
    fault: fault(spanOf(token), message, `Leave out \`${token.image}\``, ''),
    draft: draftOf(form, spliced(tokens, at, 1)),
  };
}

/** What could have stood there, when no better guess can be made. */
function plain({ token, expected, tokens, form, at }: Scene): Fault {
  const help = form === null ? null : `It is written like this: \`${form.example.split('\n')[0]!.replace(/ \{$/, '')}\`.`;
  const verb = form === null ? verbBefore(tokens, at) : null;
  const span = token !== undefined ? spanOf(token) : verb !== null ? spanOf(tokens[at - verb.length]!, tokens[at - 1]) : spanOf(tokens[at - 1]!);
  const cannot = token === undefined ? '' : `\`${token.image}\` cannot stand here. `;
  const tell = (message: string): Fault => ({ span, message: cannot + message, help, fix: null });

  if (token !== undefined && expected.includes(token.image)) return tell('It stands in this line already.');
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
  return form.pieces.flatMap((piece) => (typeof piece === 'object' && 'maybe' in piece ? wordsOf(piece.maybe).slice(0, 1) : []));
}

/** The words or signs before a token that belong together, in backquotes. */
function said(tokens: readonly IToken[], at: number): string {
  const count = verbBefore(tokens, at)?.length ?? 1;
  return `\`${tokens.slice(at - count, at).map((token) => token.image).join(' ')}\``;
}

// ---------------------------------------------------------------- lines as a whole

export function openText(token: IToken): Fault {
  return fault(spanOf(token), 'This text has no closing quote.', 'Close it', `${token.image}"`);
}

/** A line of a drill that reads like a beat. */
export function beatOutside(tokens: readonly IToken[]): Fault | null {
  const [first, second, third] = tokens;
  const verb = first!.image === 'next' ? third : second;
  if (!verbStarts.has(verb?.image ?? '')) return null;
  return {
    span: spanOf(first!, verb), fix: null, help: null,
    message: 'What players do stands in a sequence: put it between `sequence {` and its `}`.',
  };
}

export function unknownStart(token: IToken, context: Context): { fault: Fault; meant: string | null } {
  if (token.image === 'while' || token.image === 'then') {
    const message = `\`${token.image}\` goes on with an action, and there is none before it.`;
    return { fault: fault(spanOf(token), message), meant: null };
  }
  if (verbStarts.has(token.image) && context === 'beats') {
    return { fault: fault(spanOf(token), `Say first who does it: \`Base ${token.image}\`.`), meant: null };
  }
  const here = statementForms.filter((form) => form.stands.includes(context));
  const meant = isWord(token) ? nearest(token.image, here.map((form) => form.keyword)) : null;
  if (meant !== null) {
    return { fault: fault(spanOf(token), `\`${token.image}\`: did you mean \`${meant}\`?`, `Write \`${meant}\``, meant), meant };
  }
  const message = `No line ${places[context].where} begins with \`${token.image}\`. ${places[context].begins}`;
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
  return fault(spanOf(brace), form === null ? '`{` opens nothing here.' : `\`${form.keyword}\` takes nothing in braces here: leave out \`{\`.`);
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

// ---------------------------------------------------------------- repairs

function fault(span: Fault['span'], message: string, title: string | null = null, text = ''): Fault {
  return { span, message, help: null, fix: title === null ? null : { title, text } };
}

/** A fault whose cure is to write something else from the first token to the last. */
function cure(first: IToken, last: IToken, message: (text: string) => string, text: string): Explanation {
  return { fault: fault(spanOf(first, last), message(text), `Write \`${text}\``, text), draft: null };
}

/** Whether the word after a number is neither a unit nor near one. */
function isNoUnit(word: IToken, number: IToken): boolean {
  return word.tokenType === Name && number.tokenType === NumberToken && nearest(word.image, unitSpellings.keys()) === null;
}

/** With spaces only where there are some in the text. */
function spaced(tokens: readonly IToken[]): string {
  return tokens.map((token, index) => (index > 0 && endOf(tokens[index - 1]!) < token.startOffset ? ' ' : '') + token.image).join('');
}

function isWord(token: IToken): boolean {
  return token.tokenType === Name || keywords.has(token.image);
}

function furtherWords(form: StatementForm | null): readonly string[] {
  return form === null ? [...beatWords, ...placeWords] : [...wordsOf(form.pieces), ...placeWords];
}

/** The only one of the expected words and signs with which the line can be read; null when none or several can. */
function onlyOne(
  expected: readonly string[], draftWith: (type: TokenType, word: string) => Draft | null,
): { word: string; draft: Draft } | null {
  const found: { word: string; draft: Draft }[] = [];
  for (const word of expected) {
    const type = keywords.get(word) ?? signs.find((sign) => sign.name === word);
    if (type === undefined || type === Open || type === Minus) continue;
    const draft = draftWith(type, word);
    if (draft !== null) found.push({ word, draft });
    if (found.length > 1) return null;
  }
  return found[0] ?? null;
}

/** Trying takes as long as reading, so very long lines are not repaired. */
const longestRepaired = 1000;

function draftOf(form: StatementForm | null, tokens: readonly IToken[]): Draft | null {
  if (tokens.length > longestRepaired) return null;
  const result = readLine(form, [...tokens]);
  return isStop(result) ? null : result;
}

function spliced(tokens: readonly IToken[], at: number, count: number, ...made: readonly IToken[]): IToken[] {
  return [...tokens.slice(0, at), ...made, ...tokens.slice(at + count)];
}

function insertion(type: TokenType, image: string, offset: number): IToken {
  return { image, startOffset: offset, endOffset: offset - 1, tokenType: type, tokenTypeIdx: type.tokenTypeIdx! };
}

function replacement(type: TokenType, image: string, first: IToken, last: IToken): IToken {
  return { ...insertion(type, image, first.startOffset), endOffset: endOf(last) - 1 };
}
