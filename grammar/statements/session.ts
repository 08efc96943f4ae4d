import { field, list, maybe } from '../form.ts';
import { statement } from './statement.ts';

export const session = [
  statement('part', {
    pieces: [
      field('name', 'text'), field('length', 'length'), maybe('groups', field('groups', 'count')), maybe('of', field('of', 'text')),
      maybe('at', list('at', 'place', ',')),
    ],
    stands: ['session'],
    doc: 'One part of a session: its drill, how long, in how many groups, and where the bottom left corner of each group lies.',
    example: 'part "Kite" 15 min groups 2 of "Kite, bounce and spin" at (2, 2), (24, 2)',
  }),
  statement('pause', {
    pieces: [field('length', 'length'), maybe(field('name', 'text'))], stands: ['session'],
    doc: 'A break between two parts.', example: 'pause 2 min "drinks"',
  }),
];
