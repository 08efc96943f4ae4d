import { either, field, maybe, node, when } from '../form.ts';
import { statement } from './statement.ts';

/** How a ball is brought into a zone or through a gate. */
const ways = [
  when({ from: null, through: null }, 'into', field('into', 'noun')),
  when({ through: null }, 'from', field('from', 'noun'), 'to', field('into', 'noun')),
  when({ from: null, into: null }, 'through', field('through', 'noun')),
];

export const rules = [
  statement('rule', {
    pieces: [either(
      when({ rule: 'text' }, field('text', 'text')),
      when({ rule: 'touches' },
        'touches', field('count', 'count'), maybe('for', field('who', 'noun')), maybe('in', field('zone', 'noun'))),
      when({},
        field('zone', 'noun'),
        either(
          when({}, 'at', either(
            when({ rule: 'at most' }, 'most', field('count', 'count')),
            when({ rule: 'at least' }, 'least', field('count', 'count')),
          )),
          when({ rule: 'exactly' }, 'exactly', field('count', 'count')),
          when({ rule: 'no', count: null }, 'no'),
        ),
        field('who', 'noun')),
    )],
    doc: 'A rule of the game: touches allowed, who may be in a zone, or anything in your own words. Who stands on the line of a zone is in it; goalkeepers are counted only where a rule names them.',
    example: 'rule Back at most 2 defenders',
  }),
  statement('expect', {
    pieces: [field('ours', 'count'), 'v', field('theirs', 'count'), 'in', field('zone', 'noun')],
    doc: 'The numbers you expect in a zone: the side with the ball and the floaters against the other side, goalkeepers left out; who stands on the line is in. They must stand there as the game is set out, or at some moment of every phase that plays in the zone.', example: 'expect 4 v 2 in Back',
  }),
  statement('score', {
    pieces: [field('points', 'count'), 'for', node('for', either(
      when({ kind: 'pass' }, 'pass', either(...ways)),
      when({ kind: 'dribble' }, 'dribble', either(...ways)),
      when({ kind: 'win' }, 'winning the ball', maybe('in', field('zone', 'noun'))),
      when({ kind: 'goal' }, 'goal in', field('goal', 'noun')),
      when({ kind: 'passes' }, field('count', 'count'), 'passes'),
    )), maybe('by', field('by', 'noun'))],
    doc: 'What earns points; with a team at the end, only for that team.', example: 'score 1 for pass into End',
  }),
  statement('bouts', {
    pieces: [field('count', 'count'), 'x', field('length', 'length'), maybe('rest', field('rest', 'length'))],
    doc: 'How often, how long, and the rest between.', example: 'bouts 4 x 3 min rest 1 min',
  }),
];
