import { either, field, node, when } from './form.ts';
import type { Piece } from './form.ts';
import type { Action, Verb } from './tree.ts';

export interface VerbForm {
  readonly verb: Verb;
  /** What follows the words of the verb. */
  readonly pieces: readonly Piece<keyof Action | 'wait'>[];
  readonly doc: string;
  readonly example: string;
}

const target = field('target', 'place');
const about = field('about', 'subject');

export const verbForms: readonly VerbForm[] = [
  { verb: 'passes to', pieces: [target], doc: 'Plays the ball to a player or a place.', example: 'Base passes to Left' },
  {
    verb: 'passes into', pieces: [target, 'for', field('receiver', 'subject')],
    doc: 'Plays the ball into space for someone to run on to.', example: 'Left passes into 3 left of Far for Screen',
  },
  { verb: 'sets to', pieces: [target], doc: 'Lays the ball off with one touch.', example: 'Screen sets to Base' },
  {
    verb: 'sets into', pieces: [target, 'for', field('receiver', 'subject')],
    doc: 'Lays the ball off with one touch, into space for someone to run on to.', example: 'Screen sets into 3 above Near for Left',
  },
  { verb: 'touches to', pieces: [target], doc: 'Takes a touch out of the feet.', example: 'Base touches to 1.5 above Base' },
  { verb: 'dribbles to', pieces: [target], doc: 'Runs with the ball.', example: 'Left dribbles to (6, 14)' },
  { verb: 'crosses to', pieces: [target], doc: 'Plays the ball in from the side.', example: 'Wing crosses to (9, 22)' },
  { verb: 'shoots at', pieces: [target], doc: 'Shoots at a goal.', example: 'Top shoots at North' },
  { verb: 'turns', pieces: [], doc: 'Turns with the ball.', example: 'Screen turns' },
  { verb: 'runs to', pieces: [target], doc: 'Runs without the ball.', example: 'Screen runs to 2 left of Near' },
  { verb: 'shows to', pieces: [target], doc: 'Comes towards the ball to be played to.', example: 'Left shows to 2 right of Left' },
  { verb: 'drops to', pieces: [target], doc: 'Moves away from the opponents\' goal to get free.', example: 'Top drops to (9, 16)' },
  {
    verb: 'spins around', pieces: [about, 'to', target],
    doc: 'Turns round a pole, a mannequin or a player and bursts away.', example: 'Screen spins around Near to 2 right of Far',
  },
  { verb: 'follows', pieces: [], doc: 'Runs to the station of the player just played to.', example: 'Base follows' },
  { verb: 'overlaps', pieces: [about, 'to', target], doc: 'Runs round the outside of a team-mate.', example: 'Back overlaps Wing to (16, 20)' },
  { verb: 'underlaps', pieces: [about, 'to', target], doc: 'Runs round the inside of a team-mate.', example: 'Back underlaps Wing to (12, 20)' },
  { verb: 'presses', pieces: [about], doc: 'Runs at the player on the ball.', example: 'Blues1 presses Reds1' },
  { verb: 'marks', pieces: [about], doc: 'Stays close to an opponent.', example: 'Blues2 marks Reds3' },
  { verb: 'wins the ball from', pieces: [about], doc: 'Takes the ball off an opponent.', example: 'Blues1 wins the ball from Reds1' },
  { verb: 'holds', pieces: [], doc: 'Stays in place; at a station `holds 2` says how many wait there.', example: 'Top holds' },
  {
    // The tree keeps this among the modifiers.
    verb: 'waits', pieces: [node('wait', either(when({ kind: 'for' }, field('length', 'length'))))],
    doc: 'Stands still for a while.', example: 'Top waits 1 s',
  },
];

/** The words that an action can begin with. */
export const verbStarts: ReadonlySet<string> = new Set(verbForms.map(({ verb }) => verb.split(' ')[0]!));
