import { globSync, readFileSync, statSync, type Stats } from 'node:fs';
import { join, resolve } from 'node:path';
import { reasonOf, Refusal, type Io } from './io.ts';

/** A text to work on. */
export interface Source {
  /** As the user would write it; `-` for standard input. */
  readonly name: string;
  /** Absolute; null for standard input. */
  readonly path: string | null;
  readonly text: string;
}

export interface Sources {
  readonly sources: readonly Source[];
  /** A sentence for everything asked for that could not be read. */
  readonly unread: readonly string[];
}

/** What was asked for, as single files by name: each once, in the order asked for. */
export interface Listed {
  /** As the user would write them; `-` for standard input. */
  readonly names: readonly string[];
  /** A sentence for everything that stands for no file. */
  readonly unread: readonly string[];
}

/** The files behind names of files, folders (every `.drill` file in them), globs and `-`. Whether they can be read is not known yet. */
export function listSources(asked: readonly string[], cwd: string): Listed {
  const names = new Map<string, string>();
  const unread: string[] = [];
  for (const each of asked) {
    try {
      for (const name of namesOf(each, cwd)) {
        const key = name === '-' ? name : resolve(cwd, name);
        if (!names.has(key)) names.set(key, name);
      }
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      unread.push(error.message);
    }
  }
  return { names: [...names.values()], unread };
}

/** The texts behind them, each once, in the order asked for. */
export async function readSources(asked: readonly string[], io: Io): Promise<Sources> {
  const { names, unread } = listSources(asked, io.cwd);
  const sources: Source[] = [];
  const unreadable: string[] = [];
  for (const name of names) {
    try {
      sources.push(await readSource(name, io));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      unreadable.push(error.message);
    }
  }
  return { sources, unread: [...unread, ...unreadable] };
}

/** One file or `-`. */
export async function readSource(name: string, io: Pick<Io, 'cwd' | 'input'>): Promise<Source> {
  if (name === '-') return { name, path: null, text: decoded(await io.input(), 'Standard input') };
  return readFile(name, io.cwd);
}

export function readFile(name: string, cwd: string): Source {
  const path = resolve(cwd, name);
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    throw new Refusal(`${name} cannot be read: ${reasonOf(error)}.`);
  }
  return { name, path, text: decoded(bytes, name) };
}

/** The offsets of problems count from the first character of the file, so a byte order mark stays in the text. */
function decoded(bytes: Uint8Array, name: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Refusal(`${name} cannot be read: it is not text in UTF-8.`);
  }
}

function namesOf(asked: string, cwd: string): readonly string[] {
  if (asked === '-') return [asked];
  const stats = statsOf(resolve(cwd, asked));
  if (stats?.isDirectory()) return drillsIn(asked, cwd);
  if (stats || !/[*?[{]/.test(asked)) return [asked];
  const found = globSync(asked, { cwd, exclude: isHidden }).filter((name) => statsOf(resolve(cwd, name))?.isFile()).sort();
  if (found.length === 0) throw new Refusal(`No file matches ${asked}.`);
  return found;
}

/** Null when there is nothing to be seen; reading it then gives the reason. */
function statsOf(path: string): Stats | null {
  try {
    return statSync(path);
  } catch {
    return null;
  }
}

function drillsIn(folder: string, cwd: string): readonly string[] {
  const found = globSync('**/*.drill', { cwd: resolve(cwd, folder), exclude: isHidden }).sort();
  if (found.length === 0) throw new Refusal(`There is no .drill file in ${folder}.`);
  return found.map((name) => join(folder, name));
}

export function isHidden(path: string): boolean {
  return path.split(/[\\/]/).some((part) => part === 'node_modules' || (part.startsWith('.') && part !== '.' && part !== '..'));
}
