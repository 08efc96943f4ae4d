/** What a file looks like from afar: outline, folds, selections, colours, links, hints, lenses, colouring. */
import { expect, test } from 'vitest';
import { colourTexts, coloursOf } from '../../shared/service/colours.ts';
import { applyEdits } from '../../shared/checks/edits.ts';
import { rearranged } from '../../shared/service/evening.ts';
import { folds } from '../../shared/service/folding.ts';
import { inlayHints } from '../../shared/service/inlay.ts';
import { lenses } from '../../shared/service/lens.ts';
import { links } from '../../shared/service/links.ts';
import { selectionsAt } from '../../shared/service/selection.ts';
import { semanticTokens } from '../../shared/service/semantic.ts';
import { outline, type OutlineItem } from '../../shared/service/symbols.ts';
import { cursor, openIn, square } from './texts.ts';

const file = `import "sizes.drill"
let wide = 4
// One.
// Two.
${square({ line: 'team Blues bib "#112233"' })}session "Tuesday" {
  length 60 min
  kit 7 bibs green
  part "First" 15 min of "Square"
}
`;
const open = openIn({ 'a.drill': file }, 'a.drill');
const textOf = ({ from, to }: { readonly from: number; readonly to: number }) => file.slice(from, to);

test('the outline holds what has a name, and the beats', () => {
  const names = (items: readonly OutlineItem[]): unknown[] =>
    items.map(({ name, kind, children }) => (children.length > 0 ? [kind, name, names(children)] : `${kind} ${name}`));
  expect(names(outline(open.analysis.file, file))).toEqual([
    'import sizes.drill', 'let wide',
    ['drill', 'Square', [
      'let wide', 'zone Box', 'pole Near', 'goal North', 'team Reds', 'station Base', 'station Left', 'station Top', 'team Blues',
      ['sequence', 'sequence', ['beat Base passes to Left while Top runs to 2 left of Top', 'beat Left passes to Base']],
    ]],
    ['session', 'Tuesday', ['part First']],
  ]);
});

test('names stand within what they name', () => {
  const check = (items: readonly OutlineItem[]): void => {
    for (const { span, nameSpan, children } of items) {
      expect(span.from <= nameSpan.from && nameSpan.to <= span.to).toBe(true);
      check(children);
    }
  };
  check(outline(open.analysis.file, file));
});

test('blocks and runs of comments fold', () => {
  expect(folds(open).map(({ span, kind }) => [kind, textOf(span).split('\n')[0]])).toEqual([
    ['comment', '// One.'], ['block', 'drill "Square" {'], ['block', 'sequence {'], ['block', 'session "Tuesday" {'],
  ]);
});

test('a selection grows from the word to the file', () => {
  const { open: here, offset } = cursor(square().replace('2 left of Top', '2 left of T|op'));
  expect(selectionsAt(here, offset).slice(0, 5).map(({ from, to }) => here.text.slice(from, to))).toEqual([
    'Top', '2 left of Top', 'runs to 2 left of Top', 'Top runs to 2 left of Top', 'Base passes to Left while Top runs to 2 left of Top',
  ]);
  expect(selectionsAt(here, offset).at(-1)).toEqual({ from: 0, to: here.text.length });
});

test('bibs have their colours', () => {
  expect(coloursOf(open).map(({ span, hex }) => [textOf(span), hex])).toEqual([['red', '#c8202f'], ['"#112233"', '#112233'], ['green', '#1d7a46']]);
});

test.each([
  ['#C8202F', ['red']],
  ['#c9202f', ['"#c9202f"', 'red']],
  ['#000001', ['"#000001"', 'black']],
])('a colour is written: %s', (hex, texts) => {
  expect(colourTexts(hex)).toEqual(texts);
});

test('an import leads to its file', () => {
  expect(links(openIn({ 'a/b.drill': 'import "../c.drill"\nimport "../../out.drill"\n' }, 'a/b.drill')).map(({ path }) => path)).toEqual(['c.drill']);
});

test('passes tell their length and slack', () => {
  expect(inlayHints(open).map(({ at, text }) => [file.slice(file.lastIndexOf(' ', at - 1) + 1, at), text.replace(/\d+(\.\d)? s$/, 'N s')])).toEqual([
    ['Left', '12 m +N s'], ['Base', '12 m +N s'],
  ]);
});

test('a drill says how many, how long, and when everyone is home', () => {
  const here = openIn({ 'a.drill': square({ line: 'rotate Base -> Left -> Base' }) }, 'a.drill');
  expect(lenses(here).map(({ title }) => title.replaceAll(/\d+(\.\d)?/g, 'N'))).toEqual([
    'Play', 'N players', 'a repetition takes N s', 'everyone is home after N repetitions',
  ]);
});

test('a session says how long it takes, who comes and whether the kit is enough', () => {
  const titles = (kit: string) => lenses(openIn({ 'a.drill': `drill "A" {\n  area 9 x 9\n}\nsession "S" {\n  players 4\n  ${kit}\n  part "P" 15 min groups 2 of "A"\n}\n` }, 'a.drill')).map(({ title }) => title);
  expect(titles('kit 8 discs')).toEqual(['15 min', '4 players', 'the kit is enough']);
  expect(titles('kit 5 cones')).toEqual(['15 min', '4 players', 'kit short: 3 discs']);
  expect(titles('hands 2')).toEqual(['15 min', '4 players']);
});

test('a session is rearranged on its parts and its name, and the changeovers are as short as the title says', () => {
  const text = 'drill "A" {\n  area 9 x 9 marked every 3\n}\nsession "S" {\n  pitch 60 x 40\n  part "P" 15 min of "A" at (2, 2)\n  part "Q" 15 min of "A" at (40, 20)\n}\n';
  const here = openIn({ 'a.drill': text }, 'a.drill');
  const fix = rearranged(here, text.indexOf('part "Q"'))!;
  expect(fix.title).toMatch(/^Put the groups where changeovers take 0 s instead of \d min \d+ s$/);
  expect(applyEdits(text, fix.edits)).toBe(text.replace('at (40, 20)', 'at (2, 2)'));
  expect([rearranged(here, 0), rearranged(here, text.indexOf('pitch')), rearranged(openIn({ 'a.drill': applyEdits(text, fix.edits) }, 'a.drill'), text.indexOf('part'))]).toEqual([null, null, null]);
});

test('every word is coloured as what it is', () => {
  const { open: here } = cursor(square({ beat: '// why|', line: 'cone at (2 yd, 2)' }));
  const found = semanticTokens(here).map(({ from, to, type, declares }) => [here.text.slice(from, to), declares ? `${type}!` : type]);
  const expected = {
    'drill': 'keyword', '"Square"': 'string', 'wide': 'variable!', 'Box': 'struct!', 'at': 'keyword', 'centre': 'property',
    'Near': 'property!', 'Reds': 'interface!',
    'red': null, 'passes': 'method', 'to': 'method', 'Left': 'class!', '// why': 'comment', 'yd': 'type', '20': 'number', 'units': 'keyword', 'area': 'keyword',
  };
  const first = (word: string) => found.find(([text]) => text === word)?.[1] ?? null;
  expect(Object.fromEntries(Object.keys(expected).map((word) => [word, first(word)]))).toEqual(expected);
});

test('coloured words come in order, without overlap, each on one line', () => {
  let end = 0;
  for (const { from, to } of semanticTokens(open)) {
    expect(from).toBeGreaterThanOrEqual(end);
    expect(textOf({ from, to })).not.toMatch(/[\r\n]/);
    end = to;
  }
  expect(end).toBeGreaterThan(0);
});
