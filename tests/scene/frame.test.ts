import { describe, expect, it } from 'vitest';
import { frameAt, moverAt } from '../../shared/scene/frame.ts';
import { stage } from '../../shared/scene/scene.ts';
import { ballPosition, personAt } from '../../shared/timeline/at.ts';
import { analysed, drillNames, drills } from './drills.ts';

/** Metres that a sampled track may miss the closed form by. */
const tolerance = 0.02;

describe.each(drillNames)('in %s', (name) => {
  const analysis = analysed(drills[name] as string);
  const timeline = analysis.phases[0]?.timeline ?? analysis.timeline;
  const scene = stage(analysis, { theme: 'light', convention: 'solid pass' });
  const { left, bottom, perMetre } = scene.plan;
  const times = Array.from({ length: 400 }, (_, index) => (scene.end * index) / 399);

  it('everyone is within 2 cm of where the timeline has them', () => {
    const off = timeline.tracks.flatMap((track) => {
      const mover = scene.movers.find((one) => one.id === `person-${track.actor}`);
      const first = Math.min(...track.moves.map((move) => move.start), track.walk?.start ?? Infinity);
      // Who waits in a queue is drawn off the spot until the first move is over.
      const settled = track.actor.startsWith('next ') ? (track.moves[0]?.end ?? Infinity) : first;
      return !mover ? [track.actor] : times.filter((time) => time > settled).flatMap((time) => {
        const [{ x, y }, true_] = [moverAt(mover.track, time), personAt(track, time)];
        const miss = Math.hypot((x - left) / perMetre - true_.x, (bottom - y) / perMetre - true_.y);
        return miss > tolerance ? [`${track.actor} by ${miss.toFixed(3)} m at ${time.toFixed(2)} s`] : [];
      });
    });
    expect(off).toEqual([]);
  });

  it('a ball is never farther from where the timeline has it than a foot in front of its player, and as high', () => {
    const reach = 3.2 / perMetre + tolerance;
    const off = timeline.balls.filter((ball) => ball.stretches.some(({ kind }) => kind !== 'still')).flatMap((ball) => {
      const mover = scene.movers.find((one) => one.id === `ball-${ball.id}`);
      return times.flatMap((time) => {
        const { x, y, height } = moverAt(mover?.track ?? [], time);
        const true_ = ballPosition(ball, time);
        const miss = Math.hypot((x - left) / perMetre - true_.x, (bottom - y) / perMetre - true_.y);
        return miss > reach || Math.abs(height - true_.height) > tolerance + 0.005 ? [`${ball.id} by ${miss.toFixed(3)} m at ${time.toFixed(2)} s`] : [];
      });
    });
    expect(off).toEqual([]);
  });

  it('the cursor runs from the start of the time line to its end', () => {
    const axis = scene.strip as NonNullable<typeof scene.strip>;
    expect([-5, 0, scene.end, scene.end + 5].map((time) => frameAt(scene, time).cursor)).toEqual([axis.left, axis.left, axis.left + axis.perSecond * scene.end, axis.left + axis.perSecond * scene.end]);
  });
});

describe('the beat of a frame', () => {
  const scene = stage(analysed(drills['kite'] as string), { theme: 'light', convention: 'solid pass' });
  it.each(scene.beats.map((beat) => [beat.number, (beat.start + beat.end) / 2] as const))('is %d half way through it', (number, time) => {
    expect(frameAt(scene, time).beat).toBe(number);
  });
});
