import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyse, type DrillAnalysis } from '../../shared/analyse.ts';
import { problemsOn } from '../../shared/checks/on-sheet.ts';
import { svgOf } from '../../shared/draw.ts';

const text = `drill "Corners" {
  age U12
  players 4
  area 20 x 20
  zones Safe 5 x 5 in corners of area
  team Red of 2
  team Blue of 2
  player Red1 of Red at (3, 3)
  player Red2 of Red at (16, 9)
  player Blue1 of Blue at (9, 8)
  player Blue2 of Blue at (13, 17)
  ball at Red1
  rule Safe no defenders
  phase "Over" {
    Red1 passes into SafeTopLeft for Red2
  }
  progress space "Smaller" { area 16 x 17 }
  regress space "Bigger corners" { zones Safe 8 x 8 in corners of area }
}
`;

describe('what is to mend on a drawing', () => {
  const analysis = analyse(text);
  it('of a progression is its own, with its own numbers', () => {
    const svg = svgOf(analysis, { drill: 'Smaller' });
    // By hand: the corner's middle is 2.5 m from both sides, (2.5, 14.5) on 17 m and (2.5, 17.5) on 20 m.
    expect(svg).toContain('Red2 gets to (2.5, 14.5)');
    expect(svg).not.toContain('(2.5, 17.5)');
    expect(svg).not.toContain('With “');
  });
  it('of the drill is not that of its progressions', () => {
    const messages = problemsOn(analysis, analysis.drills[0] as DrillAnalysis).map(({ message }) => message);
    expect(messages).toEqual([expect.stringContaining('`Red2` gets to (2.5, 17.5)')]);
  });
  it('that is not listed is counted', () => {
    const path = new URL('../../shared/examples/crowded-game.drill', import.meta.url);
    expect(svgOf(analyse(readFileSync(path, 'utf8')))).toContain('7 to 9 are told by the check.');
  });
});
