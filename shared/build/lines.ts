import { readNode } from '../../grammar/json/from-json.ts';
import { shown } from '../../grammar/json/leaf.ts';
import { linesIn } from '../../grammar/json/shapes.ts';
import type { Context } from '../../grammar/form.ts';
import type { SessionStatement, Statement, TopLevel } from '../../grammar/tree.ts';
import { Beat, Doing } from './play.ts';
import { CannotBeWritten, plain, refuseNegative } from './values.ts';

type Json = Readonly<Record<string, unknown>>;
type Kind = (Statement | SessionStatement | TopLevel)['kind'];

/** The lines of one block, in the order in which they are said. */
export class Lines {
  readonly #context: Context;
  readonly #lines: Json[] = [];
  #comments: string[] = [];
  #gap = false;

  constructor(context: Context) {
    this.#context = context;
  }

  /** A comment line above what comes next, or at the end of the block. */
  comment(text: string): void {
    checkComment(text);
    this.#comments.push(text);
  }

  /** A comment at the end of the line before. */
  remark(text: string): void {
    checkComment(text);
    const line = this.#lines.at(-1);
    if (line === undefined) throw new CannotBeWritten('There is no line yet that a remark could stand beside.');
    this.#lines[this.#lines.length - 1] = { ...line, margin: { ...line['margin'] as Json | undefined, beside: text } };
  }

  /** A blank line before what comes next, besides those between paragraphs, which come by themselves. */
  gap(): void {
    this.#gap = true;
  }

  /** What was said, as it stands in the JSON form. */
  get block(): Json {
    return { lines: this.#lines, ...(this.#comments.length === 0 ? {} : { end: this.#comments }) };
  }

  /** Adds a statement, which must be one that can stand here. */
  protected add(said: Json): void {
    const statement = plain(said) as Json;
    const kind = statement['kind'] as Kind;
    refuseNegative(statement, kind);
    const before = this.#lines.at(-1)?.['kind'] as Kind | undefined;
    const gap = this.#gap || (before !== undefined && startsParagraph(kind, before));
    const margin = { ...(this.#comments.length === 0 ? {} : { above: this.#comments }), ...(gap && before !== undefined ? { gap } : {}) };
    const line = Object.keys(margin).length === 0 ? statement : { ...statement, margin };
    const [fault] = readNode(line, linesIn(this.#context)).faults;
    if (fault !== undefined) throw new CannotBeWritten(`\`${kind}\`: ${fault.path.slice(1)} ${fault.message}`.replace(':  ', ': '));
    this.#lines.push(line);
    this.#comments = [];
    this.#gap = false;
  }
}

/** The lines of a block of its own. */
export function block<Inner extends Lines>(lines: Inner, build: (lines: Inner) => void): Json {
  if (typeof build !== 'function') throw new CannotBeWritten(`Here must be a function that says the lines, such as \`(d) => { d.area(10, 12); }\`, not ${shown(build)}.`);
  build(lines);
  return lines.block;
}

/** The lines of a sequence or a phase. */
export function beats(said: readonly (Doing | Beat)[]): Json {
  if (!Array.isArray(said)) {
    throw new CannotBeWritten(`What is played must be a list, such as \`[base.passesTo(left)]\`, not ${shown(said)}.${typeof said === 'string' ? ' A sequence has its name behind the list: `{ name: "Round" }`.' : ''}`);
  }
  return { lines: said.map((each, index) => lineOf(each, index)) };
}

function lineOf(said: Doing | Beat, index: number): Json {
  if (said instanceof Beat) return said.line;
  if (said instanceof Doing) return said.while().line;
  throw new CannotBeWritten(`Number ${index + 1} of what is played must be what somebody does, such as \`base.passesTo(left)\`, not ${shown(said)}.`);
}

/** Lines of one paragraph stand together; null stands alone. */
const paragraphs: Readonly<Record<Kind, string | null>> = {
  import: 'import', let: 'let', drill: null, session: null,
  age: 'header', players: 'header', units: 'header', tempo: 'header', pace: 'header', theme: 'header', time: 'header', ground: 'header',
  level: 'header', tags: 'header', note: 'header', length: 'header', pitch: 'header', kit: 'header', hands: 'header', without: 'header', joins: 'header',
  area: 'space', zone: 'space', split: 'space', zones: 'space',
  cone: 'furniture', disc: 'furniture', pole: 'furniture', mannequin: 'furniture', gate: 'furniture', goal: 'furniture',
  minigoal: 'furniture', hurdle: 'furniture', ladder: 'furniture', coach: 'furniture', ball: 'ball', balls: 'ball',
  station: 'stations', team: 'teams', floaters: 'teams', player: 'players', keeper: 'players', place: 'players',
  sequence: null, mirrored: null, phase: null, order: 'order', rotate: 'rotate',
  rule: 'rules', expect: 'rules', score: 'rules', bouts: 'bouts',
  point: 'points', question: 'questions', safety: 'questions', progress: null, regress: null,
  part: 'parts', pause: 'parts',
};

/** The ball of a game stands with the players. */
function startsParagraph(kind: Kind, before: Kind): boolean {
  const [paragraph, last] = [paragraphs[kind], paragraphs[before]];
  return paragraph === null || (paragraph !== last && !(paragraph === 'ball' && last === 'players'));
}

function checkComment(text: string): void {
  if (/[\r\n]/.test(text)) throw new CannotBeWritten('A comment is one line: say each line by itself.');
}
