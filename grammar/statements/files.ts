import { field } from '../form.ts';
import { statement } from './statement.ts';

export const files = [
  statement('drill', {
    pieces: [field('name', 'text')], stands: ['file'], body: 'drill',
    doc: 'A drill: its ground, its people and what they do, between braces.', example: 'drill "Kite" {\n  area 18 x 24\n}',
  }),
  statement('session', {
    pieces: [field('name', 'text')], stands: ['file'], body: 'session',
    doc: 'A session: the drills of one training and how long each takes, between braces.',
    example: 'session "Tuesday" {\n  length 60 min\n}',
  }),
  statement('import', {
    pieces: [field('path', 'text')], stands: ['file'],
    doc: 'Makes the drills of another file known here.', example: 'import "kite.drill"',
  }),
  statement('let', {
    pieces: [field('name', 'name'), '=', field('value', 'length')], stands: ['file', 'drill', 'session'], family: 'kind', head: 1,
    doc: 'Gives a value a name, so that one change moves everything that uses it.', example: 'let wide = 7',
  }),
];
