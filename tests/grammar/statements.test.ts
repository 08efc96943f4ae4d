import { describe, expect, test } from 'vitest';
import { parse } from '../../grammar/parse.ts';
import { compact } from './compact.ts';

/** The text of one statement, and its tree. */
type Row = readonly [text: string, tree: object];

const ofFiles: readonly Row[] = [
  ['import "other.drill"', { kind: 'import', path: 'other.drill' }],
  ['let wide = .5', { kind: 'let', name: 'wide', value: 0.5 }],
];

const ofDrills: readonly Row[] = [
  ['age U13', { kind: 'age', value: 'U13' }],
  ['age adult', { kind: 'age', value: 'adult' }],
  ['players 7', { kind: 'players', count: 7 }],
  ['players squads * 4', { kind: 'players', count: { kind: 'product', factors: [{ by: '*', of: 'squads' }, { by: '*', of: 4 }] } }],
  ['units yd', { kind: 'units', value: 'yd' }],
  ['tempo match', { kind: 'tempo', value: 'match' }],
  ['pace pass 5 m/s', { kind: 'pace', of: 'pass', speed: '5 m/s' }],
  ['pace run 20 km/h', { kind: 'pace', of: 'run', speed: '20 km/h' }],
  ['theme "Find the free player"', { kind: 'theme', text: 'Find the free player' }],
  ['theme “Find the free player”', { kind: 'theme', text: 'Find the free player' }],
  ['time 15 min', { kind: 'time', length: '15 min' }],
  ['ground grass', { kind: 'ground', value: 'grass' }],
  ['ground turf roll 8 m', { kind: 'ground', value: 'turf', roll: '8 m' }],
  ['level "Any"', { kind: 'level', text: 'Any' }],
  ['tags passing, "third player", finishing', { kind: 'tags', tags: ['passing', 'third player', 'finishing'] }],
  ['note "Size 4"', { kind: 'note', text: 'Size 4' }],
  ['let wide = 7', { kind: 'let', name: 'wide', value: 7 }],
  [
    'let far = -(wide + 2 ft) * 2 / 3 - area.width',
    { kind: 'let', name: 'far', value: { kind: 'sum', terms: [{ sign: '+', of: { kind: 'product', factors: [{ by: '*', of: { kind: 'negative', of: { kind: 'group', inner: { kind: 'sum', terms: [{ sign: '+', of: 'wide' }, { sign: '+', of: '2 ft' }] } } } }, { by: '*', of: 2 }, { by: '/', of: 3 }] } }, { sign: '-', of: { kind: 'measure', of: 'area', side: 'width' } }] } },
  ],
  ['area 18 x 24', { kind: 'area', size: { width: 18, length: 24 } }],
  ['area 18×24 marked every 6', { kind: 'area', size: { width: 18, length: 24 }, marked: 6 }],
  ['area 18 x 24 yd', { kind: 'area', size: { width: 18, length: '24 yd' } }],
  [
    'zone Back 18 x 8 at area.bottom',
    { kind: 'zone', name: 'Back', shape: { size: { width: 18, length: 8 }, kind: 'box', at: { kind: 'anchor', of: 'area', anchor: 'bottom' } } },
  ],
  [
    'zone Back 4x4 in area.topRight',
    { kind: 'zone', name: 'Back', shape: { size: { width: 4, length: 4 }, kind: 'tucked', of: 'area', anchor: 'topRight' } },
  ],
  [
    'zone Lane from (0, 0) to area.centre',
    { kind: 'zone', name: 'Lane', shape: { kind: 'corners', a: { kind: 'at', x: 0, y: 0 }, b: { kind: 'anchor', of: 'area', anchor: 'centre' } } },
  ],
  [
    'zone Middle circle 5 yards at area.centre',
    { kind: 'zone', name: 'Middle', shape: { kind: 'circle', radius: '5 yards', at: { kind: 'anchor', of: 'area', anchor: 'centre' } } },
  ],
  [
    'zone Wedge polygon (0, 0) A 2 above B C + (1, −1)',
    { kind: 'zone', name: 'Wedge', shape: { kind: 'polygon', points: [{ kind: 'at', x: 0, y: 0 }, 'A', { kind: 'beside', distance: 2, side: 'above', of: 'B' }, { kind: 'offset', from: 'C', dx: 1, dy: { kind: 'negative', of: 1 } }] } },
  ],
  [
    'zone Wedge polygon (0, 0), (1, 0), (0, 1)',
    { kind: 'zone', name: 'Wedge', shape: { kind: 'polygon', points: [{ kind: 'at', x: 0, y: 0 }, { kind: 'at', x: 1, y: 0 }, { kind: 'at', x: 0, y: 1 }] } },
  ],
  [
    'split area by length into Back 12, Mid 8 m',
    { kind: 'split', of: 'area', by: 'length', into: [{ name: 'Back', size: 12 }, { name: 'Mid', size: '8 m' }] },
  ],
  ['zones Box 4 x 4 in corners of area', { kind: 'zones', name: 'Box', size: { width: 4, length: 4 }, of: 'area' }],
  ['cone at (0, 0)', { kind: 'cone', at: { kind: 'at', x: 0, y: 0 } }],
  [
    'cone Tip at 1/3 from A to B',
    { kind: 'cone', name: 'Tip', at: { kind: 'along', fraction: { kind: 'product', factors: [{ by: '*', of: 1 }, { by: '/', of: 3 }] }, start: 'A', end: 'B' } },
  ],
  ['disc at between A and B', { kind: 'disc', at: { kind: 'between', a: 'A', b: 'B' } }],
  [
    'pole Near at 6 above area.bottom',
    { kind: 'pole', name: 'Near', at: { kind: 'beside', distance: 6, side: 'above', of: { kind: 'anchor', of: 'area', anchor: 'bottom' } } },
  ],
  ['mannequin Wall at mirror of Near across width', { kind: 'mannequin', name: 'Wall', at: { kind: 'mirror', of: 'Near', across: 'width' } }],
  [
    'gate Exit at (9, 20) width 2 facing up',
    { kind: 'gate', name: 'Exit', at: { kind: 'at', x: 9, y: 20 }, width: 2, facing: { kind: 'way', way: 'up' } },
  ],
  ['gate at (9, 20) width 2', { kind: 'gate', at: { kind: 'at', x: 9, y: 20 }, width: 2 }],
  [
    'goal North 5 x 2 at area.top facing down',
    { kind: 'goal', name: 'North', size: { width: 5, length: 2 }, at: { kind: 'anchor', of: 'area', anchor: 'top' }, facing: { kind: 'way', way: 'down' } },
  ],
  [
    'goal wide x 2 at area.top facing Near',
    { kind: 'goal', size: { width: 'wide', length: 2 }, at: { kind: 'anchor', of: 'area', anchor: 'top' }, facing: { kind: 'towards', at: 'Near' } },
  ],
  [
    'minigoal A at area.topLeft facing left',
    { kind: 'minigoal', name: 'A', at: { kind: 'anchor', of: 'area', anchor: 'topLeft' }, facing: { kind: 'way', way: 'left' } },
  ],
  ['hurdle at (4, 6)', { kind: 'hurdle', at: { kind: 'at', x: 4, y: 6 } }],
  ['ladder at (2, 4) length 4 facing right', { kind: 'ladder', at: { kind: 'at', x: 2, y: 4 }, length: 4, facing: { kind: 'way', way: 'right' } }],
  ['ball at Base', { kind: 'ball', at: 'Base' }],
  ['balls 6 at coach', { kind: 'balls', count: 6, at: 'coach' }],
  [
    'coach at 2 left of area.left',
    { kind: 'coach', at: { kind: 'beside', distance: 2, side: 'left of', of: { kind: 'anchor', of: 'area', anchor: 'left' } } },
  ],
  [
    'station Base at 1 above area.bottom holds 2',
    { kind: 'station', name: 'Base', at: { kind: 'beside', distance: 1, side: 'above', of: { kind: 'anchor', of: 'area', anchor: 'bottom' } }, holds: 2 },
  ],
  [
    'station Base at wide left of Near of Reds',
    { kind: 'station', name: 'Base', at: { kind: 'beside', distance: 'wide', side: 'left of', of: 'Near' }, of: 'Reds' },
  ],
  ['team Reds bib red of 4', { kind: 'team', name: 'Reds', bib: 'red', of: 4 }],
  ['team Reds bib "light blue"', { kind: 'team', name: 'Reds', bib: 'light blue' }],
  ['floaters Jokers bib yellow of 2', { kind: 'floaters', name: 'Jokers', bib: 'yellow', of: 2 }],
  ['player Reds1 of Reds at (4, 6)', { kind: 'player', name: 'Reds1', of: 'Reds', at: { kind: 'at', x: 4, y: 6 } }],
  [
    'keeper Kim of floaters at 1 below North',
    { kind: 'keeper', name: 'Kim', of: 'floaters', at: { kind: 'beside', distance: 1, side: 'below', of: 'North' } },
  ],
  ['place 3 Reds in Back', { kind: 'place', count: 3, of: 'Reds', zone: 'Back' }],
  [
    'sequence {\n  A turns\n}',
    { kind: 'sequence', body: { lines: [{ kind: 'beat', lead: { subject: { name: 'A', next: false }, chain: [{ verb: 'turns' }] } }] } },
  ],
  ['sequence "one" {\n}', { kind: 'sequence', name: 'one', body: { lines: [] } }],
  ['sequence "two" mirrors "one" across width', { kind: 'mirrored', name: 'two', of: 'one', across: 'width' }],
  [
    'phase "Out of the back" {\n  A turns\n}',
    { kind: 'phase', name: 'Out of the back', body: { lines: [{ kind: 'beat', lead: { subject: { name: 'A', next: false }, chain: [{ verb: 'turns' }] } }] } },
  ],
  ['order "Left side", "b" and c', { kind: 'order', steps: [['Left side'], ['b', 'c']] }],
  ['rotate A -> B → A, C -> D -> C', { kind: 'rotate', follow: false, chains: [['A', 'B', 'A'], ['C', 'D', 'C']] }],
  ['rotate follow', { kind: 'rotate', follow: true }],
  ['rule touches 2', { kind: 'rule', rule: 'touches', count: 2 }],
  ['rule touches 1 for attackers in Back', { kind: 'rule', rule: 'touches', count: 1, who: 'attackers', zone: 'Back' }],
  ['rule Back at most 2 defenders', { kind: 'rule', zone: 'Back', rule: 'at most', count: 2, who: 'defenders' }],
  ['rule Back at least 1 floaters', { kind: 'rule', zone: 'Back', rule: 'at least', count: 1, who: 'floaters' }],
  ['rule area exactly 8 attackers', { kind: 'rule', zone: 'area', rule: 'exactly', count: 8, who: 'attackers' }],
  ['rule Back no Reds', { kind: 'rule', zone: 'Back', rule: 'no', who: 'Reds' }],
  ['rule "Screen plays first time"', { kind: 'rule', rule: 'text', text: 'Screen plays first time' }],
  ['expect 4 v 2 in Back', { kind: 'expect', ours: 4, theirs: 2, zone: 'Back' }],
  ['expect 4v2 in Back', { kind: 'expect', ours: 4, theirs: 2, zone: 'Back' }],
  ['score 1 for 8 passes', { kind: 'score', points: 1, for: { kind: 'passes', count: 8 } }],
  ['score 1 for pass into End', { kind: 'score', points: 1, for: { kind: 'pass', into: 'End' } }],
  ['score 1 for pass from Back to Front', { kind: 'score', points: 1, for: { kind: 'pass', from: 'Back', into: 'Front' } }],
  ['score 2 for goal in North', { kind: 'score', points: 2, for: { kind: 'goal', goal: 'North' } }],
  ['bouts 4 x 3 min rest 1 min', { kind: 'bouts', count: 4, length: '3 min', rest: '1 min' }],
  ['bouts 4 x 90 s', { kind: 'bouts', count: 4, length: '90 s' }],
  ['point technical "Open your hips"', { kind: 'point', corner: 'technical', text: 'Open your hips' }],
  ['question "Where?"', { kind: 'question', text: 'Where?' }],
  ['safety "Pin the goals"', { kind: 'safety', text: 'Pin the goals' }],
  [
    'progress space "Wider" {\n  let wide = 9\n}',
    { kind: 'progress', lever: 'space', name: 'Wider', body: { lines: [{ kind: 'let', name: 'wide', value: 9 }] } },
  ],
  [
    'regress people "Fewer" { let wide = 5 }',
    { kind: 'regress', lever: 'people', name: 'Fewer', body: { lines: [{ kind: 'let', name: 'wide', value: 5 }] } },
  ],
];

