import { either, field, list, maybe, when } from '../form.ts';
import { keyed, statement } from './statement.ts';

export const play = [
  keyed<'sequence' | 'mirrored'>('sequence', {
    pieces: [either(
      when({}, field('name', 'text'), either(
        when({ kind: 'mirrored' }, 'mirrors', field('of', 'text'), 'across', field('across', ['width', 'length'])),
        when({ kind: 'sequence' }),
      )),
      when({ kind: 'sequence', name: null }),
    )],
    body: 'beats',
    doc: 'What is played, beat by beat, between braces; or the mirror image of another sequence.',
    example: 'sequence "Left side" {\n  Base passes to Left\n}\nsequence "Right side" mirrors "Left side" across length',
  }),
  statement('phase', {
    pieces: [field('name', 'text'), maybe('after', field('after', 'text'))], body: 'beats',
    doc: 'A passage of play that shows what a game is about. It starts as the game does, or with `after` where another passage ends.',
    example: 'phase "Out of the back" {\n  Reds1 passes to Reds2\n}\nphase "Switch" after "Out of the back" {\n  Reds2 passes to Reds3\n}',
  }),
  statement('order', {
    pieces: [list('steps', { list: 'label', between: 'and' }, ',')],
    doc: 'Which sequences are played: one after the other with commas, at the same time with `and`, each with its own ball.',
    example: 'order "Left side", "Right side"',
  }),
  statement('rotate', {
    pieces: [either(
      when({ follow: true, chains: [] }, 'follow'),
      when({ follow: false }, list('chains', { list: 'noun', between: '->' }, ',')),
    )],
    doc: 'Where everyone goes after a repetition: from place to place, or `follow` when everyone follows their pass.',
    example: 'rotate A -> B -> A, C -> D -> C',
  }),
];
