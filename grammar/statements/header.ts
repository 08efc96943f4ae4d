import { field, list, maybe } from '../form.ts';
import type { Context } from '../form.ts';
import { statement } from './statement.ts';

const both: readonly Context[] = ['drill', 'session'];
const session: readonly Context[] = ['session'];

export const header = [
  statement('age', {
    pieces: [field('value', 'word')], stands: both, family: 'header',
    doc: 'The age group, such as `U9`, or `adult`: speeds and guidance follow from it.', example: 'age U13',
  }),
  statement('players', {
    pieces: [field('count', 'count')], stands: both, family: 'header',
    doc: 'How many players take part.', example: 'players 7',
  }),
  statement('units', {
    pieces: [field('value', 'word')], stands: both, family: 'header',
    doc: 'The unit of bare numbers: `m`, `yd`, `ft` or `cm`.', example: 'units m',
  }),
  statement('tempo', {
    pieces: [field('value', 'word')], family: 'header',
    doc: 'How fast it is played: `walk`, `steady` or `match`.', example: 'tempo steady',
  }),
  statement('pace', {
    pieces: [field('of', ['pass', 'run']), field('speed', 'length')], family: 'header',
    doc: 'Sets the speed a pass arrives with, or the top speed of a run, in place of the one for age and tempo.',
    example: 'pace pass 5 m/s',
  }),
  statement('theme', {
    pieces: [field('text', 'text')], stands: both, family: 'header',
    doc: 'What the players are to learn.', example: 'theme "Find the free player"',
  }),
  statement('time', {
    pieces: [field('length', 'length')], family: 'header',
    doc: 'How long the drill is meant to run.', example: 'time 15 min',
  }),
  statement('ground', {
    pieces: [field('value', 'word'), maybe('roll', field('roll', 'length'))], stands: both, family: 'header',
    doc: 'What is played on: `grass`, `turf` or `indoor`; `roll` sets how far the ball of the roll test goes on it.',
    example: 'ground grass roll 6',
  }),
  statement('level', {
    pieces: [field('text', 'text')], family: 'header',
    doc: 'Who the drill suits, in your own words.', example: 'level "After a first season"',
  }),
  statement('tags', {
    pieces: [list('tags', 'label', ',')], family: 'header',
    doc: 'Words to find the drill by.', example: 'tags passing, "third player"',
  }),
  statement('note', {
    pieces: [field('text', 'text')], stands: both, family: 'header',
    doc: 'A remark that is printed on the sheet.', example: 'note "Use size 4 balls"',
  }),
  statement('length', {
    pieces: [field('length', 'length')], stands: session, family: 'header',
    doc: 'How long the whole session takes; with a ladder, how long that is.', example: 'length 60 min',
  }),
  statement('pitch', {
    pieces: [field('size', 'size')], stands: session, family: 'header',
    doc: 'The ground there is for the whole session, wide by long.', example: 'pitch 60 x 40',
  }),
  statement('kit', {
    pieces: [list('items', [field('count', 'count'), field('what', 'word'), maybe(field('colour', 'name'))], ',')],
    stands: session, family: 'header',
    doc: 'The equipment that is there: cones, discs, poles, mannequins, goals, minigoals, hurdles, ladders, balls, bibs. Cones and discs stand in for each other.', example: 'kit 20 cones, 4 poles, 7 bibs red',
  }),
  statement('hands', {
    pieces: [field('count', 'count')], stands: session, family: 'header',
    doc: 'How many set out and carry, the coach included: one if nothing is said.', example: 'hands 2',
  }),
];
