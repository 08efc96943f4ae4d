import { explain } from '../explain.ts';
import type { Reader } from '../form.ts';
import { isStop, readLine } from '../line-parser.ts';
import { statementForms } from '../statements/index.ts';
import { isOneWord, keywords, Newline, nouns, quoteFor, Remark, tokenize } from '../tokens.ts';

/** What a leaf of the JSON form stands for in the tree, without places in a text; or why it cannot be that, in words that follow `must be`. */
export type Leaf = { readonly node: unknown } | { readonly fault: string };

export function readLeaf(json: unknown, reader: Reader): Leaf {
  switch (reader) {
    case 'name': return isName(json) ? wordOf(json) : { fault: nameFault(json, 'a name that you choose, such as `"Base"`') };
    case 'noun': return isName(json) || isOwnNoun(json) ? wordOf(json) : { fault: nameFault(json, 'a name, such as `"Base"`') };
    case 'word': return typeof json === 'string' && isOneWord(json) ? wordOf(json) : { fault: `a word, not ${shown(json)}` };
    case 'text':
    case 'label': return isQuotable(json) ? wordOf(json) : { fault: textFault(json) };
    case 'subject': return readSubject(json);
    case 'length': return readNumber(json, reader, '`"3 yd"` or `"side + 2"`');
    case 'count': return readNumber(json, reader, '`"side + 2"`');
    case 'place': return readPlace(json, reader, '`"2 above Base"`');
    case 'facing': {
      const at = readPlace(json, reader, '`"up"` or `"Base"`');
      return Array.isArray(json) && 'node' in at ? { node: { kind: 'towards', at: at.node } } : at;
    }
    // A size has two properties, which are read one by one.
    case 'size': return { fault: 'a size' };
  }
}

/** As part of a message: strings in quotation marks, and nothing longer than a message can bear. */
export function shown(json: unknown): string {
  if (Array.isArray(json)) return 'a list';
  if (typeof json === 'object' && json !== null) return 'an object';
  if (typeof json !== 'string') return `\`${String(json)}\``;
  return `\`${JSON.stringify(json.length > 40 ? `${json.slice(0, 39)}…` : json)}\``;
}

/** A comment is one line. */
export function isComment(json: unknown): json is string {
  return typeof json === 'string' && !/[\r\n]/.test(json);
}

function isName(json: unknown): json is string {
  return typeof json === 'string' && isOneWord(json) && !keywords.has(json);
}

function isOwnNoun(json: unknown): json is string {
  return typeof json === 'string' && nouns.has(json);
}

function nameFault(json: unknown, wanted: string): string {
  if (typeof json === 'string' && keywords.has(json)) {
    return `${wanted}: ${shown(json)} is a word of the language; with a capital letter it can be a name`;
  }
  return `${wanted}, one word of letters, digits and \`_\` that begins with a letter, not ${shown(json)}`;
}

function readSubject(json: unknown): Leaf {
  const next = typeof json === 'string' && json.startsWith('next ');
  const name = readLeaf(next ? json.slice('next '.length) : json, 'noun');
  return 'fault' in name ? { fault: `a player, such as \`"Base"\` or \`"next Base"\`, not ${shown(json)}` } : { node: { name: name.node, next } };
}

function isQuotable(json: unknown): json is string {
  if (typeof json !== 'string') return false;
  const [start, end] = quoteFor(json);
  return tokenize(start + json + end)[0]!.image.length === json.length + 2 && !/[\r\n]/.test(json);
}

function textFault(json: unknown): string {
  if (typeof json !== 'string') return `a text, not ${shown(json)}`;
  return /[\r\n]/.test(json) ? 'a text on one line' : 'a text that does not hold all kinds of quotation marks, for it is written between some';
}

function wordOf(text: string): Leaf {
  return { node: { text } };
}

function readNumber(json: unknown, reader: 'length' | 'count', example: string): Leaf {
  if (typeof json === 'string') return written(json, reader);
  if (typeof json !== 'number' || !Number.isFinite(json)) return { fault: `a number or a value in quotes such as ${example}, not ${shown(json)}` };
  const size = { kind: 'number', value: Math.abs(json), unit: null };
  return { node: json < 0 ? { kind: 'negative', of: size } : size };
}

function readPlace(json: unknown, reader: 'place' | 'facing', example: string): Leaf {
  if (typeof json === 'string') return written(json, reader);
  if (!Array.isArray(json) || json.length !== 2) return { fault: `a place such as \`[2, 13]\` or ${example}, not ${shown(json)}` };
  const [x, y] = json.map((side) => readNumber(side, 'length', '`"3 yd"`')) as [Leaf, Leaf];
  const fault = [x, y].find((side) => 'fault' in side);
  if (fault !== undefined) return { fault: `a place such as \`[2, 13]\`: each of the two must be ${fault.fault}` };
  return { node: { kind: 'at', x: nodeOf(x), y: nodeOf(y) } };
}

function nodeOf(leaf: Leaf): unknown {
  return 'node' in leaf ? leaf.node : null;
}

/** Lines of the language in which such a leaf comes last. */
const probes = {
  length: { keyword: 'let', before: 'let a = ', field: 'value', what: 'a value' },
  count: { keyword: 'players', before: 'players ', field: 'count', what: 'a count' },
  place: { keyword: 'ball', before: 'ball at ', field: 'at', what: 'a place' },
  facing: { keyword: 'hurdle', before: 'hurdle at A facing ', field: 'facing', what: 'a direction' },
} as const;

/** Reads what is written by the rules of the language: all of it must be the one thing. */
function written(text: string, reader: keyof typeof probes): Leaf {
  const { keyword, before, field, what } = probes[reader];
  const form = statementForms.find((each) => each.keyword === keyword)!;
  const tokens = tokenize(before + text);
  if (tokens.some(({ tokenType }) => tokenType === Newline || tokenType === Remark)) return { fault: `${what} on one line and nothing else` };
  const result = readLine(form, tokens);
  if (!isStop(result)) return { node: result[field] };
  return { fault: `${what}, not ${shown(text)}: ${explain(result, tokens, form).fault.message}` };
}
