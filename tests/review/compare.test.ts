import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';
import { compare } from '../../shared/review/compare.ts';
import { drills } from '../scene/drills.ts';

const kite = readFileSync(new URL('../support/kite.drill', import.meta.url), 'utf8');
const bases: Readonly<Record<string, string>> = { ...drills, kite };
const gap = 'drill "Gates" {\n  area 20 x 20\n  let gap = 10\n  gate A at (5, 5) width gap\n  station S at (2, 2)\n}\n';
const evening = `${drills['rondo']}session "Tuesday" {
  players 14
  kit 20 cones, 8 balls
  part "Warm up" 15 min groups 2 of "Four against two" at (2, 2), (24, 2)
  pause 2 min "drinks"
  part "Game" 20 min
}
`;

type Edits = readonly (readonly [from: string | RegExp, to: string])[];

/** Each fact that matters on the grass, behind the sign of its kind; `all` with the details. */
function told(text: string, edits: Edits, all = false): string[] {
  const edited = edits.reduce((made, [from, to]) => {
    const next = typeof from === 'string' ? made.replaceAll(from, to) : made.replace(from, to);
    expect(next, `${from} is in the text`).not.toBe(made);
    return next;
  }, text);
  return compare(analyse(text), analyse(edited)).subjects.flatMap(({ facts }) => facts)
    .filter(({ grade, shared }) => !shared && (all || grade === 'matters')).map(({ kind, sentence }) => `${kind}: ${sentence}`);
}

