import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';

/** A drill with a few faults, in which finding what is wrong is the point. */
const kite = readFileSync(new URL('../support/kite.drill', import.meta.url), 'utf8');

test('the kite has exactly its faults', () => {
  const { problems } = analyse(kite);
  expect(problems.map(({ code, span, message }) => ({ code, at: kite.slice(span.from, span.to), message }))).toEqual([
    { code: 'late-receiver', at: 'Screen', message: '`Screen` gets to (9, 5) 1.4 s after the ball.' },
    { code: 'late-receiver', at: 'Screen', message: '`Screen` gets to (6, 16) 2.8 s after the ball.' },
    {
      code: 'role-never-played',
      at: 'rotate Base -> Left -> Screen -> Top -> Base',
      message: '`Right` is left out of the rotation: whoever starts there stays there, and nobody else gets to play there.',
    },
  ]);
});

test('its rotation has two circles, and everyone is home after six repetitions', () => {
  const { measures } = analyse(kite).drills[0]!;
  expect(measures.rotation).toEqual({ closed: true, cycles: [['Base1', 'Left', 'Screen', 'Top2', 'Top1', 'Base2'], ['Right']], order: 6 });
});
