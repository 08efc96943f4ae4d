import { expect, test } from 'vitest';
import { applyEdits } from '../../shared/checks/edits.ts';
import { occurrencesIn, symbolAt } from '../../shared/service/occurrences.ts';
import { rename, renameable } from '../../shared/service/rename.ts';
import { marked } from '../support/marked.ts';
import { cursor, openIn, square } from './texts.ts';

/** The places of the name at the first mark are all the marks, the declarations among them first told apart. */
test.each([
  [`drill "A" {
  area 20 x 20
  station ⟦Base⟧ at (4, 4) holds 2
  station Left at 2 above ⟦Base⟧
  ball at ⟦Base⟧
  sequence {
    ⟦Base⟧ passes to Left
    Left passes to next ⟦Base⟧
  }
  rotate ⟦Base⟧ -> Left -> ⟦Base⟧
}
`],
  [`let ⟦wide⟧ = 4\ndrill "A" {\n  area ⟦wide⟧ * 2 x ⟦wide⟧ + 20\n  cone at (⟦wide⟧, 2)\n}\ndrill "B" {\n  area ⟦wide⟧ x 20\n}\n`],
  [`drill "A" {\n  area 20 x 20\n  zone ⟦Box⟧ 4 x 4 at area.centre\n  station S at ⟦Box⟧.top\n  rule ⟦Box⟧ at most 2 attackers\n}\n`],
  [`drill "A" {\n  area 20 x 20\n  team ⟦Reds⟧ of 2\n  player Reds1 of ⟦Reds⟧ at (2, 2)\n  rule touches 2 for ⟦Reds⟧\n}\n`],
  [`drill ⟦"A"⟧ {\n}\nsession "S" {\n  part "One" 15 min of ⟦"A"⟧\n}\n`],
  [`drill "A" {\n  progress task ⟦"Faster"⟧ {\n  }\n}\nsession "S" {\n  part "One" 15 min of "A" with ⟦"Faster"⟧\n}\n`],
  [`drill "A" {\n  let ⟦a⟧ = 2\n  area ⟦a⟧ x 20\n  progress space "Other" {\n    let ⟦a⟧ = 3\n  }\n}\n`],
  [`drill "Ü" {\n  area 20 x 20\n  station ⟦前⟧ at (4, 4)\n  note "🥅🥅"\n  sequence {\n    ⟦前⟧ turns\n  }\n}\n`],
])('places of a name: %s', (text) => {
  const { plain, spans } = marked(text);
  const open = openIn({ 'a.drill': plain }, 'a.drill');
  for (const span of spans) {
    const found = symbolAt(open, span.from);
    const places = found ? occurrencesIn(open, found.symbol).filter(({ suffix }) => suffix === '').map((each) => each.span) : [];
    expect(places.map(({ from, to }) => [from, to])).toEqual(spans.map(({ from, to }) => [from, to]));
  }
});

test.each([
  ['the same name in another drill', `drill "A" {\n  station ⟦X⟧ at (1, 1)\n}\ndrill "B" {\n  station X at (1, 1)\n}\n`],
  ['a text that says the name', `drill "A" {\n  station ⟦X⟧ at (1, 1)\n  rule "X plays"\n}\n`],
])('not a place of a name: %s', (_, text) => {
  const { plain, spans } = marked(text);
  const open = openIn({ 'a.drill': plain }, 'a.drill');
  expect(occurrencesIn(open, symbolAt(open, spans[0]!.from)!.symbol).map(({ span }) => span)).toEqual(spans);
});

const files = {
  'shared/sizes.drill': 'let wide = 4\nlet deep = 6\ndrill "Kite" {\n  area wide x deep\n}\n',
  'one.drill': 'import "shared/sizes.drill"\ndrill "One" {\n  area wide x 20\n}\nsession "S" {\n  part "First" 15 min of "Kite"\n}\n',
  'two.drill': 'import "shared/sizes.drill"\ndrill "Two" {\n  let wide = 9\n  area wide x deep\n}\n',
  'own.drill': 'let wide = 1\ndrill "Own" {\n  area wide x 2\n}\n',
};

/** The files that change, as they are afterwards, when the name at the n-th place of a word in a file becomes another. */
function renamed(path: keyof typeof files, word: string, name: string): Record<string, string> | string {
  const opens = Object.keys(files).map((each) => openIn(files, each));
  const open = opens.find((each) => each.workspace.path === path)!;
  const result = rename(open, open.text.indexOf(word) + 1, name, opens);
  if (result?.kind !== 'edits') return result?.why ?? 'nothing';
  return Object.fromEntries(result.files.map(({ path: file, edits }) => [file, applyEdits(files[file as keyof typeof files], edits)]));
}

