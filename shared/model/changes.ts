/** Progressions and regressions: a drill with some of its statements replaced. */
import type { Change, Statement } from '../../grammar/tree.ts';
import type { Problem } from '../problem.ts';
import { withFewer } from './fewer.ts';
import { spanOf, within } from './span.ts';

/**
 * The statements of the drill with those of the change in place of the ones they replace; what replaces nothing comes
 * last. The change's own blocks and those beside it are left out, and who leaves with a smaller team.
 */
export function changedStatements(base: readonly Statement[], change: Change): readonly Statement[] {
  const kept = base.filter((statement) => statement.kind !== 'progress' && statement.kind !== 'regress');
  const own = change.body.lines.filter((statement) => statement.kind !== 'progress' && statement.kind !== 'regress');
  const unnamed = kept.filter((statement) => statement.kind === 'sequence' && statement.name === null).length;
  const keyOf = (statement: Statement) => (unnamed > 1 && statement.kind === 'sequence' && !statement.name ? null : identityOf(statement));
  const waiting = new Map<string, Statement>();
  for (const statement of own) {
    const key = keyOf(statement);
    if (key !== null && !waiting.has(key)) waiting.set(key, statement);
  }
  const used = new Set<Statement>();
  const merged = kept.map((statement) => {
    const key = keyOf(statement);
    const replacement = key === null ? undefined : waiting.get(key);
    if (!replacement || used.has(replacement)) return statement;
    used.add(replacement);
    return replacement;
  });
  const expected = new Set(own.flatMap((statement) => (statement.kind === 'expect' ? [statement.zone.text] : [])));
  const all = [...merged.filter((statement) => !(statement.kind === 'expect' && expected.has(statement.zone.text))), ...own.filter((statement) => !used.has(statement))];
  return withFewer(all, kept, own);
}

/**
 * The problems that only the changed drill has. Those inside the change stay where they are; those elsewhere are shown at
 * its name, because the lines they point to are sound without it.
 */
export function blameOnChange(
  base: readonly Problem[],
  changed: readonly Problem[],
  change: Pick<Change, 'name' | 'span'>,
): readonly Problem[] {
  const known = new Set(base.map(placeOf));
  return changed
    .filter((problem) => !known.has(placeOf(problem)))
    .map((problem) => {
      if (within(change.span, problem.span)) return problem;
      return {
        ...problem,
        span: spanOf(change.name),
        message: `With “${change.name.text}”: ${problem.message}`,
        help: problem.help ?? `Write that line, or the sequence or phase around it, anew in the block of “${change.name.text}”.`,
        related: [{ span: problem.span, message: 'The place meant.' }, ...problem.related],
        // A cure at the place meant would change the drill itself.
        fixes: [],
      };
    });
}

function placeOf(problem: Problem): string {
  return `${problem.code} ${problem.span.from} ${problem.span.to}`;
}

/** Two statements with the same identity cannot stand side by side; null for those that can. */
function identityOf(statement: Statement): string | null {
  switch (statement.kind) {
    case 'age':
    case 'players':
    case 'units':
    case 'tempo':
    case 'theme':
    case 'time':
    case 'ground':
    case 'level':
    case 'tags':
    case 'area':
    case 'coach':
    case 'rotate':
    case 'order':
    case 'bouts':
      return statement.kind;
    case 'pace':
      return `pace ${statement.of}`;
    case 'let':
    case 'zone':
    case 'zones':
    case 'station':
    case 'team':
    case 'floaters':
    case 'player':
    case 'keeper':
      return `name ${statement.name.text}`;
    case 'cone':
    case 'disc':
    case 'pole':
    case 'mannequin':
    case 'gate':
    case 'goal':
    case 'minigoal':
    case 'hurdle':
    case 'ladder':
      return statement.name && `name ${statement.name.text}`;
    case 'split':
      return `split ${statement.of.text}`;
    case 'place':
      return `place ${statement.of.text} ${statement.zone.text}`;
    case 'sequence':
    case 'mirrored':
    case 'phase':
      return `play ${statement.name?.text ?? ''}`;
    case 'rule':
      return ruleIdentity(statement);
    case 'note':
    case 'ball':
    case 'balls':
    case 'expect':
    case 'score':
    case 'point':
    case 'question':
    case 'safety':
    case 'progress':
    case 'regress':
      return null;
  }
}

/** `no` is at most none. */
function ruleIdentity(statement: Extract<Statement, { kind: 'rule' }>): string | null {
  switch (statement.rule) {
    case 'touches':
      return `touches ${statement.who?.text ?? ''} ${statement.zone?.text ?? ''}`;
    case 'text':
      return null;
    case 'no':
    case 'at most':
      return `at most ${statement.zone.text} ${statement.who.text}`;
    case 'at least':
    case 'exactly':
      return `${statement.rule} ${statement.zone.text} ${statement.who.text}`;
  }
}
