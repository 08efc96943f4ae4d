import { describe, expect, it } from 'vitest';
import { overlap } from '../../shared/scene/ground.ts';
import { stage, type Scene } from '../../shared/scene/scene.ts';
import { discsOf, headsOf, type Named, wordsOf } from './boxes.ts';
import { analysed, drillNames, drills } from './drills.ts';

function drawn(name: string): Scene {
  return stage(analysed(drills[name] as string), { theme: 'light', convention: 'solid pass' });
}

/** Pairs that cover each other by more than the rounding of a hundredth of a millimetre. */
function covered(some: readonly Named[], others: readonly Named[]): string[] {
  return some.flatMap((a, index) => others.flatMap((b, at) => {
    const same = some === others && at <= index;
    const area = same ? 0 : overlap(a.box, b.box);
    return area > 0.01 ? [`${a.name} and ${b.name}: ${area.toFixed(2)} mm²`] : [];
  }));
}

describe.each(drillNames)('words on the drawing of %s', (name) => {
  const scene = drawn(name);
  const labels = wordsOf(scene, 'labels');
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
    const lines = analysed(drills[name] as string).drill.sequences.flatMap((sequence) => sequence.beats).filter((beat) => beat.lead.chain.some((action) => !['waits', 'holds'].includes(action.verb)));
    const written = new Set(marks.filter((mark) => mark.id.startsWith('number-')).flatMap((mark) => mark.shapes.flatMap((shape) => (shape.kind === 'text' ? shape.text.split(', ').map(Number) : []))));
    expect(written.size).toBe(Math.min(lines.length, beats.length));
  });
});
