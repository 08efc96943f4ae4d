/** Everything that a drill's statements declare, worked out one after the other, each after what it needs. */
import type { Statement } from '../../grammar/tree.ts';
import type { Declaring } from './declarations.ts';
import type { Drill, Furniture, Split } from './drill.ts';
import { evaluate } from './expressions.ts';
import { facingOf, furnitureOf, type Standing } from './furniture.ts';
import { playerNamed, stationNamed, teamDeclared } from './people.ts';
import { placingPlan, playersPlaced } from './placing.ts';
import type { Scope } from './scope.ts';
import type { Named, Thing } from './things.ts';
import { areaNamed, cornersNamed, stripsNamed, zoneNamed } from './zones.ts';

/** Fills the scope's things by name; the lists are in the order of the text. */
export function workedOut(
  statements: readonly Statement[],
  scope: Scope,
): { readonly things: readonly Thing[]; readonly lets: Drill['lets']; readonly splits: readonly Split[] } {
  const { byName, order } = scope.declarations;
  const found = new Map<Statement, readonly Thing[]>();
  const splits = new Map<Statement, Split>();
  const plan = once(() => placingPlan(statements, scope));
  const numbers = numberedByKind(statements);
  const standing = new Map<Furniture, Standing>();

  for (const statement of order) {
    const kept = declared(statement).filter(({ name }) => name === null || (byName.get(name)?.statement ?? statement) === statement);
    for (const { name, thing } of kept) if (name !== null) scope.things.set(name, thing);
    found.set(statement, kept.flatMap(({ thing }) => thing ?? []));
  }

  function declared(statement: Declaring): readonly Named[] {
    switch (statement.kind) {
      case 'let': {
        const quantity = evaluate(statement.value, scope);
        return [{ name: statement.name.text, thing: quantity && { kind: 'let', quantity } }];
      }
      case 'area':
        return [areaNamed(statement, scope)];
      case 'zone':
        return [zoneNamed(statement, scope)];
      case 'split': {
        const { strips, split } = stripsNamed(statement, scope);
        if (split) splits.set(statement, split);
        return strips;
      }
      case 'zones':
        return cornersNamed(statement, scope);
      case 'cone':
      case 'disc':
      case 'pole':
      case 'mannequin':
      case 'gate':
      case 'goal':
      case 'minigoal':
      case 'hurdle':
      case 'ladder':
      case 'coach': {
        const name = statement.kind === 'coach' ? 'coach' : (statement.name?.text ?? null);
        const furniture = furnitureOf(statement, name ?? `${statement.kind} ${numbers.get(statement)}`, scope);
        if (furniture) standing.set(furniture, statement);
        return [{ name, thing: furniture && { kind: 'furniture', furniture } }];
      }
      case 'station':
        return [stationNamed(statement, scope)];
      case 'team':
      case 'floaters':
        return [teamDeclared(statement, scope)];
      case 'player':
      case 'keeper':
        return [playerNamed(statement, scope)];
      case 'place':
        return playersPlaced(statement, plan(), statements, scope);
    }
  }

  function facing(thing: Thing): Thing {
    const statement = thing.kind === 'furniture' ? standing.get(thing.furniture) : undefined;
    if (thing.kind !== 'furniture' || !statement) return thing;
    return { kind: 'furniture', furniture: { ...thing.furniture, facing: facingOf(statement, thing.furniture.at, scope) } };
  }

  return {
    things: statements.flatMap((statement) => found.get(statement) ?? []).map(facing),
    splits: statements.flatMap((statement) => splits.get(statement) ?? []),
    lets: statements.flatMap((statement) => {
      const thing = statement.kind === 'let' ? found.get(statement)?.[0] : undefined;
      return statement.kind === 'let' && thing?.kind === 'let'
        ? [{ name: statement.name.text, value: thing.quantity.value, span: statement.span, valueSpan: statement.value.span }]
        : [];
    }),
  };
}

/** 1, 2, 3 … among the statements of one kind. */
function numberedByKind(statements: readonly Statement[]): ReadonlyMap<Statement, number> {
  const last = new Map<string, number>();
  return new Map(
    statements.map((statement) => {
      const number = (last.get(statement.kind) ?? 0) + 1;
      last.set(statement.kind, number);
      return [statement, number];
    }),
  );
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => (made ??= { value: make() }).value;
}