const ofSessions: readonly Row[] = [
  ['players 14', { kind: 'players', count: 14 }],
  ['length 60 min', { kind: 'length', length: '60 min' }],
  ['pitch 60 x 40', { kind: 'pitch', size: { width: 60, length: 40 } }],
  [
    'kit 20 cones, 4 poles, 8 balls, 7 bibs red',
    { kind: 'kit', items: [{ count: 20, what: 'cones' }, { count: 4, what: 'poles' }, { count: 8, what: 'balls' }, { count: 7, what: 'bibs', colour: 'red' }] },
  ],
  [
    'part "Kite" 15 min groups 2 of "Kite, bounce and spin" at (2, 2), (24, 2)',
    { kind: 'part', name: 'Kite', length: '15 min', groups: [2], of: 'Kite, bounce and spin', at: [{ kind: 'at', x: 2, y: 2 }, { kind: 'at', x: 24, y: 2 }] },
  ],
  [
    'part "Kite, faster" 10 min groups 8, 7 of "Kite" with "One touch" resting 1 at (2, 2)',
    { kind: 'part', name: 'Kite, faster', length: '10 min', groups: [8, 7], of: 'Kite', change: 'One touch', resting: 1, at: [{ kind: 'at', x: 2, y: 2 }] },
  ],
  ['hands 2', { kind: 'hands', count: 2 }],
  ['without 1 "sore ankle: keeps the score"', { kind: 'without', count: 1, reason: 'sore ankle: keeps the score' }],
  ['without 2 "long match" for "Sprints", "Game"', { kind: 'without', count: 2, reason: 'long match', parts: ['Sprints', 'Game'] }],
  ['joins 1 keeper for "Game"', { kind: 'joins', count: 1, keeper: true, part: 'Game' }],
  ['joins 2 keepers for "Game"', { kind: 'joins', count: 2, keeper: true, part: 'Game' }],
  ['joins 3 for "Game"', { kind: 'joins', count: 3, keeper: false, part: 'Game' }],
  ['part "Game" 20 min', { kind: 'part', name: 'Game', length: '20 min' }],
  ['pause 2 min "drinks"', { kind: 'pause', length: '2 min', name: 'drinks' }],
  ['pause 90 seconds', { kind: 'pause', length: '90 seconds' }],
];

