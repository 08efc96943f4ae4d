/** The settings of folders, for the language server: each file is read once until it changes. */
import { noSettings, readSettings, settingsFile, type FolderSettings } from '../shared/settings/settings.ts';
import type { Misfit } from '../shared/settings/json.ts';
import { linesOf, type Lines } from './convert.ts';
import { keyOf, type Place } from './places.ts';
import type { Runtime } from './runtime.ts';

export interface SettingsFiles {
  /** Of the nearest settings file above a text; a text that was never saved has none. */
  readonly for: (uri: string) => Promise<FolderSettings>;
  /** Forgets a file if it is one with settings, and says whether it is. */
  readonly changed: (uri: string) => boolean;
  /** Files that are there, and those that could come to be inside the text's own folder. */
  readonly wanted: (uri: string, place: Place) => readonly string[];
}

/** `tell` hears what in a file cannot be understood; nothing, when that has been mended. */
export function settingsFilesOf(runtime: Pick<Runtime, 'read'>, tell: (uri: string, lines: Lines, misfits: readonly Misfit[]) => void): SettingsFiles {
  const read = new Map<string, Promise<FolderSettings | null>>();
  const there = new Set<string>();
  const faulty = new Set<string>();

  function settingsIn(uri: string): Promise<FolderSettings | null> {
    const key = keyOf(uri);
    const known = read.get(key);
    if (known) return known;
    const reading = runtime.read(uri.slice(0, uri.lastIndexOf('/')), uri).then((found) => {
      const text = found === null || found === 'outside' ? null : found.text;
      const { settings, misfits } = text === null ? { settings: null, misfits: [] } : readSettings(text);
      // Something newer may be on its way.
      if (read.get(key) !== reading) return settings;
      if (settings) there.add(key);
      else there.delete(key);
      if (misfits.length > 0 || faulty.delete(key)) tell(uri, linesOf(text ?? ''), misfits);
      if (misfits.length > 0) faulty.add(key);
      return settings;
    });
    read.set(key, reading);
    return reading;
  }

  return {
    async for(uri) {
      const found = await Promise.all(above(uri).map(settingsIn));
      return found.find((each) => each !== null) ?? noSettings;
    },
    changed(uri) {
      if (!uri.endsWith(`/${settingsFile}`)) return false;
      read.delete(keyOf(uri));
      return true;
    },
    wanted: (uri, { folder }) => above(uri).filter((each) => there.has(keyOf(each)) || (folder !== null && keyOf(each).startsWith(`${keyOf(folder)}/`))),
  };
}

/** Where settings for a text may be, the nearest first. */
function above(uri: string): string[] {
  const [, root, path] = /^([a-z][a-z0-9+.-]*:\/\/[^/]*)(\/.*)$/i.exec(uri) ?? [];
  const steps = path?.split('/').slice(0, -1) ?? [];
  return steps.map((_, index) => `${root}${steps.slice(0, steps.length - index).join('/')}/${settingsFile}`);
}
