/** The other files of a workspace. */
import { importedPaths } from '../shared/service/occurrences.ts';
import type { Open } from '../shared/service/open.ts';
import type { Document } from './documents.ts';
import { keyOf, placeOf, uriIn } from './places.ts';
import type { Pause } from './run.ts';
import type { Session } from './session.ts';

export interface Neighbour {
  readonly document: Document;
  readonly open: Open;
}

/**
 * A text with the files it imports and, when a name is given, with every file of its folder that has this name in it:
 * it may import the text, or what the text imports.
 */
export async function relatives(
  session: Session, document: Document, open: Open, name?: string, pause?: Pause,
): Promise<readonly Neighbour[]> {
  const { documents } = session;
  const { folder } = document.place;
  const found: Neighbour[] = [{ document, open }];
  if (folder === null) return found;
  const imported = importedPaths(open).map((path) => uriIn(folder, path));
  const all = name === undefined ? [] : await workspaceFiles(session, folder, pause);
  const others = [...(await Promise.all(imported.map((uri) => documents.file(folder, uri)))), ...all.filter(({ lines }) => lines.text.includes(name!))];
  const known = new Set([keyOf(document.uri)]);
  for (const other of others) {
    if (!other || known.has(keyOf(other.uri))) continue;
    known.add(keyOf(other.uri));
    found.push({ document: other, open: (await documents.analysed(other)).open });
    await pause?.();
  }
  return found;
}

/**
 * Every `.drill` file of one folder, or of all that are open, with the texts in the editor in place of those on the disk.
 * A folder that nobody opened is not looked through: it may be anything.
 */
export async function workspaceFiles(
  { runtime, documents }: Session, folder: string | null, pause?: Pause,
): Promise<readonly Document[]> {
  const open = documents.all().filter(({ place }) => folder === null || place.folder === folder);
  const found = new Map(open.map((document) => [keyOf(document.uri), document]));
  for (const each of documents.folders().filter((opened) => folder === null || opened === folder)) {
    for (const uri of await runtime.list(each)) {
      if (found.has(keyOf(uri))) continue;
      const document = await documents.file(each, uri);
      if (document) found.set(keyOf(uri), document);
      await pause?.();
    }
  }
  return [...found.values()];
}

/** The paths in a folder of all `.drill` files there; of one that nobody opened, of those open in the editor. */
export async function workspacePaths({ runtime, documents }: Session, folder: string): Promise<readonly string[]> {
  const listed = documents.folders().includes(folder) ? await runtime.list(folder) : [];
  const uris = [...documents.all().map(({ uri }) => uri), ...listed];
  const places = uris.map((uri) => placeOf(uri, documents.folders()));
  return [...new Set(places.flatMap((place) => (place.folder === folder && place.path !== null ? [place.path] : [])))].sort();
}
