import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { modifierForms } from '../../grammar/modifiers.ts';
import { parse } from '../../grammar/parse.ts';
import { print } from '../../grammar/printer.ts';
import { statementForms } from '../../grammar/statements/index.ts';
import { verbForms } from '../../grammar/verbs.ts';
import { drill, file } from '../../shared/build/build.ts';
import { DrillLines, FileLines, SessionLines } from '../../shared/build/generated/statements.ts';
import { Modifiers, Verbs } from '../../shared/build/generated/verbs.ts';
import { who, type Doing, type Player } from '../../shared/build/play.ts';
import { builderSources } from '../../shared/build/source.ts';
import { above, along, at, below, between, CannotBeWritten, leftOf, mirrorOf, moved, rightOf, type Spot } from '../../shared/build/values.ts';
import { diamond, threeZones } from './demos.ts';

test('the classes are those that the generator would write', () => {
  const folder = new URL('../../shared/build/generated/', import.meta.url);
  expect(new Map(readdirSync(folder).map((name) => [name, readFileSync(new URL(name, folder), 'utf8')])))
    .toEqual(new Map([...builderSources('Made by npm run generate: do not edit.')].sort()));
});

test.each([['diamond', diamond], ['three-zones', threeZones]])('the demo drill %s is printed as a person wrote it', (name, build) => {
  expect(print(build())).toBe(readFileSync(new URL(`../../shared/examples/${name}.drill`, import.meta.url), 'utf8'));
});

// ---------------------------------------------------------------- every word

const verbs: readonly (readonly [(a: Player) => Doing, string])[] = [
  [(a) => a.passesTo('B'), 'A passes to B'],
  [(a) => a.passesInto(leftOf(3, 'Far'), a.next), 'A passes into 3 left of Far for next A'],
  [(a) => a.setsTo(at(2, 13)), 'A sets to (2, 13)'],
  [(a) => a.setsInto(at(2, 13), 'B'), 'A sets into (2, 13) for B'],
  [(a) => a.touchesTo(above(1.5, a)), 'A touches to 1.5 above A'],
  [(a) => a.dribblesTo(at('-2', -2)), 'A dribbles to (-2, -2)'],
  [(a) => a.crossesTo(who('Top')), 'A crosses to Top'],
  [(a) => a.shootsAt('North'), 'A shoots at North'],
  [(a) => a.turns(), 'A turns'],
  [(a) => a.runsTo(rightOf('wide', 'area.left')), 'A runs to wide right of area.left'],
  [(a) => a.showsTo(below('3 yd', a)), 'A shows to 3 yd below A'],
  [(a) => a.dropsTo(moved('area.centre', 'wide', -1)), 'A drops to area.centre + (wide, -1)'],
  [(a) => a.spinsAround('Near', at(1, 1)), 'A spins around Near to (1, 1)'],
  [(a) => a.follows(), 'A follows'],
  [(a) => a.overlaps(who('B'), at(1, 1)), 'A overlaps B to (1, 1)'],
  [(a) => a.underlaps('B', at(1, 1)), 'A underlaps B to (1, 1)'],
  [(a) => a.presses('B'), 'A presses B'],
  [(a) => a.marks(who('coach')), 'A marks coach'],
  [(a) => a.winsTheBallFrom('B'), 'A wins the ball from B'],
  [(a) => a.holds(), 'A holds'],
  [(a) => a.waits('3 s'), 'A waits 3 s'],
];

const modifiers: readonly (readonly [(runs: Doing) => Doing, string])[] = [
  [(runs) => runs.firstTime(), ' first time'],
  [(runs) => runs.soft(), ', soft'],
  [(runs) => runs.firm(), ', firm'],
  [(runs) => runs.driven(), ', driven'],
  [(runs) => runs.lofted(), ', lofted'],
  [(runs) => runs.inStride(), ', in stride'],
  [(runs) => runs.touches(1), ', in 1 touch'],
  [(runs) => runs.via(at(2, 2)), ' via (2, 2)'],
  [(runs) => runs.around('Near'), ' around Near'],
  [(runs) => runs.gait('sprint'), ' at sprint'],
  [(runs) => runs.after('0.5 s'), ' after 0.5 s'],
];

