/** Whatever is typed, however far: every feature answers, and where it answers its places lie in the text. */
import { globSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coloursOf } from '../../shared/service/colours.ts';
import { complete } from '../../shared/service/complete.ts';
import { drag } from '../../shared/service/drag.ts';
import { allowance } from '../../shared/service/fixes.ts';
import { folds } from '../../shared/service/folding.ts';
import { format, formatTyped } from '../../shared/service/format.ts';
import { hover } from '../../shared/service/hover.ts';
import { inlayHints } from '../../shared/service/inlay.ts';
import { lenses } from '../../shared/service/lens.ts';
import { links } from '../../shared/service/links.ts';
import { occurrencesIn, symbolAt } from '../../shared/service/occurrences.ts';
import type { Open } from '../../shared/service/open.ts';
import { picture } from '../../shared/service/picture.ts';
import { rename, renameable } from '../../shared/service/rename.ts';
import { selectionsAt } from '../../shared/service/selection.ts';
import { semanticTokens } from '../../shared/service/semantic.ts';
import { outline } from '../../shared/service/symbols.ts';
import { openIn, square } from './texts.ts';

const root = new URL('../..', import.meta.url).pathname;
const drills = [square(), ...globSync(['shared/examples/*.drill', 'tests/**/*.drill'], { cwd: root }).sort().map((path) => readFileSync(root + path, 'utf8'))];

/** Every place that the features name at an offset. */
function everywhere(open: Open, offset: number): readonly { readonly from: number; readonly to: number }[] {
  const symbol = symbolAt(open, offset);
  const renaming = rename(open, offset, 'Other', []);
  const { problems, drills: analyses } = open.analysis;
  picture(open, { drill: { offset }, theme: 'dark', convention: 'solid pass' }, {});
  return [
    ...complete(open, offset).map(({ replaces }) => replaces),
    ...[hover(open, offset)].flatMap((found) => found?.span ?? []),
    ...[renameable(open, offset)].flatMap((found) => (found && 'span' in found ? found.span : [])),
    ...(symbol ? [symbol.span, ...occurrencesIn(open, symbol.symbol).map(({ span }) => span)] : []),
    ...(renaming?.kind === 'edits' ? renaming.files.flatMap(({ edits }) => edits.map(({ span }) => span)) : []),
    ...selectionsAt(open, offset),
    ...[...folds(open), ...coloursOf(open), ...links(open), ...lenses(open)].map(({ span }) => span),
    ...outline(open.analysis.file, open.text).map(({ span }) => span),
    ...semanticTokens(open),
    ...inlayHints(open).map(({ at }) => ({ from: at, to: at })),
    ...[...format(open), ...formatTyped(open, offset, '\n'), ...formatTyped(open, offset, '}')].map(({ span }) => span),
    ...problems.flatMap((problem) => allowance(problem, open)?.edits.map(({ span }) => span) ?? []),
    ...analyses.flatMap(({ drill }) => drill.stations)
      .flatMap(({ span }) => drag(open, { kind: 'thing', statement: span }, { x: 3, y: 4 }) ?? []).map(({ span }) => span),
  ];
}

function holds(text: string, offset: number): void {
  for (const { from, to } of everywhere(openIn({ 'a.drill': text }, 'a.drill'), offset)) {
    expect(from).toBeGreaterThanOrEqual(0);
    expect(to).toBeGreaterThanOrEqual(from);
    expect(to).toBeLessThanOrEqual(text.length);
  }
}

test('in a text that breaks off anywhere', () => {
  fc.assert(fc.property(fc.constantFrom(...drills), fc.nat(3000), (text, at) => {
    const cut = Math.min(at, text.length);
    holds(text.slice(0, cut), cut);
  }), { numRuns: 150 });
});

test('in a text with something else typed anywhere', () => {
  const typed = fc.oneof(
    fc.constantFrom('{', '}', '"', '//', '(', ')', ' passes to ', '\n', '\r\n', ' x ', ',', '.', '->', '1/0', '🥅', ' 前 ', '-', 'area', 'while'),
    fc.string({ maxLength: 5 }),
  );
  fc.assert(fc.property(fc.constantFrom(...drills), fc.nat(3000), fc.nat(40), typed, (text, at, gone, word) => {
    const from = Math.min(at, text.length);
    holds(text.slice(0, from) + word + text.slice(from + gone), from + word.length);
  }), { numRuns: 150 });
});

test.each([
  ['a zone of many corners', `drill "A" {\n  zone Z polygon ${'(1, 2) '.repeat(1000)}`],
  ['a sum of many terms', `drill "A" {\n  let a = ${'1 + '.repeat(2000)}`],
  ['many who move at once', `drill "A" {\n  sequence {\n    X turns while ${'X runs to 2 left of Y, '.repeat(200)}`],
  ['many who move, few enough', `drill "A" {\n  sequence {\n    X turns while ${'X runs to 2 left of Y, '.repeat(50)}`],
  ['brackets within brackets', `drill "A" {\n  let a = ${'('.repeat(400)}`],
  ['blocks within blocks', 'drill "A" {\n'.repeat(300)],
  ['places within places', `drill "A" {\n  cone at ${'between '.repeat(400)}`],
])('in %s', (_, text) => {
  holds(text, text.length);
});
