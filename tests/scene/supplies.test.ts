import { describe, expect, it } from 'vitest';
import { analyse, type DrillAnalysis } from '../../shared/analyse.ts';
import { onSheet } from '../../shared/scene/ground.ts';
import type { Scene, Shape } from '../../shared/scene/scene.ts';
import { stage } from '../../shared/scene/stage.ts';

const drawn = (body: string): Scene => stage(analyse(`drill "D" {\n  age U12\n  area 28 x 28\n${body}\n}\n`).drills[0] as DrillAnalysis, {
  theme: 'light', convention: 'solid pass', alone: { width: 116, height: 120, enlarged: 1.25, key: false },
});
const heapAt = ({ marks }: Scene) => {
  const shape = marks.find(({ id }) => id.startsWith('balls-'))?.shapes[0] as Shape & { kind: 'group' };
  return { x: shape.x, y: shape.y };
};

// Common practice, no source: spare balls beside the ground lie beside it, or somebody trips over them.
describe('spare balls', () => {
  it('beside the area are drawn beside it, also where somebody stands close by', () => {
    const scene = drawn('  floaters Joker of 1\n  player Joker1 of Joker at (1, 14)\n  balls 4 at 1 left of area.left');
    expect(heapAt(scene).x).toBeLessThan(onSheet(scene.plan, { x: 0, y: 14 }).x);
  });
  it('on the area are drawn on it', () => {
    const scene = drawn('  floaters Joker of 1\n  player Joker1 of Joker at (1, 14)\n  balls 4 at 1 right of area.left');
    expect(heapAt(scene).x).toBeGreaterThan(onSheet(scene.plan, { x: 0, y: 14 }).x);
  });
});

it('keeps the name of a zone that is narrower than its name within the area', () => {
  const scene = drawn('  zones Safe 5 x 5 in corners of area');
  const [left, right] = [onSheet(scene.plan, { x: 0, y: 0 }).x, onSheet(scene.plan, { x: 28, y: 0 }).x];
  const names = scene.marks.filter(({ id }) => id.startsWith('name-zone'));
  expect(names).toHaveLength(4);
  for (const { shapes } of names) {
    const [patch] = shapes;
    const from = Number(/^M([\d.-]+)/.exec(patch?.kind === 'path' ? patch.d : '')?.[1]);
    const across = Number(/h([\d.]+)/.exec(patch?.kind === 'path' ? patch.d : '')?.[1]);
    expect(from).toBeGreaterThanOrEqual(left);
    expect(from + across).toBeLessThanOrEqual(right);
  }
});
