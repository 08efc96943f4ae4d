/** Stations, teams, players and the coach: who there is, and who can be asked to act. */
import type { People, Statement, Word } from '../../grammar/tree.ts';
import { duplicateName } from '../checks/duplicate-name.ts';
import { everyonePlaced } from '../checks/impossible-value.ts';
import { wrongKind } from '../checks/wrong-kind.ts';
import type { Point } from '../geometry/point.ts';
import type { Actor, ActorId, Furniture, Id, Station, Team } from './drill.ts';
import { countOf } from './expressions.ts';
import type { NameKind } from './names.ts';
import { located } from './places.ts';
import type { Scope } from './scope.ts';
import { spanOf } from './span.ts';
import { called, kindOf, type Named, type Player, type Thing } from './things.ts';

export function stationNamed(statement: Extract<People, { kind: 'station' }>, scope: Scope): Named {
  const { name, holds, of } = statement;
  const at = located(statement.at, scope);
  const held = holds ? countOf(holds, scope, { what: `The number of players at \`${name.text}\`` }) : 1;
  const team = of && teamNamed(of, scope);
  if (at === null || held === null || (of && !team)) return { name: name.text, thing: null };
  const station: Station = {
    id: name.text, name: name.text, at, holds: held, team: team?.id ?? null, span: statement.span, nameSpan: spanOf(name),
  };
  return { name: name.text, thing: { kind: 'station', station } };
}

/** The size is what is written after `of`, and 0 until {@link counted} where nothing is. */
export function teamDeclared(statement: Extract<People, { kind: 'team' | 'floaters' }>, scope: Scope): Named {
  const { kind, name, bib, of, span } = statement;
  const size = of ? countOf(of, scope, { what: `The number of ${name.text}` }) : 0;
  if (size === null) return { name: name.text, thing: null };
  for (let number = 1; number <= size; number++) {
    const other = scope.declarations.byName.get(`${name.text}${number}`);
    if (!other || other.kind === 'player' || other.kind === 'keeper') continue;
    scope.report(duplicateName(other.word, `a player of ${name.text}`, name));
  }
  const team: Team = { id: name.text, name: name.text, kind, bib: bib?.text ?? null, size, span, nameSpan: spanOf(name) };
  return { name: name.text, thing: { kind: 'team', team } };
}

export function playerNamed(statement: Extract<People, { kind: 'player' | 'keeper' }>, scope: Scope): Named {
  const { kind, name, of, span } = statement;
  const at = located(statement.at, scope);
  const team = teamNamed(of, scope);
  const player = at && team && { role: kind, name: name.text, team: team.id, at, span };
  return { name: name.text, thing: player && { kind: 'player', player } };
}

export function teamNamed(word: Word, scope: Scope): Team | null {
  const thing = scope.thing(word, 'team', teamKinds);
  if (thing === null || thing.kind === 'team') return thing?.team ?? null;
  scope.report(wrongKind(word, word.text, called(kindOf(thing)), 'a team is wanted here'));
  return null;
}

/** A team with everyone counted: as many as written, the goalkeeper among them, and more when more are placed for it. */
export function counted(team: Team, players: readonly Player[], stations: readonly Station[]): Team {
  const placed = players.filter((player) => player.team === team.id).length;
  const standing = stations.filter((station) => station.team === team.id).reduce((sum, station) => sum + station.holds, 0);
  return { ...team, size: Math.max(team.size, placed + standing) };
}

/** More players than the team was given: reported at the lines that are too many. */
export function reportSurplus(statements: readonly Statement[], teams: readonly Team[], scope: Scope): void {
  for (const team of teams) {
    if (team.size === 0) continue;
    const lines = statements.filter((statement) => statement.kind === 'player' && statement.of.text === team.name);
    for (const line of lines.slice(team.size)) scope.report(everyonePlaced(line.span, team.name, team.size));
  }
}

const teamKinds: ReadonlySet<NameKind> = new Set(['team', 'floaters']);

/** Someone a statement names. */
export interface Person {
  readonly id: ActorId;
  readonly at: Point;
  readonly station: Id | null;
}

/** The one who acts for a name: the first in a station's queue, or with `next` the one behind. Null for things. */
export function personOf(thing: Thing, next: boolean): Person | null {
  if (thing.kind === 'station') {
    const { id, name, at } = thing.station;
    return { id: next ? `next ${name}` : name, at, station: id };
  }
  if (next) return null;
  if (thing.kind === 'player') return { id: thing.player.name, at: thing.player.at, station: null };
  return thing.kind === 'furniture' && thing.furniture.kind === 'coach' ? { id: 'coach', at: thing.furniture.at, station: null } : null;
}

const coach = { id: 'coach', kind: 'coach', name: 'coach', station: null, team: null } as const;

/** In the order of the text; `queued` are the stations whose next player is spoken of. */
export function actorsOf(
  stations: readonly Station[],
  players: readonly Player[],
  furniture: readonly Furniture[],
  queued: ReadonlySet<Id>,
): readonly Actor[] {
  return [
    ...stations.flatMap((station): Actor[] => {
      const { id, name, team, span } = station;
      const home = { x: station.at.x, y: station.at.y };
      const first: Actor = { id: name, kind: 'first', name, station: id, team, home, span };
      return station.holds >= 2 || queued.has(id) ? [first, { ...first, id: `next ${name}`, kind: 'next' }] : [first];
    }),
    ...players.map(({ role, name, team, at: { x, y }, span }): Actor => {
      return { id: name, kind: role, name, station: null, team, home: { x, y }, span };
    }),
    ...furniture
      .filter((thing) => thing.kind === 'coach')
      .map(({ at: { x, y }, span }): Actor => ({ ...coach, home: { x, y }, span })),
  ];
}
