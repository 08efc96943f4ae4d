import { expect, test } from 'vitest';
import { picture } from '../../shared/service/picture.ts';
import { cursor } from './texts.ts';

/** What the pitch shows with the cursor at the `|`. */
function shown(place: string, kept?: number): { readonly title: string | undefined; readonly drills: readonly string[] | undefined } {
  const text = `drill "Pair" {
  area 12 x 12
  station Base at (2, 6)
  station Wall at (10, 6)
  ball at Base
  sequence {
    Base passes to Wall
    Wall passes to Base
  }
}

drill "Duel" {
  area 20 x 20
  team Reds bib red of 2
  team Blues bib blue of 2
  player Reds1 of Reds at (4, 4)
  player Reds2 of Reds at (14, 4)
  player Blues1 of Blues at (4, 16)
  player Blues2 of Blues at (14, 16)
  ball at Reds1
  phase "Across" {
    Reds1 passes to Reds2
  }
  phase "Back" after "Across" {
    Reds2 passes to Reds1
  }
}
`;
  const { open, offset } = cursor(text.replace(place, `|${place}`));
  const answer = picture(open, { drill: { offset, ...(kept === undefined ? {} : { shown: kept }) }, theme: 'light', convention: 'solid pass' }, {});
  return { title: answer?.drills[answer.index]?.name, drills: answer?.drills.map(({ name }) => name) };
}

const all = ['Pair', 'Duel: Across', 'Duel: Back'];

test.each([
  { place: 'station Wall', title: 'Pair' },
  { place: 'Reds1 passes', title: 'Duel: Across' },
  { place: 'Reds2 passes', title: 'Duel: Back' },
  { place: 'team Blues', title: 'Duel: Across' },
])('at `$place` the pitch shows $title', ({ place, title }) => {
  expect(shown(place)).toEqual({ title, drills: all });
});

test.each([
  { place: 'team Blues', kept: 2, title: 'Duel: Back', why: 'rules and teams belong to every phase' },
  { place: 'Reds1 passes', kept: 2, title: 'Duel: Across', why: 'another phase is written there' },
  { place: 'Base passes', kept: 2, title: 'Pair', why: 'another drill is written there' },
  { place: 'team Blues', kept: 0, title: 'Duel: Across', why: 'the sheet shown is of another drill' },
  { place: 'team Blues', kept: 7, title: 'Duel: Across', why: 'there is no such sheet any more' },
])('at `$place` with sheet $kept shown, the pitch shows $title: $why', ({ place, kept, title }) => {
  expect(shown(place, kept).title).toBe(title);
});

test('a phase lists its own problems and those of the whole game, and the choice says where others are', () => {
  const text = `drill "Duel" {
  area 20 x 20
  team Reds bib red of 2
  team Blues bib blue of 1
  player Reds1 of Reds at (4, 4)
  player Reds2 of Reds at (14, 4)
  player Blues1 of Blues at (4, 16)
  cone at Somewhere
  ball at Reds1
  phase "Across" {
    Reds1 passes to Reds2
  }
  phase "Back" {
    Nobody passes to Reds1
  }
}
`;
  const sheet = (index: number): ReturnType<typeof picture> => picture(cursor(`|${text}`).open, { drill: { index }, theme: 'light', convention: 'solid pass' }, {});
  expect([0, 1].map((index) => sheet(index)?.problems.map(({ span }) => text.slice(span.from, span.to)))).toEqual([['Somewhere'], ['Somewhere', 'Nobody']]);
  expect(sheet(0)?.drills.map(({ faults }) => faults)).toEqual([0, 1]);
});