test.each<[path: keyof typeof files, word: string, name: string, changed: Readonly<Record<string, readonly string[]>>]>([
  ['shared/sizes.drill', 'wide', 'broad', { 'shared/sizes.drill': ['let broad = 4', 'area broad x deep'], 'one.drill': ['area broad x 20'] }],
  ['one.drill', 'wide', 'broad', { 'shared/sizes.drill': ['let broad = 4', 'area broad x deep'], 'one.drill': ['area broad x 20'] }],
  ['two.drill', 'deep', 'far', { 'shared/sizes.drill': ['let far = 6', 'area wide x far'], 'two.drill': ['area wide x far'] }],
  ['two.drill', 'wide', 'broad', { 'two.drill': ['let broad = 9', 'area broad x deep'] }],
  ['shared/sizes.drill', 'Kite', 'Kite and go', { 'shared/sizes.drill': ['drill "Kite and go"'], 'one.drill': ['of "Kite and go"'] }],
  ['one.drill', 'Kite', 'Dragon', { 'shared/sizes.drill': ['drill "Dragon"'], 'one.drill': ['of "Dragon"'] }],
  ['own.drill', 'wide', 'broad', { 'own.drill': ['let broad = 1', 'area broad x 2'] }],
])('across files: %s, %s to %s', (path, word, name, changed) => {
  const result = renamed(path, word, name);
  expect(Object.keys(result)).toEqual(expect.arrayContaining(Object.keys(changed)));
  expect(Object.keys(result).length).toBe(Object.keys(changed).length);
  for (const [file, lines] of Object.entries(changed)) for (const line of lines) expect((result as Record<string, string>)[file]).toContain(line);
});

test.each([
  ['team Re|ds', 'Blues', ['team Blues of 2', 'place 2 Blues in BoxTopLeft', 'Blues1 passes to Blues2']],
  ['zones B|ox', 'Nest', ['zones Nest 4 x 4', 'station S at NestTopLeft', 'place 2 Reds in NestTopLeft']],
])('a name that others are made from: %s', (mark, name, lines) => {
  const text = `drill "A" {
  area 20 x 20
  zones Box 4 x 4 in corners of area
  team Reds of 2
  place 2 Reds in BoxTopLeft
  station S at BoxTopLeft
  phase "P" {
    Reds1 passes to Reds2
  }
}
`;
  const { open, offset } = cursor(text.replace(mark.replace('|', ''), mark));
  const result = rename(open, offset, name, []);
  const edited = result?.kind === 'edits' ? applyEdits(open.text, result.files[0]!.edits) : '';
  for (const line of lines) expect(edited).toContain(line);
});

test.each([
  ['station Ba|se', 'passes', 'word of the language'],
  ['station Ba|se', 'two words', 'one word'],
  ['station Ba|se', '2nd', 'one word'],
  ['station Ba|se', '', 'one word'],
  ['station Ba|se', 'Left', 'already'],
  ['station Ba|se', 'wide', 'already'],
  ['drill "Squ|are"', ' ', 'at least one letter'],
  ['drill "Squ|are"', 'a "b"', 'double quotation mark'],
])('refused: %s to %j', (mark, name, why) => {
  const { open, offset } = cursor(square().replace(mark.replace('|', ''), mark));
  const result = rename(open, offset, name, []);
  expect(result?.kind === 'refused' ? result.why : 'done').toContain(why);
});

test.each([
  ['ar|ea 20', 'word of the language'],
  ['pas|ses to Left', null],
])('no name to change: %s', (mark, why) => {
  const { open, offset } = cursor(square().replace(mark.replace('|', ''), mark));
  const found = renameable(open, offset);
  expect(found && 'why' in found ? found.why : found).toEqual(why === null ? null : expect.stringContaining(why));
});

test.each([
  ['se|cond', 'Other', 'sequence "Other" {', 'order one and Other'],
  ['"se|cond"', 'the other', 'sequence "the other" {', 'order one and "the other"'],
])('a sequence is named with and without marks: %s to %s', (mark, name, declared, used) => {
  const text = 'drill "A" {\n  sequence "one" {\n  }\n  sequence "second" {\n  }\n  order one and second\n}\n';
  const at = mark.startsWith('"') ? text.indexOf('"second"') : text.lastIndexOf('second');
  const { open, offset } = cursor(text.slice(0, at) + mark + text.slice(at + mark.length - 1));
  const result = rename(open, offset, name, []);
  const edited = result?.kind === 'edits' ? applyEdits(open.text, result.files[0]!.edits) : '';
  for (const line of [declared, used]) expect(edited).toContain(line);
});

test('a drill’s name is offered without its marks', () => {
  const { open, offset } = cursor(square().replace('"Square"', '"Squ|are"'));
  const found = renameable(open, offset);
  expect(found && 'span' in found ? open.text.slice(found.span.from, found.span.to) : null).toBe('Square');
});
