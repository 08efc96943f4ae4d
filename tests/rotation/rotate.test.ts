import { expect, test } from 'vitest';
import { analyse } from '../../shared/analyse.ts';

/** The rotation of a triangle with two at the base, as station moves and as cycles of places. */
function rotation(beats: string, rotate: string): { readonly moves: string; readonly cycles: string; readonly order: number | null } {
  const { drills } = analyse(`drill "Triangle" {
  area 14 x 14
  station Base at (2, 2) holds 2
  station Left at (2, 12)
  station Right at (12, 12)
  ball at Base
  sequence {
    ${beats}
  }
  ${rotate}
}`);
  const { rotation: found, measures } = drills[0]!;
  return {
    moves: found!.moves.map((move) => `${move.from}>${move.to}`).join(' '),
    cycles: measures.rotation!.cycles.map((cycle) => cycle.join('>')).join(' | '),
    order: measures.rotation!.order,
  };
}

const round = 'Base passes to Left\n    Left passes to Right\n    Right passes to next Base';
const following = 'Base passes to Left while Base follows\n    Left passes to Right while Left follows\n    Right passes to next Base while Right follows';

// Worked by hand: the front goes to the end of the next queue, the others move up.
test.each([
  { what: 'written arrows', beats: round, rotate: 'rotate Base -> Left -> Right -> Base', moves: 'Base>Left Left>Right Right>Base', cycles: 'Base1>Left>Right>Base2', order: 4 },
  { what: 'the other way round', beats: round, rotate: 'rotate Base -> Right -> Left -> Base', moves: 'Base>Right Left>Base Right>Left', cycles: 'Base1>Right>Left>Base2', order: 4 },
  { what: 'everyone follows their pass', beats: round, rotate: 'rotate follow', moves: 'Base>Left Left>Right Right>Base', cycles: 'Base1>Left>Right>Base2', order: 4 },
  { what: 'read from the movements', beats: following, rotate: '', moves: 'Base>Left Left>Right Right>Base', cycles: 'Base1>Left>Right>Base2', order: 4 },
  { what: 'one left out', beats: round, rotate: 'rotate Base -> Left -> Base', moves: 'Base>Left Left>Base Right>Right', cycles: 'Base1>Left>Base2 | Right', order: 3 },
  { what: 'back to the end of one’s own queue', beats: round, rotate: 'rotate Base -> Base', moves: 'Base>Base Left>Left Right>Right', cycles: 'Base1>Base2 | Left | Right', order: 2 },
  {
    what: 'the next in line plays and goes as well',
    beats: 'Base passes to Left while Base follows\n    Left passes to next Base while Left follows\n    next Base passes to Right while next Base follows\n    Right passes to Base while Right runs to Base',
    rotate: '',
    moves: 'Base>Left Base>Right Left>Base Right>Base',
    cycles: 'Base1>Left | Base2>Right',
    order: 2,
  },
  { what: 'not closed', beats: round, rotate: 'rotate Base -> Left -> Right', moves: 'Base>Left Left>Right Right>Right', cycles: '', order: null },
])('$what', ({ beats, rotate, moves, cycles, order }) => {
  expect(rotation(beats, rotate)).toEqual({ moves, cycles, order });
});
