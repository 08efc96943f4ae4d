import { expect, test } from 'vitest';
import { problemsIn } from './read.ts';

/** One mistake, one problem, at its place. */
test.each<[lines: string, code: string, message: string]>([
  ['station A at ⟦B⟧\nstation C at 1 above A\nball at A\nsequence {\nA passes to C\n}', 'unknown-name', 'There is no place called `B`.'],
  ['let a = ⟦b⟧ + 1\nstation A at (a, a)\nstation B at 1 above A', 'unknown-name', 'There is no number called `b`.'],
  ['station A at Ring.⟦midle⟧\nzone Ring circle 2 at (5, 5)', 'unknown-name', 'There is no place of Ring called `midle`.'],
  ['let a = area.⟦widht⟧\ncone at (a, a)', 'unknown-name', 'There is no measure of area called `widht`. Did you mean `width`?'],
  ['station A at (1, 1) of ⟦Redds⟧\nteam Reds\nplace 1 Reds in area', 'unknown-name', 'There is no team called `Redds`. Did you mean `Reds`?'],
  ['zone Box 4 x 4 in area.topLeft\nteam Reds\nplace 1 Reds in area\nrule Box at most 1 ⟦attacker⟧', 'unknown-name', 'There is no team or player called `attacker`. Did you mean `attackers`?'],
  ['station A at (1, 1)\nball at A\nstation B at (9, 9)\nsequence {\nA passes to B\nB passes to A, in ⟦two⟧ touches\n}', 'unknown-name', 'Numbers are written in figures: `2`.'],
  ['tempo ⟦fast⟧', 'unknown-name', 'There is no tempo called `fast`.'],
  ['ground ⟦gras⟧', 'unknown-name', 'There is no ground called `gras`. Did you mean `grass`?'],
  ['age ⟦U1O⟧', 'unknown-name', 'There is no age group called `U1O`. Did you mean `U10`?'],
  ['team N of 3\nplace 2 N in area\nsequence {\n⟦N3⟧ turns\n}', 'unknown-name', '`N3` of N does not stand anywhere yet.'],

  ['cone A at (1, 1)\nzone ⟦A⟧ 2 x 2 at (2, 2)', 'duplicate-name', '`A` is already the name of a cone.'],
  ['zones Box 2 x 2 in corners of area\nstation ⟦BoxTopLeft⟧ at (9, 9)', 'duplicate-name', '`BoxTopLeft` is already the name of a zone.'],
  ['team N of 2\nplace 2 N in area\nstation ⟦N2⟧ at (1, 1)', 'duplicate-name', '`N2` is already the name of a player of N.'],
  ['⟦area 20 x 20⟧', 'duplicate-name', '`area` is written twice; the first one counts.'],
  ['rotate follow\n⟦rotate follow⟧', 'duplicate-name', '`rotate` is written twice; the first one counts.'],

  ['zones Box 2 x 2 in corners of area\ncone at ⟦Box⟧', 'wrong-kind', '`Box` is the name of several zones; say which: `BoxTopLeft`.'],
  ['cone at ⟦area⟧', 'wrong-kind', '`area` is the area; say where in it: `area.centre`.'],
  ['cone A at (1, 1)\nzone Z ⟦A⟧ x 2 at (5, 5)', 'wrong-kind', '`A` is a cone; only a `let`, or a measure such as `area.width`, stands for a number.'],
  ['cone A at (1, 1)\ncone at ⟦A⟧.top', 'wrong-kind', '`A` is a cone; only the area and zones have sides and corners.'],
  ['zone Ring circle 3 at area.centre\nsplit ⟦Ring⟧ by length into A 2, B 4', 'wrong-kind', '`Ring` is not a rectangle; only the area and rectangles along its sides can be split.'],
  ['station A at (1, 1)\nplayer B of ⟦A⟧ at (2, 2)', 'wrong-kind', '`A` is a station; a team is wanted here.'],

  ['cone at (10 ⟦yrds⟧, 1)', 'unknown-unit', '`yrds` is not a unit. Did you mean `yds`?'],
  ['units ⟦mm⟧', 'unknown-unit', '`mm` is not a unit. Did you mean `cm`?'],
  ['bouts 4 x ⟦3⟧', 'unknown-unit', 'Is that 3 minutes or 3 seconds?'],
  ['bouts 4 x ⟦1⟧', 'unknown-unit', 'Is that 1 minute or 1 second?'],

  ['zone Z ⟦0⟧ x 2 at (5, 5)', 'impossible-value', 'The width of `Z` is 0 m; it must be more than 0.'],
  ['units yd\nzone Z 2 x ⟦-3⟧ at (5, 5)', 'impossible-value', 'The length of `Z` is -3 yd; it must be more than 0.'],
  ['zone Z circle ⟦0⟧ at (5, 5)', 'impossible-value', 'The radius of `Z` is 0 m; it must be more than 0.'],
  ['zone ⟦Z⟧ polygon (1, 1) (2, 2)', 'impossible-value', '`Z` has 2 corners; a polygon has at least 3.'],
  ['zone ⟦Z⟧ polygon (1, 1) (5, 5) (5, 1) (1, 5)', 'impossible-value', 'The sides of `Z` cross: list its corners in order, walking once round it.'],
  ['zone ⟦Z⟧ from (1, 1) to (1, 5)', 'impossible-value', '`Z` has no size: its corners lie on one line.'],
  ['split area by length into A ⟦0⟧, B 30', 'impossible-value', 'The strip `A` is 0 m; it must be more than 0.'],
  ['age ⟦U3⟧', 'impossible-value', 'The age is U3; it can be from 4 to 99.'],
  ['players ⟦0⟧', 'impossible-value', 'The number of players is 0; it can be from 1 to 200.'],
  ['players ⟦7.5⟧', 'impossible-value', 'The number of players is 7.5; it must be a whole number.'],
  ['station A at (1, 1) holds ⟦0⟧', 'impossible-value', 'The number of players at `A` is 0; it can be from 1 to 200.'],
  ['cone at (⟦1001⟧, 1)', 'impossible-value', 'That is farther than any training ground reaches: lengths and places stay within 1000 m.'],
  ['cone at ⟦900 above (1, 900)⟧', 'impossible-value', 'That is farther than any training ground reaches: lengths and places stay within 1000 m.'],
  ['cone at (1 / ⟦0⟧, 1)', 'impossible-value', 'This is 0, and nothing can be divided into 0 parts.'],
  ['cone at (⟦3 m * 2 m⟧, 1)', 'impossible-value', 'This is neither a length, a time nor a speed; a length is wanted here.'],
  ['cone at (⟦3 s⟧, 1)', 'impossible-value', 'This is a time; a length is wanted here.'],
  ['pace pass ⟦3 m⟧', 'impossible-value', 'This is a length; a speed is wanted here.'],
  ['pace pass ⟦0⟧', 'impossible-value', 'The pace of a pass is 0 m/s; it must be more than 0.'],
  ['team N of 2\n⟦place 3 N in area⟧', 'impossible-value', 'N has 2 players, and all of them are placed already.'],
  ['team N of 1\nplayer A of N at (1, 1)\n⟦player B of N at (2, 2)⟧', 'impossible-value', 'N has 1 player, and all of them are placed already.'],

  ['let ⟦a⟧ = a\ncone at (a, 1)', 'circular-value', '`a` needs itself: a → a.'],
  ['zone ⟦Z⟧ w x 2 at area.centre\nlet w = Z.length\ncone at (w, 1)', 'circular-value', '`Z` needs itself: Z → w → Z.'],
  ['cone ⟦A⟧ at 1 above B\ncone B at 1 above C\ncone C at 1 above A\ncone D at A', 'circular-value', '`A` needs itself: A → B → C → A.'],

  ['team ⟦N⟧ of 4', 'unused-name', 'Nothing mentions `N`: the team has no players on the ground and no rule.'],
])('%s', (lines, code, message) => {
  const { found, marks } = problemsIn(`drill "Test" {\narea 20 x 30\n${lines}\n}`);
  expect(found).toEqual([{ code, message, ...marks[0] }]);
});

