/** The values that a whole file can see: its own `let`s outside drills, and those of the files it imports. */
import type { Let, Word } from '../../grammar/tree.ts';
import { circularValue } from '../checks/circular-value.ts';
import { duplicateName } from '../checks/duplicate-name.ts';
import { wrongElsewhere } from '../checks/impossible-value.ts';
import { unknownName } from '../checks/unknown-name.ts';
import { wrongKind } from '../checks/wrong-kind.ts';
import type { Problem } from '../problem.ts';
import { evaluate, type Quantity, type Values } from './expressions.ts';
import type { Sources } from './imports.ts';
import { inExpression } from './mentions.ts';
import type { NameBook } from './names.ts';
import { ordered } from './ordered.ts';
import { called } from './things.ts';

export interface FileValues {
  /** Undefined: no such name; null: it has no sound value, which has been reported. */
  readonly quantity: (word: Word, report: (problem: Problem) => void) => Quantity | null | undefined;
  readonly names: () => Iterable<string>;
}

export function fileValues(sources: Sources, names: NameBook, report: (problem: Problem) => void): FileValues {
  const homes = new Map<Let, string>();
  const seenFrom = new Map<string, ReadonlyMap<string, Let>>();
  for (const { path, file } of sources.byPath.values()) {
    for (const item of file.items) if (item.kind === 'let') homes.set(item, path);
  }
  const visible = (path: string): ReadonlyMap<string, Let> => {
    const known = seenFrom.get(path);
    if (known) return known;
    const found = visibleFrom(path, sources, path === sources.root ? report : () => {});
    seenFrom.set(path, found);
    return found;
  };

  const { order, rings } = ordered(homes.keys(), (item) =>
    inExpression(item.value).map((name) => visible(homes.get(item)!).get(name)).filter((found) => found !== undefined),
  );
  for (const ring of rings) {
    const [first, ...others] = ring.map((item) => ({ name: item.name.text, span: item.name }));
    if (first && ring.every((item) => homes.get(item) === sources.root)) report(circularValue([first, ...others]));
  }

  const values = new Map<Let, Quantity | null>();
  for (const item of order) {
    const path = homes.get(item)!;
    const own = path === sources.root;
    const mine = visible(path);
    values.set(item, evaluate(item.value, fileScope(mine, values, own ? names : null, own ? report : () => {})));
  }

  const own = visible(sources.root);
  for (const [name, item] of own) {
    const path = homes.get(item)!;
    names.declare(null, 'let', name, item.name, ...(path === sources.root ? [] : [path]));
  }
  const blamed = new Set<string>();
  return {
    quantity(word, reportUse) {
      const item = own.get(word.text);
      if (!item) return undefined;
      names.use(null, 'word', word.text, word);
      const value = values.get(item) ?? null;
      const path = homes.get(item)!;
      if (value === null && path !== sources.root && !blamed.has(word.text)) {
        blamed.add(word.text);
        reportUse(wrongElsewhere(word, word.text, path));
      }
      return value;
    },
    names: () => own.keys(),
  };
}

/** A file sees its own values first, then those of the files it imports, but not what these import. */
function visibleFrom(path: string, sources: Sources, report: (problem: Problem) => void): ReadonlyMap<string, Let> {
  const found = new Map<string, Let>();
  const source = sources.byPath.get(path);
  for (const item of source?.file.items ?? []) {
    if (item.kind !== 'let') continue;
    const first = found.get(item.name.text);
    if (first) report(duplicateName(item.name, called('let'), first.name));
    else found.set(item.name.text, item);
  }
  const own = new Set(found.keys());
  const broughtBy = new Map<string, { readonly from: number; readonly to: number }>();
  for (const { statement, path: other } of source?.imports ?? []) {
    for (const item of sources.byPath.get(other)?.file.items ?? []) {
      if (item.kind !== 'let' || own.has(item.name.text)) continue;
      const name = item.name.text;
      const first = broughtBy.get(name);
      if (first && first !== statement.path && found.get(name) !== item) {
        report(duplicateName({ text: name, from: statement.path.from, to: statement.path.to }, called('let'), first));
      }
      if (first) continue;
      broughtBy.set(name, statement.path);
      found.set(name, item);
    }
  }
  return found;
}

/** Outside drills there is nothing to measure, and bare numbers among lengths are metres. */
function fileScope(
  visible: ReadonlyMap<string, Let>,
  values: ReadonlyMap<Let, Quantity | null>,
  names: NameBook | null,
  report: (problem: Problem) => void,
): Values {
  return {
    units: 'm',
    report,
    quantity(word) {
      const item = visible.get(word.text);
      if (!item) report(unknownName(word, 'number', visible.keys()));
      else names?.use(null, 'word', word.text, word);
      return item ? (values.get(item) ?? null) : null;
    },
    side(of) {
      report(wrongKind(of, of.text, 'part of a drill', 'a `let` that measures it belongs into that drill'));
      return null;
    },
  };
}
