import { globSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { keywords, tokenize } from '../../grammar/tokens.ts';
import { complete } from '../../shared/service/complete.ts';
import { cursor, openIn, square } from './texts.ts';

const people = ['Base', 'Left', 'Top'];

/** The labels in order; the first place a `|` stands in the text is asked. */
function labels(text: string): string[] {
  const { open, offset } = cursor(text);
  return complete(open, offset).map(({ label }) => label);
}



test.each<[beat: string, first: readonly string[]]>([
  ['Base passes to |', people],
  ['Base passes to L|', people],
  ['Base passes to next |', people],
  ['Base runs to |', people],
  ['Base shoots at |', ['North']],
  ['Base spins around |', [...people, 'Near']],
  ['Base spins around Near to |', people],
  ['Base |', ['passes to', 'passes into', 'sets to', 'touches to', 'dribbles to', 'crosses to', 'shoots at', 'turns', 'runs to']],
  ['Base pa|', ['passes to', 'passes into']],
  ['Base passes |', ['to', 'into']],
  ['Base passes to Left while |', people],
  ['Base passes to Left while Top |', ['passes to', 'passes into']],
  ['Base passes to Left while Top runs to Left then |', ['passes to', 'passes into']],
  ['Base passes to Left while Top runs to Left, |', people],
  ['Base passes into 2 left of Near for |', people],
  ['Base passes to Left, |', ['first time', 'soft', 'firm', 'driven', 'lofted', 'in']],
  ['Base passes to Left in |', ['stride']],
  ['Base passes to Left, in 2 |', ['touches']],
  ['Base runs to 2 |', ['m', 'yd', 'ft', 'cm', 'left of', 'right of', 'above', 'below', 'from']],
  ['Base runs to 2 left |', ['of']],
  ['Base runs to area.|', ['centre', 'top', 'bottom', 'left', 'right', 'topLeft']],
  ['Base runs to between Left |', ['and']],
  ['Base runs to (2, |', ['wide']],
  ['Base runs to Left at |', ['walk', 'jog', 'run', 'sprint']],
  ['Base waits 1 |', ['s']],
  ['|', people],
])('in a beat: %s', (beat, first) => {
  expect(labels(square({ beat })).slice(0, first.length)).toEqual(first);
});

test.each<[line: string, first: readonly string[]]>([
  ['tempo |', ['walk', 'steady', 'match']],
  ['ground |', ['grass', 'turf', 'indoor']],
  ['ground grass |', ['roll']],
  ['units |', ['m', 'yd', 'ft', 'cm']],
  ['time 15 |', ['min', 's']],
  ['pace pass 5 |', ['m/s', 'km/h']],
  ['rotate |', [...people, 'follow']],
  ['rotate Base -> |', people],
  ['rule |', ['Box', 'area']],
  ['rule touches 2 |', ['for', 'in']],
  ['rule touches 2 for |', ['Reds', ...people, 'attackers', 'defenders']],
  ['rule Box at |', ['most', 'least']],
  ['rule Box at most 2 |', ['Reds', ...people, 'attackers', 'defenders']],
  ['station X at wide |', ['left of', 'right of', 'above', 'below', 'from']],
  ['score 1 for |', ['pass', 'goal in']],
  ['score 1 for goal in |', ['North']],
  ['station X at |', ['area', 'Box']],
  ['station X at Base of |', ['Reds']],
  ['player Reds1 of |', ['Reds']],
  ['zone Back 4 x 4 in area.|', ['centre', 'top', 'bottom', 'left']],
  ['split |', ['area', 'Box']],
  ['team Blues bib |', ['red', 'blue', 'green']],
  ['team Blues bib "|"', ['red', 'blue', 'green']],
  ['point |', ['technical', 'psychological', 'physical', 'social']],
  ['goal South 5 x 2 at Box facing |', ['up', 'down', 'left', 'right']],
  ['progress |', ['space', 'task', 'equipment', 'people']],
  ['bouts 4 x 3 min |', ['rest']],
  ['sta|', ['sequence { … }', 'station … at …', 'zone … at …']],
])('in a drill: %s', (line, first) => {
  const found = labels(square({ line }));
  expect(new Set(found.slice(0, first.length))).toEqual(new Set(first));
});

test.each<[text: string, some: readonly string[]]>([
  ['|', ['drill …', 'session …', 'drill', 'session', 'import', 'let']],
  ['drill "A" {\n  age |\n}', ['U6', 'U13', 'adult']],
  ['drill "A" {\n  age U13|\n}', ['U6', 'U13', 'adult']],
  ['drill "A" {\n}\nsession "S" {\n  part "One" 15 min of |\n}', ['A']],
  ['drill "A" {\n}\nsession "S" {\n  part "One" 15 |\n}', ['min', 's']],
  ['drill "A" {\n  progress task "Faster" {\n  }\n}\nsession "S" {\n  part "One" 15 min of "A" with |\n}', ['Faster']],
  ['session "S" {\n  part "One" 15 min\n  joins 1 keeper for |\n}', ['One']],
  ['session "S" {\n  part "One" 15 min\n  without 1 "ill" for "|"\n}', ['One']],
  ['session "S" {\n  kit 4 |\n}', ['cones', 'poles', 'balls', 'bibs']],
  ['drill "A" {\n  sequence "One" {\n  }\n  sequence "Two" mirrors "|"\n}', ['One']],
  ['drill "A" {\n  sequence {\n    coach |\n  }\n}', ['passes to', 'runs to']],
])('elsewhere: %j', (text, some) => {
  expect(labels(text)).toEqual(expect.arrayContaining([...some]));
});

test.each(['// what comes |', 'station Base Left |', 'theme "Find |', 'let = |'])('nothing is offered: %s', (line) => {
  expect(labels(square({ line }))).toEqual([]);
});

test('a word that is begun is replaced whole, and one that follows is not', () => {
  const { open, offset } = cursor(square({ beat: 'Base passes to Le|ft first time' }));
  const spans = complete(open, offset).map(({ replaces }) => open.text.slice(replaces.from, replaces.to));
  expect(new Set(spans)).toEqual(new Set(['Left']));
});

test('every word is explained', () => {
  const { open, offset } = cursor(square({ beat: 'Base passes to Left |' }));
  expect(complete(open, offset).filter(({ doc }) => !doc.includes('```drill'))).toEqual([]);
});

test('whatever stands in a sound text is offered where it stands', () => {
  const root = new URL('../..', import.meta.url).pathname;
  const missed: string[] = [];
  for (const path of globSync(['shared/examples/*.drill', 'tests/**/*.drill'], { cwd: root }).sort()) {
    const text = readFileSync(root + path, 'utf8');
    const open = openIn({ [path]: text }, path);
    const wrong = open.analysis.problems.filter(({ severity }) => severity === 'error');
    const names = new Set(open.analysis.names.flatMap(({ uses }) => uses.map(({ from }) => from)));
    for (const { image, startOffset: from } of tokenize(text)) {
      if (!keywords.has(image) && !names.has(from)) continue;
      if (wrong.some(({ span }) => span.from <= from && from <= span.to)) continue;
      const offered = complete(open, from);
      const fits = offered.some(({ label }) => label === image || label.startsWith(`${image} `) || `"${label}"` === image);
      if (!fits) missed.push(`${path}: ${text.slice(text.lastIndexOf('\n', from) + 1, from)}|${image}`);
    }
  }
  expect(missed).toEqual([]);
});

test('a part is offered the drills of other files and their progressions', () => {
  const files = (line: string) => ({
    'a.drill': `import "b.drill"\nsession "S" {\n  ${line}\n}\n`,
    'b.drill': 'drill "Far" {\n  progress task "Faster" {\n  }\n}\n',
  });
  const offered = (line: string) => {
    const open = openIn(files(line), 'a.drill');
    return complete(open, open.text.indexOf(line) + line.length).map(({ label, detail, insert }) => [label, detail, insert]);
  };
  expect(offered('part "P" 9 min of ')).toEqual([['Far', 'drill from b.drill', '"Far"']]);
  expect(offered('part "P" 9 min of "Far" with ')).toEqual([['Faster', 'progression or regression', '"Faster"']]);
});
