import { describe, expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import { stage, type Scene, type Shape } from '../../shared/scene/scene.ts';

/** A drill with one problem that a reader can point at, and where in metres. Common practice of reviewing, no source. */
const faults: readonly (readonly [what: string, lines: string, code: string, place: readonly [number, number]])[] = [
  ['a station', 'station Far at (15, 5)', 'outside-area', [15, 5]],
  ['a player', 'team Red bib red of 1\n  player Red1 of Red at (15, 5)', 'outside-area', [15, 5]],
  ['a pole', 'pole Post at (15, 5)', 'outside-area', [15, 5]],
  ['a zone', 'zone Box 4 x 4 at (10, 5)', 'zone-outside-area', [10, 5]],
  ['a round zone', 'zone Ring circle 3 at (10, 5)', 'zone-outside-area', [10, 5]],
];

const lettersIn = (shapes: readonly Shape[]): { readonly x: number; readonly y: number }[] => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : []));

describe('a flag stands at', () => {
  test.each(faults)('%s', (_, lines, code, [x, y]) => {
    const { drills: [drill], problems } = analyse(`drill "A" {\n  area 10 x 10\n  ${lines}\n}\n`);
    const scene: Scene = stage(drill!, { theme: 'light', convention: 'solid pass', problems: problems.filter((problem) => problem.code === code) });
    const [flag] = lettersIn(scene.marks.find(({ id }) => id === 'problem-1')?.shapes ?? []);
    expect(flag).toBeDefined();
    const { left, bottom, perMetre } = scene.plan;
    // Beside it: within a centimetre of the sheet.
    expect(Math.hypot(flag!.x - left - x * perMetre, flag!.y - bottom + y * perMetre)).toBeLessThan(10);
  });
});
