/** From what a text says to what it means: every name looked up, every place worked out. */
import type { DrillNode, File, SessionNode, Statement } from '../../grammar/tree.ts';
import { duplicateName } from '../checks/duplicate-name.ts';
import { unusedName } from '../checks/unused-name.ts';
import type { Problem } from '../problem.ts';
import type { Drill } from './drill.ts';
import { drillOf } from './drills.ts';
import { sourcesOf, type Sources, type Workspace } from './imports.ts';
import { fileValues } from './lets.ts';
import { nameBook, type NameTable } from './names.ts';
import { sessionOf, type Session } from './session.ts';
import { called } from './things.ts';

export type { Workspace } from './imports.ts';

export interface Resolved {
  readonly drills: readonly Drill[];
  readonly sessions: readonly Session[];
  /** The drills of other files that the sessions play, each read with the values of its own file; their spans are places there. */
  readonly imported: readonly { readonly path: string; readonly drill: Drill }[];
  /** In order of place. */
  readonly problems: readonly Problem[];
  readonly names: NameTable;
}

/** Total: what cannot be resolved is left out and reported, once. */
export function resolve(file: File, workspace: Workspace): Resolved {
  const problems: Problem[] = [];
  const report = (problem: Problem) => void problems.push(problem);
  const names = nameBook();
  const sources = sourcesOf(file, workspace, report);
  const values = fileValues(sources, names, report);

  const drillNodes = file.items.filter((item) => item.kind === 'drill');
  const sessionNodes = file.items.filter((item) => item.kind === 'session');
  const drillIds = idsOf(drillNodes, report);
  const sessionIds = idsOf(sessionNodes, report);
  for (const { name } of drillNodes) names.declare(null, 'drill', name.text, name);
  const drills = drillNodes.map((node, index) => drillOf(node, drillIds[index]!, values, names, report));
  const known = sessionNodes.length === 0 ? new Map() : new Map([...importedDrills(sources), ...drillNodes].map((drill) => [drill.name.text, changesIn(drill)]));
  const sessions = sessionNodes.map((node, index) => sessionOf(node, sessionIds[index]!, known, values, names, report));

  const table = names.table();
  problems.push(...unused(table, drillNodes));
  const own = new Set(drillNodes.map(({ name }) => name.text));
  const played = sessions.flatMap(({ parts }) => parts.flatMap((part) => (part.kind === 'part' && part.drill !== null && !own.has(part.drill) ? [part.drill] : [])));
  const imported = [...new Set(played)].flatMap((name) => importedDrill(name, sources));
  return { drills, sessions, imported, problems: problems.sort((a, b) => a.span.from - b.span.from || a.span.to - b.span.to), names: table };
}

/** The names; a second one of the same name is told apart by a number. */
function idsOf(nodes: readonly (DrillNode | SessionNode)[], report: (problem: Problem) => void): readonly string[] {
  const first = new Map<string, { readonly node: DrillNode | SessionNode; count: number }>();
  return nodes.map((node) => {
    const name = node.name.text;
    const known = first.get(name);
    if (!known) {
      first.set(name, { node, count: 1 });
      return name;
    }
    report(duplicateName(node.name, called(node.kind), known.node.name));
    return `${name} ${++known.count}`;
  });
}

function importedDrills(sources: Sources): DrillNode[] {
  return importsOf(sources).flatMap(({ drills }) => drills).reverse();
}

/** Of several files with a drill of the same name the one imported first counts. */
function importedDrill(name: string, sources: Sources): Resolved['imported'] {
  const found = importsOf(sources).find(({ drills }) => drills.some((node) => node.name.text === name));
  const node = found?.drills.find((each) => each.name.text === name);
  if (!found || !node) return [];
  const values = fileValues({ root: found.path, byPath: sources.byPath }, nameBook(), () => {});
  return [{ path: found.path, drill: drillOf(node, name, values, nameBook(), () => {}) }];
}

function importsOf({ root, byPath }: Sources): readonly { readonly path: string; readonly drills: readonly DrillNode[] }[] {
  return (byPath.get(root)?.imports ?? []).map(({ path }) => ({
    path,
    drills: (byPath.get(path)?.file.items ?? []).filter((item) => item.kind === 'drill'),
  }));
}

function changesIn({ body }: DrillNode): string[] {
  return body.lines.flatMap((line) => (line.kind === 'progress' || line.kind === 'regress' ? [line.name.text] : []));
}

/** `let`s and teams of a drill that neither it nor its changes mention. Those of the file may serve other files. */
function unused(table: NameTable, drills: readonly DrillNode[]): readonly Problem[] {
  const statements = new Map<number, Extract<Statement, { kind: 'let' | 'team' }>>();
  const collect = (lines: readonly Statement[]) => {
    for (const line of lines) {
      if (line.kind === 'let' || line.kind === 'team') statements.set(line.name.from, line);
      if (line.kind === 'progress' || line.kind === 'regress') collect(line.body.lines);
    }
  };
  for (const drill of drills) collect(drill.body.lines);
  return table.flatMap(({ name, span, uses }) => {
    const statement = uses.length === 0 ? statements.get(span.from) : undefined;
    return statement?.name.text === name ? [unusedName(span, name, statement.kind, statement.span)] : [];
  });
}
