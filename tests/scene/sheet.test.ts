import { describe, expect, it } from 'vitest';
import { stage } from '../../shared/scene/scene.ts';
import { analysed, drills } from './drills.ts';

function sheet(text: string, scale?: number) {
  return stage(analysed(text), { theme: 'light', convention: 'solid pass', ...(scale === undefined ? {} : { scale }) });
}

function words(text: string, id: string): string[] {
  return sheet(text).marks.filter((mark) => mark.id === id).flatMap((mark) => mark.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])));
}

describe('the drawing scale', () => {
  it.each([['8 x 5', 50], ['12 x 12', 100], ['15 x 15', 125], ['30 x 20', 200], ['40 x 30', 250], ['60 x 40', 400], ['75 x 50', 500], ['60 x 70', 600], ['90 x 100', 750], ['68 x 105', 1000], ['900 x 600', 8000]] as const)('for an area of %s is 1:%d', (area, scale) => {
    expect(sheet(`drill "D" {\n  area ${area}\n}`).plan.scale).toBe(scale);
  });
  it('does not change with a longer story', () => {
    const told = (drills['kite'] as string).replace('Screen sets to Base', 'Screen sets to Base\n    Base passes to Screen\n    Screen sets to Base');
    expect(sheet(told).plan).toEqual(sheet(drills['kite'] as string).plan);
  });
  it('can be asked for', () => {
    expect(sheet(drills['kite'] as string, 150).plan.perMetre).toBeCloseTo(1000 / 150);
  });
});

describe('dimensions', () => {
  // Base, Screen and Top stand at x = 9 with both poles, Left at 2, Right at 16; y: 1, 6, 7, 12, 16, 19 of 24.
  it('give the width and the chain across', () => {
    expect(words(drills['kite'] as string, 'dimension-width')).toEqual(['18', '2', '7', '7', '2']);
  });
  it('give the length and the chain along', () => {
    expect(words(drills['kite'] as string, 'dimension-length')).toEqual(['24', '1', '5', '1', '5', '4', '3', '5']);
  });
  it('give the diagonal: 18² + 24² = 30²', () => {
    expect(words(drills['kite'] as string, 'area')).toContain('diagonal 30 m');
  });
  it('are in the units of the drill', () => {
    expect(words('drill "D" {\n  units yd\n  area 20 x 30\n}', 'dimension-width')).toEqual(['20']);
  });
  it('leave out what has no room, the least important first', () => {
    const close = `drill "D" {\n  area 100 x 60\n  station A at (50, 30)\n  cone K at (50.4, 30)\n  cone L at (50.8, 30)\n}`;
    expect(words(close, 'dimension-width')).toEqual(['100', '50', '50']);
  });
});

describe('marks', () => {
  it('have ids of their own that come from names', () => {
    const ids = sheet(drills['game'] as string).marks.map((mark) => mark.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual(expect.arrayContaining(['area', 'zone-West', 'thing-North', 'pass-1', 'name-zone-Ring']));
  });
  it('survive JSON', () => {
    const scene = sheet(drills['kite'] as string);
    expect(JSON.parse(JSON.stringify(scene))).toEqual(scene);
  });
});

describe('letters on badges', () => {
  const letters = (text: string) => sheet(text).movers.filter((mover) => mover.kind === 'person').flatMap((mover) => mover.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])));
  it.each([
    ['stations with different first letters', 'station Base at (1, 1)\n station Top at (2, 2)', ['B', 'T']],
    ['stations with the same', 'station Start at (1, 1)\n station Screen at (2, 2)', ['St', 'Sc']],
    ['names of two words', 'station LeftTop at (1, 1)\n station LeftBack at (2, 2)', ['LT', 'LB']],
    ['numbered names', 'station S1 at (1, 1)\n station S12 at (2, 2)', ['S1', 'S12']],
    ['players of a team', 'team Red\n player Red1 of Red at (1, 1)\n player Red2 of Red at (3, 3)', ['1', '2']],
  ] as const)('for %s', (_, people, expected) => {
    expect(letters(`drill "D" {\n area 10 x 10\n ${people}\n}`)).toEqual(expected);
  });
});