const statements: readonly (readonly [(d: DrillLines) => unknown, string])[] = [
  [(d) => d.let('wide', '3 yd'), 'let wide = 3 yd'],
  [(d) => d.age('U13'), 'age U13'],
  [(d) => d.players('2 * 4'), 'players 2*4'],
  [(d) => d.units('yd'), 'units yd'],
  [(d) => d.tempo('walk'), 'tempo walk'],
  [(d) => d.pace('pass', '5 m/s'), 'pace pass 5 m/s'],
  [(d) => d.theme('Say “go”'), 'theme "Say “go”"'],
  [(d) => d.time('12 min'), 'time 12 min'],
  [(d) => d.ground('grass', { roll: 6 }), 'ground grass roll 6'],
  [(d) => d.level('new'), 'level "new"'],
  [(d) => d.tags('rondo', 'third player'), 'tags rondo, "third player"'],
  [(d) => d.note('a "b"'), 'note «a "b"»'],
  [(d) => d.area(18, 24, { marked: 6 }), 'area 18 x 24 marked every 6'],
  [(d) => d.zoneBox('Z', 2, 3, at(1, 1)), 'zone Z 2 x 3 at (1, 1)'],
  [(d) => d.zoneTucked('Z', 2, 3, 'area', 'bottomLeft'), 'zone Z 2 x 3 in area.bottomLeft'],
  [(d) => d.zoneCorners('Z', at(0, 0), 'A'), 'zone Z from (0, 0) to A'],
  [(d) => d.zoneCircle('Z', 5, 'area.centre'), 'zone Z circle 5 at area.centre'],
  [(d) => d.zonePolygon('Z', at(0, 0), at(6, 0), at(3, 8)), 'zone Z polygon (0, 0) (6, 0) (3, 8)'],
  [(d) => d.split('area', 'length', { name: 'Back', size: 12 }, { name: 'Mid', size: 8 }), 'split area by length into Back 12, Mid 8'],
  [(d) => d.zones('Box', 4, 4, 'area'), 'zones Box 4 x 4 in corners of area'],
  [(d) => d.cone(null, at(0, 0)), 'cone at (0, 0)'],
  [(d) => d.disc('D', between(at(0, 0), 'A')), 'disc D at between (0, 0) and A'],
  [(d) => d.pole('Near', along('1/3', 'A', 'B')), 'pole Near at 1/3 from A to B'],
  [(d) => d.mannequin(null, mirrorOf('A', 'length')), 'mannequin at mirror of A across length'],
  [(d) => d.gate('Exit', at(9, 20), 2, { facing: 'up' }), 'gate Exit at (9, 20) width 2 facing up'],
  [(d) => d.goal('North', 5, 2, 'area.top', { facing: at(1, 2) }), 'goal North 5 x 2 at area.top facing (1, 2)'],
  [(d) => d.minigoal(null, 'A'), 'minigoal at A'],
  [(d) => d.hurdle(null, 'A', { facing: who('B') }), 'hurdle at A facing B'],
  [(d) => d.ladder(null, 'A', { length: 4 }), 'ladder at A length 4'],
  [(d) => d.ball('A'), 'ball at A'],
  [(d) => d.balls(6, 'A'), 'balls 6 at A'],
  [(d) => d.coach(at(-2, 0)), 'coach at (-2, 0)'],
  [(d) => d.station('Base', at(9, 1), { holds: 2, of: 'Reds' }), 'station Base at (9, 1) holds 2 of Reds'],
  [(d) => d.team('Reds', { bib: 'light red', of: 4 }), 'team Reds bib "light red" of 4'],
  [(d) => d.floaters('Jokers'), 'floaters Jokers'],
  [(d) => d.player('Reds1', 'Reds', at(4, 6)), 'player Reds1 of Reds at (4, 6)'],
  [(d) => d.keeper('Kim', 'Reds', below(1, 'North')), 'keeper Kim of Reds at 1 below North'],
  [(d) => d.place(3, 'Reds', 'Back'), 'place 3 Reds in Back'],
  [(d) => d.sequence([who('A').turns()], { name: 'one' }), 'sequence "one" {\nA turns\n}'],
  [(d) => d.mirrored('two', 'one', 'length'), 'sequence "two" mirrors "one" across length'],
  [(d) => d.phase('p', [who('A').turns()], { after: 'q' }), 'phase "p" after "q" {\nA turns\n}'],
  [(d) => d.order(['one', 'two'], ['three go']), 'order one and two, "three go"'],
  [(d) => d.rotate([who('A'), 'B', 'A'], ['C', 'D']), 'rotate A -> B -> A, C -> D'],
  [(d) => d.rotateFollow(), 'rotate follow'],
  [(d) => d.ruleText('Hands off'), 'rule "Hands off"'],
  [(d) => d.ruleTouches(2, { who: 'Reds', zone: 'Back' }), 'rule touches 2 for Reds in Back'],
  [(d) => d.ruleAtMost('Back', 2, 'defenders'), 'rule Back at most 2 defenders'],
  [(d) => d.ruleAtLeast('Back', 1, 'defenders'), 'rule Back at least 1 defenders'],
  [(d) => d.ruleExactly('Back', 1, 'floaters'), 'rule Back exactly 1 floaters'],
  [(d) => d.ruleNo('Back', 'defenders'), 'rule Back no defenders'],
  [(d) => d.expect(4, 2, 'area'), 'expect 4 v 2 in area'],
  [(d) => d.scorePass(1, { from: 'Back', into: 'End' }), 'score 1 for pass from Back to End'],
  [(d) => d.scoreGoal(2, 'North'), 'score 2 for goal in North'],
  [(d) => d.scorePasses(1, 8), 'score 1 for 8 passes'],
  [(d) => d.scorePass(1, { through: 'Exit', by: 'Reds' }), 'score 1 for pass through Exit by Reds'],
  [(d) => d.scoreDribble(2, { into: 'End' }), 'score 2 for dribble into End'],
  [(d) => d.scoreWin(1, { zone: 'Back' }), 'score 1 for winning the ball in Back'],
  [(d) => d.bouts(4, '3 min', { rest: '1 min' }), 'bouts 4 x 3 min rest 1 min'],
  [(d) => d.point('technical', 'a'), 'point technical "a"'],
  [(d) => d.question('a'), 'question "a"'],
  [(d) => d.safety('a'), 'safety "a"'],
  [(d) => d.progress('space', 'a', (change) => change.let('wide', 7)), 'progress space "a" {\nlet wide = 7\n}'],
  [(d) => d.regress('people', 'a', () => {}), 'regress people "a" {\n}'],
];