/** What must be among the facts, in this order. */
const among: readonly (readonly [what: string, base: string, edits: Edits, facts: readonly string[]])[] = [
  ['a let, told once with what it moves', 'kite', [['let wide = 7', 'let wide = 5']], [
    'changed: Left and Right stand 5 m from the middle, were 7 (wide); 1 movement ends elsewhere too.',
    'changed: Pass 4, Base to Left: 0.7 m shorter (10 m, was 10.7); Left has 3.8 s in hand, had 3.9 s.',
  ]],
  ['a let in yards', 'two-balls', [['let side = 7', 'let side = 5']], [
    'changed: South, East, North and West stand 5 yd from the middle, were 7 (side).',
    'changed: Pass 1a, South to East: 2.8 yd shorter (7.1 yd, was 9.9); East has 1.3 s in hand, had 1.7 s.',
    'changed: A repetition takes 3.7 s, was 4.5.',
  ]],
  ['a let across the middle, in mirrored lanes', 'two-lanes', [['let lane = 5', 'let lane = 6']], [
    'changed: RightStart, RightMiddle, RightTop, LeftStart, LeftMiddle and LeftTop stand 6 m to the side of the middle, were 5 (lane); 6 movements end elsewhere too.',
    'changed: A new start every 14.2 s, was 13.3.',
  ]],
  ['what hangs on something that moved', 'diamond', [['Screen at 10', 'Screen at 11']], [
    'moved: The mannequin Screen is at (9, 11), was at (9, 10): 1 m up; Pivot and the ends of 3 movements go with it.',
    'changed: Pass 2, Base to Pivot: 1 m longer (6 m, was 5); Pivot has 0.2 s in hand, had 0 s.',
  ]],
  ['the area', 'diamond', [['area 18 x 24', 'area 20 x 26']], [
    'changed: The area is 20 x 26 m, was 18 x 24 m; the mannequin Screen, Base, Pivot, Wing, Top and the ends of 8 movements go with it.',
    'changed: Space a player: 74.3 m², was 61.7.',
  ]],
  ['another unit', 'diamond', [['tempo    steady', 'units yd\n  tempo steady']], [
    'changed: Lengths are in yd, were in m; the area, the mannequin Screen, Base, Pivot, Wing and 2 more go with it.',
  ]],
  ['a new name, everywhere it is used', 'diamond', [['Wing', 'Flank']], ['renamed: Wing is called Flank now.']],
  ['a team and its players', 'rondo', [['Amber', 'Gold']], ['renamed: Amber is called Gold now, and its players with it.']],
  ['a drill and a phase of another name', 'rondo', [['Four against two', 'Rondo'], ['"Won"', '"Ball won"']], [
    'renamed: The drill is called “Rondo” now, was “Four against two”.', 'renamed: The phase is called “Ball won” now, was “Won”.',
  ]],
  ['a later rotation', 'diamond', [['holds 3', 'holds 5'], ['players  7', 'players 9']], [
    'changed: Base holds 5, was 3.', 'changed: Everyone is home after 9 repetitions, was 7.', 'changed: 9 players, were 7.',
  ]],
  ['another rotation', 'diamond', [['Base -> Pivot -> Wing -> Top', 'Base -> Wing -> Pivot -> Top']], [
    'changed: Now Base goes to Wing (was Pivot), Pivot goes to Top (was Wing) and Wing goes to Pivot (was Top).',
  ]],
  ['an open rotation', 'diamond', [['Top -> Base', 'Top']], [
    'changed: The rotation does not close any more: a place is left empty or gets two; now Top stays (was Base).',
  ]],
  ['more cones, told with the kit', 'in-a-hurry', [['  pole Post', '  cone at (1, 1)\n  cone at (1, 2)\n  cone at (1, 3)\n  cone at (1, 4)\n  pole Post']], [
    'added: 4 cones at (1, 1), (1, 2), (1, 3) and (1, 4) are new (four more cones: 4, were 0).',
  ]],
  ['a pole that is gone, and the fault with it', 'in-a-hurry', [['  pole Post at (4.5, 8)\n', '']], [
    'removed: The pole Post is gone (one pole fewer: 0, was 1).', 'removed: Mended: Post stands in the way of the ball from Base to Left.',
  ]],
  ['a receiver who is late now', 'diamond', [['    Pivot sets to Base\n', '']], [
    'removed: Beat 3 is gone: Pivot sets to Base.', 'changed: Pass 3, Base to Wing: Wing is 0.2 s late, had 2.1 s in hand.', 'added: New error: Base has no ball to play: it is with Pivot.',
  ]],
  ['a beat that is new', 'in-a-hurry', [['    Right passes', '    Left waits 1 s\n    Right passes']], ['added: Beat 3 is new: Left waits 1 s.']],
  ['a beat that moved', 'diamond', [['    Pivot sets to Base\n', ''], ['    Top passes to next', '    Pivot sets to Base\n    Top passes to next']], ['moved: Beat 6 was beat 3: Pivot sets to Base.']],
  ['a beat that says something else', 'diamond', [['1 left of Wing', '2 left of Wing']], [
    'changed: Beat 2: “Wing runs to 2 above Wing then shows to 2 left of Wing”, was “Wing runs to 2 above Wing then shows to 1 left of Wing”.',
  ]],
  ['a phase that is gone', 'rondo', [[/ {2}phase "Won"[^}]*}\n/, '']], ['removed: The phase “Won” is gone: 1 dribble, 1 ball won.']],
  ['a mirrored sequence that is gone', 'two-lanes', [['  sequence "left" mirrors "right" across length\n', ''], ['order right and left', '']], [
    'removed: The sequence “left”, which mirrors “right”, is gone: 5 passes, 6 runs.',
  ]],
  ['a game: rules, presses, lanes', 'rondo', [['touches 2 for Amber', 'touches 1 for Amber'], ['(4, 4)', '(3, 3)']], [
    'moved: Navy1 stands at (3, 3), was at (4, 4): 1 m to the left and 1 m down.', 'changed: Rule for Amber: at most 1 touch, was at most 2 touches.',
    'changed: Pass 1 of “Round the outside”, Amber1 to Amber2: Navy1 is first to the ball by 0.4 s, was 0.4 s too late; open lanes: 1, was 2.',
  ]],
  ['zones that are declared together', 'switch-to-the-corners', [['zones Box 5 x 5', 'zones Box 6 x 6']], [
    'changed: BoxTopLeft, BoxTopRight, BoxBottomLeft and BoxBottomRight are 6 x 6 yd, were 5 x 5.',
  ]],
  ['bibs', 'switch-to-the-corners', [['bib orange', 'bib red']], ['changed: Amber: bibs red, was orange.', 'removed: No bibs orange to carry any more, were 6.', 'added: 6 bibs red to carry, none before.']],
  ['the header and the words', 'diamond', [['U14', 'U13'], ['tempo    steady', 'tempo    match'], ['Slow away', 'Slowly away']], [
    'changed: It is for U13, was U14.', 'changed: The tempo is match, was steady.', 'changed: Coaching point: “Slowly away, quick to the ball”, was: “Slow away, quick to the ball”.',
  ]],
  ['a progression of another name, and one that is gone', 'diamond', [['"One touch in the middle"', '"One touch only"'], [/ {2}regress space[^}]*}\n/, '']], [
    'renamed: Progression “One touch in the middle” is called “One touch only” now.', 'removed: Gone: regression “Wing farther out: more time”.',
  ]],
  ['a progression alone', 'diamond', [['let wide = 7', 'let wide = 8']], ['changed: Wing stands 8 m to the side of the middle, was 7 (wide); 3 movements end elsewhere too.']],
];

