/** One drill, from its statements to what they mean. */
import type { Change, DrillNode, Quote, Statement } from '../../grammar/tree.ts';
import { duplicateName } from '../checks/duplicate-name.ts';
import { nestedChange } from '../checks/wrong-kind.ts';
import type { Problem } from '../problem.ts';
import { ballsOf } from './balls.ts';
import { blameOnChange, changedStatements } from './changes.ts';
import { isTeam } from './fewer.ts';
import { declarationsOf } from './declarations.ts';
import type { ChangedDrill, Drill, Id } from './drill.ts';
import { headerOf, unitsOf } from './header.ts';
import type { FileValues } from './lets.ts';
import type { NameBook } from './names.ts';
import { actorsOf, counted, reportSurplus } from './people.ts';
import { isPassage, orderOf, rotationOf, sequencesOf } from './play.ts';
import { boutsOf, rulesOf, touchRulesOf } from './rules.ts';
import { scopeOf } from './scope.ts';
import { spanOf } from './span.ts';
import { called } from './things.ts';
import { workedOut } from './worked-out.ts';

/** The drill with its progressions and regressions, each read like the drill itself. */
export function drillOf(node: DrillNode, id: Id, file: FileValues, names: NameBook, report: (problem: Problem) => void): Drill {
  const statements = node.body.lines;
  const base = versionOf(node, id, id, statements, file, names);
  base.problems.forEach(report);
  const changes = distinct(statements.filter(isChange), report).map((change): ChangedDrill => {
    const { kind, lever, span, name } = change;
    const inner = change.body.lines.find(isChange);
    if (inner) report(nestedChange(inner.name));
    names.declare(id, 'change', name.text, name);
    const changedId = `${id} / ${name.text}`;
    const lines = changedStatements(statements, change);
    for (const { kind: what, name: gone } of change.body.lines.filter(isTeam)) names.declare(id, what, gone.text, gone);
    const changed = versionOf(node, id, changedId, lines, file, names);
    blameOnChange(base.problems, changed.problems, change).forEach(report);
    return { id: changedId, kind, lever, name: name.text, span, nameSpan: spanOf(name), drill: changed.drill };
  });
  return { ...base.drill, changes };
}

/** `home`: the drill in whose names it is read. */
function versionOf(
  node: DrillNode,
  home: Id,
  id: Id,
  statements: readonly Statement[],
  file: FileValues,
  names: NameBook,
): { readonly drill: Drill; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const report = (problem: Problem) => void problems.push(problem);
  const declarations = declarationsOf(statements, report);
  for (const { word, kind } of declarations.byName.values()) names.declare(home, kind, word.text, word);
  for (const { kind, name } of statements.filter(isPassage)) {
    if (name) names.declare(home, kind === 'phase' ? 'phase' : 'sequence', name.text, name);
  }
  const units = unitsOf(statements, report);
  const scope = scopeOf(home, units, declarations, file, names, report);

  const { things, lets, splits } = workedOut(statements, scope);
  const area = things.find((thing) => thing.kind === 'area')?.area ?? null;
  const zones = things.flatMap((thing) => (thing.kind === 'zone' ? [thing.zone] : []));
  const furniture = things.flatMap((thing) => (thing.kind === 'furniture' ? [thing.furniture] : []));
  const stations = things.flatMap((thing) => (thing.kind === 'station' ? [thing.station] : []));
  const players = things.flatMap((thing) => (thing.kind === 'player' ? [thing.player] : []));
  const teams = things.flatMap((thing) => (thing.kind === 'team' ? [thing.team] : []));
  reportSurplus(statements, teams, scope);

  const balls = ballsOf(statements, actorsOf(stations, players, furniture, new Set()), scope);
  const played = sequencesOf(statements, scope);
  const drill: Drill = {
    id,
    name: node.name.text,
    span: node.span,
    nameSpan: spanOf(node.name),
    units,
    ...headerOf(statements, scope),
    area,
    zones,
    splits,
    furniture,
    balls,
    stations,
    teams: teams.map((team) => counted(team, players, stations)),
    sequences: played.sequences,
    order: orderOf(statements, played, scope),
    rotation: rotationOf(statements, scope),
    touchRules: touchRulesOf(statements, scope),
    rules: rulesOf(statements, scope),
    bouts: boutsOf(statements, scope),
    lets,
    actors: actorsOf(stations, players, furniture, scope.queued),
    changes: [],
  };
  return { drill, problems };
}

function isChange(statement: Statement): statement is Change {
  return statement.kind === 'progress' || statement.kind === 'regress';
}

function distinct(changes: readonly Change[], report: (problem: Problem) => void): readonly Change[] {
  const first = new Map<string, Quote>();
  return changes.filter(({ name }) => {
    const known = first.get(name.text);
    if (known) report(duplicateName(name, called('change'), known));
    else first.set(name.text, name);
    return !known;
  });
}
