import { field } from '../form.ts';
import type { StatementForm } from '../form.ts';
import { corners, levers } from '../tree.ts';
import { statement } from './statement.ts';

const leaving = 'Of a team that is smaller there the last ones written leave; `of 0` leaves it out.';

export const coaching = [
  statement('point', {
    pieces: [field('corner', corners), field('text', 'text')], family: 'kind', head: 1,
    doc: 'A coaching point in one of the four corners.', example: 'point technical "Open your hips"',
  }),
  statement('question', {
    pieces: [field('text', 'text')], stands: ['drill', 'session'],
    doc: 'A question to put to the players.', example: 'question "Where is the free player?"',
  }),
  statement('safety', {
    pieces: [field('text', 'text')], stands: ['drill', 'session'],
    doc: 'Something to look out for.', example: 'safety "Pin the goals down"',
  }),
  change('progress', `A harder version: its block holds the statements that change. ${leaving}`),
  change('regress', `An easier version: its block holds the statements that change. ${leaving}`),
];

function change(kind: 'progress' | 'regress', doc: string): StatementForm {
  return statement(kind, {
    pieces: [field('lever', levers), field('name', 'text')], body: 'drill',
    doc, example: `${kind} space "Another width" {\n  let wide = 5\n}`,
  });
}
