import { describe, expect, it } from 'vitest';
import { overlap } from '../../shared/scene/ground.ts';
import { stage, type Scene, type Shape } from '../../shared/scene/scene.ts';
import { discsOf, headsOf, type Named, together, wordsOf } from './boxes.ts';
import { analysed, drillNames, drills, shownIn } from './drills.ts';

function drawn(name: string): Scene {
  return stage(analysed(drills[name] as string), { theme: 'light', convention: 'solid pass' });
}

/** Pairs that cover each other by more than the rounding of a hundredth of a millimetre. */
function covered(some: readonly Named[], others: readonly Named[]): string[] {
  return some.flatMap((a, index) => others.flatMap((b, at) => {
    const same = some === others && at <= index;
    const area = same || !together(a, b) ? 0 : overlap(a.box, b.box);
    return area > 0.01 ? [`${a.name} and ${b.name}: ${area.toFixed(2)} mm²`] : [];
  }));
}

describe.each(drillNames)('words on the drawing of %s', (name) => {
  const scene = drawn(name);
  const labels = [...wordsOf(scene, 'labels'), ...wordsOf(scene, 'lanes')];
  const dimensions = wordsOf(scene, 'dimensions');

  it('cover neither each other nor the dimensions', () => {
    expect([...covered(labels, labels), ...covered(labels, dimensions)]).toEqual([]);
  });
  it('cover no player and no later place', () => {
    expect(covered(labels, discsOf(scene))).toEqual([]);
  });
  it('cover no arrowhead', () => {
    expect(covered(labels, headsOf(scene))).toEqual([]);
  });
  it('of dimensions stay clear of each other', () => {
    expect(covered(dimensions, dimensions)).toEqual([]);
  });
  it('of the time line, the lists and the title block stay clear of each other', () => {
    const words = [...wordsOf(scene, 'strip'), ...wordsOf(scene, 'legend'), ...wordsOf(scene, 'title')];
    expect(covered(words, words)).toEqual([]);
  });
  it('and everything else stay within the sheet', () => {
    const all = (['labels', 'dimensions', 'strip', 'legend', 'title'] as const).flatMap((layer) => wordsOf(scene, layer));
    expect(all.filter(({ box }) => box.left < 3 || box.top < 3 || box.right > scene.width - 3 || box.bottom > scene.height - 3)).toEqual([]);
  });
});

describe('numbers on lines', () => {
  it.each(drillNames.filter((name) => name !== 'crowd'))('of %s are all there', (name) => {
    const { marks, beats } = drawn(name);
    const lines = shownIn(analysed(drills[name] as string)).flatMap((sequence) => sequence.beats).filter((beat) => beat.lead.chain.some((action) => !['waits', 'holds'].includes(action.verb)));
    const written = new Set(marks.filter((mark) => mark.id.startsWith('number-')).flatMap((mark) => mark.shapes.flatMap((shape) => (shape.kind === 'text' ? shape.text.split(', ') : []))));
    expect(written.size).toBe(Math.min(lines.length, beats.length));
    expect([...written].filter((label) => !beats.some((beat) => beat.label === label))).toEqual([]);
  });
  it.each(drillNames)('of %s hide no line shorter than three of them', (name) => {
    const scene = drawn(name);
    const badges = scene.marks.filter((mark) => mark.id.startsWith('number-')).flatMap((mark) => wordsOf({ ...scene, marks: [mark] }, 'labels').map(({ box }) => ({ name: mark.id, box })));
    const short = scene.marks.filter((mark) => mark.layer === 'paths').flatMap((mark) => {
      const spots = spotsOf(mark.shapes[0]);
      return lengthOf(spots) < 10.5 ? spots.map(({ x, y }) => ({ name: mark.id, box: { left: x - 0.1, right: x + 0.1, top: y - 0.1, bottom: y + 0.1 } })) : [];
    });
    const own = badges.flatMap((badge) => covered([badge], short.filter((spot) => `number-${spot.name}` === badge.name)));
    expect(own).toEqual([]);
  });
});

describe('runs and walks', () => {
  it.each(drillNames)('in %s pass under nobody', (name) => {
    const scene = drawn(name);
    const discs = discsOf(scene).map(({ name: disc, box }) => ({ disc, x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2, r: (box.right - box.left) / 2 }));
    const under = scene.marks.filter((mark) => /^(?:run|walk)-/.test(mark.id)).flatMap((mark) => {
      // The ends may lie at somebody's feet, and arcs are written by their ends.
      const spots = spotsOf(mark.shapes[0]);
      const inner = spots.filter((spot) => [spots[0], spots.at(-1)].every((end) => end !== undefined && Math.hypot(spot.x - end.x, spot.y - end.y) > 6));
      return discs.filter((disc) => inner.some((spot) => Math.hypot(spot.x - disc.x, spot.y - disc.y) < disc.r)).map(({ disc }) => `${mark.id} under ${disc}`);
    });
    expect(under).toEqual([]);
  });
});

/** Where a path of straight lines runs; of one with curves, its corners. */
function spotsOf(shape: Shape | undefined): { x: number; y: number }[] {
  if (shape?.kind !== 'path') return [];
  const corners = [...shape.d.matchAll(/(-?[\d.]+) (-?[\d.]+)(?=[A-Z]|$)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));
  if (/[^ML\d. -]/.test(shape.d)) return corners;
  return corners.flatMap((spot, index) => {
    const next = corners[index + 1] ?? spot;
    const steps = Math.max(1, Math.ceil(Math.hypot(next.x - spot.x, next.y - spot.y) / 0.5));
    return Array.from({ length: steps }, (_, step) => ({ x: spot.x + ((next.x - spot.x) * step) / steps, y: spot.y + ((next.y - spot.y) * step) / steps }));
  });
}

function lengthOf(spots: readonly { x: number; y: number }[]): number {
  return spots.slice(1).reduce((sum, spot, index) => sum + Math.hypot(spot.x - (spots[index]?.x ?? 0), spot.y - (spots[index]?.y ?? 0)), 0);
}
