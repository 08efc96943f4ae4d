import type { IToken } from 'chevrotain';
import { fault } from './fault.ts';
import type { Fault } from './fault.ts';
import type { Context } from './form.ts';
import { endOf, spanOf } from './span.ts';
import { statementForms } from './statements/index.ts';
import { CloseBrace, Comma, Newline, OpenBrace, Remark } from './tokens.ts';
import type { Comment } from './tree.ts';

/** A statement before it is read: its tokens, over as many lines of text as it takes, and its block. */
export interface Line {
  readonly tokens: IToken[];
  readonly above: Comment[];
  beside: Comment | null;
  readonly gap: boolean;
  block: LineBlock | null;
  /** Whether a fault has been found in it already. */
  faulty: boolean;
}

export interface LineBlock {
  /** Its opening brace; null for the file, and where the brace was forgotten. */
  readonly open: IToken | null;
  /** Past its closing brace, or past the last thing inside when it is not closed. */
  to: number;
  readonly lines: Line[];
  end: readonly Comment[];
}

/** Groups tokens into statements and blocks by line ends, braces and indents, whatever the statements say. */
export function groupLines(tokens: readonly IToken[]): { file: LineBlock; faults: Fault[] } {
  const grouping = new Grouping();
  for (const token of tokens) grouping.add(token);
  return grouping.finish();
}

/** Blocks within blocks: more than any drill needs, and few enough to walk the tree by recursion. */
const deepest = 64;

interface Frame {
  readonly header: Line;
  readonly block: LineBlock;
  readonly body: Context | null;
  /** Characters before the header's first word. */
  readonly indent: number;
  /** The same for the first line inside; null until there is one on a line of its own. */
  inner: number | null;
}

class Grouping {
  readonly #file: LineBlock = { open: null, to: 0, lines: [], end: [] };
  readonly #faults: Fault[] = [];
  /** The open blocks, outermost first. */
  readonly #frames: Frame[] = [];
  #block = this.#file;
  /** The statement that may still go on. */
  #current: Line | null = null;
  #currentIndent = 0;
  /** The header of the block that was closed last on this line of text. */
  #closed: Line | null = null;
  /** Comments that wait for the statement below them. */
  #pending: Comment[] = [];
  #gapAbovePending = false;

  /** Whether the next token is the first of its line of text, and whether a blank line is above it. */
  #first = true;
  #blank = false;
  #lineStart = 0;
  #strayBraceOnLine = false;
  /** Where the last token that is no line end ends. */
  #end = 0;

  add(token: IToken): void {
    if (token.tokenType === Newline) {
      this.#blank ||= !/^(?:\r\n?|\n)$/.test(token.image);
      this.#first = true;
      this.#lineStart = endOf(token);
      this.#closed = null;
      this.#strayBraceOnLine = false;
      return;
    }
    if (token.tokenType === Remark) this.#comment(token);
    else this.#word(token);
    this.#first = false;
    this.#end = endOf(token);
  }

