import { either, field, list, maybe, node, when } from '../form.ts';
import { statement } from './statement.ts';

export const space = [
  statement('area', {
    pieces: [field('size', 'size'), maybe('marked every', field('marked', 'length'))],
    doc: 'The ground of the drill, wide by long: (0, 0) is its bottom left corner. `marked every` puts cones along its sides.',
    example: 'area 18 x 24 marked every 6',
  }),
  statement('zone', {
    pieces: [
      field('name', 'name'),
      node('shape', either(
        when({}, field('size', 'size'), either(
          when({ kind: 'box' }, 'at', field('at', 'place')),
          when({ kind: 'tucked' }, 'in', field('of', 'noun'), '.', field('anchor', 'word')),
        )),
        when({ kind: 'corners' }, 'from', field('a', 'place'), 'to', field('b', 'place')),
        when({ kind: 'circle' }, 'circle', field('radius', 'length'), 'at', field('at', 'place')),
        when({ kind: 'polygon' }, 'polygon', list('points', 'place', ' ')),
      )),
    ],
    family: 'kind', head: 1,
    doc: 'A part of the ground with a name: a box round its centre, a box in a corner, from corner to corner, a circle or a polygon.',
    example: 'zone Back 18 x 8 in area.bottomLeft',
  }),
  statement('split', {
    pieces: [
      field('of', 'noun'), 'by', field('by', ['width', 'length']), 'into',
      list('into', [field('name', 'name'), field('size', 'length')], ','),
    ],
    doc: 'Cuts the area or a zone into strips, each of them a zone.', example: 'split area by length into Back 12, Mid 8',
  }),
  statement('zones', {
    pieces: [field('name', 'name'), field('size', 'size'), 'in corners of', field('of', 'noun')],
    doc: 'Puts a zone into each corner: `Box` makes `BoxTopLeft`, `BoxTopRight`, `BoxBottomLeft` and `BoxBottomRight`.',
    example: 'zones Box 4 x 4 in corners of area',
  }),
];
