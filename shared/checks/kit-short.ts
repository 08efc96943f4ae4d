import type { KitKind } from '../model/session.ts';
import { kitText } from '../session/words.ts';
import { problem, type Check } from './check.ts';
import { partsOf } from './sessions.ts';

export const check: Check = {
  code: 'kit-short',
  group: 'session',
  severity: 'error',
  title: 'More kit needed than there is',
  why: 'What stands on the ground at once in one part is counted: furniture, balls, bibs, and the discs that mark corners and stations, those that two groups share once. Spare cones stand in for discs and discs for cones, and bibs without a colour for any. A session that names no kit is not judged.',
  source: null,
  bad: [
    `drill "Wall" {
  players 3
  area 12 x 12
  pole Near at (6, 9)
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}

session "Tuesday" {
  players 6
  kit 20 discs, 1 ⟦pole⟧
  part "Wall" 20 min groups 2 of "Wall" at (0, 0), (12, 0)
}
`,
  ],
  good: [
    `drill "Wall" {
  players 3
  area 12 x 12
  pole Near at (6, 9)
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
}

session "Tuesday" {
  players 6
  kit 6 discs, 4 cones, 2 poles
  part "Wall" 20 min groups 2 of "Wall" at (0, 0), (12, 0)
}
`,
  ],
  find: null,
  findInSession: (analysis) => analysis.kit.filter(({ short }) => short > 0).flatMap(({ kind, colour, needed, has, short, mostIn }) => {
    const part = partsOf(analysis).find(({ part: { name } }) => name === mostIn)?.part;
    const own = analysis.session.kit.find((item) => item.what === kind && (kind !== 'bib' || item.colour?.toLowerCase() === colour));
    const span = own?.span ?? part?.nameSpan;
    if (!part || !span) return [];
    const message = `"${mostIn}" needs ${kitText(kind, needed, colour)} and the kit has ${has}${instead(kind, needed - (has ?? 0) - short)}: ${short} short.`;
    return problem(check, span, message, {
      help: part.groups > 1 || (part.sizes?.length ?? 0) > 1 ? `Make fewer groups${sharable.has(kind) ? ', put groups side by side so that they share markers' : ''}, or bring more.` : 'Bring more, or use fewer.',
      related: own ? [{ span: part.nameSpan, message: 'This part needs them.' }] : [],
    });
  }),
};

const sharable: ReadonlySet<KitKind> = new Set<KitKind>(['disc', 'cone']);

/** What stands in for it, of those that are to spare. */
function instead(kind: KitKind, count: number): string {
  if (count <= 0) return '';
  if (kind === 'bib') return `, and ${count} without a colour`;
  return `, and ${kitText(kind === 'disc' ? 'cone' : 'disc', count)} to spare in their place`;
}