  finish(): { file: LineBlock; faults: Fault[] } {
    this.#block.end = this.#pending;
    for (const { header, block } of this.#frames.slice(0, deepest)) {
      block.to = this.#end;
      this.#blame(header, notClosed(header, null));
    }
    return { file: this.#file, faults: this.#faults };
  }

  /** A comment belongs to the statement before it on its line, or else to the statement below. */
  #comment(token: IToken): void {
    const comment = { ...spanOf(token), text: token.image.slice(2).trim() };
    const opened = this.#block.lines.length === 0 ? this.#frames.at(-1)?.header : undefined;
    const owner = this.#first ? undefined : this.#current ?? this.#closed ?? opened;
    if (owner !== undefined && owner.beside === null && this.#pending.length === 0) {
      owner.beside = comment;
      return;
    }
    if (this.#pending.length === 0) this.#gapAbovePending = this.#blank;
    this.#pending.push(comment);
  }

  #word(token: IToken): void {
    const indent = token.startOffset - this.#lineStart;
    if (token.tokenType === CloseBrace) this.#closeBrace(token);
    else {
      if (this.#current !== null && this.#goesOn(this.#current, token)) this.#hoist(this.#current);
      else this.#begin(token, indent);
      if (token.tokenType === OpenBrace) this.#open(this.#current!, token);
      else this.#current!.tokens.push(token);
    }
    this.#blank = false;
  }

  #goesOn(line: Line, token: IToken): boolean {
    if (!this.#first) return true;
    if (this.#blank) return false;
    return token.tokenType === Comma || token.tokenType === OpenBrace || token.image === 'while' || token.image === 'then'
      || line.tokens.at(-1)?.tokenType === Comma;
  }

  /** Comments inside a statement are kept above it. */
  #hoist(line: Line): void {
    if (!this.#first) return;
    if (line.beside !== null) line.above.push(line.beside);
    line.beside = null;
    for (const comment of this.#pending) line.above.push(comment);
    this.#pending = [];
  }

  #begin(token: IToken, indent: number): void {
    if (this.#first) {
      const above = this.#current;
      if (above !== null && indent > this.#currentIndent && opensBlock(above)) {
        this.#open(above, null);
        this.#blame(above, notOpened(above));
      }
      while (endsBefore(this.#frames, token, indent)) {
        this.#blame(this.#frames.at(-1)!.header, notClosed(this.#frames.at(-1)!.header, token));
        this.#leave(this.#end, []);
      }
      const frame = this.#frames.at(-1);
      if (frame !== undefined && this.#block.lines.length === 0) frame.inner = indent;
      this.#currentIndent = indent;
    }
    const gap = this.#block.lines.length > 0 && (this.#pending.length > 0 ? this.#gapAbovePending : this.#blank);
    this.#current = { tokens: [], above: this.#pending, beside: null, gap, block: null, faulty: false };
    this.#pending = [];
    this.#block.lines.push(this.#current);
  }

  #open(header: Line, brace: IToken | null): void {
    const block: LineBlock = { open: brace, to: 0, lines: [], end: [] };
    const body = bodies.get(header.tokens[0]?.image ?? '') ?? null;
    this.#frames.push({ header, block, body, indent: this.#currentIndent, inner: null });
    this.#block = block;
    this.#current = null;
    if (this.#frames.length <= deepest) header.block = block;
    else if (this.#frames.length === deepest + 1) {
      const message = `This is inside ${deepest} blocks already: no drill needs so many braces.`;
      this.#blame(header, fault(spanOf(header.tokens[0] ?? brace!), message));
    }
  }

  /** A statement has one fault at most. */
  #blame(line: Line, found: Fault): void {
    if (!line.faulty) this.#faults.push(found);
    line.faulty = true;
  }

  #closeBrace(token: IToken): void {
    if (this.#frames.length > 0) {
      this.#leave(endOf(token), this.#pending);
      this.#pending = [];
      return;
    }
    this.#current = null;
    if (!this.#strayBraceOnLine) {
      const message = '`}` closes nothing here: every block before it is closed already.';
      this.#faults.push(fault(spanOf(token), message, 'Leave out `}`', ''));
    }
    this.#strayBraceOnLine = true;
  }

  #leave(to: number, comments: readonly Comment[]): void {
    const { header, block } = this.#frames.pop()!;
    block.to = to;
    block.end = comments;
    this.#current = null;
    this.#closed = header;
    this.#block = this.#frames.at(-1)?.block ?? this.#file;
  }
}

const bodies: ReadonlyMap<string, Context> = new Map(
  statementForms.flatMap((form): [string, Context][] => (form.body === null ? [] : [[form.keyword, form.body]])),
);
const standsIn: ReadonlyMap<string, readonly Context[]> = new Map(
  statementForms.map((form) => [form.keyword, form.stands]),
);

/**
 * Whether the innermost block must have ended although its brace is missing: its lines were indented, this one
 * is not, and it begins with a word that cannot stand inside but can stand outside.
 */
function endsBefore(frames: readonly Frame[], token: IToken, indent: number): boolean {
  const frame = frames.at(-1);
  const stands = standsIn.get(token.image);
  if (frame === undefined || frame.body === null || frame.inner === null || stands === undefined) return false;
  const outside = frames.length === 1 ? 'file' : frames.at(-2)!.body;
  return frame.inner > frame.indent && indent <= frame.indent
    && !stands.includes(frame.body) && outside !== null && stands.includes(outside);
}

function opensBlock({ tokens }: Line): boolean {
  return bodies.has(tokens[0]!.image) && tokens.every((token) => token.image !== 'mirrors');
}

function notOpened(header: Line): Fault {
  const [word, last] = [header.tokens[0]!, header.tokens.at(-1)!];
  const text = `${last.image} {`;
  const message = `\`${word.image}\` is not opened: its \`{\` is missing at the end of this line.`;
  return fault(spanOf(last), message, `Write \`${text}\``, text);
}

function notClosed(header: Line, before: IToken | null): Fault {
  const word = header.tokens[0];
  const name = word === undefined ? 'This block' : `\`${word.image}\``;
  const where = before === null ? '' : ` before \`${before.image}\``;
  return fault(spanOf(word ?? header.block!.open!), `${name} is not closed: its \`}\` is missing${where}.`);
}