/** A game with one rule, and what is told of it when it is another one. */
const rules: readonly (readonly [before: string, after: string, facts: readonly string[]])[] = [
  ['touches 2 for Joker', 'touches 1 for Joker', ['Rule for Joker: at most 1 touch, was at most 2 touches.']],
  ['touches 2', 'touches 3', ['Rule for everyone: at most 3 touches, was at most 2 touches.']],
  ['rule Box at most 2 Amber', 'rule Box no Amber', ['Rule for Box: no Amber, was at most 2 Amber.']],
  ['score 1 for 8 passes', 'score 2 for 6 passes', ['Rule: 2 points for 6 passes, was 1 point for 8 passes.']],
  ['bouts 6 x 90 s rest 30 s', 'bouts 4 x 2 min rest 1 min', ['Rule: 4 bouts of 2 min, 1 min rest; was 6 bouts of 90 s, 30 s rest.']],
  ['rule "Max 2"', 'rule "Max 3"', ['Rule: “Max 3”, was “Max 2”.']],
  ['rule "Goal counts: first time only"', '', ['Rule gone: “Goal counts: first time only”.']],
  ['touches 2 for Joker', '', ['Rule for Joker gone: at most 2 touches.']],
  ['', 'touches 2 for Joker', ['New rule for Joker: at most 2 touches.']],
  ['touches 2 for Joker', 'score 1 for 8 passes', ['New rule: 1 point for 8 passes.', 'Rule for Joker gone: at most 2 touches.']],
];

test.each(rules)('a rule: %s, then %s', (before, after, facts) => {
  const game = (line: string) => analyse(bases['rondo']!
    .replace('  team Navy', '  floaters Joker bib red of 1\n  zone Box 4 x 4 at (5, 5)\n  player Joker1 of Joker at (5, 5)\n  team Navy')
    .replace(/ {2}rule touches[^]*?rest 30 s\n/, line === '' ? '' : `  ${line.startsWith('touches') ? 'rule ' : ''}${line}\n`));
  const found = compare(game(before), game(after)).subjects.flatMap((subject) => subject.facts.filter(({ about }) => about.kind === 'rule').map(({ sentence }) => sentence));
  expect(found.sort()).toEqual(facts);
});

