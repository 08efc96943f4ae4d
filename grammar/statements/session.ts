import { either, field, list, maybe, when } from '../form.ts';
import { statement } from './statement.ts';

export const session = [
  statement('part', {
    pieces: [
      field('name', 'text'), field('length', 'length'), maybe('groups', list('groups', 'count', ',')), maybe('of', field('of', 'text')),
      maybe('with', field('change', 'text')), maybe('resting', field('resting', 'count')), maybe('at', list('at', 'place', ',')),
    ],
    stands: ['session'],
    doc: 'One part of a session: its drill, how long, in how many groups (`groups 2`, of sizes that are worked out) or in groups of which sizes (`groups 8, 7`), `with` which progression of the drill, how many in all are `resting` and take turns, and where the bottom left corner of each group lies.',
    example: 'part "Kite" 15 min groups 2 of "Kite, bounce and spin" at (2, 2), (24, 2)',
  }),
  statement('pause', {
    pieces: [field('length', 'length'), maybe(field('name', 'text'))], stands: ['session'],
    doc: 'A break between two parts.', example: 'pause 2 min "drinks"',
  }),
  statement('without', {
    pieces: [field('count', 'count'), field('reason', 'text'), maybe('for', list('parts', 'text', ','))], stands: ['session'],
    doc: 'Of the `players`, those who are there and cannot take part, and why; with `for`, only in those parts. On the register they come after those who take part fully.',
    example: 'without 1 "sore ankle: keeps the score" for "Game"',
  }),
  statement('joins', {
    pieces: [field('count', 'count'), either(when({ keeper: true }, { word: 'keepers', one: 'keeper', by: 'count' }, 'for'), when({ keeper: false }, 'for')), field('part', 'text')],
    stands: ['session'],
    doc: 'Players, or goalkeepers, who come later: with which part they join. They count among the `players` and are the last on the register.',
    example: 'joins 1 keeper for "Game"',
  }),
];
