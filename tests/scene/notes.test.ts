import { describe, expect, it } from 'vitest';
import { analyse, analyseDrill } from '../../shared/analyse.ts';
import { toSvg } from '../../shared/render/svg.ts';
import { stage, type Scene } from '../../shared/scene/scene.ts';
import { analysed, drills } from './drills.ts';

const style = { theme: 'light', convention: 'solid pass' } as const;

function sheet(text: string): Scene {
  return stage(analysed(text), style);
}

function told(scene: Scene, id: string): string[] {
  return scene.notes.filter((note) => note.id === id).flatMap(({ entries }) => entries.map(({ about, text }) => (about === null ? text : `${about}: ${text}`)));
}

/** A drill of four stations on a square, A with two players, with these lines more. */
function square(lines: string): string {
  return `drill "D" {\n area 20 x 20\n station A at (4, 4) holds 2\n station B at (4, 16)\n station C at (16, 16)\n station D at (16, 4)\n ball at A\n${lines}\n}`;
}

const round = ' sequence {\n A passes to B\n B passes to C\n C passes to D\n D passes to next A\n }';

describe('the rotation in words', () => {
  it.each([
    ['one circle', `${round}\n rotate A -> B -> C -> D -> A`, ['A → B → C → D → A', 'Everyone is home after 5 repetitions.']],
    ['several circles and one who stays', `${round}\n rotate A -> B -> A`, ['A → B → A', 'C and D stay.', 'Everyone is home after 3 repetitions.']],
    ['the end of the own queue', `${round}\n rotate A -> A`, ['A → end of the queue at A', 'B, C and D stay.', 'Everyone is home after 2 repetitions.']],
    ['nobody', ' sequence {\n A passes to B\n B passes to A\n }', ['Nobody moves on: everyone keeps their place.']],
    ['an open one', `${round}\n rotate A -> B -> C`, ['A → B → C', 'C and D stay.', 'Open: nobody comes to A, one too many at C.']],
    ['no play', '', []],
  ])('with %s', (_, lines, expected) => {
    expect(told(sheet(square(lines)), 'rotation')).toEqual(expected);
  });
  it('stands on the sheet', () => {
    const words = sheet(square(`${round}\n rotate A -> B -> C -> D -> A`)).marks.filter(({ id }) => id.startsWith('rotation-')).map(({ label }) => label);
    expect(words).toEqual(['A to B to C to D to A', 'Everyone is home after 5 repetitions.']);
  });
});

describe('walks to the next place', () => {
  const walks = (text: string) => sheet(text).marks.map(({ id }) => id).filter((id) => id.startsWith('walk-'));
  it('are drawn for whoever no run has led there', () => {
    expect(walks(square(`${round}\n rotate A -> B -> C -> D -> A`))).toEqual(['walk-A', 'walk-B', 'walk-C', 'walk-D']);
  });
  it('are not drawn beside the runs that lead there', () => {
    expect(walks(drills['two-balls'] as string)).toEqual([]);
  });
});

describe('rules and what to coach', () => {
  const game = sheet(`drill "D" {\n area 14 x 14\n team Whites of 4\n team Reds of 2\n zone Inner 6 x 6 at area.centre\n place 4 Whites in Inner\n place 2 Reds in Inner\n rule touches 2 for Whites in Inner\n rule Inner at most 2 attackers\n rule "No slide tackles"\n expect 4 v 2 in Inner\n score 1 for 6 passes\n score 2 for dribble into Inner by Reds\n score 1 for winning the ball in Inner\n bouts 4 x 90 s rest 3 min\n point social "Call early"\n question "Where is the free player?"\n safety "Move the goals away"\n}`);
  it.each([
    ['rules', ['Whites: at most 2 touches in Inner', 'Inner: at most 2 attackers', 'No slide tackles', '4 v 2 in Inner', '1 point for 6 passes', '2 points for Reds for a dribble into Inner', '1 point for winning the ball in Inner', '4 bouts of 90 s, 3 min rest']],
    ['coaching', ['Social: Call early']],
    ['questions', ['Where is the free player?']],
    ['safety', ['Move the goals away']],
  ] as const)('%s', (id, expected) => {
    expect(told(game, id)).toEqual(expected);
  });
  it('stand on the sheet where there is room', () => {
    expect(game.marks.map(({ id }) => id)).toEqual(expect.arrayContaining(['rules-8', 'coaching-1', 'questions-1']));
  });
  it('zones are set out by corner and size', () => {
    expect(game.marks.find(({ id }) => id === 'point-zone-Inner')?.label).toBe('Inner, 6 × 6: 4 across, 4 up');
  });
});

