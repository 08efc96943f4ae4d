import { expect, test } from 'vitest';
import { ballAt, rollTo } from '../../shared/physics/ball.ts';

// COMPUTED from Palmer's drag coefficients (READ: 0.47 below about 7 m/s, 0.22 above about 9 m/s) with air of
// 1.2 kg/m³ (READ) and the middle of Law 2 (READ): ½ ρ Cd A v² / m.
test.each([
  { speed: 5, drag: 0.62 },
  { speed: 10, drag: 1.16 },
  { speed: 12, drag: 1.68 },
  { speed: 15, drag: 2.62 },
  { speed: 20, drag: 4.65 },
])('the air slows a ball at $speed m/s by $drag m/s²', ({ speed, drag }) => {
  const friction = 1;
  const roll = rollTo(5, 20, friction, speed);
  if (roll.kind === 'dies') throw new Error('the ball died');
  const moment = 1e-4;
  const slowing = (roll.launch - ballAt(roll, moment).speed) / moment;
  expect(roll.launch).toBe(speed);
  expect(Math.abs(slowing - friction - drag)).toBeLessThan(0.01);
});
