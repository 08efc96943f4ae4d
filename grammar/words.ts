import { modifierForms } from './modifiers.ts';
import { statementForms } from './statements/index.ts';
import { unitDocs, unitSpellings } from './units.ts';
import { verbForms } from './verbs.ts';

export type WordGroup = 'statement' | 'verb' | 'modifier' | 'place' | 'joining' | 'value' | 'anchor' | 'side' | 'unit';

export interface WordEntry {
  readonly word: string;
  readonly group: WordGroup;
  readonly doc: string;
  readonly example: string;
  /** Whether the word can no longer be a name. */
  readonly reserved: boolean;
}

/**
 * Every word of the language. A word with several uses stands here once for each of them:
 * the lexer, the highlighting, completion, hover and the reference all read this list.
 */
export const words: readonly WordEntry[] = [
  ...statementForms.map(({ keyword, doc, example }) => entry('statement', keyword, doc, example)),
  ...verbForms.map(({ verb, doc, example }) => entry('verb', verb, doc, example)),
  ...modifierForms.filter(({ alternative }) => alternative.pieces[0] !== 'in').map(({ alternative, doc, example }) =>
    entry('modifier', String(alternative.pieces[0]), doc, example)),
  entry('modifier', 'touches', 'The player who passes controls the ball first and plays it on with their last touch of so many.', 'Left passes to Top, in 2 touches'),
  entry('modifier', 'in stride', 'Takes the ball without breaking stride.', 'Left passes to Top, in stride'),

  entry('place', 'left of', 'So far to the left of a place: towards smaller x.', '3 left of Near'),
  entry('place', 'right of', 'So far to the right of a place: towards larger x.', '3 right of Near'),
  entry('place', 'above', 'So far up the pitch from a place: towards larger y.', '2 above Near'),
  entry('place', 'below', 'So far down the pitch from a place: towards smaller y.', '2 below Near'),
  entry('place', 'between', 'Half-way between two places.', 'between Near and Far'),
  entry('place', 'mirror of', 'The mirror image of a place: across the length swaps left and right, across the width near and far.', 'mirror of Left across length'),
  entry('place', 'next', 'The player now waiting at a station, rather than the one who started this repetition there.', 'next Base'),
  entry('place', 'facing', 'The way a thing is turned: up, down, left, right or towards a place.', 'facing up'),
  entry('place', 'up', 'Facing up the pitch.', 'facing up'),
  entry('place', 'down', 'Facing down the pitch.', 'facing down'),
  entry('place', 'left', 'Facing left.', 'facing left'),
  entry('place', 'right', 'Facing right.', 'facing right'),

  entry('joining', 'while', 'Begins what others do at the same time.', 'Base passes to Left while Top drops to (6, 20)'),
  entry('joining', 'then', 'Goes on with what the same player does next.', 'Left runs to (2, 8) then shows to (4, 8)'),
  entry('joining', 'and', 'Joins two places, or two sequences that run at once.', 'order "Left side" and "Right side"'),
  entry('joining', 'at', 'Says where.', 'ball at Base'),
  entry('joining', 'of', 'Says whose or of what.', 'player Reds1 of Reds at (4, 6)'),
  entry('joining', 'to', 'Says where to.', 'Base passes to Left'),
  entry('joining', 'from', 'Says where from.', 'cone at 1/3 from Near to Far'),
  entry('joining', 'into', 'Says into which space, or into which parts.', 'split area by length into Back 12, Mid 8'),
  entry('joining', 'in', 'Says in which zone.', 'place 3 Reds in Back'),
  entry('joining', 'for', 'Says for whom.', 'rule touches 2 for Reds'),
  entry('joining', 'by', 'Says along which side an area is split, or which team a score is for.', 'split area by width into Left 6, Right 12'),
  entry('joining', 'across', 'Says which line a mirror image is made over: the one along the length, or the one along the width.', 'pole at mirror of Near across length'),
  entry('joining', 'x', 'Wide by long, or so many times so long.', 'area 18 x 24'),
  entry('joining', 'v', 'Against.', 'expect 4 v 2 in Back'),
  entry('joining', 'marked every', 'Puts cones along the sides of the area, so far apart.', 'area 18 x 24 marked every 6'),
  entry('joining', 'circle', 'A round zone, by its radius.', 'zone Middle circle 5 at area.centre'),
  entry('joining', 'polygon', 'A zone by its corners.', 'zone Wedge polygon (0, 0) (6, 0) (3, 8)'),
  entry('joining', 'corners', 'All four corners.', 'zones Box 4 x 4 in corners of area'),
  entry('joining', 'width', 'How wide.', 'gate at (9, 20) width 2'),
  entry('joining', 'roll', 'How far the ball of the roll test goes on this ground.', 'ground grass roll 6'),
  entry('joining', 'holds', 'How many stand at a station, who plays counted.', 'station Base at (9, 1) holds 2'),
  entry('joining', 'bib', 'The colour of the bibs.', 'team Reds bib red of 4'),
  entry('joining', 'mirrors', 'Makes a sequence the mirror image of another.', 'sequence "Right" mirrors "Left" across length'),
  entry('joining', 'follow', 'Everyone goes to where they passed.', 'rotate follow'),
  entry('joining', 'touches', 'How many touches are allowed.', 'rule touches 2 for attackers in Back'),
  entry('joining', 'touch', 'One of the touches allowed.', 'Left passes to Top, in 1 touch'),
  entry('joining', 'most', 'No more than so many.', 'rule Back at most 2 defenders'),
  entry('joining', 'least', 'No fewer than so many.', 'rule Back at least 1 defenders'),
  entry('joining', 'exactly', 'Neither more nor fewer.', 'rule Back exactly 1 defenders'),
  entry('joining', 'no', 'None.', 'rule Back no defenders'),
  entry('joining', 'passes', 'So many passes in a row.', 'score 1 for 8 passes'),
  entry('joining', 'pass', 'A pass that scores.', 'score 1 for pass from Back to Front'),
  entry('joining', 'dribble', 'A run with the ball that scores.', 'score 1 for dribble into End'),
  entry('joining', 'through', 'Through a gate.', 'score 1 for dribble through Left'),
  entry('joining', 'winning the ball', 'Taking the ball from the other side.', 'score 1 for winning the ball in Back'),
  entry('joining', 'goal in', 'A goal that scores.', 'score 2 for goal in North'),
  entry('joining', 'rest', 'The rest after each bout.', 'bouts 4 x 3 min rest 1 min'),
  entry('joining', 'groups', 'How many groups do the same side by side; with several numbers, how large each is.', 'part "Kite" 15 min groups 2'),
  entry('joining', 'with', 'The progression or regression that is played.', 'part "Kite, faster" 10 min of "Kite" with "One touch"'),
  entry('joining', 'resting', 'How many have a rest at a time and take turns.', 'part "Game" 20 min of "Four against two" resting 1'),
  entry('joining', 'keepers', 'Goalkeepers.', 'joins 2 keepers for "Game"'),

  value('walk', 'At walking pace.', 'tempo walk'),
  value('steady', 'At training pace.', 'tempo steady'),
  value('match', 'At match pace.', 'tempo match'),
  value('jog', 'Running easily.', 'Top runs to Base at jog'),
  value('run', 'Running.', 'Top runs to Base at run'),
  value('sprint', 'Flat out.', 'Top runs to Base at sprint'),
  value('grass', 'Natural grass.', 'ground grass'),
  value('turf', 'Artificial turf.', 'ground turf'),
  value('indoor', 'A sports hall.', 'ground indoor'),
  value('adult', 'Grown-ups.', 'age adult'),
  value('attackers', 'The side that has the ball, with the floaters.', 'rule touches 2 for attackers'),
  value('defenders', 'The side that has not got the ball.', 'rule Back at most 2 defenders'),
  value('technical', 'The technical corner.', 'point technical "Open your hips"'),
  value('psychological', 'The psychological corner.', 'point psychological "Scan early"'),
  value('physical', 'The physical corner.', 'point physical "Burst out of the spin"'),
  value('social', 'The social corner.', 'point social "Call early"'),
  value('space', 'What changes is the space.', 'progress space "Narrower" { let wide = 5 }'),
  value('task', 'What changes is the task.', 'progress task "One touch" { rule touches 1 }'),
  value('equipment', 'What changes is the equipment.', 'regress equipment "One pole" { pole Near at (9, 8) }'),
  value('people', 'What changes is who takes part.', 'progress people "One defender" { team Blues of 1 }'),

  anchor('centre', 'The middle.'),
  anchor('top', 'The middle of the top side.'),
  anchor('bottom', 'The middle of the bottom side.'),
  anchor('left', 'The middle of the left side.'),
  anchor('right', 'The middle of the right side.'),
  anchor('topLeft', 'The top left corner.'),
  anchor('topRight', 'The top right corner.'),
  anchor('bottomLeft', 'The bottom left corner.'),
  anchor('bottomRight', 'The bottom right corner.'),

  { word: 'width', group: 'side', doc: 'How wide an area or a zone is.', example: 'let half = area.width / 2', reserved: true },
  { word: 'length', group: 'side', doc: 'How long an area or a zone is.', example: 'let half = area.length / 2', reserved: true },

  ...[...unitSpellings].map(([word, unit]): WordEntry => ({
    word, group: 'unit', doc: unitDocs[unit], reserved: false,
    example: unit === 's' || unit === 'min' ? `pause 2 ${word}` : `let far = 9 ${word}`,
  })),
];

/** Words that cannot be names, one by one: `passes to` gives `passes` and `to`. */
export const reserved: ReadonlySet<string> = new Set(
  words.filter((entry) => entry.reserved).flatMap((entry) => entry.word.split(' ')),
);

function entry(group: WordGroup, word: string, doc: string, example: string): WordEntry {
  return { word, group, doc, example, reserved: true };
}

function value(word: string, doc: string, example: string): WordEntry {
  return { word, group: 'value', doc, example, reserved: false };
}

function anchor(word: string, doc: string): WordEntry {
  return { word, group: 'anchor', doc, example: `area.${word}`, reserved: false };
}
