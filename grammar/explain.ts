import type { IToken } from 'chevrotain';
import { fault } from './fault.ts';
import type { Fault } from './fault.ts';
import { wordsOf } from './form.ts';
import type { StatementForm } from './form.ts';
import type { Draft, Stop } from './line-parser.ts';
import { modifierPiece } from './modifiers.ts';
import { plain, said } from './plain.ts';
import type { Scene } from './plain.ts';
import { draftOf, insertion, onlyOne, replacement, spliced } from './repair.ts';
import { endOf, shown, spaced, spanOf } from './span.ts';
import { nearest } from './spelling.ts';
import {
  Close, Comma, Dot, isWord, keyword, keywords, Minus, Name, NumberToken, Open, Plus, Stray, Text,
} from './tokens.ts';
import { unitSpellings } from './units.ts';
import { verbStarts } from './verbs.ts';

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

/** Each knows one kind of mistake. The first that recognises its own speaks. */
const looks: readonly ((scene: Scene) => Explanation | null)[] = [
  ageInYears, howFar, decimalComma, bareNumbers, runTogether, meanwhile, zoneFirst, otherWord, misspelt, unquoted, surplus, noDistance, reservedName,
  minusShift, halfShift, leftOut, instead, strayCharacter,
];

const beatWords: readonly string[] = ['while', 'then', 'for', 'to', ...wordsOf([modifierPiece])];
const placeWords: readonly string[] = [
  'left', 'right', 'above', 'below', 'of', 'between', 'and', 'mirror', 'across', 'next',
];
const sides: ReadonlySet<string> = new Set(['left', 'right', 'above', 'below']);

/** What coaches also say, and the words of the language for it. */
const otherWords: ReadonlyMap<string, string> = new Map([
  ['over', 'above'], ['under', 'below'], ['by', 'x'], ['times', 'x'], ['vs', 'v'], ['against', 'v'], ['versus', 'v'],
  ['max', 'at most'], ['maximum', 'at most'], ['min', 'at least'], ['minimum', 'at least'],
  ['kicks', 'passes'], ['plays', 'passes'], ['moves', 'runs'], ['goes', 'runs'], ['sprints', 'runs'], ['jogs', 'runs'], ['walks', 'runs'],
  ['lays', 'sets'], ['carries', 'dribbles'], ['finishes', 'shoots'], ['checks', 'shows'], ['meanwhile', 'while'], ['during', 'while'],
]);

/** `age 12`, `age "U12"` */
function ageInYears({ token, tokens, form, at }: Scene): Explanation | null {
  const [, years] = /^"?U?(\d+)"?$/i.exec(token?.image ?? '') ?? [];
  if (form?.keyword !== 'age' || token === undefined || years === undefined) return null;
  const age = `U${years}`;
  return {
    ...cure(token, token, `An age group is written \`${age}\`.`, age),
    draft: draftOf(form, spliced(tokens, at, 1, replacement(Name, age, token, token))),
  };
}

/** `runs 5 m` */
function howFar({ token, expected, tokens, at }: Scene): Explanation | null {
  if (token?.tokenType !== NumberToken || !expected.includes('to') || !verbStarts.has(tokens[at - 1]?.image ?? '')) return null;
  const { image: who } = tokens[at - 2] ?? { image: 'Base' };
  return { fault: fault(spanOf(token), `Say which way as well: \`${tokens[at - 1]!.image} to ${token.image} above ${who}\`, or \`left of\`, \`right of\`, \`below\`.`), draft: null };
}

/** `6,5` */
function decimalComma({ expected, tokens, at }: Scene): Explanation | null {
  const pair = pairAt(tokens, at);
  if (pair === null || expected.includes('x')) return null;
  const [before, comma, after] = pair;
  if (endOf(before) !== comma.startOffset || endOf(comma) !== after.startOffset) return null;
  const number = `${before.image}.${after.image}`;
  return cure(before, after, `Decimals are written with a point: \`${number}\`.`, number);
}

