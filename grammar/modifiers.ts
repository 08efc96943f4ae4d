import { either, field, when } from './form.ts';
import type { Alternative, Piece } from './form.ts';
import { gaits } from './tree.ts';

interface ModifierForm {
  readonly alternative: Alternative;
  readonly doc: string;
  readonly example: string;
}

const one = (pieces: readonly Piece[], kind: string | null, doc: string, example: string): ModifierForm => ({
  alternative: when(kind === null ? {} : { kind }, ...pieces), doc, example,
});

export const modifierForms: readonly ModifierForm[] = [
  one(['first time'], 'first time', 'The player who passes does so with their first touch.', 'Screen passes to Top first time'),
  one(['soft'], 'soft', 'A ball that arrives slowly.', 'Base passes to Left, soft'),
  one(['firm'], 'firm', 'A ball that arrives with pace.', 'Base passes to Left, firm'),
  one(['driven'], 'driven', 'A hard, low ball.', 'Wing crosses to Top, driven'),
  one(['lofted'], 'lofted', 'A ball through the air.', 'Top passes to next Base, lofted'),
  one(
    ['in', either(
      when({ kind: 'in stride' }, 'stride'),
      when({ kind: 'touches' }, field('count', 'count'), { word: 'touches', one: 'touch', by: 'count' }),
    )],
    null, '`in 2 touches`: the player who passes controls the ball first, and the pass is their second touch. `in stride`: the player who is passed to takes the ball without breaking stride.', 'Left passes to Top, in 2 touches',
  ),
  one(['via', field('at', 'place')], 'via', 'A run or a dribble goes by way of a place; several in a row are passed in order. A ball that is passed goes straight.', 'Top runs to Base via (2, 2)'),
  one(['around', field('about', 'subject')], 'around', 'A run or a dribble goes round a pole, a mannequin or a player.', 'Top runs to Base around Near'),
  one(['at', field('gait', gaits)], 'gait', 'How fast: `walk`, `jog`, `run` or `sprint`.', 'Top runs to Base at sprint'),
  one(['after', field('delay', 'length')], 'after', 'Starts so much later.', 'Top runs to Base after 0.5 s'),
];

export const modifierPiece: Piece = either(...modifierForms.map((form) => form.alternative));

/** These describe the ball rather than the player and are set off with a comma. */
export const afterComma: ReadonlySet<string> = new Set(['soft', 'firm', 'driven', 'lofted', 'touches', 'in stride']);

/** The words that a modifier can begin with. */
export const modifierStarts: ReadonlySet<string> = new Set(
  modifierForms.map(({ alternative }) => String(alternative.pieces[0]).split(' ')[0]!),
);
