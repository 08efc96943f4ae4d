import { parseArgs } from 'node:util';
import { nearest } from '../grammar/spelling.ts';
import { Refusal, type Io } from './io.ts';

export interface Command {
  readonly name: string;
  /** What follows the name: `PATH…`. */
  readonly operands: string;
  /** One line, as the table of commands has it. */
  readonly summary: string;
  /** Sentences for `--help`, below the summary. */
  readonly more: readonly string[];
  readonly options: Options;
  /** Gives the exit status. Throws a {@link Refusal} when it cannot do what was asked. */
  readonly run: (words: readonly string[], io: Io) => Promise<number>;
}

export type Option =
  | { readonly kind: 'flag'; readonly help: string }
  | { readonly kind: 'text'; readonly value: string; readonly short?: string; readonly help: string }
  /** May be given several times. */
  | { readonly kind: 'texts'; readonly value: string; readonly help: string }
  | { readonly kind: 'number'; readonly value: string; readonly least: number; readonly most: number; readonly help: string }
  | { readonly kind: 'choice'; readonly choices: readonly string[]; readonly help: string };
export type Options = Readonly<Record<string, Option>>;

/** What the user wrote; an option that was not written is null, a flag false, a list empty. */
export interface Given<O extends Options> {
  readonly options: { readonly [K in keyof O]: ValueOf<O[K]> };
  readonly operands: readonly string[];
}

type ValueOf<T extends Option> = T extends { kind: 'flag' } ? boolean
  : T extends { kind: 'texts' } ? readonly string[]
  : T extends { kind: 'number' } ? number | null
  : T extends { kind: 'choice'; choices: readonly (infer C)[] } ? C | null
  : string | null;

interface Described<O extends Options> extends Omit<Command, 'options' | 'run'> {
  readonly options: O;
  /** Fewest and most operands. */
  readonly takes: readonly [number, number];
  readonly run: (given: Given<O>, io: Io) => Promise<number> | number;
}

/** A command from its description: reads and checks the words, so that `run` sees only what is allowed. */
export function command<const O extends Options>(described: Described<O>): Command {
  return { ...described, run: async (words, io) => described.run(read(described, words), io) };
}

function read<O extends Options>({ name, operands, options, takes }: Described<O>, words: readonly string[]): Given<O> {
  const { tokens, positionals } = parseArgs({
    args: [...words],
    options: Object.fromEntries(Object.entries(options).map(([key, option]) => [key, {
      type: option.kind === 'flag' ? 'boolean' as const : 'string' as const,
      ...('short' in option && option.short ? { short: option.short } : {}),
    }])),
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const values: Record<string, unknown> = {};
  for (const [key, option] of Object.entries(options)) values[key] = option.kind === 'flag' ? false : option.kind === 'texts' ? [] : null;
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    const option = Object.hasOwn(options, token.name) ? options[token.name]! : unknownOption(name, token.rawName, Object.keys(options));
    const value = valueOf(option, token.rawName, token.value, token.inlineValue ?? false);
    values[token.name] = option.kind === 'texts' ? [...(values[token.name] as readonly string[]), value] : value;
  }
  const [fewest, most] = takes;
  if (positionals.length < fewest || positionals.length > most) throw new Refusal(`Write it as: halfturn ${name} ${operands}`);
  return { options: values as Given<O>['options'], operands: positionals };
}

function unknownOption(name: string, written: string, known: readonly string[]): never {
  const guess = nearest(written.replace(/^-+/, ''), known);
  throw new Refusal(`${name} has no option ${written}; ${guess === null ? `halfturn ${name} --help lists them.` : `did you mean --${guess}?`}`);
}

/** `glued` when written as `--option=value`; otherwise a value that looks like an option means that none was given. */
function valueOf(option: Option, written: string, value: string | undefined, glued: boolean): boolean | number | string {
  if (option.kind === 'flag') {
    if (value !== undefined) throw new Refusal(`${written} takes no value.`);
    return true;
  }
  if (value === undefined || (!glued && /^-[^\d.]/.test(value))) throw new Refusal(`${written} needs a value: ${wanted(option)}.`);
  switch (option.kind) {
    case 'text':
    case 'texts':
      return value;
    case 'number': {
      const number = value.trim() === '' ? NaN : Number(value);
      if (!(number >= option.least && number <= option.most)) throw new Refusal(`${written} cannot be ${value}: it takes ${wanted(option)}.`);
      return number;
    }
    case 'choice': {
      if (option.choices.includes(value)) return value;
      const guess = nearest(value, option.choices);
      throw new Refusal(`${written} cannot be ${value}: it takes ${wanted(option)}.${guess === null ? '' : ` Did you mean ${guess}?`}`);
    }
  }
}

function wanted(option: Exclude<Option, { kind: 'flag' }>): string {
  switch (option.kind) {
    case 'text':
    case 'texts':
      return option.value;
    case 'number':
      return `a number from ${option.least} to ${option.most}`;
    case 'choice':
      return option.choices.join(', ').replace(/, ([^,]*)$/, ' or $1');
  }
}