const sessions: readonly (readonly [(s: SessionLines) => unknown, string])[] = [
  [(s) => s.let('long', '20 min'), 'let long = 20 min'],
  [(s) => s.age('U13'), 'age U13'],
  [(s) => s.players(14), 'players 14'],
  [(s) => s.units('m'), 'units m'],
  [(s) => s.theme('a'), 'theme "a"'],
  [(s) => s.ground('turf'), 'ground turf'],
  [(s) => s.note('a'), 'note "a"'],
  [(s) => s.length('60 min'), 'length 60 min'],
  [(s) => s.pitch(60, 40), 'pitch 60 x 40'],
  [(s) => s.kit({ count: 20, what: 'cones' }, { count: 7, what: 'bibs', colour: 'red' }), 'kit 20 cones, 7 bibs red'],
  [(s) => s.hands(2), 'hands 2'],
  [(s) => s.without(1, 'sore', { parts: ['Game', 'Kite'] }), 'without 1 "sore" for "Game", "Kite"'],
  [(s) => s.joinsKeeper(1, 'Game'), 'joins 1 keeper for "Game"'],
  [(s) => s.joins(3, 'Game'), 'joins 3 for "Game"'],
  [(s) => s.question('a'), 'question "a"'],
  [(s) => s.safety('a'), 'safety "a"'],
  [(s) => s.part('One touch', '10 min', { groups: [8, 7], of: 'Kite', change: 'Quick', resting: 1 }), 'part "One touch" 10 min groups 8, 7 of "Kite" with "Quick" resting 1'],
  [(s) => s.part('Kite', 'long', { groups: [2], of: 'Kite', at: [at(2, 2), at(24, 2)] }), 'part "Kite" long groups 2 of "Kite" at (2, 2), (24, 2)'],
  [(s) => s.pause('2 min', { name: 'drinks' }), 'pause 2 min "drinks"'],
];

