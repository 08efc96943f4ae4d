import { randomUUID } from 'node:crypto';
import { chmodSync, mkdirSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { reasonOf, Refusal } from './io.ts';

/**
 * Writes a file whole or not at all: into a new file beside it, which then takes its name and its permissions.
 * A link stays a link: the file it leads to is written. `shown` names the file in a refusal.
 */
export function writeWhole(path: string, content: string | Uint8Array, shown: string): void {
  const target = followed(path);
  const fresh = join(dirname(target), `.${basename(target)}.${randomUUID()}.part`);
  try {
    const mode = modeOf(target);
    writeFileSync(fresh, content, { flag: 'wx' });
    if (mode !== null) chmodSync(fresh, mode);
    renameSync(fresh, target);
  } catch (error) {
    discard(fresh);
    throw new Refusal(`${shown} cannot be written: ${reasonOf(error)}.`);
  }
}

/** Makes a folder with all above it, unless it is there. */
export function makeFolder(path: string, shown: string): void {
  try {
    mkdirSync(path, { recursive: true });
  } catch (error) {
    throw new Refusal(`The folder ${shown} cannot be made: ${reasonOf(error)}.`);
  }
}

/** Writes a file that must not be there yet. */
export function writeNew(path: string, content: string, shown: string): void {
  try {
    writeFileSync(path, content, { flag: 'wx' });
  } catch (error) {
    throw new Refusal(`${shown} cannot be written: ${reasonOf(error)}.`);
  }
}

function followed(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

function discard(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // What kept it from being written keeps it from being there.
  }
}

/** Null for a file that is not there yet. A file that is write-protected is not replaced behind its owner's back. */
function modeOf(path: string): number | null {
  const stats = statSync(path, { throwIfNoEntry: false });
  if (!stats) return null;
  if (!stats.isFile()) throw new Error(stats.isDirectory() ? 'it is a folder' : 'it is not an ordinary file');
  if ((stats.mode & 0o200) === 0) throw new Error('it is write-protected');
  return stats.mode & 0o7777;
}
