import { expect, test } from 'vitest';
import { hover } from '../../shared/service/hover.ts';
import { cursor, square } from './texts.ts';

const walls = `drill "Wall" {
  area 12 x 12
  station Base at (2, 6) holds 2
  station Wall at (10, 6)
  ball at Base
  sequence {
    Base passes to Wall
    Wall passes to Base
  }
}
`;

function told(text: string): string {
  const { open, offset } = cursor(text);
  return hover(open, offset)?.text ?? '';
}

test.each<[what: string, text: string, says: readonly (string | RegExp)[]]>([
  [
    'a pass', square().replace('Base passes', 'Base pas|ses'),
    ['**12 m**', /\d\.\d s on the way/, /leaves the foot at \d+(\.\d)? m\/s/, 'before the ball', 'Plays the ball to a player'],
  ],
  ['a late pass', square({ beat: 'Left pass|es to Top' }).replace('2 left of Top', '(4, 2)'), ['**after** the ball']],
  ['a run', square().replace('Top runs to', 'Top ru|ns to'), ['**2 m**', 'after the start', 'Runs without the ball']],
  [
    'a station', square().replace('station Base', 'station Ba|se'),
    ['**Base**: station', 'At (4 m, 4 m). 2 players here at the start.', 'Of the', 'at work', 'waiting'],
  ],
  ['a station where it is used', square().replace('passes to Left', 'passes to Le|ft'), ['**Left**: station', '1 player here']],
  ['a zone', square().replace('zone Box', 'zone B|ox'), ['8 m x 6 m, 48 m²']],
  ['a zone with someone in it', square({ line: 'zone Ne|st 4 x 4 at Base' }), ['16 m²', '2 players, 8 m² each']],
  ['the area', square().replace('area 20', 'ar|ea 20'), ['20 m x 20 m, 400 m²', 'm² each', 'diagonal is 28.3 m']],
  ['a value', square({ line: 'let half = area.width / 2' }).replace('let half', 'let ha|lf'), ['`area.width / 2` = 10 m']],
  ['a number', square().replace('let wide', 'let wi|de'), ['`4`']],
  ['a pole', square().replace('pole Near', 'pole Ne|ar'), ['pole', 'Stands at (10 m, 6 m)']],
  ['a team', square().replace('team Reds', 'team Re|ds'), ['2 players in red']],
  ['a word of a statement', square().replace('age U13', 'a|ge U13'), ['The age group', '```drill']],
  ['a word of two', square({ line: 'rule Box at mo|st 2 attackers' }), ['No more than so many']],
  ['an anchor', square().replace('at area.centre', 'at area.cen|tre'), ['The middle.']],
  ['a unit', square({ line: 'cone at (2 y|d, 2)' }), ['0.9144']],
  ['a problem', square({ line: 'station Nobody at Nowh|ere' }), ['unknown-name', 'name']],
  ['a part of a session', `${walls}session "S" {\n  players 9\n  without 1 "sore"\n  part "Warm|ing up" 10 min groups 2 of "Wall" at (0, 0), (12, 0)\n}\n`, [
    '**Warming up**: minute 0 to 10', '2 groups of 4 and 4; 1 cannot take part.', 'Needs 10 discs and 2 balls.', /A player: .* at work, \d+ touches, .* on the ball\./,
  ]],
  ['a part that is set up after another', `${walls}session "S" {\n  part "A" 10 min of "Wall" at (0, 0)\n  part "B|" 10 min of "Wall" at (12, 0)\n}\n`, ['To set up: 2 stay, 4 move; about 31 s with 1 pair of hands.']],
  ['a problem on a thing', square({ beat: 'Top passes to Le|ft' }), ['**Left**: station']],
])('%s', (_, text, says) => {
  const found = told(text);
  for (const each of says) expect(found).toMatch(typeof each === 'string' ? new RegExp(each.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')) : each);
});

test.each(['  |  ', '// a com|ment', square().replace('area 20 x', 'area | 20 x'), square().replace('" {', '" |{')])('nothing to say: %j', (text) => {
  expect(told(text)).toBe('');
});

test('a problem’s reason comes with its source', () => {
  const text = square({ beat: 'Left passes to T|op' }).replace('2 left of Top', '(4, 2)');
  expect(told(text)).toMatch(/\*\*The receiver is late\*\*[^]*Source: Sprint times by age/);
});