describe('beats side by side', () => {
  const labels = (text: string) => sheet(text).beats.map(({ label }) => label);
  it.each([
    ['in step', drills['two-balls'] as string, ['1a', '1b', '2a', '2b']],
    ['one after the other', (drills['two-balls'] as string).replace('order one and two', 'order one, two'), ['1', '2', '3', '4']],
    ['out of step', (drills['two-balls'] as string).replace('North passes to West while', 'North waits 1 s\n    North passes to West while'), ['1', '2', '3', '4', '5']],
  ])('%s', (_, text, expected) => {
    expect(labels(text)).toEqual(expected);
  });
});

describe('balls', () => {
  const shown = (lines: string) => {
    const { movers, marks } = sheet(`drill "D" {\n area 20 x 20\n station A at (4, 4)\n station B at (4, 16)\n${lines}\n sequence {\n A passes to B\n }\n}`);
    return [movers.filter(({ kind }) => kind === 'ball').length, marks.filter(({ id }) => id.startsWith('balls-')).map(({ label }) => label)];
  };
  it.each([
    ['one', ' ball at A', 1, []],
    ['a supply', ' balls 6 at A', 1, ['5 balls']],
    ['one and a supply at the same place', ' ball at A\n balls 6 at A', 1, ['6 balls']],
    ['a supply beside the one who serves, and one', ' balls 10 at 1 right of A\n ball at A', 1, ['10 balls']],
    ['a supply far away', ' ball at A\n balls 4 at (18, 2)', 1, ['4 balls']],
    ['two that wait', ' ball at A\n ball at (18, 2)', 2, []],
  ] as const)('%s: those in play one by one, the others in one heap', (_, lines, movers, heaps) => {
    expect(shown(lines)).toEqual([movers, heaps]);
  });
});

describe('a progression', () => {
  const change = analyse(drills['kite'] as string).drills[0]?.drill.changes[0];
  it('says what it is below the name of its drill', () => {
    if (!change) throw new Error('the kite has a progression');
    const scene = stage(analyseDrill(change.drill), { ...style, variation: change });
    expect(scene.title).toBe('Kite, bounce and spin, Progression: One touch in the middle');
    const title = scene.marks.find(({ id }) => id === 'title')?.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    expect(title?.slice(1, 3)).toEqual(['Kite, bounce and spin', 'Progression: One touch in the middle']);
  });
});

describe('at a moment', () => {
  it('no name stays where its player was', () => {
    const scene = sheet(drills['kite'] as string);
    const names = (svg: string) => [...svg.matchAll(/id="name-([\w-]+)"/g)].map(([, name]) => name);
    expect(names(toSvg(scene))).toEqual(expect.arrayContaining(['Base', 'Top']));
    expect(names(toSvg(scene, { at: 4 }))).toEqual(['thing-Near', 'thing-Far']);
  });
});

describe('lateness on the time line', () => {
  it('is told from 0.2 s on, and not below', () => {
    const analysis = analysed(drills['two-balls'] as string);
    const late = (slack: number) => {
      const passes = analysis.timeline.passes.map((pass, index) => (index === 2 ? { ...pass, slack, receiverMove: analysis.timeline.tracks[0]?.moves[0] ?? null } : pass));
      const { marks } = stage({ ...analysis, timeline: { ...analysis.timeline, passes } }, style);
      return marks.filter(({ layer }) => layer === 'strip').flatMap(({ shapes }) => shapes.flatMap((shape) => (shape.kind === 'text' && shape.text.endsWith('late') ? [shape.text] : [])));
    };
    expect([late(0), late(-0.1), late(-0.19), late(-0.2), late(-0.6)]).toEqual([[], [], [], ['0.2 s late'], ['0.6 s late']]);
  });
});

describe('letters of later places', () => {
  it.each([['I1 and I2', 'I1', 'I2', "I1′"], ['Left and Low', 'Left', 'Low', 'Le1']])('of %s', (_, one, other, expected) => {
    const { marks } = sheet(`drill "D" {\n area 20 x 20\n station ${one} at (4, 4)\n station ${other} at (16, 16)\n ball at ${one}\n sequence {\n ${one} passes to ${other} while ${one} runs to (4, 14)\n ${other} passes to ${one}\n }\n}`);
    const letters = marks.filter(({ layer }) => layer === 'later').flatMap(({ shapes }) => shapes.flatMap((shape) => (shape.kind === 'group' ? shape.shapes : []))).flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    expect(letters).toEqual([expected]);
  });
});
