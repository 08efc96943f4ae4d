import { field, maybe } from '../form.ts';
import type { StatementForm } from '../form.ts';
import type { MarkerKind } from '../tree.ts';
import { statement } from './statement.ts';

export const furniture = [
  marker('cone', 'A cone.', 'cone at (0, 0)'),
  marker('disc', 'A flat disc.', 'disc at area.centre'),
  marker('pole', 'A pole to run round.', 'pole Near at 6 above area.bottom'),
  marker('mannequin', 'A mannequin that stands in the way of ball and player.', 'mannequin Wall at (9, 12)'),
  statement('gate', {
    pieces: [
      maybe(field('name', 'name')), 'at', field('at', 'place'), 'width', field('width', 'length'),
      maybe('facing', field('facing', 'facing')),
    ],
    family: 'kind', head: 1,
    doc: 'Two cones to go between.', example: 'gate Exit at (9, 20) width 2 facing up',
  }),
  statement('goal', {
    pieces: [
      maybe(field('name', 'name')), field('size', 'size'), 'at', field('at', 'place'),
      maybe('facing', field('facing', 'facing')),
    ],
    family: 'kind', head: 1,
    doc: 'A goal, wide by high.', example: 'goal North 5 x 2 at area.top facing down',
  }),
  statement('minigoal', {
    pieces: [maybe(field('name', 'name')), 'at', field('at', 'place'), maybe('facing', field('facing', 'facing'))],
    family: 'kind', head: 1,
    doc: 'A small goal.', example: 'minigoal A at area.topLeft facing down',
  }),
  statement('hurdle', {
    pieces: [maybe(field('name', 'name')), 'at', field('at', 'place'), maybe('facing', field('facing', 'facing'))],
    family: 'kind', head: 1,
    doc: 'A hurdle to jump.', example: 'hurdle at (4, 6) facing up',
  }),
  statement('ladder', {
    pieces: [
      maybe(field('name', 'name')), 'at', field('at', 'place'), maybe('length', field('length', 'length')),
      maybe('facing', field('facing', 'facing')),
    ],
    family: 'kind', head: 1,
    doc: 'An agility ladder.', example: 'ladder at (2, 4) length 4 facing up',
  }),
  statement('ball', {
    pieces: ['at', field('at', 'place')], family: 'kind',
    doc: 'The ball the drill starts with.', example: 'ball at Base',
  }),
  statement('balls', {
    pieces: [field('count', 'count'), 'at', field('at', 'place')], family: 'kind',
    doc: 'A supply of spare balls.', example: 'balls 6 at area.bottomLeft',
  }),
  statement('coach', {
    pieces: ['at', field('at', 'place')], family: 'kind',
    doc: 'Where the coach stands; `coach` may also play and be played to.', example: 'coach at 2 left of area.left',
  }),
];

function marker(kind: MarkerKind, doc: string, example: string): StatementForm {
  return statement(kind, {
    pieces: [maybe(field('name', 'name')), 'at', field('at', 'place')], family: 'kind', head: 1, doc, example,
  });
}