const files: readonly (readonly [(f: FileLines) => unknown, string])[] = [
  [(f) => f.import('a.drill'), 'import "a.drill"'],
  [(f) => f.let('wide', 7), 'let wide = 7'],
  [(f) => f.drill('a', () => {}), 'drill "a" {\n}'],
  [(f) => f.session('a', () => {}), 'session "a" {\n}'],
];

describe('says', () => {
  test.each(verbs.map(([say, text]) => [text, say] as const))('%s', (text, say) => {
    expect(beat(say(who('A')))).toBe(text);
  });
  test.each(modifiers.map(([say, text]) => [text, say] as const))('A turns%s', (text, say) => {
    expect(beat(say(who('A').turns()))).toBe(`A turns${text}`);
  });
  test.each(statements.map(([say, text]) => [text, say] as const))('%s', (text, say) => {
    expect(inside(print(drill('d', (d) => void say(d))))).toBe(text);
  });
  test.each(sessions.map(([say, text]) => [text, say] as const))('%s in a session', (text, say) => {
    expect(inside(print(file((f) => f.session('s', (s) => void say(s)))))).toBe(text);
  });
  test.each(files.map(([say, text]) => [text, say] as const))('%s in a file', (text, say) => {
    expect(print(file((f) => void say(f)))).toBe(`${text}\n`);
  });
});

describe('every word of the language can be said', () => {
  const methodsOf = (type: abstract new (...words: never) => unknown, ...skipped: string[]): string[] =>
    Object.getOwnPropertyNames(type.prototype).filter((name) => name !== 'constructor' && !skipped.includes(name)).sort();
  const said = (table: readonly (readonly [unknown, string])[]): string[] =>
    [...new Set(table.map(([say]) => /^\w+$|^\((\w+)\) => (?:void )?\1\.(\w+)/.exec(String(say))?.[2] ?? ''))].sort();

  test.each([['verb', Verbs, verbs], ['modifier', Modifiers, modifiers], ['statement of a drill', DrillLines, statements], ['statement of a session', SessionLines, sessions], ['statement of a file', FileLines, files]] as const)(
    'the tables above have every %s', (_, type, table) => expect(said(table)).toEqual(methodsOf(type)),
  );
  test('and the classes have every verb, modifier and statement', () => {
    const all = [...verbs, ...modifiers, ...statements, ...sessions, ...files].map(([, text]) => ` ${text} `);
    const wanted = [
      ...verbForms.map(({ verb }) => verb), ...modifierForms.map(({ alternative }) => String(alternative.pieces[0])), ...statementForms.map(({ keyword }) => keyword),
    ];
    expect(wanted.filter((word) => !all.some((text) => text.includes(` ${word} `)))).toEqual([]);
  });
});

