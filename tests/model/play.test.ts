import { expect, test } from 'vitest';
import { drillWith } from './read.ts';

const setting = `station Base at (10, 1) holds 2
  station Left at (4, 12)
  station Right at (16, 12)
  pole A at (8, 6)
  pole B at (12, 6)`;
const left = 'sequence "left" {\nBase passes to Left while Right runs to 1 above Right\nLeft dribbles to (10, 2) around A\n}';

test.each<[lines: string, order: readonly (readonly string[])[]]>([
  ['sequence {\nBase passes to Left\n}', [['sequence']]],
  ['sequence "a" {\nBase passes to Left\n}\nsequence {\nBase passes to Left\n}\nsequence {\nBase passes to Left\n}', [['a'], ['sequence'], ['sequence 2']]],
  ['sequence "a" {\nBase turns\n}\nphase "p" {\nBase turns\n}', [['a']]],
  ['sequence "a" {\nBase turns\n}\nphase "p" {\nBase turns\n}\norder "p", "a"', [['p'], ['a']]],
  ['sequence "a" {\nBase turns\n}\nsequence "b" {\nLeft turns\n}\norder "b" and "a"', [['b', 'a']]],
])('%s', (lines, order) => {
  const { drill, messages } = drillWith(`${setting}\n${lines}`);
  expect(messages).toEqual([]);
  expect(drill.order).toEqual(order);
});

test('a mirrored sequence has everyone and everything on the other side, and the span of its statement', () => {
  const { drill, messages } = drillWith(`${setting}\n${left}\nsequence "right" mirrors "left" across length`);
  expect(messages).toEqual([]);
  const [original, mirrored] = drill.sequences;
  expect(mirrored!.mirrorOf).toBe(original!.id);
  expect(mirrored!.beats.map(({ lead, meanwhile }) => [lead, ...meanwhile].map(({ actor, chain }) => {
    const { to, at, about } = chain[0]!;
    return [actor, to, at && [at.x, at.y], about?.thing];
  }))).toEqual([
    [['Base', 'Right', null, undefined], ['Left', null, [4, 13], undefined]],
    [['Right', null, [10, 2], 'B']],
  ]);
  expect(new Set(mirrored!.beats.flatMap((beat) => [beat.span, beat.lead.span, beat.lead.chain[0]!.span]).map(({ from }) => from)).size).toBe(1);
});

test('a mirror of a mirror is the original again', () => {
  const { drill } = drillWith(`${setting}\nsequence "again" mirrors "right" across length\nsequence "right" mirrors "left" across length\n${left}`);
  const spots = (name: string) =>
    drill.sequences.find((each) => each.name === name)!.beats.map(({ lead }) => [lead.actor, lead.chain[0]!.to, lead.chain[0]!.about?.at.x]);
  expect(spots('again')).toEqual(spots('left'));
});

test.each<[lines: string, rotation: unknown]>([
  ['rotate Base -> Left -> Right', { kind: 'arrows', arrows: [['Base', 'Left'], ['Left', 'Right']] }],
  ['rotate Base -> Left, Right -> Base', { kind: 'arrows', arrows: [['Base', 'Left'], ['Right', 'Base']] }],
  ['rotate follow', { kind: 'follow' }],
  ['', { kind: 'read' }],
])('%s', (line, rotation) => {
  const { kind, ...rest } = drillWith(`${setting}\n${line}`).drill.rotation;
  expect('arrows' in rest ? { kind, arrows: rest.arrows.map(({ from, to }) => [from, to]) } : { kind }).toEqual(rotation);
});

test.each<[lines: string, messages: readonly string[]]>([
  [`${left}\nsequence "right" mirrors "left" across width`, [
    '`Base` has no mirror image: put a station at (10, 29).',
    '`Left` has no mirror image: put a station at (4, 18).',
    '`Right` has no mirror image: put a station at (16, 18).',
    '`A` has no mirror image: put a pole at (8, 24).',
  ]],
  [`${left}\nsequence "right" mirrors "lef" across length`, ['There is no sequence called `lef`. Did you mean `left`?']],
  ['sequence "a" mirrors "b" across length\nsequence "b" mirrors "a" across length', ['`a` needs itself: a → b → a.']],
  ['sequence "a" mirrors "a" across length', ['`a` needs itself: a → a.']],
  ['sequence "a" {\nBase turns\n}\norder "a", "c"', ['There is no sequence called `c`.']],
  ['sequence "a" {\nBase turns\n}\nphase "a" {\nBase turns\n}', ['`a` is already the name of a sequence.']],
  ['rotate Base -> A -> Left', ['`A` is a pole; players rotate from station to station.']],
  ['rotate Base -> Lfet', ['There is no station called `Lfet`. Did you mean `Left`?']],
])('%s', (lines, messages) => {
  expect(drillWith(`${setting}\n${lines}`).messages).toEqual(messages);
});
