import { field, maybe } from '../form.ts';
import { statement } from './statement.ts';

export const people = [
  statement('station', {
    pieces: [
      field('name', 'name'), 'at', field('at', 'place'), maybe('holds', field('holds', 'count')),
      maybe('of', field('of', 'noun')),
    ],
    family: 'kind', head: 1,
    doc: 'A place with a queue: `holds` says how many stand there, who plays counted: one if nothing is said.',
    example: 'station Base at (9, 1) holds 2',
  }),
  statement('team', {
    pieces: [field('name', 'name'), maybe('bib', field('bib', 'label')), maybe('of', field('of', 'count'))],
    family: 'kind', head: 1,
    doc: 'A team: `team Reds of 4` has the players `Reds1` to `Reds4`. Its goalkeeper is one of so many, unless so many others are placed.', example: 'team Reds bib red of 4',
  }),
  statement('floaters', {
    pieces: [field('name', 'name'), maybe('bib', field('bib', 'label')), maybe('of', field('of', 'count'))],
    family: 'kind', head: 1,
    doc: 'Players who play for whichever side has the ball.', example: 'floaters Jokers bib yellow of 2',
  }),
  statement('player', {
    pieces: [field('name', 'name'), 'of', field('of', 'noun'), 'at', field('at', 'place')], family: 'kind', head: 1,
    doc: 'One player of a team and where they stand.', example: 'player Reds1 of Reds at (4, 6)',
  }),
  statement('keeper', {
    pieces: [field('name', 'name'), 'of', field('of', 'noun'), 'at', field('at', 'place')], family: 'kind', head: 1,
    doc: 'A goalkeeper.', example: 'keeper Kim of Reds at 1 below North',
  }),
  statement('place', {
    pieces: [field('count', 'count'), field('of', 'noun'), 'in', field('zone', 'noun')], family: 'kind',
    doc: 'Spreads the next players of a team out in a zone.', example: 'place 3 Reds in Back',
  }),
];
