import { opened, type Open } from '../../shared/service/open.ts';
import { parse } from '../../grammar/parse.ts';
import type { Workspace } from '../../shared/model/imports.ts';

/** A file of a small workspace: what it imports is found among the others. */
export function openIn(files: Readonly<Record<string, string>>, path: string): Open {
  const workspace: Workspace = {
    path,
    read: (wanted) => (Object.hasOwn(files, wanted) ? { path: wanted, file: parse(files[wanted]!).file } : null),
  };
  return opened(files[path]!, workspace);
}

/** A text that is open at the `|` in it. */
export function cursor(text: string): { readonly open: Open; readonly offset: number } {
  const offset = text.indexOf('|');
  if (offset < 0) throw new Error(`There is no | in ${text}`);
  return { open: openIn({ 'a.drill': text.slice(0, offset) + text.slice(offset + 1) }, 'a.drill'), offset };
}

/** A drill with a line of its own, and a line in its sequence. */
export function square({ line = '', beat = '', header = 'units m' }: { readonly line?: string; readonly beat?: string; readonly header?: string } = {}): string {
  return `drill "Square" {
  age U13
  ${header}
  area 20 x 20
  let wide = 4
  zone Box 8 x 6 at area.centre
  pole Near at 6 above area.bottom
  goal North 6.4 x 2.13 at area.top facing down
  team Reds bib red of 2
  station Base at (4, 4) holds 2
  station Left at 12 above Base
  station Top at 12 right of Left
  ball at Base
  rule Box no Reds
  ${line}
  sequence {
    Base passes to Left while Top runs to 2 left of Top
    ${beat}
    Left passes to Base
  }
}
`;
}
