import { either, field, maybe, node, when } from '../form.ts';
import { statement } from './statement.ts';

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
    doc: 'A rule of the game: touches allowed, who may be in a zone, or anything in your own words.',
    example: 'rule Back at most 2 defenders',
  }),
  statement('expect', {
    pieces: [field('ours', 'count'), 'v', field('theirs', 'count'), 'in', field('zone', 'noun')],
    doc: 'The numbers you expect in a zone: the checker counts.', example: 'expect 4 v 2 in Back',
  }),
  statement('score', {
    pieces: [field('points', 'count'), 'for', node('for', either(
      when({ kind: 'pass' }, 'pass', either(
        when({ from: null }, 'into', field('into', 'noun')),
        when({}, 'from', field('from', 'noun'), 'to', field('into', 'noun')),
      )),
      when({ kind: 'goal' }, 'goal in', field('goal', 'noun')),
      when({ kind: 'passes' }, field('count', 'count'), 'passes'),
    ))],
    doc: 'What earns points.', example: 'score 1 for pass into End',
  }),
  statement('bouts', {
    pieces: [field('count', 'count'), 'x', field('length', 'length'), maybe('rest', field('rest', 'length'))],
    doc: 'How often, how long, and the rest between.', example: 'bouts 4 x 3 min rest 1 min',
  }),
];