describe('facts that matter', () => {
  test.each(among)('%s', (_, base, edits, facts) => {
    const found = told(bases[base]!, edits);
    expect(facts.filter((fact) => !found.includes(fact)).map((fact) => ({ missing: fact, found }))).toEqual([]);
  });

  test('a sequence that came or went is one fact', () => {
    const more = '  sequence "Again" {\n    Base passes to Left\n    Left passes to Right while Base runs to Left\n    Right passes to Base while Left runs to Right, Right runs to Base\n  }\n';
    const [without, having] = [bases['in-a-hurry']!, bases['in-a-hurry']!.replace('  rotate', `${more}\n  rotate`)];
    const ofPlay = (before: string, after: string) => compare(analyse(before), analyse(after)).subjects
      .flatMap(({ facts }) => facts.filter(({ kind, about }) => kind !== 'changed' && ['sequence', 'beat', 'action', 'pass'].includes(about.kind)).map(({ sentence }) => sentence));
    expect(ofPlay(without, having)).toEqual(['The sequence “Again” is new: 3 passes, 3 runs.']);
    expect(ofPlay(having, without)).toEqual(['The sequence “Again” is gone: 3 passes, 3 runs.']);
  });

  test('a width that hangs on a let is told with it', () => {
    expect(told(gap, [['let gap = 10', 'let gap = 8']])).toEqual(['changed: The gate A is 8 m wide, was 10 (gap).']);
  });

  test('a session', () => {
    expect(told(evening, [['15 min', '20 min'], ['  pause 2 min "drinks"\n', ''], ['20 cones', '24 cones'], ['"Game" 20 min', '"Game" 20 min\n  part "Cool down" 5 min']])).toEqual([
      'changed: The kit: 24 cones, 8 balls, was 20 cones, 8 balls.', 'changed: “Warm up”: lasts 20 min, was 15.', 'removed: Part gone: the pause “drinks”.', 'added: New part: “Cool down”.',
    ]);
  });

  test('what a change makes of an evening', () => {
    expect(told(evening, [['players 14', 'players 16']])).toEqual([
      'changed: Players written in the header: 16, was 14.', 'changed: “Game”: all 16 together, was 14.',
    ]);
  });

  test('groups of an evening', () => {
    const split = evening.replace('"Game" 20 min', '"Game" 20 min groups 2');
    expect(told(split, [['"Game" 20 min groups 2', '"Game" 20 min']]).at(-1)).toMatch(/all 14 together, was groups of 7 \+ 7\.$/);
  });

  test('an opponent who comes too late, or only just', () => {
    const pass = told(bases['rondo']!, [['(6.5, 6)', '(7, 7)']], true).filter((fact) => fact.includes('Between the two'));
    expect(pass).toContain('changed: Pass 2 of “Between the two”, Amber4 to Amber3: Navy2 is first to the ball by 0.3 s, was just too late; open lanes: 1, was 2.');
    expect(pass).toContain('changed: Pass 1 of “Between the two”, Amber1 to Amber4: Navy2 is 0.7 s too late for the ball, was 0.6 s too late.');
  });

  test('a drill that is new tells whether it is sound; a line that cannot be read is quoted', () => {
    const facts = (before: string, after: string) => compare(analyse(before), analyse(after)).subjects.flatMap((subject) => subject.facts.map(({ sentence }) => sentence));
    expect(facts('', 'drill "A" {\n  area 9 x 9\n  station S at (12, 3)\n}\n')).toEqual(['The drill “A” is new, with 1 error, such as: S stands at (12, 3), 3 m outside the area.']);
    expect(facts('drill "A" {\n  area 9 x 9\n}\n', 'drill "A" {\n  areaa 9 x 9\n}\n')[0]).toBe('New error: “areaa”: did you mean “area”?');
  });

  test('drills that have nothing in common come and go as a whole', () => {
    const { subjects } = compare(analyse(bases['rondo']!), analyse(bases['two-lanes']!));
    expect(subjects.flatMap(({ facts }) => facts.map(({ sentence }) => sentence))).toEqual(['The drill “Two lanes, third man” is new.', 'The drill “Four against two” is gone.']);
  });

  test('a drill of another name and another place in the file is the same drill', () => {
    const two = `${bases['diamond']}${bases['rondo']}`;
    const other = `${bases['rondo']!.replace('Four against two', 'Rondo')}${bases['diamond']}`;
    expect(compare(analyse(two), analyse(other)).subjects.flatMap(({ facts }) => facts.map(({ sentence }) => sentence))).toEqual(['The drill is called “Rondo” now, was “Four against two”.']);
  });
});

test('spaces, comments and the order of statements are no change', () => {
  const lines = bases['two-balls']!.split('\n');
  const station = lines.findIndex((line) => line.includes('station North'));
  const moved = [...lines.slice(0, station), lines[station + 1]!, lines[station]!, ...lines.slice(station + 2)].join('\n// well\n').replaceAll('passes to', 'passes  to');
  expect(compare(analyse(bases['two-balls']!), analyse(moved)).subjects.flatMap(({ facts }) => facts.filter(({ about }) => about.kind !== 'rotation'))).toEqual([]);
});

test('a beat behind two hundred others', () => {
  const long = (more: string) => `drill "Long" {\n  area 20 x 20\n  station A at (2, 2)\n  station B at (12, 2)\n  ball at A\n  sequence {\n${'    A passes to B\n    B passes to A\n'.repeat(100)}${more}  }\n}\n`;
  const [before, after] = [analyse(long('')), analyse(long('    A passes to B, firm\n'))];
  const { subjects } = compare(before, after);
  expect(subjects[0]!.facts.map(({ sentence }) => sentence)).toContain('Beat 201 is new: A passes to B, firm.');
});
