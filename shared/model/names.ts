/** Every name of a file with where it is declared and where it is used: for finding, renaming and explaining names. */
import type { Span } from '../../grammar/tree.ts';
import type { FurnitureKind, Id } from './drill.ts';
import { spanOf } from './span.ts';

export type NameKind =
  | 'let' | 'area' | 'zone' | 'zones' | FurnitureKind | 'station' | 'team' | 'floaters' | 'player' | 'keeper'
  | 'sequence' | 'phase' | 'change' | 'drill' | 'session';

export interface NameEntry {
  readonly name: string;
  readonly kind: NameKind;
  /** The drill it belongs to, or `session` and the name of one; null for what the whole file can see. */
  readonly drill: Id | null;
  /** The file that declares it, relative to the workspace, when it is imported; null: this text. */
  readonly path: string | null;
  /** Where it is declared. `N1` of `team N of 4` and `BoxTopLeft` of `zones Box` are declared by a shorter word. */
  readonly span: Span;
  /** Where a change gives it a new meaning. */
  readonly again: readonly Span[];
  readonly uses: readonly Span[];
}

export type NameTable = readonly NameEntry[];

export interface NameBook {
  /** A second declaration of a name in the same drill comes from a change. */
  readonly declare: (drill: Id | null, kind: NameKind, name: string, span: Span, path?: string) => void;
  readonly use: (drill: Id | null, kind: 'word' | 'quote', name: string, span: Span) => void;
  readonly table: () => NameTable;
}

export function nameBook(): NameBook {
  const entries = new Map<string, { entry: NameEntry; again: Map<number, Span>; uses: Map<number, Span> }>();
  return {
    declare(drill, kind, name, span, path) {
      const key = keyOf(drill, quoted.has(kind) ? 'quote' : 'word', name);
      const known = entries.get(key);
      if (!known) {
        const entry = { name, kind, drill, path: path ?? null, span: spanOf(span), again: [], uses: [] };
        entries.set(key, { entry, again: new Map(), uses: new Map() });
      } else if (known.entry.span.from !== span.from) known.again.set(span.from, spanOf(span));
    },
    use(drill, kind, name, span) {
      entries.get(keyOf(drill, kind, name))?.uses.set(span.from, spanOf(span));
    },
    table: () =>
      [...entries.values()].map(({ entry, again, uses }) => ({ ...entry, again: [...again.values()], uses: [...uses.values()] })),
  };
}

/** Kinds whose names are strings; they do not meet the names that are words. */
const quoted: ReadonlySet<NameKind> = new Set(['sequence', 'phase', 'change', 'drill', 'session']);

function keyOf(drill: Id | null, kind: 'word' | 'quote', name: string): string {
  // Neither names nor ids have line breaks.
  return `${kind}\n${drill ?? ''}\n${name}`;
}
