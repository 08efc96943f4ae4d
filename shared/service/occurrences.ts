/** Where a name stands: in its own file, and in those that import it. */
import type { Span } from '../../grammar/tree.ts';
import { pathFrom } from '../model/imports.ts';
import type { NameEntry, NameKind } from '../model/names.ts';
import { touches, type Open } from './open.ts';

/** A name as the whole workspace knows it. */
export interface Symbol {
  readonly name: string;
  readonly kind: NameKind;
  /** The file that declares it; null for a file outside any workspace. */
  readonly path: string | null;
  /** Null for what other files can see. */
  readonly drill: string | null;
  /** For a name that is made from another one (`Reds1` from `team Reds`, `BoxTopLeft` from `zones Box`): that one. */
  readonly madeFrom: string | null;
}

export interface Occurrence {
  readonly span: Span;
  readonly role: 'declaration' | 'use';
  /** What follows the symbol's own name in the text: `1` in `Reds1` when `Reds` is looked for. */
  readonly suffix: string;
}

/** The name at an offset with its place in the text; a name that is made from another one is found where it is used. */
export function symbolAt(open: Open, offset: number): { readonly symbol: Symbol; readonly span: Span } | null {
  const found = open.analysis.names.flatMap((entry) => {
    const own = entry.path === null ? [entry.span, ...entry.again] : [];
    const spans = [...own.filter((span) => standsThere(open, entry, span)), ...entry.uses];
    return spans.filter((span) => touches(span, offset)).map((span) => ({ entry, span }));
  });
  const [best] = found.sort((a, b) => b.span.from - a.span.from);
  if (best) return { symbol: symbolOf(best.entry, open), span: best.span };
  const part = importedParts(open).find(({ span }) => touches(span, offset));
  return part ? { symbol: { name: part.name, kind: 'drill', path: part.path, drill: null, madeFrom: null }, span: part.span } : null;
}

/** Every place of a symbol in one file, in order. */
export function occurrencesIn(open: Open, symbol: Symbol): readonly Occurrence[] {
  const here = symbol.path === open.workspace.path;
  const own = open.analysis.names.flatMap((entry) => {
    const declared = entry.path ?? open.workspace.path;
    if (declared !== symbol.path || entry.drill !== symbol.drill || isQuoted(entry.kind) !== isQuoted(symbol.kind)) return [];
    const made = entry.name !== symbol.name && symbolOf(entry, open).madeFrom === symbol.name;
    if (entry.name !== symbol.name && !made) return [];
    const suffix = entry.name.slice(symbol.name.length);
    const declarations = here && !made ? [entry.span, ...entry.again] : [];
    const occurrence = (role: Occurrence['role']) => (span: Span): Occurrence => ({ span, role, suffix });
    return [...declarations.map(occurrence('declaration')), ...entry.uses.map(occurrence('use'))];
  });
  const foreign = here || symbol.kind !== 'drill' ? [] : importedParts(open);
  const parts = foreign.filter(({ name, path }) => name === symbol.name && path === symbol.path);
  return [...own, ...parts.map(({ span }): Occurrence => ({ span, role: 'use', suffix: '' }))].sort((a, b) => a.span.from - b.span.from);
}

const quoted: ReadonlySet<NameKind> = new Set<NameKind>(['sequence', 'phase', 'change', 'drill', 'session']);

/** Names that are written in quotation marks. */
export function isQuoted(kind: NameKind): boolean {
  return quoted.has(kind);
}

function symbolOf({ name, kind, path, drill, span }: NameEntry, open: Open): Symbol {
  const declaredThere = open.analysis.names.filter((other) => other.drill === drill && other.path === path && other.span.from === span.from);
  const shorter = declaredThere.find((other) => other.name !== name && name.startsWith(other.name));
  return { name, kind, path: path ?? open.workspace.path, drill, madeFrom: shorter?.name ?? null };
}

/** Not so for a name that is made from a shorter word. */
function standsThere(open: Open, entry: NameEntry, span: Span): boolean {
  return isQuoted(entry.kind) || open.text.slice(span.from, span.to) === entry.name;
}

/** The parts of sessions whose drill is in another file, with that file. */
function importedParts(open: Open): readonly { readonly span: Span; readonly name: string; readonly path: string }[] {
  const { items } = open.analysis.file;
  const own = new Set(items.flatMap((item) => (item.kind === 'drill' ? [item.name.text] : [])));
  const parts = items.flatMap((item) => (item.kind === 'session' ? item.body.lines : []))
    .flatMap((line) => (line.kind === 'part' && line.of && !own.has(line.of.text) ? [line.of] : []));
  return parts.flatMap(({ text, from, to }) => {
    const path = importedPaths(open).find((each) => drillsIn(open, each).includes(text));
    return path === undefined ? [] : [{ span: { from, to }, name: text, path }];
  });
}

function drillsIn({ workspace }: Open, path: string): readonly string[] {
  const found = workspace.read(path);
  if (found === null || found === 'outside') return [];
  return found.file.items.flatMap((item) => (item.kind === 'drill' ? [item.name.text] : []));
}

/** Relative to the workspace, in the order of the text; those that leave it are left out. */
export function importedPaths({ workspace, analysis }: Open): readonly string[] {
  if (workspace.path === null) return [];
  return analysis.file.items.flatMap((item) => (item.kind === 'import' ? (pathFrom(workspace.path!, item.path.text) ?? []) : []));
}
