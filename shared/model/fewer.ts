/** A team that a change makes smaller: its last players leave, and with nobody left what is said of it goes too. */
import type { Expression, People, Statement } from '../../grammar/tree.ts';

type Team = Extract<People, { kind: 'team' | 'floaters' }>;

/** `own` are the statements of the change; what it says itself stays as it is written. */
export function withFewer(statements: readonly Statement[], base: readonly Statement[], own: readonly Statement[]): readonly Statement[] {
  const before = new Map(base.filter(isTeam).map((team) => [team.name.text, team]));
  return own.filter(isTeam).reduce((left, team) => {
    const known = before.get(team.name.text);
    const size = numberOf(team.of);
    if (!known || size === null) return left;
    return size === 0 ? without(left, team.name.text) : smaller(left, { ...team, bib: team.bib ?? known.bib }, size, own);
  }, statements);
}

export function isTeam(statement: Statement): statement is Team {
  return statement.kind === 'team' || statement.kind === 'floaters';
}

/** Of counts that have to be worked out, nothing is known yet. */
function numberOf(count: Expression | null): number | null {
  return count?.kind === 'number' ? count.value : null;
}

function without(statements: readonly Statement[], name: string): readonly Statement[] {
  return statements.filter((statement) => {
    switch (statement.kind) {
      case 'team':
      case 'floaters':
        return statement.name.text !== name;
      case 'player':
      case 'keeper':
      case 'place':
        return statement.of.text !== name;
      case 'rule':
        return statement.rule === 'text' || statement.who?.text !== name;
      case 'score':
        return statement.by?.text !== name;
      default:
        return true;
    }
  });
}

/** Those placed by hand stay first, in the order of the text, then those of the lines with `place`. */
function smaller(statements: readonly Statement[], team: Team, size: number, own: readonly Statement[]): readonly Statement[] {
  const { text: name } = team.name;
  const isOwn = (statement: Statement): boolean => own.includes(statement);
  const byHand = statements.filter((statement) => statement.kind === 'player' && statement.of.text === name);
  const inZones = statements.filter((statement) => statement.kind === 'place' && statement.of.text === name);
  const ownCount = byHand.filter(isOwn).length + inZones.filter(isOwn).reduce((sum, line) => sum + (line.kind === 'place' ? (numberOf(line.count) ?? 0) : 0), 0);
  let room = Math.max(0, size - ownCount);
  const taken = new Map<Statement, number>();
  for (const line of [...byHand, ...inZones].filter((each) => !isOwn(each))) {
    const wanted = line.kind === 'place' ? (numberOf(line.count) ?? 0) : 1;
    taken.set(line, Math.min(room, wanted));
    room -= Math.min(room, wanted);
  }
  return statements.flatMap((statement): Statement[] => {
    if (isTeam(statement) && statement.name.text === name) return [team];
    const count = taken.get(statement);
    if (count === undefined || (statement.kind === 'place' && numberOf(statement.count) === null)) return [statement];
    if (count === 0) return [];
    return statement.kind === 'place' && statement.count.kind === 'number' ? [{ ...statement, count: { ...statement.count, value: count } }] : [statement];
  });
}