/** `passes to 6, 14` */
function bareNumbers({ expected, tokens, at }: Scene): Explanation | null {
  const pair = pairAt(tokens, at);
  if (pair === null || !expected.includes('above')) return null;
  const [before, , after] = pair;
  const point = `(${before.image}, ${after.image})`;
  return cure(before, after, `A point stands in brackets: \`${point}\`.`, point);
}

/** The comma at this index between the numbers on either side of it. */
function pairAt(tokens: readonly IToken[], at: number): readonly [IToken, IToken, IToken] | null {
  const [before, comma, after] = [tokens[at - 1], tokens[at], tokens[at + 1]];
  if (before?.tokenType !== NumberToken || comma?.tokenType !== Comma || after?.tokenType !== NumberToken) return null;
  return [before, comma, after];
}

/** `18 x24` */
function runTogether({ token, expected }: Scene): Explanation | null {
  const [, sign, number] = /^([xv])(\d+)$/.exec(token?.image ?? '') ?? [];
  if (token === undefined || sign === undefined || !expected.includes(sign)) return null;
  const apart = `${sign} ${number!}`;
  return cure(token, token, `${shown(token)} is a name: write \`${apart}\`.`, apart);
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
    ? `Write \`while\` before ${shown(next)}, who does this at the same time.`
    : `Write \`then\` before ${shown(next)}, which the same player does next.`;
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
    ...cure(token, token, `${shown(token)}: did you mean \`${meant}\`?`, meant),
    draft: draftOf(form, spliced(tokens, at, 1, replacement(keyword(meant), meant, token, token))),
  };
}

function otherWord({ token, expected, tokens, form, at }: Scene): Explanation | null {
  const meant = otherWords.get(token?.image ?? '');
  if (token === undefined || meant === undefined) return null;
  const made = meant.split(' ').map((word) => replacement(keyword(word), word, token, token));
  if (!(expected.length > 0 ? expected : furtherWords(form)).includes(made[0]!.image)) return null;
  return {
    ...cure(token, token, `Instead of ${shown(token)} write \`${meant}\`.`, meant),
    draft: draftOf(form, spliced(tokens, at, 1, ...made)),
  };
}

/** `rule no defenders in Box` */
function zoneFirst({ token, tokens, form }: Scene): Explanation | null {
  const begins = tokens[1]?.image ?? '';
  if (form?.keyword !== 'rule' || token === undefined || !numberWords.has(begins) || !tokens.some((each) => each.image === 'in')) return null;
  return { fault: fault(spanOf(tokens[1]!), 'A rule about a zone names the zone first: `rule Box no defenders`, `rule Box at most 2 Reds`.'), draft: null };
}

const numberWords: ReadonlySet<string> = new Set(['no', 'nobody', 'none', 'at', 'exactly', 'most', 'max', 'least', 'only']);

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
      ...cure(token, tokens[last]!, `Words of your own stand in double quotes: \`${words}\`.`, words),
      draft: draftOf(form, spliced(tokens, at, last + 1 - at, replacement(Text, words, token, tokens[last]!))),
    };
  });
  return found.find(({ draft }) => draft !== null) ?? found.at(-1)!;
}

/** `passes to the Left`, `passes the ball to Left`, `runs back to Left`, `passes to Left.` */
function surplus({ token, tokens, form, at }: Scene): Explanation | null {
  const index = token === undefined ? at - 1 : at;
  const first = tokens[index]!;
  const count = [Dot, Comma, Close].includes(first.tokenType) ? 1 : tokens.slice(index).findIndex(({ image }) => !fillers.has(image));
  if (count < 1) return null;
  const draft = draftOf(form, spliced(tokens, index, count));
  const extra = spaced(tokens.slice(index, index + count));
  return draft && { fault: fault(spanOf(first, tokens[index + count - 1]), `Leave out \`${extra}\`.`, `Leave out \`${extra}\``, ''), draft };
}

/** What is said without changing what is played. */
const fillers: ReadonlySet<string> = new Set(['the', 'ball', 'back', 'straight', 'quickly', 'again']);

