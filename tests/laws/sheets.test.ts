import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import type { Placed } from '../../shared/sheet/flow.ts';
import { drillSheet, sessionSheet, type Sheet } from '../../shared/sheet/sheet.ts';
import { paper } from '../../shared/sheet/style.ts';
import { workspaceOf } from '../../server/workspace.ts';
import { hostile } from '../support/hostile.ts';

const options = { theme: 'print', convention: 'solid pass', perPage: 1, names: [], problems: [] } as const;

function sheetsOf(text: string, path: string | null = null): readonly Sheet[] {
  const { drills, sessions, problems } = analyse(text, workspaceOf(path));
  const all = { ...options, problems };
  return [...sessions.map((session) => sessionSheet(session, all)), ...(drills.length > 0 ? [drillSheet(drills, 'Drills', all)] : [])];
}

function outside({ pages }: Sheet): readonly Placed[] {
  const all = pages.flatMap(({ bands }) => bands.flatMap(({ columns }) => columns.flat()));
  return all.filter(({ piece, x, y }) => !(x >= paper.margin - 1e-6 && y >= paper.top - 1e-6 && x + piece.width <= paper.width - paper.margin + 1e-6 && y + piece.height <= paper.bottom + 1e-6));
}

describe('a sheet keeps to its pages', () => {
  const path = new URL('../../shared/examples/tuesday-evening.drill', import.meta.url).pathname;
  const lines = readFileSync(path, 'utf8').split('\n');
  it('whatever lines of a session are missing or said twice', () => {
    const edits = fc.array(fc.tuple(fc.nat(lines.length - 1), fc.boolean()), { minLength: 1, maxLength: 6 });
    fc.assert(fc.property(edits, (chosen) => {
      const text = lines.flatMap((line, index) => {
        const edit = chosen.find(([at]) => at === index);
        return edit === undefined ? [line] : edit[1] ? [line, line] : [];
      }).join('\n');
      for (const sheet of sheetsOf(text, path)) expect(outside(sheet)).toEqual([]);
    }), { numRuns: 25 });
  });
  const large = ['5,000 stations, each above the last', 'a zone with 10,000 corners', '1,000 zones', '5,000 beats'];
  it.each(hostile.filter(({ what }) => large.includes(what)).map(({ what, text }) => [what, text] as const))('with %s', (_, text) => {
    for (const sheet of sheetsOf(text())) expect(outside(sheet)).toEqual([]);
  });
});