/** What the text says after the first fix. */
test.each<[lines: string, fixed: string]>([
  ['pole Near at (1, 1)\ncone at 1 above Naer', 'pole Near at (1, 1)\ncone at 1 above Near'],
  ['sequence "left" {\n}\norder "lfet"', 'sequence "left" {\n}\norder "left"'],
  ['cone at (10 yrds, 1)', 'cone at (10 yds, 1)'],
  ['time 20', 'time 20 min'],
  ['cone at (1, 1)\nlet a = 1', 'cone at (1, 1)\n'],
])('%s', (lines, fixed) => {
  const [before, after] = ['drill "Test" {\narea 20 x 30\n', '\n}'];
  const text = before + lines + after;
  const { problems } = problemsIn(text);
  const edit = problems[0]!.fixes[0]!.edits[0]!;
  expect(text.slice(0, edit.span.from) + edit.text + text.slice(edit.span.to)).toBe(before + fixed + after);
});

test.each<[text: string, code: string, message: string]>([
  ['drill "A" {\n}\ndrill ⟦"A"⟧ {\n}', 'duplicate-name', '`A` is already the name of a drill.'],
  ['let a = ⟦area⟧.width', 'wrong-kind', '`area` is part of a drill; a `let` that measures it belongs into that drill.'],
  ['let a = 1\nlet ⟦a⟧ = 2', 'duplicate-name', '`a` is already the name of a number.'],
  ['let ⟦a⟧ = b\nlet b = a', 'circular-value', '`a` needs itself: a → b → a.'],
])('%s', (text, code, message) => {
  const { found, marks } = problemsIn(text);
  expect(found).toEqual([{ code, message, ...marks[0] }]);
});
