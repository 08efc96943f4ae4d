import { readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { noSettings, readSettings, settingsFile, type FolderSettings } from '../shared/settings/settings.ts';
import { linesOf, positionAt } from './convert.ts';
import { reasonOf } from './io.ts';

export interface Found {
  readonly settings: FolderSettings;
  /** Sentences about what in the file cannot be understood, each with its place. */
  readonly complaints: readonly string[];
}

/** The settings for a file: those of the nearest `halfturn.json` above it. Each is read once in the life of the answer. */
export function settingsReader(cwd: string): (path: string | null) => Found {
  const known = new Map<string, Found>();
  const inFolder = (folder: string): Found => {
    const before = known.get(folder);
    if (before) return before;
    const found = read(join(folder, settingsFile), cwd) ?? (dirname(folder) === folder ? nothing : inFolder(dirname(folder)));
    known.set(folder, found);
    return found;
  };
  return (path) => inFolder(path === null ? cwd : dirname(path));
}

const nothing: Found = { settings: noSettings, complaints: [] };

/** Null when there is none. */
function read(path: string, cwd: string): Found | null {
  const shown = relative(cwd, path);
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error && (error.code === 'ENOENT' || error.code === 'ENOTDIR')) return null;
    return { settings: noSettings, complaints: [`${shown} cannot be read: ${reasonOf(error)}.`] };
  }
  const { settings, misfits } = readSettings(text);
  const lines = linesOf(text);
  return {
    settings,
    complaints: misfits.map(({ span, message }) => {
      const { line, character } = positionAt(lines, span.from);
      return `${shown}:${line + 1}:${character + 1}: ${message}`;
    }),
  };
}
