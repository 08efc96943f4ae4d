import { describe, expect, it } from 'vitest';
import { cut, textWidth, wrap } from '../../shared/font/text.ts';
import { stage } from '../../shared/scene/scene.ts';
import { analysed, drills } from './drills.ts';

const via = `drill "Via" {
  area 12 x 12
  gate Out at (6, 6) width 2
  station A at (2, 2)
  station B at (2, 6)
  ball at A
  sequence {
    A dribbles to (9, 9) via Out via (9, 6) after 0.5 s while B runs to (2, 9) via (1, 6) at jog
  }
}`;

describe('beats in words', () => {
  it.each([
    ['kite', 1, 'Base touches to (9, 2.5) while Screen runs to (7, 6) then shows to (9, 5)'],
    ['kite', 4, 'Base passes to Left while Screen spins around Near to (11, 16)'],
    ['kite', 5, 'Left passes into (6, 16) for Screen, in 2 touches while Base follows'],
    ['kite', 7, 'Top passes to next Base, lofted while Top follows'],
    ['two-lanes', 1, 'RightStart waits for 2.5 s while RightMiddle runs to (15, 9) then shows to (17, 7)'],
    ['game', 2, 'Red2 passes to Red3 while Yellow3 presses Red3, Red5 overlaps Red3 to (27, 14)'],
    ['game', 4, 'Joker2 crosses to Red4 while Red4 runs to (15, 16) at sprint'],
    ['game', 5, 'Red4 shoots at North'],
    ['via', 1, 'A dribbles to (9, 9) via Out via (9, 6) after 0.5 s while B runs to (2, 9) via (1, 6) at jog'],
  ] as const)('%s, beat %d', (name, number, words) => {
    const { beats } = stage(analysed(drills[name] ?? via), { theme: 'light', convention: 'solid pass' });
    expect(beats.find((beat) => beat.number === number)?.text).toBe(words);
  });
});

describe('text laid out', () => {
  it('is as wide as its signs together, East Asian signs a full square, combining marks nothing', () => {
    expect([textWidth('Hi', 10, 'medium'), textWidth('', 10, 'medium'), textWidth('前', 10, 'medium'), textWidth('e\u0301', 10, 'bold') - textWidth('e', 10, 'bold')])
      .toEqual([expect.closeTo(textWidth('H', 10, 'medium') + textWidth('i', 10, 'medium')), 0, 10, 0]);
  });
  it.each([['Find the free player on the far side', 30, 2], ['wwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwww', 20, 3], ['a b c d e f g h', 4, 2], ['', 10, 2]] as const)('%s never passes its room', (words, width, most) => {
    const lines = wrap(words, width, 3, 'medium', most);
    expect(lines.length).toBeLessThanOrEqual(most);
    expect(lines.filter((line) => textWidth(line, 3, 'medium') > width)).toEqual([]);
  });
  it('is cut with … only where it has to be', () => {
    expect([cut('Base', 100, 3, 'bold'), cut('Baseline', 6, 3, 'bold')]).toEqual(['Base', 'Ba…']);
  });
});