test('chains, beats and comments', () => {
  const left = who('Left');
  const text = print(drill('d', (d) => {
    d.comment('the ground');
    d.area(2, 2);
    d.remark('small');
    d.gap();
    d.area(3, 3);
    d.sequence([
      left.runsTo(at(1, 1)).gait('jog').then.showsTo(left).soft().lofted().while(left.next.holds(), who('B').turns()).comment('first').comment('second').remark('now'),
      left.turns().comment('alone'),
      left.holds().remark('still'),
    ]);
    d.comment('the end');
  }));
  expect(text).toBe(`drill "d" {
  // the ground
  area 2 x 2  // small

  area 3 x 3

  sequence {
    // first
    // second
    Left runs to (1, 1) at jog then shows to Left, soft, lofted while next Left holds, B turns  // now
    // alone
    Left turns
    Left holds  // still
  }
  // the end
}
`);
  expect(parse(text).faults).toEqual([]);
});

test('nothing waits for what a player does', async () => {
  const turns = who('A').turns();
  expect(await turns).toBe(turns);
});

describe('refuses at the call', () => {
  const refusals: readonly (readonly [what: string, say: (d: DrillLines) => unknown, message: string])[] = [
    ['a word of the language as a name', (d) => d.station('to', at(1, 1)), '`station`: name must be a name that you choose, such as `"Base"`: `"to"` is a word of the language; with a capital letter it can be a name'],
    ['a name of two words', (d) => d.let('far post', 2), '`let`: name must be a name that you choose, such as `"Base"`, one word of letters, digits and `_` that begins with a letter, not `"far post"`'],
    ['a player that is no name', () => who('far post'), 'This must be a player, such as `"Base"` or `"next Base"`, not `"far post"`.'],
    ['who is next after the next', () => who('Base').next.next, 'This must be a player, such as `"Base"` or `"next Base"`, not `"next next Base"`.'],
    ['no number', (d) => d.area(NaN, 2), '`area`: size/width must be a number or a value in quotes such as `"3 yd"` or `"side + 2"`, not `NaN`'],
    ['a length below nothing', (d) => d.area(-3, 4), '`area`: size/width must be 0 or more, not `-3`'],
    ['a length below nothing inside', (d) => d.split('area', 'length', { name: 'Back', size: -2 }), '`split`: into/0/size must be 0 or more, not `-2`'],
    ['a wait below nothing', () => who('A').waits(-1), '`waits`: wait must be 0 or more, not `-1`'],
    ['touches below nothing', () => who('A').passesTo('B').touches(-1), '`touches`: count must be 0 or more, not `-1`'],
    ['a distance below nothing', () => leftOf(-2, 'A'), '`leftOf`: the distance must be 0 or more, not `-2`; for the other side there is `rightOf`.'],
    ['a distance that is no number', () => above(NaN, 'A'), '`above`: a length must be a number or a value in quotes such as `"3 yd"`, not `NaN`.'],
    ['a place that is no number', () => at(NaN, 2), '`at`: a length must be a number or a value in quotes such as `"3 yd"`, not `NaN`.'],
    ['no place', (d) => d.ball('2 above'), '`ball`: at must be a place, not `"2 above"`: After `above` comes a place, such as `(6, 14)`, `Left` or `2 above Near`.'],
    ['no place to be above of', () => above(2, 'far post'), 'This must be a place, not `"2 above far post"`: `post` cannot stand here. Before it the line is complete.'],
    ['a text of two lines', (d) => d.note('a\nb'), '`note`: text must be a text on one line'],
    ['a comment of two lines', (d) => d.comment('a\nb'), 'A comment is one line: say each line by itself.'],
    ['a remark beside nothing', (d) => d.remark('a'), 'There is no line yet that a remark could stand beside.'],
    ['a verb without its place', () => who('A').passesTo(''), '`passes to`: target must be a place, not `""`: After `at` comes a place, such as `(6, 14)`, `Left` or `2 above Near`.'],
    ['a rotation of one', (d) => d.rotate(['A']), '`rotate`: chains/0 must be a list of two or more'],
    ['a place between others, moved', () => moved(between('A', 'B'), 1, 1), '`"between A and B"` cannot be moved: put a station, a cone or a pole there and move that.'],
  ];
  test.each(refusals)('%s', refused);

  /** What the compiler refuses, said from plain JavaScript. */
  type Untyped = (...said: readonly unknown[]) => unknown;
  const untyped: readonly (readonly [what: string, say: (d: Readonly<Record<'progress' | 'sequence' | 'phase', Untyped>>, made: Untyped) => unknown, message: string])[] = [
    ['no function that says the lines', (_, made) => made('A'), 'Here must be a function that says the lines, such as `(d) => { d.area(10, 12); }`, not `undefined`.'],
    ['a progression without one', (d) => d.progress('space', 'Wider', 'let wide = 8'), 'Here must be a function that says the lines, such as `(d) => { d.area(10, 12); }`, not `"let wide = 8"`.'],
    ['the name of a sequence first', (d) => d.sequence('Round', []), 'What is played must be a list, such as `[base.passesTo(left)]`, not `"Round"`. A sequence has its name behind the list: `{ name: "Round" }`.'],
    ['the name of a sequence alone behind', (d) => d.sequence([who('A').turns()], 'Round'), 'What may be said besides stands in an object at the end, such as `{ name: "Round" }`, not `"Round"`.'],
    ['no list', (d) => d.sequence(), 'What is played must be a list, such as `[base.passesTo(left)]`, not `undefined`.'],
    ['words in the list', (d) => d.phase('Go', [who('A').turns(), 'A turns']), 'Number 2 of what is played must be what somebody does, such as `base.passesTo(left)`, not `"A turns"`.'],
    ['nothing after `then`', (d) => d.sequence([who('A').turns().then]), 'Number 1 of what is played must be what somebody does, such as `base.passesTo(left)`, not an object.'],
    ['words at the same time', () => (who('A').turns() as unknown as { while: Untyped }).while('B turns'), '`while`: this must be what somebody does, such as `left.runsTo(top)`, not `"B turns"`.'],
    ['no place to be above of', () => (above as Untyped)(2), 'This must be a place, such as `at(2, 13)`, or whoever stands there, not `undefined`.'],
    ['half a place', () => (at as Untyped)(2), '`at`: a length must be a number or a value in quotes such as `"3 yd"`, not `undefined`.'],
  ];
  test.each(untyped)('%s', (what, say, message) => refused(what, say as unknown as (d: DrillLines, made: typeof drill) => unknown, message));

  function refused(_: string, say: (d: DrillLines, made: typeof drill) => unknown, message: string): void {
    let thrown: unknown;
    drill('d', (d) => {
      try {
        say(d, drill);
      } catch (error) {
        thrown = error;
      }
    });
    expect(thrown).toEqual(new CannotBeWritten(message));
  }

  test('but not what may be below nothing: places beside the area, values with a name', () => {
    expect(inside(print(drill('d', (d) => {
      d.let('off', -2);
      d.coach(at(-2, 0));
      d.cone(null, moved('area.centre', -1, -1));
    })))).toBe('let off = -2\n\ncoach at (-2, 0)\ncone at area.centre + (-1, -1)');
  });
});

test.each<[Spot, string]>([
  [above('side + 1', 'A'), '(side + 1) above A'],
  [above('(side + 1)', 'A'), '(side + 1) above A'],
  [leftOf('-2', 'A'), '(-2) left of A'],
  [above('area.width / 2', 'A'), 'area.width / 2 above A'],
  [above(1e-7, at(1e21, 0.1 + 0.2)), '0.0000001 above (1000000000000000000000, 0.30000000000000004)'],
  [mirrorOf(moved(at(3, 4), 1, 'wide'), 'width'), 'mirror of (3, 4) + (1, wide) across width'],
])('a place is written as %j', (spot, text) => {
  expect(spot).toBe(text);
});

function beat(doing: Doing): string {
  return print(drill('d', (d) => d.sequence([doing]))).split('\n')[2]!.trim();
}

/** The lines of the outermost block. */
function inside(text: string): string {
  return text.split('\n').slice(1, -2).map((line) => line.trim()).join('\n');
}
