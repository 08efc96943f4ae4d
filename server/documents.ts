/** The texts that are open in the editor, each analysed at most once a version, and the files they import. */
import { parse } from '../grammar/parse.ts';
import type { File } from '../grammar/tree.ts';
import type { Workspace } from '../shared/model/imports.ts';
import { opened, type Open } from '../shared/service/open.ts';
import { linesOf, offsetAt, type Lines, type Range } from './convert.ts';
import { keyOf, placeOf, uriIn, type Place } from './places.ts';
import type { Runtime } from './runtime.ts';

/** One version of a text. Whoever holds it is answered for this version, whatever is typed meanwhile. */
export interface Document {
  /** As the client spells it. */
  readonly uri: string;
  /** Null for a file that is not open. */
  readonly version: number | null;
  readonly lines: Lines;
  readonly place: Place;
}

/** Without a range it is the whole text. */
export type Change = { readonly range: Range; readonly text: string } | { readonly text: string };

export interface Documents {
  readonly open: (uri: string, version: number, text: string) => void;
  /** Changes that are not newer than what is there are left out: they would be made in a text they do not belong to. */
  readonly change: (uri: string, version: number, changes: readonly Change[]) => boolean;
  readonly close: (uri: string) => void;
  readonly get: (uri: string) => Document | null;
  readonly all: () => readonly Document[];
  readonly analysed: (document: Document) => Promise<Answer>;
  /** A file, open or not; null when it cannot be read. */
  readonly file: (folder: string, uri: string) => Promise<Document | null>;
  /** Forgets what was worked out from a file, as it is now on the disk or in the editor; tells which open texts import it. */
  readonly changed: (uri: string) => readonly Document[];
  readonly setFolders: (folders: readonly string[]) => void;
  readonly folders: () => readonly string[];
  /** Every file that an analysis has looked for. */
  readonly imported: () => readonly string[];
}

export interface Answer {
  /** Another one for every analysis. */
  readonly id: number;
  readonly open: Open;
}

/** What stands behind a path on the disk. */
type Stored = { readonly file: File } | 'outside' | null;

interface Work {
  readonly answer: Promise<Answer>;
  /** The files it has looked for, by key, with their URIs. */
  readonly reads: Map<string, string>;
}

export function documentsOf(runtime: Pick<Runtime, 'read'>): Documents {
  const current = new Map<string, Document>();
  const works = new WeakMap<Document, Work>();
  const trees = new WeakMap<Document, File>();
  const disk = new Map<string, Stored>();
  let folders: readonly string[] = [];
  let answers = 0;

  function set(uri: string, version: number, text: string): void {
    current.set(keyOf(uri), { uri, version, lines: linesOf(text), place: placeOf(uri, folders) });
  }

  async function work(document: Document, reads: Map<string, string>): Promise<Answer> {
    const { folder } = document.place;
    for (;;) {
      const unread: string[] = [];
      const open = opened(document.lines.text, workspaceOf(document, reads, unread));
      if (unread.length === 0 || folder === null) return { id: ++answers, open };
      await Promise.all(unread.map(async (uri) => disk.set(keyOf(uri), stored(await runtime.read(folder, uri)))));
    }
  }

  function workspaceOf({ place: { folder, path } }: Document, reads: Map<string, string>, unread: string[]): Workspace {
    if (folder === null) return { path: null, read: () => null };
    return {
      path,
      read: (wanted) => {
        const uri = uriIn(folder, wanted);
        const key = keyOf(uri);
        reads.set(key, uri);
        const document = current.get(key);
        if (document) return { path: wanted, file: treeOf(document) };
        const known = disk.get(key);
        if (known === undefined) unread.push(uri);
        if (known === undefined || known === null || known === 'outside') return known ?? null;
        return { path: wanted, file: known.file };
      },
    };
  }

  function treeOf(document: Document): File {
    const known = trees.get(document) ?? parse(document.lines.text).file;
    trees.set(document, known);
    return known;
  }

  function changed(uri: string): readonly Document[] {
    const key = keyOf(uri);
    disk.delete(key);
    const dependants = [...current.values()].filter((document) => works.get(document)?.reads.has(key));
    for (const document of dependants) works.delete(document);
    return dependants;
  }

  return {
    open: set,
    change(uri, version, changes) {
      const document = current.get(keyOf(uri));
      if (!document || version <= document.version!) return false;
      set(document.uri, version, changes.reduce(changedText, document.lines.text));
      return true;
    },
    close: (uri) => void current.delete(keyOf(uri)),
    get: (uri) => current.get(keyOf(uri)) ?? null,
    all: () => [...current.values()],
    analysed(document) {
      const known = works.get(document);
      if (known) return known.answer;
      const reads = new Map<string, string>();
      const answer = work(document, reads);
      works.set(document, { answer, reads });
      return answer;
    },
    async file(folder, uri) {
      const document = current.get(keyOf(uri));
      if (document) return document;
      const found = await runtime.read(folder, uri);
      if (found === null || found === 'outside') return null;
      return { uri, version: null, lines: linesOf(found.text), place: placeOf(uri, folders) };
    },
    changed,
    setFolders(next) {
      folders = next;
      for (const { uri, version, lines } of current.values()) set(uri, version!, lines.text);
    },
    folders: () => folders,
    imported: () => [...new Map([...current.values()].flatMap((document) => [...(works.get(document)?.reads ?? [])])).values()],
  };
}

function changedText(text: string, change: Change): string {
  if (!('range' in change)) return change.text;
  const lines = linesOf(text);
  return text.slice(0, offsetAt(lines, change.range.start)) + change.text + text.slice(offsetAt(lines, change.range.end));
}

function stored(found: Awaited<ReturnType<Runtime['read']>>): Stored {
  return found === null || found === 'outside' ? found : { file: parse(found.text).file };
}
