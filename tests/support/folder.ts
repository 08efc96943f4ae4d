import { parse } from '../../grammar/parse.ts';
import type { Workspace } from '../../shared/model/resolve.ts';

/** A folder of files given by path, in which a text called `example.drill` is read. */
export function folder(files: Readonly<Record<string, string>> = {}): Workspace {
  return {
    path: 'example.drill',
    read: (path) => (files[path] === undefined ? null : { path, file: parse(files[path]).file }),
  };
}
