import { SymbolKind, type DocumentSymbol, type SymbolInformation } from 'vscode-languageserver';
import { parse } from '../../grammar/parse.ts';
import type { File } from '../../grammar/tree.ts';
import { outline, type OutlineItem } from '../../shared/service/symbols.ts';
import { rangeOf } from '../convert.ts';
import type { Document } from '../documents.ts';

export function documentSymbols(document: Document, file: File): DocumentSymbol[] {
  return outline(file, document.lines.text).map((item) => symbolOf(item, document));
}

/** The same one after the other, without beats: for a list over many files. */
export function flatSymbols(document: Document, file: File = parse(document.lines.text).file): SymbolInformation[] {
  const flat = (item: OutlineItem, container: string): SymbolInformation[] => [
    ...(item.kind === 'beat' || item.kind === 'import' || item.kind === 'rotate' ? [] : [{
      name: item.name,
      kind: kinds[item.kind],
      location: { uri: document.uri, range: rangeOf(document.lines, item.nameSpan) },
      ...(container === '' ? {} : { containerName: container }),
    }]),
    ...item.children.flatMap((child) => flat(child, item.name)),
  ];
  return outline(file, document.lines.text).flatMap((item) => flat(item, ''));
}

/** Whether the letters of a query stand in a name in their order, as editors match. */
export function matches(query: string, name: string): boolean {
  let at = -1;
  const letters = name.toLowerCase();
  return [...query.toLowerCase()].every((letter) => (at = letters.indexOf(letter, at + 1)) >= 0);
}

function symbolOf(item: OutlineItem, document: Document): DocumentSymbol {
  return {
    name: item.name,
    kind: kinds[item.kind],
    detail: item.detail,
    range: rangeOf(document.lines, item.span),
    selectionRange: rangeOf(document.lines, item.nameSpan),
    children: item.children.map((child) => symbolOf(child, document)),
  };
}

const kinds: Readonly<Record<OutlineItem['kind'], SymbolKind>> = {
  drill: SymbolKind.Module, session: SymbolKind.Module, change: SymbolKind.Module, sequence: SymbolKind.Function, phase: SymbolKind.Function,
  beat: SymbolKind.Event, part: SymbolKind.Event, rotate: SymbolKind.Event, import: SymbolKind.File, let: SymbolKind.Variable,
  area: SymbolKind.Struct, zone: SymbolKind.Struct, zones: SymbolKind.Struct, station: SymbolKind.Class, player: SymbolKind.Class,
  keeper: SymbolKind.Class, coach: SymbolKind.Class, team: SymbolKind.Interface, floaters: SymbolKind.Interface, cone: SymbolKind.Field,
  disc: SymbolKind.Field, pole: SymbolKind.Field, mannequin: SymbolKind.Field, gate: SymbolKind.Field, goal: SymbolKind.Field,
  minigoal: SymbolKind.Field, hurdle: SymbolKind.Field, ladder: SymbolKind.Field,
};