const beats: readonly Row[] = [
  ['Base passes to Left', { lead: { subject: { name: 'Base', next: false }, chain: [{ target: 'Left', verb: 'passes to' }] } }],
  [
    'next Base passes to next Left',
    { lead: { subject: { name: 'Base', next: true }, chain: [{ target: { kind: 'name', name: 'Left', next: true }, verb: 'passes to' }] } },
  ],
  ['coach passes to Flügel', { lead: { subject: { name: 'coach', next: false }, chain: [{ target: 'Flügel', verb: 'passes to' }] } }],
  ['前 passes to 後', { lead: { subject: { name: '前', next: false }, chain: [{ target: '後', verb: 'passes to' }] } }],
  [
    'Base passes into 3 left of Far for Screen, in 2 touches while Base follows',
    { lead: { subject: { name: 'Base', next: false }, chain: [{ target: { kind: 'beside', distance: 3, side: 'left of', of: 'Far' }, receiver: { name: 'Screen', next: false }, verb: 'passes into', modifiers: [{ kind: 'touches', count: 2 }] }] }, meanwhile: [{ subject: { name: 'Base', next: false }, chain: [{ verb: 'follows' }] }] },
  ],
  [
    'Screen sets to Base first time',
    { lead: { subject: { name: 'Screen', next: false }, chain: [{ target: 'Base', verb: 'sets to', modifiers: [{ kind: 'first time' }] }] } },
  ],
  [
    'Base touches to 1.5 above Base while Screen runs to 2 left of Near then shows to 1 below Near, Top drops to (3, 4)',
    { lead: { subject: { name: 'Base', next: false }, chain: [{ target: { kind: 'beside', distance: 1.5, side: 'above', of: 'Base' }, verb: 'touches to' }] }, meanwhile: [{ subject: { name: 'Screen', next: false }, chain: [{ target: { kind: 'beside', distance: 2, side: 'left of', of: 'Near' }, verb: 'runs to' }, { target: { kind: 'beside', distance: 1, side: 'below', of: 'Near' }, verb: 'shows to' }] }, { subject: { name: 'Top', next: false }, chain: [{ target: { kind: 'at', x: 3, y: 4 }, verb: 'drops to' }] }] },
  ],
  [
    'Left dribbles to (6, 14) via (2, 2)',
    { lead: { subject: { name: 'Left', next: false }, chain: [{ target: { kind: 'at', x: 6, y: 14 }, verb: 'dribbles to', modifiers: [{ kind: 'via', at: { kind: 'at', x: 2, y: 2 } }] }] } },
  ],
  [
    'Wing crosses to Top, driven',
    { lead: { subject: { name: 'Wing', next: false }, chain: [{ target: 'Top', verb: 'crosses to', modifiers: [{ kind: 'driven' }] }] } },
  ],
  [
    'Top shoots at North, in stride',
    { lead: { subject: { name: 'Top', next: false }, chain: [{ target: 'North', verb: 'shoots at', modifiers: [{ kind: 'in stride' }] }] } },
  ],
  [
    'Top turns then shoots at North',
    { lead: { subject: { name: 'Top', next: false }, chain: [{ verb: 'turns' }, { target: 'North', verb: 'shoots at' }] } },
  ],
  [
    'Screen spins around Near to 2 right of Far at sprint',
    { lead: { subject: { name: 'Screen', next: false }, chain: [{ target: { kind: 'beside', distance: 2, side: 'right of', of: 'Far' }, about: { name: 'Near', next: false }, verb: 'spins around', modifiers: [{ kind: 'gait', gait: 'sprint' }] }] } },
  ],
  [
    'Back overlaps next Wing to (16, 20) after 0.5 s',
    { lead: { subject: { name: 'Back', next: false }, chain: [{ target: { kind: 'at', x: 16, y: 20 }, about: { name: 'Wing', next: true }, verb: 'overlaps', modifiers: [{ kind: 'after', delay: '0.5 s' }] }] } },
  ],
  [
    'Back underlaps Wing to (12, 20)',
    { lead: { subject: { name: 'Back', next: false }, chain: [{ target: { kind: 'at', x: 12, y: 20 }, about: { name: 'Wing', next: false }, verb: 'underlaps' }] } },
  ],
  [
    'Blues1 presses Reds1 while Blues2 marks Reds3',
    { lead: { subject: { name: 'Blues1', next: false }, chain: [{ about: { name: 'Reds1', next: false }, verb: 'presses' }] }, meanwhile: [{ subject: { name: 'Blues2', next: false }, chain: [{ about: { name: 'Reds3', next: false }, verb: 'marks' }] }] },
  ],
  [
    'Blues1 wins the ball from Reds1',
    { lead: { subject: { name: 'Blues1', next: false }, chain: [{ about: { name: 'Reds1', next: false }, verb: 'wins the ball from' }] } },
  ],
  ['Top holds', { lead: { subject: { name: 'Top', next: false }, chain: [{ verb: 'holds' }] } }],
  [
    'Top waits 1 s then runs to Base around Near',
    { lead: { subject: { name: 'Top', next: false }, chain: [{ verb: 'waits', modifiers: [{ kind: 'for', length: '1 s' }] }, { target: 'Base', verb: 'runs to', modifiers: [{ kind: 'around', about: { name: 'Near', next: false } }] }] } },
  ],
  [
    'A passes to B, firm, in 1 touch, while C follows',
    { lead: { subject: { name: 'A', next: false }, chain: [{ target: 'B', verb: 'passes to', modifiers: [{ kind: 'firm' }, { kind: 'touches', count: 1 }] }] }, meanwhile: [{ subject: { name: 'C', next: false }, chain: [{ verb: 'follows' }] }] },
  ],
  [
    'A passes to B soft lofted',
    { lead: { subject: { name: 'A', next: false }, chain: [{ target: 'B', verb: 'passes to', modifiers: [{ kind: 'soft' }, { kind: 'lofted' }] }] } },
  ],
];

describe.each([
  ['a file', ofFiles, '', '', 0],
  ['a drill', ofDrills, 'drill "d" {\n', '\n}', 1],
  ['a session', ofSessions, 'session "s" {\n', '\n}', 1],
  ['a sequence', beats, 'drill "d" {\nsequence {\n', '\n}\n}', 2],
] as const)('in %s', (_, rows, before, after, depth) => {
  test.each(rows)('%s', (text, tree) => {
    const { file, faults } = parse(before + text + after);
    expect(faults).toEqual([]);
    expect(compact(first(file.items, depth))).toEqual(depth === 2 ? { kind: 'beat', ...tree } : tree);
  });
});

interface Nested {
  readonly body?: { readonly lines: readonly Nested[] };
}

function first(statements: readonly unknown[], depth: number): unknown {
  const [statement] = statements as readonly Nested[];
  return depth === 0 ? statement : first(statement!.body!.lines, depth - 1);
}
