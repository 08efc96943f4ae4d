/** URIs and the paths of a workspace. A URI is compared by what it means: clients escape more or fewer characters. */

/** Where a file stands: the URI of its folder, and its path in it; both null for a text that was never saved. */
export interface Place {
  readonly folder: string | null;
  readonly path: string | null;
}

export function keyOf(uri: string): string {
  try {
    return decodeURIComponent(uri);
  } catch {
    return uri;
  }
}

/** The innermost of the open folders around a file; outside of them its own folder. */
export function placeOf(uri: string, folders: readonly string[]): Place {
  const key = keyOf(uri);
  const around = folders.filter((folder) => key.startsWith(`${keyOf(folder)}/`)).sort((a, b) => b.length - a.length)[0];
  if (around !== undefined) return { folder: around, path: key.slice(keyOf(around).length + 1) };
  const own = /^[a-z][a-z0-9+.-]*:\/\//i.test(uri) ? uri.slice(0, uri.lastIndexOf('/')) : null;
  return own === null ? { folder: null, path: null } : { folder: own, path: key.slice(keyOf(own).length + 1) };
}

export function uriIn(folder: string, path: string): string {
  return `${folder}/${path.split('/').map(encodeURIComponent).join('/')}`;
}

/** Without a slash at the end. */
export function folderUri(uri: string): string {
  return uri.replace(/\/+$/, '');
}
