import { describe, expect, it } from 'vitest';
import { analyse, type DrillAnalysis } from '../../shared/analyse.ts';
import { changes } from '../../shared/sheet/changes.ts';

/** What the sheet tells of one change, line by line. Common practice, no source: it must be possible to set out from it. */
function told(base: string, change: string): string[] {
  const analysis = analyse(`drill "Base" {\n  age U12\n  area 20 x 20\n${base}\n  ${change}\n}\n`).drills[0] as DrillAnalysis;
  return changes(analysis).flatMap((block) => (block.kind === 'item' ? [block.text] : []));
}

const triangle = `  station A at (3, 3) holds 2
  station B at (3, 13)
  station C at (13, 13)
  pole P at (8, 8)
  ball at A
  sequence {
    A passes to B while A follows
    B passes to C while B follows
    C passes to next A while C runs to A
  }`;
const game = `  zones Safe 5 x 5 in corners of area
  team Red of 2
  team Blue of 1
  player Red1 of Red at area.left
  player Red2 of Red at area.right
  player Blue1 of Blue at (10, 12)
  ball at Red1
  rule touches 2 for Red
  phase "Over" {
    Red1 passes to Red2
  }`;

describe('what a progression changes', () => {
  it.each([
    ['a station, and which way', triangle, 'progress space "Deeper" { station C at (13, 16) }', 'C stands at (13, 16), was at (13, 13): 3 m up.'],
    ['what else stands there', triangle, 'progress equipment "Gate" { gate Out at (13, 10) width 2 }', 'The gate Out is new at (13, 10).'],
    ['zones', game, 'regress space "Bigger" { zones Safe 6 x 6 in corners of area }', 'SafeTopLeft, SafeTopRight, SafeBottomLeft and SafeBottomRight are 6 x 6 m, were 5 x 5.'],
    ['a rule, once', game, 'progress task "One touch" { rule touches 1 for Red }', 'Rule for Red: at most 1 touch, was at most 2 touches.'],
    // 20 x 20 m and 15 x 18 m by three players.
    ['what it comes to', game, 'progress space "Tighter" { area 15 x 18 }', 'Space a player 90 m², was 133 m².'],
    ['a coaching point', game, 'progress task "Look" { point technical "Open up" }', 'New coaching point: “Open up”.'],
  ])('says %s', (_, base, change, line) => {
    expect(told(base, change)).toContain(line);
  });
  it('tells the play that is new and the play that is gone, not runs that end elsewhere because a station moved', () => {
    const lines = told(triangle, 'progress task "Set" { sequence {\n    A passes to B while A follows\n    B passes to next A\n    B follows\n  } }');
    expect(lines).toEqual(expect.arrayContaining(['Now 2: B passes to next A.', 'No longer 2: B passes to C while B follows.']));
    expect(lines.filter((line) => line.includes('A passes to B'))).toEqual([]);
    const shows = triangle.replace('A passes to B while A follows', 'A waits 2 s while B shows to 2 below B\n    A passes to B while A follows');
    expect(told(shows, 'progress space "Deeper" { station B at (3, 15) }').filter((line) => line.startsWith('Now'))).toEqual([]);
  });
  it('tells of a smaller team once, not of everyone in it', () => {
    expect(told(game, 'regress people "One" { team Red of 1 }').filter((line) => line.includes('Red') && !line.includes('passes'))).toEqual(['Red: players 1, was 2.']);
  });
  it('does not list everyone who only spreads out on another area', () => {
    const lines = told(game, 'progress space "Tighter" { area 16 x 16 }');
    expect(lines).toContain('The area is 16 x 16 m, was 20 x 20 m.');
    expect(lines.filter((line) => line.includes('Red1'))).toEqual([]);
  });
});