/** `station A at above Near` */
function noDistance({ token, expected, tokens, at }: Scene): Explanation | null {
  if (token === undefined || !expected.includes('between') || !sides.has(token.image)) return null;
  const side = token.image === 'left' || token.image === 'right' ? `${token.image} of` : token.image;
  if (side !== token.image && tokens[at + 1]?.image !== 'of') return null;
  const message = `How far \`${side}\`? Write the distance before it: \`2 ${side} Near\`.`;
  return { fault: fault(spanOf(token), message), draft: null };
}

function reservedName({ token, expected, tokens, form, at }: Scene): Explanation | null {
  if (token === undefined || !keywords.has(token.image) || !(expected.includes('name') || expected.includes('noun'))) return null;
  if ((form === null ? beatWords : wordsOf(form.pieces)).includes(token.image)) return null;
  const name = token.image[0]!.toUpperCase() + token.image.slice(1);
  return {
    ...cure(token, token, `${shown(token)} is a word of the language; as a name write \`${name}\`.`, name),
    draft: draftOf(form, spliced(tokens, at, 1, replacement(Name, token.image, token, token))),
  };
}

/** `area.top - (0, 3)`; after a name the sign is first taken for a subtraction, and fails at the comma. */
function minusShift({ token, tokens, at }: Scene): Explanation | null {
  const open = token?.tokenType === Comma ? tokens.slice(0, at).findLastIndex((each) => each.tokenType === Open) : at + 1;
  const sign = tokens[open - 1];
  if (sign?.tokenType !== Minus || tokens[open]?.tokenType !== Open) return null;
  const message = 'A place is moved with `+`; to the left or down the numbers are negative: `+ (-3, 0)`.';
  return { fault: fault(spanOf(sign), message), draft: null };
}

/** `Near + 3` */
function halfShift({ expected, tokens, at }: Scene): Explanation | null {
  if (!expected.includes('above')) return null;
  const plus = tokens.slice(0, at).findLastIndex((each) => each.tokenType === Plus);
  const sign = tokens[plus];
  if (sign === undefined || tokens[plus - 1]?.tokenType !== Name) return null;
  const message = 'A place is moved to the right and up by two numbers in brackets: `+ (3, 0)`.';
  return { fault: fault(spanOf(sign), message), draft: null };
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
  return { ...cure(marked, marked, `After ${said(tokens, at)} comes \`${word}\`.`, text), draft };
}

/** Another word or sign stands in its place: `rotate A > B`. A number or a text says something, and is not thrown away for a word. */
function instead({ token, expected, tokens, form, at }: Scene): Explanation | null {
  if (token === undefined || token.tokenType === NumberToken || token.tokenType === Text) return null;
  const found = onlyOne(expected, (type, word) => (
    draftOf(form, spliced(tokens, at, 1, replacement(type, word, token, token)))
  ));
  if (found === null) return null;
  const { word, draft } = found;
  return { ...cure(token, token, `After ${said(tokens, at)} comes \`${word}\`, not ${shown(token)}.`, word), draft };
}

function strayCharacter({ token, tokens, form, at }: Scene): Explanation | null {
  if (token?.tokenType !== Stray) return null;
  const message = token.image === ';'
    ? 'A statement ends with its line: leave out `;`.'
    : `${shown(token)} means nothing here: leave it out.`;
  return {
    fault: fault(spanOf(token), message, `Leave out ${shown(token)}`, ''),
    draft: draftOf(form, spliced(tokens, at, 1)),
  };
}

/** A fault whose cure is to write something else from the first token to the last. */
export function cure(first: IToken, last: IToken, message: string, text: string): Explanation {
  return { fault: fault(spanOf(first, last), message, `Write \`${text}\``, text), draft: null };
}

/** Whether the word after a number is neither a unit nor near one. */
export function isNoUnit(word: IToken, number: IToken): boolean {
  return word.tokenType === Name && number.tokenType === NumberToken && nearest(word.image, unitSpellings.keys()) === null;
}

function furtherWords(form: StatementForm | null): readonly string[] {
  return form === null ? [...beatWords, ...placeWords] : [...wordsOf(form.pieces), ...placeWords];
}
