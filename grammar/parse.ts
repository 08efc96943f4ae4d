import type { IToken } from 'chevrotain';
import { explain } from './explain.ts';
import type { Fault } from './fault.ts';
import type { Context, StatementForm } from './form.ts';
import { beatOutside, misplaced, missingBlock, needlessBlock, openText, tooMany, unknownStart } from './line-faults.ts';
import { isStop, readLine } from './line-parser.ts';
import type { Draft } from './line-parser.ts';
import { groupLines } from './lines.ts';
import type { Line, LineBlock } from './lines.ts';
import { endOf, spanOf } from './span.ts';
import { statementForms } from './statements/index.ts';
import { keyword, Name, OpenText, retype, tokenize } from './tokens.ts';
import type { Block, File, Span } from './tree.ts';
import { verbStarts } from './verbs.ts';

export type { Fault } from './fault.ts';

/**
 * Reads a text. Total: whatever cannot be read is left out of the tree and told in the faults,
 * one for each statement, in the order of the text.
 */
export function parse(text: string): { file: File; faults: Fault[] } {
  const grouped = groupLines(tokenize(text));
  const found: Fault[] = [];
  const items = readLines(grouped.file.lines, 'file', found);
  // Forms are data, so the compiler cannot know what they make; the tests hold every form against the tree's schema.
  const file = { kind: 'file', span: { from: 0, to: text.length }, items, end: grouped.file.end } as unknown as File;
  const faults = [...found, ...grouped.faults.slice(0, mostFaults)];
  return { file, faults: faults.sort((a, b) => a.span.from - b.span.from || a.span.to - b.span.to) };
}

/** Looking for what was meant takes time, and a text with more faults than this is no drill. */
const mostFaults = 200;

const forms: ReadonlyMap<string, StatementForm> = new Map(statementForms.map((form) => [form.keyword, form]));

/** Nested blocks are few enough for recursion: `groupLines` sees to that. */
function readLines(lines: readonly Line[], context: Context, faults: Fault[]): Draft[] {
  const nodes: Draft[] = [];
  let strayBeat = false;
  for (const line of lines) {
    if (faults.length >= mostFaults) {
      if (faults.length === mostFaults && line.tokens.length > 0) faults.push(tooMany(line.tokens[0]!, mostFaults));
      break;
    }
    const found: Fault[] = [];
    const reading = read(line, context, found);
    // Beats outside a sequence come in runs and are one mistake.
    if (found.length > 0 && !line.faulty && !(reading.strayBeat && strayBeat)) faults.push(found[0]!);
    strayBeat = reading.strayBeat;
    const body = line.block === null || reading.body === null ? null : readBlock(line, line.block, reading.body, faults);
    if (reading.draft !== null) nodes.push(finish(line, reading.draft, body));
  }
  return nodes;
}

function readBlock({ tokens }: Line, block: LineBlock, context: Context, faults: Fault[]): Block<Draft> {
  const from = block.open?.startOffset ?? endOf(tokens.at(-1)!);
  const lines = readLines(block.lines, context, faults);
  return { span: { from, to: block.to }, lines, end: block.end };
}

interface Reading {
  readonly draft: Draft | null;
  /** What stands in the block, when the statement has one. */
  readonly body: Context | null;
  readonly strayBeat: boolean;
}

const nothing: Reading = { draft: null, body: null, strayBeat: false };

function read(line: Line, context: Context, found: Fault[]): Reading {
  const { tokens, block } = line;
  const first = tokens[0];
  if (first === undefined) {
    found.push(needlessBlock(block!.open!, null));
    return nothing;
  }
  const open = tokens.find((token) => token.tokenType === OpenText);
  if (open !== undefined) found.push(openText(open));

  if (startsBeat(tokens, context)) {
    const draft = draftOf(null, tokens, found);
    if (block?.open != null) found.push(needlessBlock(block.open, null));
    return { ...nothing, draft };
  }
  let form = forms.get(first.image);
  if (form === undefined) {
    const beat = beatOutside(tokens);
    if (beat !== null) {
      found.push(beat);
      return { ...nothing, strayBeat: true };
    }
    const start = unknownStart(first, context);
    found.push(start.fault);
    form = start.meant === null ? undefined : forms.get(start.meant);
    if (form === undefined) return nothing;
    retype(first, keyword(form.keyword));
  } else if (!form.stands.includes(context)) {
    found.push(misplaced(first, form, context));
    return nothing;
  }

  const draft = draftOf(form, tokens, found) ?? (form.body === null || block === null ? null : recovered(form, tokens));
  const body = draft === null || draft['kind'] === 'mirrored' ? null : form.body;
  if (body !== null && block === null) found.push(missingBlock(tokens, form));
  const takesNone = form.body === null || draft?.['kind'] === 'mirrored';
  if (takesNone && block?.open != null) found.push(needlessBlock(block.open, form));
  return { draft, body, strayBeat: body === 'beats' && block === null };
}

/** In a sequence every line that begins with a name is a beat, and so is one that goes on with a verb. */
function startsBeat(tokens: readonly IToken[], context: Context): boolean {
  if (context !== 'beats') return false;
  const [first, second] = tokens;
  return first!.tokenType === Name || first!.image === 'next' || verbStarts.has(second?.image ?? '');
}

function draftOf(form: StatementForm | null, tokens: IToken[], found: Fault[]): Draft | null {
  const result = readLine(form, tokens);
  if (!isStop(result)) return result;
  const { fault, draft } = explain(result, tokens, form);
  found.push(fault);
  return draft;
}

/** A header that cannot be read still opens its block, so that one mistake does not hide all that is inside. */
function recovered(form: StatementForm, tokens: readonly IToken[]): Draft {
  const name = { ...spanOf(tokens[0]!, tokens.at(-1)!), text: '' };
  switch (form.keyword) {
    case 'sequence': return { kind: 'sequence', name: null };
    case 'progress':
    case 'regress': return { kind: form.keyword, lever: 'task', name };
    default: return { kind: form.keyword, name };
  }
}

function finish(line: Line, draft: Draft, body: Block<Draft> | null): Draft {
  const { tokens, block, above, beside, gap } = line;
  const end = block === null || body === null ? endOf(tokens.at(-1)!) : block.to;
  const span: Span = { from: tokens[0]!.startOffset, to: end };
  const node: Draft = { ...draft, span, margin: { above, beside, gap } };
  const takesBlock = forms.get(String(draft['kind']))?.body != null;
  return takesBlock ? { ...node, body: body ?? { span: { from: end, to: end }, lines: [], end: [] } } : node;
}
