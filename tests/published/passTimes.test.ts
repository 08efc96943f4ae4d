import { expect, test } from 'vitest';
import { friction, rollTo } from '../../shared/physics/ball.ts';
import { constants } from '../../shared/physics/constants.ts';

// COMPUTED from an open record of three professional matches (2,738 passes): duration = 0.442 + 0.0589 · length, 5 to 30 m.
// Twice as fast would be suspect, half as fast is still plausible for a drill.
test.each([5, 10, 15, 20, 25, 30])('a pass of %d m at match tempo takes about as long as in a match', (length) => {
  const roll = rollTo(length, constants.arrivalSpeed.value.match, friction('grass', null), constants.greatestLaunch.value);
  const inMatches = 0.442 + 0.0589 * length;
  if (roll.kind === 'dies') throw new Error('the ball died');
  expect(roll.time / inMatches).toBeGreaterThan(0.5);
  expect(roll.time / inMatches).toBeLessThan(2);
});
